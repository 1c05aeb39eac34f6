"""Whether the finished cabinet gets through a door, round the corner of a stair, into a car."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import permutations
from math import cos, pi, sin

from nesting.cabinets.fittings import Way, WayKind
from nesting.cabinets.space import Point
from nesting.lengths import Length, Unit, format_length, mm

FINEST = mm("0.1")
TURNS = 2000
"""Angles tried round a corner; the room changes by less than a thousandth from one to the next."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WayResult:
    """Whether a cabinet gets through one opening.

    Attributes:
        name: Name of the opening.
        passes: Whether it gets through.
        spare: How much smaller the opening could be in every direction; negative where that much
            is missing. To 0.1 mm.
        text: The result in a sentence.
    """

    name: str
    passes: bool
    spare: Length
    text: str


def fits_flat(sides: tuple[Length, Length], opening: tuple[Length, Length]) -> bool:
    """Return whether a rectangle fits into another, turned as it may be.

    References:
        Carver (1957); Wetzel, Rectangles in Rectangles, Mathematics Magazine 73 (2000), 204-211.
    """
    small, large = sorted(sides)
    low, high = sorted(opening)
    if small > low or small <= 0 or low <= 0:
        return False
    if large <= high:
        return True
    if large == small:
        return False
    plus, minus = large + small, large - small
    return ((high + low) * minus) ** 2 + ((high - low) * plus) ** 2 >= 2 * (plus * minus) ** 2


def longest_round_corner(first: Length, second: Length, breadth: Length = 0) -> float:
    """Return the length of the longest rectangle that is carried round a right-angled corner.

    Args:
        first: Width of one passage.
        second: Width of the other.
        breadth: Width of the rectangle; 0 for a rod, whose length is (a^(2/3) + b^(2/3))^1.5.
    """
    if breadth > min(first, second):
        return 0.0
    angles = (pi / 2 * step / TURNS for step in range(1, TURNS))
    return max(
        min(
            (first * sin(angle) + second * cos(angle) - breadth) / (sin(angle) * cos(angle))
            for angle in angles
        ),
        0.0,
    )


def gets_through(size: Point, way: Way) -> bool:
    """Return whether a box gets through an opening, one way or another.

    Through a door it goes lengthwise, turned about its length as need be. In a car it also has to
    lie on the floor's length. Round a corner it is carried upright or lying, turned about a
    vertical line; where it need not be turned, it is pushed on sideways.
    """
    match way.kind:
        case WayKind.DOOR:
            small, middle, _ = sorted(size)
            return fits_flat((small, middle), (way.width, way.height))
        case WayKind.CAR:
            return any(
                length <= way.length and fits_flat((one, other), (way.width, way.height))
                for one, other, length in permutations(size)
            )
        case WayKind.CORNER:
            return any(
                (not way.height or upright <= way.height)
                and _rounds_corner(length, breadth, way.width, way.length)
                for length, breadth, upright in permutations(size)
            )


def _rounds_corner(length: Length, breadth: Length, first: Length, second: Length) -> bool:
    if length <= first and breadth <= second:
        return True
    return length <= longest_round_corner(first, second, breadth)


def check_ways(size: Point, ways: tuple[Way, ...], unit: Unit) -> Iterator[WayResult]:
    """Yield for each opening whether a finished cabinet passes, and with how much to spare."""
    for way in ways:
        spare = _find_spare(size, way)
        passes = spare >= 0
        amount = f"{format_length(abs(spare), unit)} {unit.value}"
        yield WayResult(
            name=way.name,
            passes=passes,
            spare=spare,
            text=f"{way.name}: passes, with {amount} to spare in every direction."
            if passes
            else f"{way.name}: does NOT pass. It is {amount} too small, whichever way the "
            "cabinet is turned.",
        )


def _find_spare(size: Point, way: Way) -> Length:
    """Return the most that the opening could shrink, a multiple of 0.1 mm, by halving."""
    low, high = -mm(20_000) // FINEST, max(way.width, way.height, way.length) // FINEST + 1
    while high - low > 1:
        middle = (low + high) // 2
        if gets_through(size, _shrink(way, middle * FINEST)):
            low = middle
        else:
            high = middle
    return low * FINEST


def _shrink(way: Way, by: Length) -> Way:
    return Way(
        name=way.name,
        kind=way.kind,
        width=way.width - by,
        height=max(way.height - by, 1) if way.height else 0,
        length=way.length - by if way.length else 0,
    )
