"""Where a hole stands: its panel, its centre from two named edges, its bolts.

Left and right are those of the cabinet as seen from the front, on every panel: a back seen from
behind has its left edge at the right hand.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise, product
from math import cos, hypot, pi, radians, sin

from nesting.cabinets.bodies import box_interval, cross_axes
from nesting.cabinets.construction import Construction
from nesting.cabinets.holes import Hole
from nesting.cabinets.panels import Panel
from nesting.cabinets.space import Axis, Interval
from nesting.errors import Fault, InputError
from nesting.lengths import Length, Unit, format_length

FULL_TURN = 360


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedHole:
    """A hole on its panel.

    Attributes:
        hole: The hole.
        panel: The panel that it is cut in.
        edges: The two edges that its centre is measured from.
        distances: From those edges to the centre.
        centre: The centre in the cabinet, on the two directions across the panel's thickness.
        is_low: Whether the outside of the panel is its low face (left, front or bottom).
    """

    hole: Hole
    panel: Panel
    edges: tuple[str, str]
    distances: tuple[Length, Length]
    centre: tuple[Length, Length]
    is_low: bool

    @property
    def axes(self) -> tuple[Axis, Axis]:
        """The two directions of the panel."""
        return cross_axes(self.panel.normal)

    @property
    def is_sloped(self) -> bool:
        """Whether the panel leans: its thickness then runs along no direction of the cabinet."""
        return is_sloped(self.panel)

    def inward(self, start: Length, end: Length) -> Interval:
        """Return where something lies in the cabinet that is counted inwards from the outside."""
        low, high = find_faces(self.panel)
        return (low + start, low + end) if self.is_low else (high - end, high - start)


def place_holes(
    name: str, holes: tuple[Hole, ...], construction: Construction, edge: Length, unit: Unit
) -> tuple[PlacedHole, ...]:
    """Return the holes on their panels.

    Args:
        name: Name of the cabinet, for messages.
        holes: Its holes.
        construction: The cabinet in space.
        edge: What is kept between the outline of a fitting and the edge of its panel.
        unit: The unit of messages.

    Raises:
        InputError: A panel or an edge is not there, or a hole does not stay inside its panel.
    """
    panels = {panel.name: panel for panel in construction.panels}
    faults: list[Fault] = []
    placed = []
    for hole in holes:
        found = list(_find_faults(hole, panels))
        if not found:
            place = _place(hole, panels[hole.panel], construction)
            found = list(_find_edge_faults(place, edge, unit))
            placed.append(place)
        faults += [
            Fault(
                where=f"cabinet {name!r}, hole",
                what=f"hole {hole.name!r}: {fault.what}",
                remedy=fault.remedy,
            )
            for fault in found
        ]
    if faults:
        raise InputError(faults)
    return tuple(placed)


def _find_faults(hole: Hole, panels: dict[str, Panel]) -> Iterator[Fault]:
    panel = panels.get(hole.panel)
    if panel is None:
        yield Fault(
            where="",
            what=f"there is no panel {hole.panel!r}",
            remedy=f"The panels are: {', '.join(panels)}.",
        )
        return
    for axis in cross_axes(panel.normal):
        named = [edge for edge, _ in hole.places if edge in axis.ends]
        if len(named) > 1:
            yield Fault(
                where="",
                what=f"its centre is measured from both {named[0]} and {named[1]}",
                remedy="Measure from one of the two.",
            )
    known = [end for axis in cross_axes(panel.normal) for end in axis.ends]
    for edge, _ in hole.places:
        if edge not in known:
            yield Fault(
                where="",
                what=f"the {hole.panel} has no {edge} edge",
                remedy=f"Its edges are {', '.join(known)}.",
            )


def _place(hole: Hole, panel: Panel, construction: Construction) -> PlacedHole:
    edges, distances, centre = [], [], []
    for axis in cross_axes(panel.normal):
        low, high = find_extent(panel, axis)
        given = [place for place in hole.places if place[0] in axis.ends]
        edge, distance = given[0] if given else (axis.ends[0], (high - low) // 2)
        edges.append(edge)
        distances.append(distance)
        centre.append(low + distance if edge == axis.ends[0] else high - distance)
    return PlacedHole(
        hole=hole,
        panel=panel,
        edges=(edges[0], edges[1]),
        distances=(distances[0], distances[1]),
        centre=(centre[0], centre[1]),
        is_low=sum(find_faces(panel)) < construction.whole(panel.normal),
    )


def is_sloped(panel: Panel) -> bool:
    """Return whether a panel leans: its thickness then runs along no direction of the cabinet."""
    low, high = panel.through
    return panel.box.size(panel.normal) > high - low


def find_faces(panel: Panel) -> Interval:
    """Return where a panel's two faces are along its thickness."""
    return panel.through if is_sloped(panel) else box_interval(panel.box, panel.normal)


