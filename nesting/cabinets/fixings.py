"""The fixing map: every screw by its distance from one end of its joint.

Screws hold battens to the carcass, braces between the panels that they meet, and a baffle or back
to its frame. The joints of the carcass itself are glued. A screw stands in the middle of the
breadth of its joint, never in a band (see `keep_outs`), and never reaches the far face.
Common practice, no source.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field

from nesting.cabinets.bodies import Rod, Solid, box_interval, cross_axes, meet
from nesting.cabinets.construction import Construction
from nesting.cabinets.contacts import Contact, find_contacts
from nesting.cabinets.ends import find_closings
from nesting.cabinets.fittings import Screws
from nesting.cabinets.hole_places import PlacedHole
from nesting.cabinets.keep_outs import find_keep_outs, screw_rod
from nesting.cabinets.space import Box
from nesting.errors import Fault, InputError
from nesting.lengths import Length, Unit, format_length, mm

USUAL_LENGTHS = tuple(mm(size) for size in (16, 20, 25, 30, 35, 40, 45, 50, 60, 70))
FAR_FACE = mm(3)
"""A screw is shorter than what it goes through and into by more than this."""
COVERED_GAP = mm(12)
"""A closing still rests on its frame where coverings keep them this far apart."""
LOOSE = "grille"
"""Battens whose names begin so are no part of the carcass."""
SLIDE = mm(5)
DEEP = 3
"""A screw into an edge is no longer than this many thicknesses of what it goes through."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FixingRow:
    """The screws of one joint.

    Attributes:
        joint: What is screwed to what.
        through: What the screws go through first.
        into: What they hold in.
        positions: From the named end, to the middle of each screw.
        end: The end that all positions are measured from.
        middle: From the edge of the joint to the screws: they stand in the middle of its breadth.
        length: Length of a screw.
        stack: What it goes through and into, together.
        rods: The screws as bodies.
    """

    joint: str
    through: str
    into: str
    positions: tuple[Length, ...]
    end: str
    middle: Length
    length: Length
    stack: Length
    rods: tuple[Rod, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Joint:
    """A contact that gets screws.

    Attributes:
        contact: The contact.
        through: Name of what they go through, on one of its sides.
        kind: "battens", "closings" or "braces".
    """

    contact: Contact
    through: str
    kind: str

    @property
    def into(self) -> str:
        """Name of what they hold in."""
        is_first = self.through == self.contact.first
        return self.contact.second if is_first else self.contact.first


@dataclass(slots=True, kw_only=True)
class _Map:
    """The map while it is drawn: bands and the screws that stand already."""

    screws: Screws
    solids: dict[str, Box]
    bands: list[tuple[str, Solid]]
    warnings: list[str] = field(default_factory=list)


def map_fixings(
    name: str,
    construction: Construction,
    holes: tuple[PlacedHole, ...],
    screws: Screws,
    unit: Unit,
) -> tuple[tuple[FixingRow, ...], tuple[str, ...]]:
    """Return the screws of a cabinet, and what is to be looked at.

    Raises:
        InputError: A screw that the builder chose would come through.
    """
    chart = _Map(
        screws=screws,
        solids=dict(list_solids(construction)),
        bands=list(find_keep_outs(construction, holes, screws.round_over)),
    )
    rows, faults = [], []
    for joint in _find_joints(construction):
        length, stack = _choose_length(chart, joint)
        if length >= stack - FAR_FACE:
            faults.append(_refuse(name, joint, length, stack, unit))
            continue
        row = _fill(chart, joint, length, stack)
        if row:
            rows.append(row)
    if faults:
        raise InputError(faults)
    if screws.round_over:
        chart.warnings.append(
            "Screws that hold the carcass while glue dries come out before its edges are rounded "
            "over."
        )
    return tuple(rows), tuple(chart.warnings)


def list_solids(construction: Construction) -> Iterator[tuple[str, Box]]:
    """Yield every panel and batten with its name."""
    for panel in construction.panels:
        yield panel.name, panel.box
    for bar in construction.bars:
        yield bar.name, bar.box


def _find_joints(construction: Construction) -> Iterator[_Joint]:
    closings = find_closings(construction)
    names = {panel.name for panel in closings}
    fixed = [panel for panel in construction.shell if panel.name not in names]
    bars = [bar for bar in construction.bars if not bar.name.startswith(LOOSE)]
    for bar in bars:
        pairs = ((bar.name, bar.box), *((panel.name, panel.box) for panel in fixed))
        touching = [each for each in find_contacts(pairs) if bar.name in (each.first, each.second)]
        if touching:
            widest = max(touching, key=lambda contact: contact.area)
            yield _Joint(contact=widest, through=bar.name, kind="battens")
    for brace in construction.inner:
        for panel in fixed:
            pairs = ((brace.name, brace.box), (panel.name, panel.box))
            for contact in find_contacts(pairs):
                yield _Joint(contact=contact, through=panel.name, kind="braces")
    for closing in closings:
        for bar in bars:
            pairs = ((closing.name, closing.box), (bar.name, bar.box))
            for contact in find_contacts(pairs, gap=COVERED_GAP):
                if contact.axis is closing.normal:
                    yield _Joint(contact=contact, through=closing.name, kind="closings")


def _choose_length(chart: _Map, joint: _Joint) -> tuple[Length, Length]:
    """Return the length of the screws and the stack that they stand in."""
    axis = joint.contact.axis
    through = chart.solids[joint.through].size(axis)
    stack = through + chart.solids[joint.into].size(axis)
    given = {"battens": chart.screws.battens, "closings": chart.screws.closings}
    chosen = given.get(joint.kind, 0)
    if chosen:
        return chosen, stack
    fitting = [
        length
        for length in USUAL_LENGTHS
        if length < stack - FAR_FACE and length <= max(DEEP * through, USUAL_LENGTHS[0])
    ]
    return (fitting[-1] if fitting else USUAL_LENGTHS[0]), stack


def _refuse(name: str, joint: _Joint, length: Length, stack: Length, unit: Unit) -> Fault:
    return Fault(
        where=f"cabinet {name!r}, screws",
        what=f"{format_length(length, unit)} {unit.value} through the {joint.through} into the "
        f"{joint.into} comes too near the far face: together they are "
        f"{format_length(stack, unit)} {unit.value}",
        remedy=f"Take screws shorter than {format_length(stack - FAR_FACE, unit)} {unit.value}.",
    )


def _fill(chart: _Map, joint: _Joint, length: Length, stack: Length) -> FixingRow | None:
    """Return the screws of one joint, each moved aside where it would stand in a band."""
    contact, screws = joint.contact, chart.screws
    named = f"{joint.through} to {joint.into}"
    if contact.breadth[1] - contact.breadth[0] < 2 * screws.diameter:
        chart.warnings.append(f"The joint {named} is too narrow for screws: glue it.")
        return None
    positions, rods, left_out = [], [], 0
    for wanted in _spread(contact.length, screws):
        placed = _find_free(chart, joint, wanted, length)
        if placed is None:
            left_out += 1
            continue
        positions.append(placed[0])
        rods.append(placed[1])
        chart.bands.append((f"screw of {named}", placed[1]))
    if left_out:
        chart.warnings.append(
            f"The joint {named} has no room for {left_out} of its {left_out + len(positions)} "
            "screws clear of cutters and other screws: glue it there."
        )
    if not positions:
        return None
    return FixingRow(
        joint=named,
        through=joint.through,
        into=joint.into,
        positions=tuple(positions),
        end=contact.along.ends[0],
        middle=(contact.breadth[1] - contact.breadth[0]) // 2,
        length=length,
        stack=stack,
        rods=tuple(rods),
    )


def _spread(length: Length, screws: Screws) -> Iterator[Length]:
    """Yield places along a joint, counted from one end: the first, then one by one."""
    if length < 2 * screws.first:
        yield length // 2
        return
    at = screws.first
    while at <= length - screws.first:
        yield at
        at += screws.spacing
    if length - screws.first - (at - screws.spacing) > screws.spacing // 2:
        yield length - screws.first


def _find_free(
    chart: _Map, joint: _Joint, wanted: Length, length: Length
) -> tuple[Length, Rod] | None:
    """Return the free place nearest to the wanted one, at most half a spacing away."""
    screws, run = chart.screws, joint.contact.length
    least = min(screws.first, run // 2)
    steps = screws.spacing // 2 // SLIDE
    for step in sorted(range(-steps, steps + 1), key=lambda step: (abs(step), step)):
        at = wanted + step * SLIDE
        if not least <= at <= run - least:
            continue
        body = _screw(chart, joint, at, length)
        if not any(meet(body, band, screws.margin) for _, band in chart.bands):
            return at, body
    return None


def _screw(chart: _Map, joint: _Joint, at: Length, length: Length) -> Rod:
    """Return a screw as a body, its head on the free face of what it goes through."""
    contact = joint.contact
    across = next(axis for axis in cross_axes(contact.axis) if axis is not contact.along)
    place = {contact.along: contact.run[0] + at, across: sum(contact.breadth) // 2}
    low, high = box_interval(chart.solids[joint.through], contact.axis)
    is_low = joint.through == contact.first
    depth = (low, low + length) if is_low else (high - length, high)
    return screw_rod(contact.axis, place, depth, chart.screws.diameter)
