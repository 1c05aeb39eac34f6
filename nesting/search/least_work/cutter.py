"""The cuts that free the rows of a plan with the least work.

They are the cuts that `kernels.list_cuts` counts: before a piece of a row is freed, the rest of the
row is cut down to that piece's height; then piece after piece comes off, and what is left at the
end stays in one piece.
"""

from dataclasses import dataclass

from nesting.layout import Cut, Direction, Node
from nesting.lengths import Length
from nesting.search.least_work.kernels import AT_END, EACH_ITSELF, LENGTH_FIRST, OTHERWISE
from nesting.search.problem import SIDE_BY_SIDE
from nesting.search.realise import Cutter, Piece, split_x, split_y
from nesting.search.rows import Row, make_key


@dataclass(frozen=True, slots=True, kw_only=True)
class _Step:
    """One cut of a row.

    Attributes:
        direction: Rip or crosscut.
        at: Size of the first piece.
        over: What lies beyond it.
        freed: The piece of the row that it frees, None where the row is cut down.
        rest: What is cut off the row, None where it is nothing or a piece is freed.
    """

    direction: Direction
    at: Length
    over: Length
    freed: Node | None = None
    rest: Piece | None = None


class LeastWorkCutter(Cutter):
    """Frees rows piece by piece, and cuts no piece longer than the guide where it need not."""

    def fit(self, row: Row, piece: Piece, kind: int) -> Node:
        """Return the tree that cuts a row out of a piece at least as large."""
        if not row.pieces:
            return self._fit_part(row, piece, kind)
        is_side = row.join == SIDE_BY_SIDE
        along, across = Direction.CROSSCUT, Direction.RIP
        split_along, split_across = split_x, split_y
        if not is_side:
            along, across = across, along
            split_along, split_across = split_across, split_along
        guide = self.job.saw.guide_length
        steps: list[_Step] = []
        last: Node | None = None
        left: Piece | None = piece
        total = self._measure(row)[0 if is_side else 1]
        over = (piece.length if is_side else piece.width) - total
        if row.manner & LENGTH_FIRST and over > 0:
            left, rest = split_along(piece, total, self._kerf)
            steps.append(_Step(direction=along, at=total, over=over, rest=rest))
        children = list_pieces(row)
        for number, child in enumerate(children):
            assert left is not None, "a row's pieces are shorter than the row"
            run = self._measure(child)[0 if is_side else 1]
            height = max(self._measure(one)[1 if is_side else 0] for one in children[number:])
            room, high = (left.length, left.width) if is_side else (left.width, left.length)
            if high > height and not (comes_by_itself(row, child) or high <= guide < room):
                left, rest = split_across(left, height, self._kerf)
                steps.append(_Step(direction=across, at=height, over=high - height, rest=rest))
            if room == run:
                last, left = self.fit(child, left, kind), None
                continue
            inner, beyond = split_along(left, run, self._kerf)
            freed = self.fit(child, inner, kind)
            steps.append(_Step(direction=along, at=run, over=room - run, freed=freed))
            left = beyond
        return self._chain(steps, last, left)

    def _fit_part(self, row: Row, piece: Piece, kind: int) -> Node:
        """Return the tree that cuts one part out of a piece."""
        length, width = self._measure(row)
        over_x, over_y = piece.length - length, piece.width - width
        is_crosscut = over_x * piece.width >= over_y * piece.length
        if row.manner & LENGTH_FIRST:
            is_crosscut = not is_crosscut
        if piece.width <= self.job.saw.guide_length < piece.length:
            is_crosscut = True
        steps: list[_Step] = []
        for is_along_x in (is_crosscut, not is_crosscut):
            if is_along_x and over_x > 0:
                piece, rest = split_x(piece, length, self._kerf)
                steps.append(_Step(direction=Direction.CROSSCUT, at=length, over=over_x, rest=rest))
            elif not is_along_x and over_y > 0:
                piece, rest = split_y(piece, width, self._kerf)
                steps.append(_Step(direction=Direction.RIP, at=width, over=over_y, rest=rest))
        return self._chain(steps, self.hand_out(row.join, piece, kind), None)

    def _measure(self, row: Row) -> tuple[Length, Length]:
        """Return the real extent of a row along x and y."""
        grid = self.problem.grid
        return row.length * grid - self._kerf, row.width * grid - self._kerf

    def _chain(self, steps: list[_Step], last: Node | None, left: Piece | None) -> Node:
        """Return the cuts one inside the other, ending in the last piece or in what is left."""
        node = last if left is None else self.make_rest(left)
        for step in reversed(steps):
            first, second = step.freed, node
            if first is None:
                first, second = node, None if step.rest is None else self.make_rest(step.rest)
            node = Cut(
                direction=step.direction,
                at=step.at,
                removed=min(step.over, self._kerf),
                first=first,
                second=second,
            )
        assert node is not None, "a row has pieces"
        return node


def list_pieces(row: Row) -> list[Row]:
    """Return the pieces of a row, those of rows of its own direction too, the highest first."""
    is_side = row.join == SIDE_BY_SIDE
    pieces: list[Row] = []
    waiting = [row]
    while waiting:
        one = waiting.pop()
        if one.join == row.join:
            waiting += one.pieces
        else:
            pieces.append(one)
    return sorted(
        pieces,
        key=lambda piece: (
            piece.manner & AT_END,
            not comes_by_itself(row, piece),
            make_key(piece, is_side=is_side),
        ),
    )


def comes_by_itself(row: Row, piece: Row) -> bool:
    """Return whether a piece comes off before the row is cut down to its height."""
    return (row.manner & EACH_ITSELF != 0) is not (piece.manner & OTHERWISE != 0)
