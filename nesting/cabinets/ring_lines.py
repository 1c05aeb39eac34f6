"""The lines of a ring of boards: where they run, and where two of them meet.

Angles are reckoned with in floats; every corner is rounded to the nearest nanometre.
"""

from dataclasses import dataclass
from math import atan2, cos, hypot, pi, sin

from nesting.cabinets.profiles import Corner
from nesting.lengths import Length

SQUARE_RAD = pi / 2
NEARLY = 1e-9
"""Angles that differ by less than this many radians are the same."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RingBoard:
    """A board of the ring, before it is fitted to its neighbours.

    Attributes:
        name: Such as "baffle".
        start: Corner of the outline where it begins, going round anticlockwise.
        thickness: Its thickness, inwards; 0 where nothing stands.
        rank: At a square or sharp corner the board of the lower rank runs through.
        set_back: How far its outside face stands behind the outline.
        is_planted: Whether it lies on the edges of all that it meets.
    """

    name: str
    start: Corner
    thickness: Length
    rank: int
    set_back: Length = 0
    is_planted: bool = False

    @property
    def depth(self) -> Length:
        """From the outline to its inside face."""
        return self.set_back + self.thickness

    @property
    def order(self) -> tuple[bool, bool, int]:
        """Who runs through: what is planted before all others, what is set back after them."""
        return (not self.is_planted, bool(self.set_back), self.rank)


@dataclass(frozen=True, slots=True, kw_only=True)
class Side:
    """A board as a line: start, direction in radians, length of the edge."""

    board: RingBoard
    start: Corner
    along: float
    edge: float


def as_sides(boards: tuple[RingBoard, ...]) -> list[Side]:
    """Return the boards as lines, each from its start to that of the next."""
    sides = []
    for number, board in enumerate(boards):
        end = boards[(number + 1) % len(boards)].start
        across, up = end[0] - board.start[0], end[1] - board.start[1]
        sides.append(
            Side(board=board, start=board.start, along=atan2(up, across), edge=hypot(across, up))
        )
    return sides


def meet_sides(first: Side, second: Side, first_in: Length, second_in: Length) -> Corner:
    """Return where two sides, each moved inwards, cross; first ends where second begins."""
    turn = second.along - first.along
    on = (first_in - second_in * cos(turn)) / sin(turn)
    x = second.start[0] + on * cos(second.along) - second_in * sin(second.along)
    y = second.start[1] + on * sin(second.along) + second_in * cos(second.along)
    return (round(x), round(y))


def runs_through(side: Side, other: Side) -> bool:
    """Return whether a board runs through where it meets another one, as far as not mitred."""
    return other.board.thickness == 0 or side.board.order < other.board.order


def along(side: Side, place: Corner, start: Corner) -> Length:
    """Return how far a place lies beyond another one along a side."""
    return round((place[0] - start[0]) * cos(side.along) + (place[1] - start[1]) * sin(side.along))


def place(side: Side, along: float, deep: Length) -> Corner:
    """Return the place so far along a side, and so far inwards."""
    x = side.start[0] + along * cos(side.along) - deep * sin(side.along)
    y = side.start[1] + along * sin(side.along) + deep * cos(side.along)
    return (round(x), round(y))
