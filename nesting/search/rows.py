"""Trees of rows: what a person cuts off one after the other, in an order worth cutting in.

The search joins two pieces at a time. Here joints of the same direction become one row, its pieces
are put in order, the ones that need all of the row's height first, and those that need less become
a row of their own behind them. So the waste above them is one piece and is freed by one cut.
"""

from dataclasses import dataclass
from typing import TypeAlias

from nesting.search.problem import SIDE_BY_SIDE, Codes, Problem

Key: TypeAlias = tuple[object, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """Pieces cut off one after the other in one direction, or a single part.

    Attributes:
        join: SIDE_BY_SIDE or STACKED; a part's code where there are no pieces.
        length: Least extent along x, grid steps with kerf.
        width: Least extent along y, grid steps with kerf.
        pieces: None for a part, else two or more.
    """

    join: int
    length: int
    width: int
    pieces: tuple["Row", ...] = ()


def read_rows(problem: Problem, codes: Codes) -> Row:
    """Return the rows that a postfix tree means, in order."""
    stack: list[tuple[int, list[Row]]] = []  # a join, and its pieces so far
    for code in codes:
        if code >= 0:
            kind = problem.kinds[code // 2]
            sides = (kind.long, kind.short) if code % 2 == 0 else (kind.short, kind.long)
            stack.append((code, [Row(join=code, length=sides[0], width=sides[1])]))
            continue
        second, first = stack.pop(), stack.pop()
        pieces = first[1] if first[0] == code else [_close(*first)]
        pieces += second[1] if second[0] == code else [_close(*second)]
        stack.append((code, pieces))
    return _close(*stack[0])


def _close(join: int, pieces: list[Row]) -> Row:
    """Return a row whose pieces are all there."""
    return pieces[0] if join >= 0 else _order(join, pieces)


def _order(join: int, pieces: list[Row]) -> Row:
    """Return a row with its pieces in order, those that need less height in a row behind."""
    is_side = join == SIDE_BY_SIDE
    row: list[Row] = []
    for piece in sorted(pieces, key=lambda piece: _make_key(piece, is_side=is_side), reverse=True):
        height = piece.width if is_side else piece.length
        # The lowest piece comes first; everything higher so far goes before the rest as a whole.
        if row and (row[0].width if is_side else row[0].length) < height and len(row) > 1:
            row = [_join(join, row)]
        row.insert(0, piece)
    return _join(join, row)


def _join(join: int, pieces: list[Row]) -> Row:
    lengths, widths = [piece.length for piece in pieces], [piece.width for piece in pieces]
    if join == SIDE_BY_SIDE:
        return Row(join=join, length=sum(lengths), width=max(widths), pieces=tuple(pieces))
    return Row(join=join, length=max(lengths), width=sum(widths), pieces=tuple(pieces))


def _make_key(row: Row, *, is_side: bool) -> Key:
    """Return a sort key: the higher piece first, then the longer, equal pieces together."""
    height, run = (row.width, row.length) if is_side else (row.length, row.width)
    return (-height, -run, describe(row))


def describe(row: Row) -> tuple[int, ...]:
    """Return a row as flat numbers, equal for equal rows only."""
    waiting, text = [row], []
    while waiting:
        row = waiting.pop()
        text += [row.join, len(row.pieces)]
        waiting.extend(reversed(row.pieces))
    return tuple(text)
