"""What the fittings of a hole fill inside the cabinet, as bodies, and the room they take."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import pi

from nesting.cabinets.bodies import Rod, Solid, rod
from nesting.cabinets.construction import Construction
from nesting.cabinets.hole_places import PlacedHole, find_faces, find_offsets
from nesting.cabinets.holes import Fastener, HoleKind, Mounted
from nesting.cabinets.leaning_bodies import lean
from nesting.cabinets.space import Axis, Box, Interval, box_along
from nesting.lengths import Length, mm

NM3_PER_LITRE = 10**24
MOUTH = mm(1)
"""Even a flat fitting needs the hole itself free: this much behind the panel."""
T_NUT = mm(2)
"""How far a T-nut stands out on its face, pulled in. Judgement, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reaching:
    """A body that reaches into the cabinet.

    Attributes:
        name: What it is, such as "magnet of the woofer".
        hole: Name of its hole.
        panel: Name of the panel that it sits in.
        solid: Its place.
        is_prong: Whether it is a T-nut, which keeps a clearance of its own.
        is_lined: Whether it is a port with boards of its own, which may lie against panels.
    """

    name: str
    hole: str
    panel: str
    solid: Solid
    is_prong: bool = False
    is_lined: bool = False


def find_bodies(placed: PlacedHole, construction: Construction) -> Iterator[Reaching]:
    """Yield what a fitting fills behind its panel, T-nuts included.

    On a panel that leans it is worked out as if the panel stood upright, then laid along the slope.
    """

    def stand(solid: Box | Rod) -> Solid:
        return lean(solid, placed) if placed.is_sloped else solid

    for what, solid in _find_solids(placed, construction):
        yield Reaching(
            name=f"{what} of the {placed.hole.name}",
            hole=placed.hole.name,
            panel=placed.panel.name,
            solid=stand(solid),
            is_lined=bool(placed.hole.window and placed.hole.wall),
        )
    if placed.hole.fastener is Fastener.T_NUTS:
        for number, solid in enumerate(_find_t_nuts(placed), start=1):
            yield Reaching(
                name=f"T-nut {number} of the {placed.hole.name}",
                hole=placed.hole.name,
                panel=placed.panel.name,
                solid=stand(solid),
                is_prong=True,
            )


def reach(placed: PlacedHole) -> Interval:
    """Return how far a fitting reaches in, counted from the outer face: inner face to its end."""
    hole = placed.hole
    low, high = find_faces(placed.panel)
    real = high - low
    face = hole.recess if hole.mounted is Mounted.OUTSIDE else real - hole.recess
    return real, max(face + hole.depth, real + MOUTH)


def _find_solids(placed: PlacedHole, construction: Construction) -> Iterator[tuple[str, Box | Rod]]:
    hole = placed.hole
    start, end = reach(placed)
    if hole.window:
        yield "body", _window_box(placed, construction, (start, end))
        return
    if hole.kind is not HoleKind.DRIVER or not hole.magnet:
        yield "body", _rod(placed, hole.cut_out, (start, end))
        return
    change = min(max(end - hole.depth + (hole.basket or hole.depth // 2), start), end)
    if start < change:
        yield "basket", _rod(placed, hole.cut_out, (start, change))
    if change < end:
        yield "magnet", _rod(placed, hole.magnet, (change, end))


def _rod(placed: PlacedHole, diameter: Length, depth: Interval) -> Rod:
    return rod(placed.panel.normal, placed.centre, diameter, placed.inward(*depth))


def _window_box(placed: PlacedHole, construction: Construction, depth: Interval) -> Box:
    """Return the box behind a window, with the boards that line it where no panel does."""
    hole = placed.hole
    assert hole.window is not None
    intervals: dict[Axis, Interval] = {placed.panel.normal: placed.inward(*depth)}
    for axis, at, size in zip(placed.axes, placed.centre, hole.window, strict=True):
        low, high = at - size // 2, at - size // 2 + size
        walls = find_walls(placed, construction)
        intervals[axis] = (
            low - (hole.wall if axis.ends[0] in walls else 0),
            high + (hole.wall if axis.ends[1] in walls else 0),
        )
    return box_along(intervals)


def find_walls(placed: PlacedHole, construction: Construction) -> tuple[str, ...]:
    """Return the sides on which a rectangular port needs a board of its own.

    Where its window runs out to the inside of the cabinet, a panel is there already.
    """
    hole = placed.hole
    if not hole.window or not hole.wall:
        return ()
    inside = construction.spaces[0].box
    found = []
    for axis, at, size in zip(placed.axes, placed.centre, hole.window, strict=True):
        low, high = at - size // 2, at - size // 2 + size
        if low > inside.low[axis.index]:
            found.append(axis.ends[0])
        if high < inside.high[axis.index]:
            found.append(axis.ends[1])
    return tuple(found)


def find_boards(
    placed: PlacedHole, construction: Construction
) -> tuple[tuple[str, Length, Length], ...]:
    """Return the boards that line a port: the side that each stands on, its length and width.

    Boards below and above reach over the ends of those at the sides.
    """
    hole = placed.hole
    walls = find_walls(placed, construction)
    if hole.window is None or not walls:
        return ()
    start, end = reach(placed)
    first, second = placed.axes
    across = hole.window[0] + hole.wall * sum(end_name in walls for end_name in first.ends)
    return tuple(
        (wall, across if wall in second.ends else hole.window[1], end - start) for wall in walls
    )


def _find_t_nuts(placed: PlacedHole) -> Iterator[Rod]:
    """Yield the T-nuts on the face opposite to the flange, where that is the inside."""
    hole = placed.hole
    if hole.mounted is Mounted.INSIDE or not hole.bolt_circle:
        return
    low, high = find_faces(placed.panel)
    depth = placed.inward(high - low, high - low + T_NUT)
    across, along = placed.centre
    for step_across, step_along in find_offsets(hole):
        centre = (across + step_across, along + step_along)
        yield rod(placed.panel.normal, centre, hole.prongs, depth)


def find_displaced(placed: PlacedHole, construction: Construction) -> int:
    """Return the room that a fitting takes inside, in cubic nanometres.

    What the builder gives in litres counts. Otherwise a port takes its own boards along, and
    a driver with a known magnet a cone before it; handles and connectors fill their hole as deep
    as they are. The thickness of the panel itself is no room of the inside.
    """
    hole = placed.hole
    if hole.litres is not None:
        return int(hole.litres * NM3_PER_LITRE)
    if not hole.depth:
        return 0
    total = 0
    for what, solid in _find_solids(placed, construction):
        if what == "basket" and isinstance(solid, Rod):
            length = solid.interval[1] - solid.interval[0]
            wide, narrow = hole.cut_out, hole.magnet
            total += round(pi * length * (wide**2 + wide * narrow + narrow**2) / 12)
        else:
            total += solid.volume
    return total
