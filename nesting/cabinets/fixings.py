"""The fixing map: every screw by its distance from one end of its joint.

Screws hold battens to the carcass, braces between the panels that they meet, and a baffle or back
to its frame or to the end of its rebate. The joints of the carcass are glued; the builder may have
screws in its butt joints too, until the glue is dry or for good. A screw stands in the middle of
the breadth of its joint, never in a band (see `keep_outs`), and never reaches the far face.
Common practice, no source.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from math import hypot

from nesting.cabinets.bodies import Rod, Solid, meet, rod
from nesting.cabinets.construction import Construction
from nesting.cabinets.fittings import CarcassScrews, Screws
from nesting.cabinets.fixing_joints import find_joints
from nesting.cabinets.hole_places import PlacedHole
from nesting.cabinets.keep_outs import ROUNDED_EDGE, find_keep_outs, find_path
from nesting.cabinets.leaning_joints import FixingJoint
from nesting.errors import Fault, InputError
from nesting.lengths import Length, Unit, format_length, mm

USUAL_LENGTHS = tuple(mm(size) for size in (16, 20, 25, 30, 35, 40, 45, 50, 60, 70))
FAR_FACE = mm(3)
"""A screw is shorter than what it goes through and into by more than this."""
SLIDE = mm(5)
DEEP = 3
"""A screw into an edge is no longer than this many thicknesses of what it goes through."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FixingRow:
    """The screws of one joint.

    Attributes:
        joint: What is screwed to what.
        kind: "battens", "closings", "braces" or "carcass".
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
    kind: str
    through: str
    into: str
    positions: tuple[Length, ...]
    end: str
    middle: Length
    length: Length
    stack: Length
    rods: tuple[Rod, ...]


@dataclass(slots=True, kw_only=True)
class _Map:
    """The map while it is drawn: bands and the screws that stand already.

    On panels that lean both are told as if the panel stood upright, apart from all others.
    """

    screws: Screws
    bands: list[tuple[str, Solid]]
    on_slopes: list[tuple[str, Solid]]
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
        bands=list(find_keep_outs(construction, holes, screws.round_over)),
        on_slopes=[(hole.panel.name, find_path(hole)) for hole in holes if hole.is_sloped],
    )
    rows, faults = [], []
    for joint in find_joints(construction, screws.carcass):
        length, stack = _choose_length(chart, joint)
        if length >= stack - FAR_FACE:
            faults.append(_refuse(name, joint, length, stack, unit))
            continue
        row = _fill(chart, joint, length, stack)
        if row:
            rows.append(row)
    if faults:
        raise InputError(faults)
    chart.warnings += _note_carcass(construction, screws)
    return tuple(rows), tuple(chart.warnings)


def _note_carcass(construction: Construction, screws: Screws) -> Iterator[str]:
    if screws.round_over and screws.carcass is not CarcassScrews.STAY:
        yield (
            "Screws that hold the carcass while glue dries come out before its edges are rounded "
            "over."
        )
    if construction.corner_joint and screws.carcass is not CarcassScrews.NONE:
        yield (
            f"The corners of the carcass are {construction.corner_joint} joints: they get no "
            "screws. Glue and clamp them."
        )


def _choose_length(chart: _Map, joint: FixingJoint) -> tuple[Length, Length]:
    """Return the length of the screws, 0 where none is short enough, and their stack."""
    stack = joint.thickness + joint.beyond
    given = {
        "battens": chart.screws.battens,
        "closings": chart.screws.closings,
        "carcass": chart.screws.carcass_length,
    }
    chosen = given.get(joint.kind, 0)
    if chosen:
        return chosen, stack
    fitting = [
        length
        for length in USUAL_LENGTHS
        if length < stack - FAR_FACE and length <= max(DEEP * joint.thickness, USUAL_LENGTHS[0])
    ]
    return (fitting[-1] if fitting else 0), stack


def _refuse(name: str, joint: FixingJoint, length: Length, stack: Length, unit: Unit) -> Fault:
    return Fault(
        where=f"cabinet {name!r}, screws",
        what=f"{format_length(length, unit)} {unit.value} through the {joint.through} into the "
        f"{joint.into} comes too near the far face: together they are "
        f"{format_length(stack, unit)} {unit.value}",
        remedy=f"Take screws shorter than {format_length(stack - FAR_FACE, unit)} {unit.value}.",
    )


def _fill(chart: _Map, joint: FixingJoint, length: Length, stack: Length) -> FixingRow | None:
    """Return the screws of one joint, each moved aside where it would stand in a band."""
    screws, named = chart.screws, joint.name
    if joint.breadth < 2 * screws.diameter or not length:
        small = "thin" if not length else "narrow"
        chart.warnings.append(f"The joint {named} is too {small} for screws: glue it.")
        return None
    positions, rods, left_out = [], [], 0
    for wanted in _spread(_length(joint), screws):
        placed = _find_free(chart, joint, wanted, length)
        if placed is None:
            left_out += 1
            continue
        positions.append(placed[0])
        rods.append(placed[1])
        if joint.is_flat:
            chart.on_slopes.append((joint.through, placed[1]))
        else:
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
        kind=joint.kind,
        through=joint.through,
        into=joint.into,
        positions=tuple(positions),
        end=joint.end,
        middle=joint.breadth // 2,
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
    chart: _Map, joint: FixingJoint, wanted: Length, length: Length
) -> tuple[Length, Rod] | None:
    """Return the free place nearest to the wanted one, at most half a spacing away."""
    screws, run = chart.screws, _length(joint)
    bands = _list_bands(chart, joint)
    least = min(screws.first, run // 2)
    steps = screws.spacing // 2 // SLIDE
    for step in sorted(range(-steps, steps + 1), key=lambda step: (abs(step), step)):
        at = wanted + step * SLIDE
        if not least <= at <= run - least:
            continue
        body = _screw(chart, joint, at, length)
        if not any(meet(body, band, screws.margin) for band in bands):
            return at, body
    return None


def _list_bands(chart: _Map, joint: FixingJoint) -> list[Solid]:
    """Return what the screws of a joint keep clear of."""
    if joint.is_flat:
        return [band for panel, band in chart.on_slopes if panel == joint.through]
    comes_out = joint.kind == "carcass" and chart.screws.carcass is CarcassScrews.UNTIL_DRY
    return [band for name, band in chart.bands if not (comes_out and name == ROUNDED_EDGE)]


def _length(joint: FixingJoint) -> Length:
    across, along = (b - a for a, b in zip(joint.start, joint.finish, strict=True))
    return round(hypot(across, along)) if across and along else abs(across + along)


def _screw(chart: _Map, joint: FixingJoint, at: Length, length: Length) -> Rod:
    """Return a screw as a body, its head on the free face of what it goes through."""
    whole = _length(joint)
    first, second = (
        a + (b - a) * at // whole for a, b in zip(joint.start, joint.finish, strict=True)
    )
    head = joint.head
    depth = (head, head + length) if joint.is_low else (head - length, head)
    return rod(joint.axis, (first, second), chart.screws.diameter, depth)
