"""Contacts: where panels and battens lie against each other, read off the solids."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import combinations

from nesting.cabinets.bodies import box_interval, cross_axes
from nesting.cabinets.space import Axis, Box, Interval
from nesting.lengths import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class Contact:
    """A place where two solids lie against each other.

    Attributes:
        first: Name of the one on the low side.
        second: Name of the other.
        axis: The direction across the contact.
        at: Where the first ends along that direction.
        along: The direction of its longer side.
        run: Where it begins and ends along the longer side.
        breadth: Where it begins and ends along the shorter side.
    """

    first: str
    second: str
    axis: Axis
    at: Length
    along: Axis
    run: Interval
    breadth: Interval

    @property
    def length(self) -> Length:
        """Length of the joint."""
        return self.run[1] - self.run[0]

    @property
    def area(self) -> int:
        """Area in square nanometres."""
        return self.length * (self.breadth[1] - self.breadth[0])


def find_contacts(solids: Iterable[tuple[str, Box]], *, gap: Length = 0) -> Iterator[Contact]:
    """Yield every place where two solids touch, or lie apart by no more than a gap."""
    for (name, box), (other_name, other) in combinations(solids, 2):
        for axis in Axis:
            for low_name, low, high_name, high in (
                (name, box, other_name, other),
                (other_name, other, name, box),
            ):
                apart = high.low[axis.index] - low.high[axis.index]
                if not 0 <= apart <= gap:
                    continue
                contact = _contact((low_name, low), (high_name, high), axis)
                if contact:
                    yield contact


def _contact(low: tuple[str, Box], high: tuple[str, Box], axis: Axis) -> Contact | None:
    sides: list[tuple[Axis, Interval]] = []
    for other in cross_axes(axis):
        first, second = box_interval(low[1], other), box_interval(high[1], other)
        start, end = max(first[0], second[0]), min(first[1], second[1])
        if start >= end:
            return None
        sides.append((other, (start, end)))
    sides.sort(key=lambda side: side[1][0] - side[1][1])
    return Contact(
        first=low[0],
        second=high[0],
        axis=axis,
        at=low[1].high[axis.index],
        along=sides[0][0],
        run=sides[0][1],
        breadth=sides[1][1],
    )
