"""Rings of boards: an outline of boards that meet at any angle, seen from the side.

The only place beside `wedge` where angles are reckoned with, in floats; every corner is rounded to
the nearest nanometre. A bevel of thickness t at angle a leaves one face t x tan(a) shorter.
"""

from dataclasses import dataclass
from math import atan2, cos, degrees, pi, sin

from nesting.cabinets.profiles import Corner
from nesting.cabinets.ring_lines import (
    NEARLY,
    SQUARE_RAD,
    RingBoard,
    Side,
    along,
    as_sides,
    meet_sides,
    runs_through,
)
from nesting.lengths import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """One end of a fitted board.

    Attributes:
        outside: Where its outside face ends.
        inside: Where its inside face ends.
        bevel_deg: Tilt of the saw, 0 for a square end.
        shorter: How much shorter the inside face ends; negative where it reaches further.
        set_in: How far the outside face ends before the corner of the outline; negative where it
            reaches further, as it may where the board is set back.
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


def fit_ring(boards: tuple[RingBoard, ...]) -> tuple[tuple[FittedBoard, ...], tuple[Corner, ...]]:
    """Return the boards of a ring, fitted to each other, and the outline of the inside.

    At a blunt corner (more than 90°) two boards are mitred along the line from the outside corner
    to the inside one, so both keep their long point outside. At a square or sharp corner the board
    of the lower rank runs through and the other butts against its inside face: a mitre at a sharp
    corner would need more tilt than a saw has. A planted board runs through everywhere, one that is
    set back butts everywhere; what runs through ends in the outline of the other.

    Args:
        boards: The boards, anticlockwise. A corner of the outline is convex.
    """
    sides = as_sides(boards)
    insides = [
        meet_sides(sides[number - 1], side, sides[number - 1].board.depth, side.board.depth)
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


def _is_mitred(side: Side, other: Side, turn: float) -> bool:
    """Return whether two boards are mitred: at a blunt corner, both flush with the outline."""
    boards = (side.board, other.board)
    is_flush = not any(board.is_planted or board.set_back for board in boards)
    return is_flush and turn < SQUARE_RAD - NEARLY and other.board.thickness > 0


def _end(side: Side, other: Side, inside: Corner, *, is_low: bool) -> End:
    first, second = (other, side) if is_low else (side, other)
    turn = (second.along - first.along) % (2 * pi)
    is_mitred, is_owner = _is_mitred(side, other, turn), runs_through(side, other)

    def meet_at(own: Length, others: Length) -> Corner:
        return meet_sides(first, second, *((others, own) if is_low else (own, others)))

    board, corner = side.board, second.start
    outside_place, inside_place = corner, inside
    if not is_mitred and is_owner:
        outside_place, inside_place = meet_at(board.set_back, 0), meet_at(board.depth, 0)
    elif not is_mitred:
        outside_place = meet_at(board.set_back, other.board.depth)
    sign = 1 if is_low else -1
    shorter = along(side, inside_place, outside_place) * sign
    return End(
        outside=outside_place,
        inside=inside_place,
        bevel_deg=_bevel(side, shorter),
        shorter=shorter,
        set_in=along(side, outside_place, corner) * sign,
        neighbour=other.board.name,
        runs_through=is_owner,
        is_mitred=is_mitred,
    )


def _bevel(side: Side, shorter: Length) -> float:
    if not side.board.thickness:
        return 0.0
    return abs(degrees(atan2(shorter, side.board.thickness)))
