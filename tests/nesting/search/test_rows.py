from decimal import Decimal

from nesting.search.problem import SIDE_BY_SIDE, STACKED, PartKind, Problem, SheetKind
from nesting.search.rows import read_rows

SIZES = ((6, 4), (5, 4), (4, 2), (3, 3))  # long and short sides of kinds 0 to 3


def make_problem() -> Problem:
    kinds = tuple(
        PartKind(long=long, short=short, ways=(3,), copies=9, members=()) for long, short in SIZES
    )
    sheet = SheetKind(sheet=0, length=99, width=99, price=1, weight=1, count=9, grain=0)
    return Problem(grid=1, price_step=Decimal(1), kinds=kinds, sheets=(sheet,))


def test_joints_of_one_direction_become_one_row() -> None:
    row = read_rows(make_problem(), (0, 0, SIDE_BY_SIDE, 0, 0, SIDE_BY_SIDE, SIDE_BY_SIDE))
    assert (row.length, row.width) == (24, 4)
    assert [piece.join for piece in row.pieces] == [0, 0, 0, 0]


def test_equal_pieces_come_together_and_the_larger_first() -> None:
    codes = (2, 0, SIDE_BY_SIDE, 2, SIDE_BY_SIDE, 0, SIDE_BY_SIDE)
    row = read_rows(make_problem(), codes)
    assert [piece.join for piece in row.pieces] == [0, 0, 2, 2]


def test_lower_pieces_share_one_piece_of_waste_above_them() -> None:
    codes = (4, 0, SIDE_BY_SIDE, 6, SIDE_BY_SIDE, 4, SIDE_BY_SIDE)
    row = read_rows(make_problem(), codes)
    high, low = row.pieces
    assert high.join == 0
    assert (low.join, low.width) == (SIDE_BY_SIDE, 3)
    first, rest = low.pieces
    assert first.join == 6
    assert [piece.join for piece in rest.pieces] == [4, 4]


def test_the_sizes_of_a_tree_stay_whatever_its_order() -> None:
    codes = (0, 2, STACKED, 5, SIDE_BY_SIDE, 6, 6, STACKED, SIDE_BY_SIDE)
    row = read_rows(make_problem(), codes)
    assert (row.length, row.width) == (6 + 2 + 3, 8)