def find_extent(panel: Panel, axis: Axis) -> Interval:
    """Return where a panel begins and ends along one of its own directions.

    On a panel that leans the length is that of the panel, not of its shadow.
    """
    span = panel.length if panel.length.axis is axis else panel.width
    if span.axis is axis and span.size > panel.box.size(axis):
        return (span.interval[0], span.interval[0] + span.size)
    return box_interval(panel.box, axis)


def _find_edge_faults(placed: PlacedHole, edge: Length, unit: Unit) -> Iterator[Fault]:
    hole = placed.hole
    for axis, at, extent in zip(placed.axes, placed.centre, hole.outline, strict=True):
        low, high = find_extent(placed.panel, axis)
        for end, room in zip(axis.ends, (at - low, high - at), strict=True):
            rest = room - (extent + 1) // 2
            runs_out = hole.window is not None and rest == 0
            if rest < edge and not runs_out:
                size = f"{format_length(abs(rest), unit)} {unit.value}"
                kept = f"{format_length(edge, unit)} {unit.value}"
                named = f"the {end} edge of the {placed.panel.name}"
                yield Fault(
                    where="",
                    what=f"its outline comes within {size} of {named}, and {kept} are kept"
                    if rest >= 0
                    else f"its outline runs {size} over {named}",
                    remedy="Move it, or keep less: [cabinet.clearances], key edge.",
                )
    if not _is_clear_of_slopes(placed, edge):
        yield Fault(
            where="",
            what=f"its outline comes within {format_length(edge, unit)} {unit.value} of a "
            f"slanting edge of the {placed.panel.name}",
            remedy="Move it, or keep less: [cabinet.clearances], key edge.",
        )


def _is_clear_of_slopes(placed: PlacedHole, edge: Length) -> bool:
    """Return whether a fitting keeps clear of the outline of a panel that is no rectangle."""
    profile = placed.panel.profile
    if profile is None or profile.axis is not placed.panel.normal:
        return True
    across, along = (side / 2 for side in placed.hole.outline)
    x, y = placed.centre
    around, points = max(across, along), [(float(x), float(y))]
    if placed.hole.window:
        around = 0
        points = [(x + i * across, y + j * along) for i, j in product((-1, 1), repeat=2)]
    return all(
        ((bx - ax) * (v - ay) - (by - ay) * (u - ax)) / hypot(bx - ax, by - ay) >= around + edge
        for (ax, ay), (bx, by) in pairwise((*profile.corners, profile.corners[0]))
        for u, v in points
        if bx != ax and by != ay
    )


def note_holes(panels: tuple[Panel, ...], holes: tuple[Hole, ...]) -> tuple[Panel, ...]:
    """Return the panels, each with the holes that are still to be cut in it."""
    return tuple(
        replace(
            panel,
            to_do=(
                *panel.to_do,
                *(
                    f"cut the hole for the {hole.name}"
                    for hole in holes
                    if hole.panel == panel.name
                ),
            ),
        )
        for panel in panels
    )


def place_bolts(placed: PlacedHole) -> tuple[tuple[Length, Length], ...]:
    """Return the bolts of a hole, each by its distances from the two named edges."""
    found = []
    for offset in find_offsets(placed.hole):
        across, along = (
            distance + (step if edge == axis.ends[0] else -step)
            for distance, step, edge, axis in zip(
                placed.distances, offset, placed.edges, placed.axes, strict=True
            )
        )
        found.append((across, along))
    return tuple(found)


def find_offsets(hole: Hole) -> tuple[tuple[Length, Length], ...]:
    """Return the bolts of a hole by their distances from its centre, along its panel.

    The first lies at the start angle from the top (or the rear of a level panel) towards the
    right (or the rear of a side), the others follow evenly. To the nearest nanometre.

    References:
        Machinery's Handbook, 31st ed., pp. 709-710: coordinates for evenly spaced holes.
    """
    radius = hole.bolt_circle / 2
    angles = [
        radians(float(hole.start_deg) + FULL_TURN * number / hole.bolts)
        for number in range(hole.bolts if hole.bolt_circle else 0)
    ]
    return tuple((round(radius * sin(angle)), round(radius * cos(angle))) for angle in angles)


def find_chord(hole: Hole) -> Length:
    """Return the distance from one bolt to the next, for checking with a rule; 0 for fewer than 2.

    To the nearest nanometre.
    """
    few = 2
    if hole.bolts < few or not hole.bolt_circle:
        return 0
    return round(hole.bolt_circle * sin(pi / hole.bolts))
