"""Joints that are screwed: where they run, and what a screw goes through and into."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from nesting.cabinets.bodies import box_interval, cross_axes
from nesting.cabinets.construction import Construction
from nesting.cabinets.contacts import Contact, find_contacts
from nesting.cabinets.ends import find_closings, find_end, is_inset
from nesting.cabinets.fittings import CarcassScrews
from nesting.cabinets.panels import Panel
from nesting.cabinets.profiles import Corner
from nesting.cabinets.space import Axis, Box
from nesting.lengths import Length, mm

COVERED_GAP = mm(12)
"""A closing still rests on its frame where coverings keep them this far apart."""
LOOSE = "grille"
"""Battens whose names begin so are no part of the carcass."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FixingJoint:
    """A joint that gets screws, along its middle line.

    Attributes:
        through: Name of what they go through first.
        into: Name of what they hold in.
        kind: "battens", "closings", "braces" or "carcass".
        axis: The direction of the screws.
        is_low: Whether they go in from the low side.
        start: Where the line begins, on the two axes across, see `cross_axes`.
        finish: Where it ends.
        breadth: Breadth of the joint.
        end: What the end is called that places are measured from.
    """

    through: str
    into: str
    kind: str
    axis: Axis
    is_low: bool
    start: Corner
    finish: Corner
    breadth: Length
    end: str

    @property
    def name(self) -> str:
        """What is screwed to what."""
        return f"{self.through} to {self.into}"


def find_joints(construction: Construction, carcass: CarcassScrews) -> Iterator[FixingJoint]:
    """Yield the joints of a cabinet that are screwed.

    Args:
        construction: The cabinet.
        carcass: Whether its butt joints, and planted panels, are screwed too.
    """
    closings = find_closings(construction)
    fixed = tuple(panel for panel in construction.shell if panel not in closings)
    if carcass is not CarcassScrews.NONE:
        yield from _find_butts(fixed)
        yield from _find_planted(construction, closings, fixed)
    yield from _find_battens(construction, fixed)
    for brace in construction.inner:
        for panel in fixed:
            for contact in find_contacts(_boxes(brace, panel)):
                yield _joint(contact, through=panel.name, kind="braces")
    for closing in closings:
        yield from _find_rests(construction, closing, fixed)


def _find_butts(fixed: tuple[Panel, ...]) -> Iterator[FixingJoint]:
    """Yield the butt joints of a carcass: through the face of one panel into another's edge."""
    for pair in combinations(fixed, 2):
        for contact in find_contacts(_boxes(*pair)):
            for panel in pair:
                if panel.normal is contact.axis:
                    yield _joint(contact, through=panel.name, kind="carcass")


def _find_planted(
    construction: Construction, closings: tuple[Panel, ...], fixed: tuple[Panel, ...]
) -> Iterator[FixingJoint]:
    for closing in closings:
        if is_inset(construction, closing):
            continue
        for panel in fixed:
            for contact in find_contacts(_boxes(closing, panel)):
                yield _joint(contact, through=closing.name, kind="carcass")


def _find_battens(construction: Construction, fixed: tuple[Panel, ...]) -> Iterator[FixingJoint]:
    for bar in construction.bars:
        if bar.name.startswith(LOOSE):
            continue
        pairs = ((bar.name, bar.box), *((panel.name, panel.box) for panel in fixed))
        touching = [each for each in find_contacts(pairs) if bar.name in (each.first, each.second)]
        if touching:
            widest = max(touching, key=lambda contact: contact.area)
            yield _joint(widest, through=bar.name, kind="battens")


def _find_rests(
    construction: Construction, closing: Panel, fixed: tuple[Panel, ...]
) -> Iterator[FixingJoint]:
    """Yield what a baffle or back rests on: the battens of a frame, or the ends of its rebates."""
    for bar in construction.bars:
        if bar.name.startswith(LOOSE):
            continue
        pair = ((closing.name, closing.box), (bar.name, bar.box))
        for contact in find_contacts(pair, gap=COVERED_GAP):
            if contact.axis is closing.normal:
                yield _joint(contact, through=closing.name, kind="closings")
    is_front = find_end(construction, closing) == "front"
    for panel in fixed:
        for cut in panel.cuts:
            common = cut.box.overlap(closing.box)
            if common is not None and cut.what.startswith("rebate for the"):
                contact = _rest(closing, panel, common, is_front=is_front)
                yield _joint(contact, through=closing.name, kind="closings")


def _rest(closing: Panel, panel: Panel, common: Box, *, is_front: bool) -> Contact:
    """Return where a closing rests on the end of its rebate in a panel of the carcass."""
    first, second = (closing, panel) if is_front else (panel, closing)
    return Contact(
        first=first.name,
        second=second.name,
        axis=closing.normal,
        at=box_interval(closing.box, closing.normal)[1 if is_front else 0],
        along=panel.length.axis,
        run=box_interval(common, panel.length.axis),
        breadth=box_interval(common, panel.normal),
    )


def _boxes(first: Panel, second: Panel) -> tuple[tuple[str, Box], tuple[str, Box]]:
    return (first.name, first.box), (second.name, second.box)


def _joint(contact: Contact, *, through: str, kind: str) -> FixingJoint:
    is_first = through == contact.first
    middle = sum(contact.breadth) // 2
    start, finish = (
        tuple(at if axis is contact.along else middle for axis in cross_axes(contact.axis))
        for at in contact.run
    )
    return FixingJoint(
        through=through,
        into=contact.second if is_first else contact.first,
        kind=kind,
        axis=contact.axis,
        is_low=is_first,
        start=(start[0], start[1]),
        finish=(finish[0], finish[1]),
        breadth=contact.breadth[1] - contact.breadth[0],
        end=contact.along.ends[0],
    )
