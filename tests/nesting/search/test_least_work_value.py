"""What the second search weighs against what, and what it reads off leftovers."""

from decimal import Decimal

from nesting.layout import Layout, PartLeaf
from nesting.lengths import mm
from nesting.search.least_work.leftovers import count_slivers, rate_leftovers
from nesting.search.least_work.value import Value, pick_best
from tests.nesting.hand_made import strips
from tests.nesting.search.jobs import make_job, make_part, make_sheet


def value(minutes: str, *, narrow: int = 0, insured: int = 0) -> Value:
    return Value(
        too_long=0,
        narrow=narrow,
        burden=Decimal(minutes),
        leftovers=(-insured,),
        minutes=Decimal(minutes),
    )


def test_better_leftovers_win_within_a_hundredth_of_the_minutes_only() -> None:
    assert pick_best([value("100"), value("101", insured=5)]) == 1
    assert pick_best([value("100"), value("101.1", insured=5)]) == 0


def test_fewer_minutes_win_where_leftovers_are_equal() -> None:
    assert pick_best([value("100.5"), value("100")]) == 1


def test_no_leftover_is_worth_a_cut_across_a_piece_that_cannot_be_held() -> None:
    assert pick_best([value("100", narrow=1, insured=5), value("140")]) == 1


def test_a_strip_that_cannot_be_held_is_a_sliver_and_insures_nothing() -> None:
    part = make_part("shelf", 560, 300, 4)
    row = [PartLeaf(part=0, copy=0), PartLeaf(part=0, copy=1)]
    other = [PartLeaf(part=0, copy=2), PartLeaf(part=0, copy=3)]
    rows = [(mm(300), row), (mm(300), other)]
    sheet = make_sheet(length=1130, width=660)
    job = make_job([part], [sheet])
    layout = strips(job, rows)
    # 1130 - 2 x 562.4 = 5.2 mm beside each row, 660 - 2 x 302.4 = 55.2 mm above them
    assert count_slivers(job, layout) == 3
    assert rate_leftovers(job, Layout(sheets=(layout,))) == (0, 0, 0)


def test_the_largest_part_that_fits_a_leftover_is_insured() -> None:
    part = make_part("shelf", 560, 300, 1)
    job = make_job([part], [make_sheet(length=1130, width=320)])
    layout = strips(job, [(mm(300), [PartLeaf(part=0, copy=0)])])
    assert rate_leftovers(job, Layout(sheets=(layout,)))[0] == mm(560) * mm(300)
