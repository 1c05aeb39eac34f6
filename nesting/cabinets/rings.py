"""Rings of boards: an outline of boards that meet at any angle, seen from the side.

The only place beside `wedge` where angles are reckoned with, in floats; every corner is rounded to
the nearest nanometre. A bevel of thickness t at angle a leaves one face t x tan(a) shorter.
"""

from dataclasses import dataclass
from math import atan2, cos, degrees, hypot, pi, sin, tan

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
    """

    name: str
    start: Corner
    thickness: Length
    rank: int


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """One end of a fitted board.

    Attributes:
        outside: Where its outside face ends.
        inside: Where its inside face ends.
        bevel_deg: Tilt of the saw, 0 for a square end.
        shorter: How much shorter the inside face ends; negative where it reaches further.
        set_in: How far the outside face ends before the corner of the outline.
        neighbour: Name of the board that it meets.
        runs_through: Whether it owns the corner.
        is_mitred: Whether the two meet along the line from the outside corner to the inside one.
    """

    outside: Corner
    inside: Corner
    bevel_deg: float
    shorter: Length
    set_in: Length
    neighbour: str
    runs_through: bool
    is_mitred: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedBoard:
    """A board of the ring, fitted.

    Attributes:
        name: Its name.
        low: The end where it begins, going round anticlockwise.
        high: The other end.
        edge: Length of its edge of the outline, from corner to corner.
        direction: Unit vector along it.
    """

    name: str
    low: End
    high: End
    edge: Length
    direction: tuple[float, float]

    @property
    def corners(self) -> tuple[Corner, ...]:
        """Its outline, anticlockwise."""
        return (self.low.outside, self.high.outside, self.high.inside, self.low.inside)

    @property
    def outside(self) -> Length:
        """Size of its outside face along the outline."""
        return self.edge - self.low.set_in - self.high.set_in


@dataclass(frozen=True, slots=True, kw_only=True)
class _Side:
    """A board as a line: start, direction, length of the edge."""

    board: RingBoard
    start: Corner
    along: float
    edge: float


def fit_ring(boards: tuple[RingBoard, ...]) -> tuple[tuple[FittedBoard, ...], tuple[Corner, ...]]:
    """Return the boards of a ring, fitted to each other, and the outline of the inside.

    At a blunt corner (more than 90°) two boards are mitred along the line from the outside corner
    to the inside one, so both keep their long point outside. At a square or sharp corner the board
    of the lower rank runs through and the other butts against its inside face: a mitre at a sharp
    corner would need more tilt than a saw has.

    Args:
        boards: The boards, anticlockwise. A corner of the outline is convex.
    """
    sides = _as_sides(boards)
    insides = [
        _meet(sides[number - 1], side, sides[number - 1].board.thickness, side.board.thickness)
        for number, side in enumerate(sides)
    ]
    fitted = []
    for number, side in enumerate(sides):
        before, after = sides[number - 1], sides[(number + 1) % len(sides)]
        fitted.append(
            FittedBoard(
                name=side.board.name,
                low=_end(side, before, insides[number], is_low=True),
                high=_end(side, after, insides[(number + 1) % len(sides)], is_low=False),
                edge=round(side.edge),
                direction=(cos(side.along), sin(side.along)),
            )
        )
    return tuple(fitted), tuple(insides)


def shorten(board: FittedBoard, clear: Length) -> tuple[Corner, ...]:
    """Return the outline of a board, less a clearance at both ends."""
    x, y = (round(clear * part) for part in board.direction)
    low_out, high_out, high_in, low_in = board.corners
    return (
        (low_out[0] + x, low_out[1] + y),
        (high_out[0] - x, high_out[1] - y),
        (high_in[0] - x, high_in[1] - y),
        (low_in[0] + x, low_in[1] + y),
    )


def _as_sides(boards: tuple[RingBoard, ...]) -> list[_Side]:
    sides = []
    for number, board in enumerate(boards):
        end = boards[(number + 1) % len(boards)].start
        across, up = end[0] - board.start[0], end[1] - board.start[1]
        sides.append(
            _Side(board=board, start=board.start, along=atan2(up, across), edge=hypot(across, up))
        )
    return sides


def _meet(first: _Side, second: _Side, first_in: Length, second_in: Length) -> Corner:
    """Return where two sides, each moved inwards, cross; first ends where second begins."""
    turn = second.along - first.along
    on = (first_in - second_in * cos(turn)) / sin(turn)
    x = second.start[0] + on * cos(second.along) - second_in * sin(second.along)
    y = second.start[1] + on * sin(second.along) + second_in * cos(second.along)
    return (round(x), round(y))


def _end(side: _Side, other: _Side, inside: Corner, *, is_low: bool) -> End:
    first, second = (other, side) if is_low else (side, other)
    turn = (second.along - first.along) % (2 * pi)
    is_blunt = turn < SQUARE_RAD - NEARLY and other.board.thickness > 0
    runs_through = other.board.thickness == 0 or side.board.rank < other.board.rank
    corner = second.start
    outside_place, inside_place = corner, inside
    if not is_blunt and runs_through:
        ins = (0, side.board.thickness) if is_low else (side.board.thickness, 0)
        inside_place = _meet(first, second, *ins)
    elif not is_blunt:
        ins = (other.board.thickness, 0) if is_low else (0, other.board.thickness)
        outside_place = _meet(first, second, *ins)
    shorter = _along(side, inside_place, outside_place) * (1 if is_low else -1)
    return End(
        outside=outside_place,
        inside=inside_place,
        bevel_deg=_bevel(side, shorter),
        shorter=shorter,
        set_in=abs(_along(side, outside_place, corner)),
        neighbour=other.board.name,
        runs_through=runs_through,
        is_mitred=is_blunt,
    )


def _along(side: _Side, place: Corner, start: Corner) -> Length:
    """Return how far a place lies beyond another one along a side."""
    return round((place[0] - start[0]) * cos(side.along) + (place[1] - start[1]) * sin(side.along))


def _bevel(side: _Side, shorter: Length) -> float:
    if not side.board.thickness:
        return 0.0
    return abs(degrees(atan2(shorter, side.board.thickness)))


def bevel_difference(thickness: Length, angle_deg: float) -> Length:
    """Return how much shorter one face of a bevelled board is: thickness x tan(angle).

    Args:
        thickness: The measured thickness.
        angle_deg: Tilt of the saw, from 0 for a square edge to less than 90.
    """
    return round(thickness * tan(angle_deg * pi / 180))
