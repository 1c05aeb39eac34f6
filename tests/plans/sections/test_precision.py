"""Figures are printed finer where rounding would add up."""

import json
from dataclasses import replace

import pytest

from nesting.job import Job
from nesting.layout import Direction, Layout, PartLeaf, SheetLayout
from nesting.lengths import Length, Unit, inch, mm
from nesting.sheets import Trim
from plans.plan import Figures, make_plan
from plans.plan_file import dump, plan_document
from plans.rehearsal.rehearse import rehearse
from plans.sections.cut_table import make_rows
from plans.sections.precision import needs_fine_figures
from tests.nesting.hand_made import BIRCH, SAW, job, part, row
from tests.plans.sections.helpers import worked_out


def row_that_fills_its_sheet(
    length: Length, copies: int, kerf: Length, unit: Unit = Unit.MM
) -> tuple[Job, Layout]:
    """Return equal parts in one row of which the last is what the others leave."""
    stock = replace(BIRCH, length=copies * length + (copies - 1) * kerf, trim=Trim())
    lid = replace(part("Lid", 1, 1, copies), length=length, width=stock.width)
    made = replace(job(lid, sheets=[stock], saw=replace(SAW, kerf=kerf)), unit=unit)
    items = [(length, PartLeaf(part=0, copy=copy)) for copy in range(copies)]
    root = row(Direction.CROSSCUT, stock.length, items, kerf)
    return made, Layout(sheets=(SheetLayout(sheet=0, root=root),))


def is_fine(made: Job, layout: Layout) -> bool:
    return needs_fine_figures(made, worked_out(made, layout).sheets[0])


def keeps(made: Job, layout: Layout) -> set[str]:
    return {one.keep for one in make_rows(made, worked_out(made, layout).sheets[0])}


def test_tenths_of_a_millimetre_stay_tenths() -> None:
    made = row_that_fills_its_sheet(mm("358.7"), 5, mm("2.4"))
    assert not is_fine(*made)
    assert keeps(*made) == {"358.7"}


def test_one_rounded_figure_is_no_harm_and_several_are() -> None:
    # 14 1/8 in is 358.775 mm, printed 358.8: 0.025 mm a cut, all of it on the last part. Eight of
    # them fill 8 x 358.775 + 7 x 2.4 = 2887 mm, and the last comes out 7 x 0.025 mm short.
    assert not is_fine(*row_that_fills_its_sheet(inch("14 1/8"), 4, mm("2.4")))
    assert is_fine(*row_that_fills_its_sheet(inch("14 1/8"), 8, mm("2.4")))
    assert keeps(*row_that_fills_its_sheet(inch("14 1/8"), 8, mm("2.4"))) == {"358.775"}


def test_a_part_with_a_cut_of_its_own_takes_over_one_figure_only() -> None:
    made, layout = row_that_fills_its_sheet(inch("14 1/8"), 8, mm("2.4"))
    longer = replace(made.sheets[0], length=made.sheets[0].length + mm(100))
    items = [(inch("14 1/8"), PartLeaf(part=0, copy=copy)) for copy in range(8)]
    root = row(Direction.CROSSCUT, longer.length, items, mm("2.4"))
    with_room = Layout(sheets=(SheetLayout(sheet=0, root=root),))
    assert is_fine(made, layout)
    assert not is_fine(replace(made, sheets=(longer,)), with_room)


def test_inches_are_decimals_only_where_a_64th_would_not_do() -> None:
    made = row_that_fills_its_sheet(inch("14 1/8"), 6, inch("3/32"), Unit.INCH)
    assert keeps(*made) == {"14 1/8"}
    metric = row_that_fills_its_sheet(mm("300.25"), 6, mm("2.4"), Unit.INCH)
    assert keeps(*metric) == {"11.821"}  # 300.25 / 25.4 = 11.82087 (arithmetic)


@pytest.mark.parametrize(
    ("length", "kerf", "unit"),
    [
        (inch("14 1/8"), mm("2.4"), Unit.MM),
        (inch("14 1/8"), inch("1/8"), Unit.MM),
        (mm("300.25"), inch("3/32"), Unit.INCH),
        (mm("300.25"), mm("2.4"), Unit.INCH),
    ],
)
def test_the_rehearsal_accepts_a_full_row_of_foreign_sizes(
    length: Length, kerf: Length, unit: Unit
) -> None:
    made, layout = row_that_fills_its_sheet(length, 6, kerf, unit)
    figures = Figures(layout=layout)
    document = json.loads(dump(plan_document(made, figures, make_plan(made, figures))))
    faults = [str(fault) for fault in rehearse(document).faults]
    assert faults == []


def test_the_legend_explains_more_decimals_only_where_they_stand() -> None:
    def words(made: Job, layout: Layout) -> set[str]:
        return {word for word, _ in make_plan(made, Figures(layout=layout)).overview.legend}

    assert "more decimals" in words(*row_that_fills_its_sheet(inch("14 1/8"), 8, mm("2.4")))
    assert "more decimals" not in words(*row_that_fills_its_sheet(mm(300), 6, mm("2.4")))
