"""Bands in which no fixing may stand: hole paths, rounded edges, other fixings."""

from collections.abc import Iterator
from itertools import product

from nesting.cabinets.bodies import Solid, box_interval, cross_axes, rod
from nesting.cabinets.construction import Construction
from nesting.cabinets.hole_bodies import find_bodies, reach
from nesting.cabinets.hole_places import PlacedHole
from nesting.cabinets.space import Axis, Box, box_along
from nesting.lengths import Length

ROUNDED_EDGE = "rounded edge"


def find_keep_outs(
    construction: Construction, holes: tuple[PlacedHole, ...], round_over: Length
) -> tuple[tuple[str, Solid], ...]:
    """Return the bands with what they are, before any margin.

    The path of the cutter round a hole takes its whole outline through the panel; a rounded edge
    takes the square of its radius along the edge.
    """
    bands = [
        (f"path of the hole for the {placed.hole.name}", find_path(placed))
        for placed in holes
        if not placed.is_sloped
    ]
    bands += [(body.name, body.solid) for hole in holes for body in find_bodies(hole, construction)]
    if round_over:
        bands += [(ROUNDED_EDGE, box) for box in _round_edges(construction.box, round_over)]
    return tuple(bands)


def find_path(placed: PlacedHole) -> Solid:
    """Return what the cutter takes round a hole: its whole outline, through the panel."""
    across, along = placed.hole.outline
    depth = placed.inward(0, reach(placed)[0])
    if not placed.hole.window:
        return rod(placed.panel.normal, placed.centre, max(across, along), depth)
    intervals = {placed.panel.normal: depth}
    for axis, at, size in zip(placed.axes, placed.centre, (across, along), strict=True):
        intervals[axis] = (at - (size + 1) // 2, at + (size + 1) // 2)
    return box_along(intervals)


def _round_edges(outside: Box, radius: Length) -> Iterator[Box]:
    for axis in Axis:
        for ends in product((False, True), repeat=2):
            intervals = {axis: box_interval(outside, axis)}
            for other, is_high in zip(cross_axes(axis), ends, strict=True):
                low, high = box_interval(outside, other)
                intervals[other] = (high - radius, high) if is_high else (low, low + radius)
            yield box_along(intervals)
