"""Openings of a cabinet that is not closed yet: its ends, and the cut-outs in its panels."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import isqrt

from nesting.cabinets.bays import find_bays
from nesting.cabinets.construction import Construction
from nesting.cabinets.ends import CLOSED_BY, find_closings
from nesting.cabinets.hole_places import PlacedHole, find_faces
from nesting.cabinets.holes import Mounted
from nesting.cabinets.space import Axis, Point
from nesting.lengths import Length, mm

CLEARANCE = mm(20)
"""A narrower gap is clearance, no opening. Judgement."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Opening:
    """A way into the cabinet.

    Attributes:
        name: What it is, such as "the open rear" or "the hole for the woofer".
        sides: Its two sides, both the diameter for a round hole.
        is_end: Whether it is a whole end of the cabinet.
        low: Its low corner in the cabinet; for a hole its centre.
        high: Its high corner.
        is_round: Whether it is a round hole.
        is_bay: Whether it leads into one bay of the inside only.
    """

    name: str
    sides: tuple[Length, Length]
    is_end: bool
    low: Point
    high: Point
    is_round: bool = False
    is_bay: bool = False


def find_openings(
    construction: Construction,
    holes: tuple[PlacedHole, ...],
    *,
    panels: frozenset[str],
    frames: frozenset[str],
    fitted: frozenset[str],
) -> Iterator[Opening]:
    """Yield the ways in that are left at one moment.

    Args:
        construction: The cabinet.
        holes: Its holes.
        panels: Names of the panels that stand.
        frames: The frames that stand, "front frame" or "rear frame".
        fitted: Names of the holes that are filled.
    """
    inside = construction.spaces[0].box
    for end in CLOSED_BY:
        closings = find_closings(construction, end)
        depth = inside.low[1] if end == "front" else inside.high[1]
        if closings and all(panel.name in panels for panel in closings):
            covered = sum(panel.box.size(Axis.HEIGHT) for panel in closings)
            gap = inside.size(Axis.HEIGHT) - covered
            if gap > CLEARANCE:
                yield Opening(
                    name=f"the gap at the {end}",
                    sides=(inside.size(Axis.WIDTH), gap),
                    is_end=False,
                    low=(inside.low[0], depth, inside.low[2]),
                    high=(inside.high[0], depth, inside.high[2]),
                )
            continue
        yield from _find_end(construction, end, depth, panels, frames)
    for placed in holes:
        if placed.panel.name in panels and placed.hole.name not in fitted:
            across, along = placed.hole.opening
            yield Opening(
                name=f"the hole for the {placed.hole.name}",
                sides=(across, along),
                is_end=False,
                low=find_centre(placed),
                high=find_centre(placed),
                is_round=placed.hole.window is None,
            )


def _find_end(
    construction: Construction,
    end: str,
    depth: Length,
    panels: frozenset[str],
    frames: frozenset[str],
) -> Iterator[Opening]:
    """Yield an open end, or its bays where shelves or dividers stand behind it."""
    inside = construction.spaces[0].box
    bars = [bar for bar in construction.bars if bar.name.startswith(f"{end} frame")]
    less = 2 * bars[0].section[0] if bars and f"{end} frame" in frames else 0
    bays = find_bays(inside, [panel for panel in construction.inner if panel.name in panels])
    for number, bay in enumerate(bays, start=1):
        part = f", bay {number}" if len(bays) > 1 else ""
        yield Opening(
            name=f"the open {end}{part}",
            sides=(bay.size(Axis.WIDTH) - less, bay.size(Axis.HEIGHT) - less),
            is_end=True,
            low=(bay.low[0], depth, bay.low[2]),
            high=(bay.high[0], depth, bay.high[2]),
            is_bay=len(bays) > 1,
        )


def is_open_to(opening: Opening, place: Point) -> bool:
    """Return whether an opening leads to a place: that of a bay only to what lies in the bay."""
    return not opening.is_bay or all(
        opening.low[axis.index] <= place[axis.index] <= opening.high[axis.index]
        for axis in (Axis.WIDTH, Axis.HEIGHT)
    )


def find_centre(placed: PlacedHole) -> Point:
    """Return the middle of a hole on the inner face of its panel."""
    inner = find_faces(placed.panel)[1 if placed.is_low else 0]
    at = dict(zip(placed.axes, placed.centre, strict=True)) | {placed.panel.normal: inner}
    return at[Axis.WIDTH], at[Axis.DEPTH], at[Axis.HEIGHT]


def find_distance(opening: Opening, place: Point) -> Length:
    """Return how far a place is from the nearest point of an opening, rounded up."""
    away = [
        max(low - at, at - high, 0)
        for low, at, high in zip(opening.low, place, opening.high, strict=True)
    ]
    return isqrt(sum(each * each for each in away)) + 1


def is_put_in_from_inside(placed: PlacedHole) -> bool:
    """Return whether a fitting goes in from the inside, before the cabinet is closed."""
    return placed.hole.mounted is Mounted.INSIDE
