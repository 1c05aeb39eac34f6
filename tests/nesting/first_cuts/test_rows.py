import pytest

from nesting.first_cuts.rows import RowSide, list_rows, list_sums
from nesting.lengths import Unit, inch, mm
from nesting.yard import Yard

YARD = Yard(kerf=mm(4), rough=mm(3), min_piece=mm(300))
KERF = mm("2.4")


def side(*sizes: int, yard: Yard = YARD, most: int = 5000) -> RowSide:
    return RowSide(
        extent=mm(2440),
        low=mm(10),
        high=mm(10),
        sums=list_sums([mm(size) for size in sizes], KERF, mm(2420)),
        yard=yard,
        kerf=KERF,
        is_good=lambda length: length <= mm(most),
    )


def test_sums_are_rows_of_parts_with_kerfs_between() -> None:
    assert list_sums([mm(700), mm(1000)], KERF, mm(1800)) == (
        mm(700),
        mm(1000),
        mm("1402.4"),
        mm("1702.4"),
    )


def test_a_piece_is_cut_where_a_row_of_parts_just_fits_it() -> None:
    # 10 trim + 700 + kerf + 700 + 3 to trim again + 3 that the piece may be short, rounded up
    assert (mm(1419),) in list_rows(side(700), 1)


@pytest.mark.parametrize("cuts", [1, 2, 3])
def test_every_piece_is_large_enough_for_the_yard_and_goes_in_even_if_too_large(cuts: int) -> None:
    rows = list(list_rows(side(440, 300, most=1500), cuts))
    assert rows
    for row in rows:
        last = mm(2440) - sum(row) - cuts * YARD.kerf
        assert min(*row, last) >= YARD.min_piece
        assert max(row) + YARD.rough <= mm(1500)
        assert last + cuts * YARD.rough <= mm(1500)


@pytest.mark.parametrize("unit", list(Unit))
def test_sizes_are_whole_steps_of_the_yard(unit: Unit) -> None:
    yard = Yard(kerf=mm(4), rough=mm(3), min_piece=mm(300), unit=unit)
    step = {Unit.MM: mm(1), Unit.INCH: inch("1/8")}[unit]
    rows = list(list_rows(side(700, 440, yard=yard), 2))
    assert rows
    assert all(size % step == 0 for row in rows for size in row)


def test_no_row_where_the_pieces_cannot_be_small_enough() -> None:
    assert list(list_rows(side(700, most=1000), 1)) == []
