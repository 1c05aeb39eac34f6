"""Shapes that follow from a ring of boards: what planted ones lie on, recesses, layers behind."""

from itertools import pairwise
from math import atan2, cos, hypot, inf, sin

from nesting.cabinets.profiles import Corner
from nesting.cabinets.ring_lines import (
    NEARLY,
    RingBoard,
    Side,
    as_sides,
    meet_sides,
    place,
    runs_through,
)
from nesting.cabinets.rings import FittedBoard
from nesting.lengths import Length


def outline_without_planted(boards: tuple[RingBoard, ...]) -> tuple[Corner, ...]:
    """Return the outline of what planted boards lie on, from the start of the first board on."""
    sides = as_sides(boards)
    taken = [board.thickness if board.is_planted else 0 for board in boards]
    return tuple(
        meet_sides(sides[number - 1], side, taken[number - 1], taken[number])
        for number, side in enumerate(sides)
    )


def find_recess(boards: tuple[RingBoard, ...], name: str) -> tuple[Corner, ...]:
    """Return the outline of the space before a board that is set back."""
    sides = as_sides(boards)
    number = next(at for at, board in enumerate(boards) if board.name == name)
    side = sides[number]
    before, after = sides[number - 1], sides[(number + 1) % len(sides)]
    ends = [0 if runs_through(side, other) else other.board.depth for other in (before, after)]
    back = side.board.set_back
    return (
        meet_sides(before, side, ends[0], 0),
        meet_sides(side, after, 0, ends[1]),
        meet_sides(side, after, back, ends[1]),
        meet_sides(before, side, ends[0], back),
    )


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


def find_layer(
    board: RingBoard, end: Corner, inside: tuple[Corner, ...], layer: tuple[Length, Length]
) -> tuple[Corner, Corner, Corner, Corner] | None:
    """Return the longest rectangle in a layer behind a board that lies in the inside.

    Args:
        board: The board.
        end: Corner of the outline where it ends.
        inside: The outline of the inside, anticlockwise and convex.
        layer: Where the layer begins and ends, counted from the outline.

    Returns:
        Its corners: along the board at the near side of the layer, and back at the far side; None
        where the layer has no room.
    """
    direction = atan2(end[1] - board.start[1], end[0] - board.start[0])
    side = Side(board=board, start=board.start, along=direction, edge=0.0)
    runs = [_find_run(side, deep, inside) for deep in layer]
    start, finish = max(low for low, _ in runs), min(high for _, high in runs)
    if finish <= start:
        return None
    (near_low, near_high), (far_low, far_high) = (
        [place(side, along, deep) for along in (start, finish)] for deep in layer
    )
    return (near_low, near_high, far_high, far_low)


def _find_run(side: Side, deep: Length, inside: tuple[Corner, ...]) -> tuple[float, float]:
    """Return where a line so far behind a side runs inside a convex outline; (0, 0) for nowhere."""
    x, y = place(side, 0, deep)
    low, high = -inf, inf
    for (ax, ay), (bx, by) in pairwise((*inside, inside[0])):
        across, up = bx - ax, by - ay
        room = across * (y - ay) - up * (x - ax)
        closing = across * sin(side.along) - up * cos(side.along)
        if abs(closing) <= NEARLY * hypot(across, up):
            if room < -hypot(across, up):
                return (0.0, 0.0)
        elif closing > 0:
            low = max(low, -room / closing)
        else:
            high = min(high, -room / closing)
    return (low, high)
