"""Joints that are screwed: where they run, and what a screw goes through and into."""

from collections.abc import Iterator
from itertools import combinations

from nesting.cabinets.bodies import box_interval, cross_axes
from nesting.cabinets.construction import Construction
from nesting.cabinets.contacts import Contact, find_contacts
from nesting.cabinets.ends import find_closings, find_end, is_inset
from nesting.cabinets.fittings import CarcassScrews
from nesting.cabinets.hole_places import is_sloped
from nesting.cabinets.leaning_joints import FixingJoint, find_behind_slope, find_on_side
from nesting.cabinets.panels import Bar, Panel
from nesting.cabinets.space import Box
from nesting.lengths import mm

COVERED_GAP = mm(12)
"""A closing still rests on its frame where coverings keep them this far apart."""
LOOSE = "grille"
"""Battens whose names begin so are no part of the carcass."""


def list_solids(construction: Construction) -> Iterator[tuple[str, Box]]:
    """Yield every panel and batten with its name."""
    for panel in construction.panels:
        yield panel.name, panel.box
    for bar in construction.bars:
        yield bar.name, bar.box


def find_joints(construction: Construction, carcass: CarcassScrews) -> Iterator[FixingJoint]:
    """Yield the joints of a cabinet that are screwed.

    Args:
        construction: The cabinet.
        carcass: Whether its butt joints, and planted panels, are screwed too.
    """
    closings = find_closings(construction)
    fixed = tuple(panel for panel in construction.shell if panel not in closings)
    bars = tuple(bar for bar in construction.bars if not bar.name.startswith(LOOSE))
    if carcass is not CarcassScrews.NONE:
        yield from _find_butts(fixed)
        yield from _find_planted(construction, closings, fixed)
    for bar in bars:
        yield from find_on_side(bar, fixed) if bar.profile else _find_batten(bar, fixed)
    for brace in construction.inner:
        for panel in fixed:
            for contact in find_contacts(_boxes(brace, panel)):
                yield _joint(contact, (panel, brace), kind="braces")
    for closing in closings:
        yield from _find_rests(construction, closing, bars, fixed)


def _find_butts(fixed: tuple[Panel, ...]) -> Iterator[FixingJoint]:
    """Yield the butt joints of a carcass: through the face of one panel into another's edge."""
    for first, second in combinations(fixed, 2):
        for contact in find_contacts(_boxes(first, second)):
            for pair in ((first, second), (second, first)):
                if pair[0].normal is contact.axis:
                    yield _joint(contact, pair, kind="carcass")


def _find_planted(
    construction: Construction, closings: tuple[Panel, ...], fixed: tuple[Panel, ...]
) -> Iterator[FixingJoint]:
    for closing in closings:
        if is_inset(construction, closing) or is_sloped(closing):
            continue
        for panel in fixed:
            for contact in find_contacts(_boxes(closing, panel)):
                yield _joint(contact, (closing, panel), kind="carcass")


def _find_batten(bar: Bar, fixed: tuple[Panel, ...]) -> Iterator[FixingJoint]:
    """Yield the widest joint of a batten with a panel of the carcass."""
    touching = [
        (contact, panel) for panel in fixed for contact in find_contacts(_boxes(bar, panel))
    ]
    if touching:
        widest, panel = max(touching, key=lambda each: each[0].area)
        yield _joint(widest, (bar, panel), kind="battens")


def _find_rests(
    construction: Construction,
    closing: Panel,
    bars: tuple[Bar, ...],
    fixed: tuple[Panel, ...],
) -> Iterator[FixingJoint]:
    """Yield what a baffle or back rests on: the battens of a frame, or the ends of its rebates."""
    if is_sloped(closing):
        yield from find_behind_slope(closing, bars)
        return
    for bar in bars:
        for contact in find_contacts(_boxes(closing, bar), gap=COVERED_GAP):
            if contact.axis is closing.normal:
                yield _joint(contact, (closing, bar), kind="closings")
    is_front = find_end(construction, closing) == "front"
    for panel in fixed:
        rests = [
            common
            for cut in panel.cuts
            if cut.what.startswith("rebate for the") and (common := cut.box.overlap(closing.box))
        ]
        if rests:
            longest = max(rests, key=lambda common: common.size(panel.length.axis))
            contact = _rest(closing, panel, longest, is_front=is_front)
            yield _joint(contact, (closing, panel), kind="closings")


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


def _boxes(first: Panel | Bar, second: Panel | Bar) -> tuple[tuple[str, Box], tuple[str, Box]]:
    return (first.name, first.box), (second.name, second.box)


def _joint(contact: Contact, pair: tuple[Panel | Bar, Panel | Bar], *, kind: str) -> FixingJoint:
    """Return a joint; the screws go through the first of a pair into the second."""
    through, into = pair
    is_first = through.name == contact.first
    middle = sum(contact.breadth) // 2
    start, finish = (
        tuple(at if axis is contact.along else middle for axis in cross_axes(contact.axis))
        for at in contact.run
    )
    return FixingJoint(
        through=through.name,
        into=into.name,
        kind=kind,
        axis=contact.axis,
        is_low=is_first,
        start=(start[0], start[1]),
        finish=(finish[0], finish[1]),
        breadth=contact.breadth[1] - contact.breadth[0],
        end=contact.along.ends[0],
        head=box_interval(through.box, contact.axis)[0 if is_first else 1],
        thickness=through.box.size(contact.axis),
        beyond=into.box.size(contact.axis),
    )
