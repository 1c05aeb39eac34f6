"""The car: whether a piece of a sheet goes in, and how."""

from dataclasses import dataclass
from enum import Enum

from nesting.lengths import Length, mm


@dataclass(frozen=True, slots=True, kw_only=True)
class Car:
    """A car with a tailgate, by what decides: the opening and the floor.

    Attributes:
        opening_width: Of the open tailgate, at its narrowest.
        opening_height: Of the open tailgate, at its lowest.
        floor_length: From the closed tailgate to what ends the floor.
        arch_width: Between the wheel arches.
        clearance: What must stay free on every side of a piece.
    """

    opening_width: Length
    opening_height: Length
    floor_length: Length
    arch_width: Length
    clearance: Length = mm(20)

    @property
    def room_length(self) -> Length:
        """Longest piece that the floor takes; it needs its clearance at both ends."""
        return self.floor_length - 2 * self.clearance

    @property
    def room_width(self) -> Length:
        """What is free across: through the opening and between the arches."""
        return min(self.opening_width, self.arch_width) - 2 * self.clearance

    @property
    def room_height(self) -> Length:
        """What is free upwards in the opening."""
        return self.opening_height - 2 * self.clearance


class Lie(Enum):
    """How a piece lies in the car. The values are what a page says."""

    FLAT = "flat on the floor"
    EDGE = "standing on its long edge"
    TILTED = "tilted, one long edge on the floor"


@dataclass(frozen=True, slots=True, kw_only=True)
class WayIn:
    """How a piece goes in.

    Attributes:
        lie: How it lies.
        along: The side that is pushed in and lies along the car.
        across: The side that passes through the opening.
    """

    lie: Lie
    along: Length
    across: Length


def find_way_in(car: Car, length: Length, width: Length, thickness: Length) -> WayIn | None:
    """Return how a piece goes into a car, None where it does not.

    It is pushed in straight, the longer side first where both ways work, and lies along the car.
    Its end face (one side by the thickness) must pass through the opening, turned as far as need
    be, and stay so between the arches. Lying aslant on the floor is not reckoned with, nor is
    reaching over the seats: the answer errs on the side of "no".

    Args:
        car: The car.
        length: One side of the piece.
        width: The other side.
        thickness: How thick it is.
    """
    long, short = max(length, width), min(length, width)
    for along, across in ((long, short), (short, long)):
        if along > car.room_length:
            continue
        if across <= car.room_width and thickness <= car.room_height:
            return WayIn(lie=Lie.FLAT, along=along, across=across)
        if across <= car.room_height and thickness <= car.room_width:
            return WayIn(lie=Lie.EDGE, along=along, across=across)
        if fits_turned((across, thickness), (car.room_width, car.room_height)):
            return WayIn(lie=Lie.TILTED, along=along, across=across)
    return None


def fits_turned(inner: tuple[Length, Length], outer: tuple[Length, Length]) -> bool:
    """Return whether a rectangle fits into another one, turned by whatever angle.

    Exact, in whole numbers: with p >= q the sides of the inner and a >= b those of the outer one,
    it fits where p <= a and q <= b, or where p > a, q <= b and
    ((a+b)/(p+q))^2 + ((a-b)/(p-q))^2 >= 2.

    References:
        J. E. Wetzel, "Rectangles in Rectangles", Mathematics Magazine 73 (2000), 204-211.

    >>> fits_turned((9, 1), (8, 6)), fits_turned((9, 4), (8, 6))
    (True, False)
    """
    p, q = max(inner), min(inner)
    a, b = max(outer), min(outer)
    if b <= 0 or q > b:
        return False
    if p <= a:
        return True
    total, difference = p + q, p - q
    if difference == 0:
        return False
    return ((a + b) * difference) ** 2 + ((a - b) * total) ** 2 >= 2 * (total * difference) ** 2
