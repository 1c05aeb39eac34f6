"""Space: axes, boxes and edges of a cabinet, in whole nanometres.

The width runs from left to right as seen from the front, the depth from the front to the rear, the
height upwards. The outside of the bare box begins at 0 on all three.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import Enum
from typing import TypeAlias

from nesting.lengths import Length

Point: TypeAlias = tuple[Length, Length, Length]
Interval: TypeAlias = tuple[Length, Length]


class Axis(Enum):
    """A direction of the cabinet."""

    WIDTH = "width"
    DEPTH = "depth"
    HEIGHT = "height"

    @property
    def index(self) -> int:
        """Place of this direction in a point."""
        return _ORDER.index(self)

    @property
    def ends(self) -> tuple[str, str]:
        """What the low and the high end are called."""
        return _ENDS[self]


_ORDER = (Axis.WIDTH, Axis.DEPTH, Axis.HEIGHT)
_ENDS = {
    Axis.WIDTH: ("left", "right"),
    Axis.DEPTH: ("front", "rear"),
    Axis.HEIGHT: ("bottom", "top"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A box along the axes, from its low corner to its high one; low < high on every axis."""

    low: Point
    high: Point

    def __post_init__(self) -> None:
        """Refuse a box without an inside: the callers check what the user gave."""
        assert all(low < high for low, high in zip(self.low, self.high, strict=True)), self

    @property
    def volume(self) -> int:
        """Volume in cubic nanometres."""
        width, depth, height = (b - a for a, b in zip(self.low, self.high, strict=True))
        return width * depth * height

    def size(self, axis: Axis) -> Length:
        """Return the extent along an axis."""
        return self.high[axis.index] - self.low[axis.index]

    def contains(self, other: "Box") -> bool:
        """Return whether another box lies wholly inside, touching allowed."""
        return all(
            own_low <= low and high <= own_high
            for own_low, low, high, own_high in zip(
                self.low, other.low, other.high, self.high, strict=True
            )
        )

    def overlap(self, other: "Box") -> "Box | None":
        """Return the space that two boxes share, None where they only touch or lie apart."""
        low = _point(max(a, b) for a, b in zip(self.low, other.low, strict=True))
        high = _point(min(a, b) for a, b in zip(self.high, other.high, strict=True))
        if any(a >= b for a, b in zip(low, high, strict=True)):
            return None
        return Box(low=low, high=high)

    def with_side(self, axis: Axis, interval: Interval) -> "Box":
        """Return the box with another extent along one axis."""
        low, high = list(self.low), list(self.high)
        low[axis.index], high[axis.index] = interval
        return Box(low=_point(low), high=_point(high))

    def without(self, others: "Iterable[Box]") -> "tuple[Box, ...]":
        """Return what is left of it when other boxes are taken out: boxes apart from each other."""
        left: tuple[Box, ...] = (self,)
        for other in others:
            left = tuple(piece for box in left for piece in _take_out(box, other))
        return left


def _take_out(box: Box, other: Box) -> Iterator[Box]:
    """Yield what one box leaves of another: slabs before and behind it, axis by axis."""
    common = box.overlap(other)
    if common is None:
        yield box
        return
    for axis in _ORDER:
        low, high = box.low[axis.index], box.high[axis.index]
        start, end = common.low[axis.index], common.high[axis.index]
        if low < start:
            yield box.with_side(axis, (low, start))
        if end < high:
            yield box.with_side(axis, (end, high))
        box = box.with_side(axis, (start, end))


def box_along(intervals: Mapping[Axis, Interval]) -> Box:
    """Return the box over one interval for each axis."""
    return Box(
        low=_point(intervals[axis][0] for axis in _ORDER),
        high=_point(intervals[axis][1] for axis in _ORDER),
    )


def _point(values: Iterable[Length]) -> Point:
    width, depth, height = values
    return (width, depth, height)
