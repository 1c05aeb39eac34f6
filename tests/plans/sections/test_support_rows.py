"""What the cut table and the drawing say of supports and of the guide's room."""

from dataclasses import replace

from nesting.layout import Direction, Layout
from nesting.lengths import mm
from plans.plan import Figures, Plan, make_plan
from plans.sections.cut_table import ON_A_BOARD, CutRow
from plans.sections.sheet_view import SheetView
from tests.nesting.hand_made import two_cabinets
from tests.plans.yard_plans import half_sheets


def plan(guide_width: int = 100) -> Plan:
    job, layout = two_cabinets()
    job = replace(job, saw=replace(job.saw, guide_width=mm(guide_width)))
    return make_plan(job, Figures(layout=Layout(sheets=layout.sheets)))


def test_every_cut_is_carried_by_battens_on_both_sides_or_by_a_board() -> None:
    for view in plan().sheets:
        for cut, row in zip(view.cuts, view.rows, strict=True):
            assert_carried(view, row, cut.direction)


def assert_carried(view: SheetView, row: CutRow, direction: Direction) -> None:
    cut = next(cut for cut in view.cuts if cut.number == row.number)
    before = after = 0
    for batten in cut.supports:
        if direction is Direction.RIP:
            before += batten.y + batten.width <= cut.band.y
            after += batten.y >= cut.band.y + cut.band.width
        else:
            before += batten.x + batten.length <= cut.band.x
            after += batten.x >= cut.band.x + cut.band.length
    assert before + after == len(cut.supports), "a batten crosses the kerf"
    kept, free = (after, before) if cut.is_trim else (before, after)
    assert kept >= 2 or row.support == ON_A_BOARD
    assert free >= 2 or row.support == ON_A_BOARD or row.free_code in {"WASTE", ""}


def test_a_cut_without_room_for_the_guide_calls_for_a_board_beside_it() -> None:
    for row in plan(guide_width=400).sheets[0].rows:
        assert (row.guide_room == "none") is ("no room for the guide" in row.remark)
    assert any(row.guide_room == "none" for row in plan(guide_width=400).sheets[0].rows)
    assert any(row.guide_room == "either" for row in plan(guide_width=50).sheets[0].rows)


def test_the_yards_cuts_need_neither_guide_nor_battens_of_ours() -> None:
    view = half_sheets()[2].sheets[0]
    assert (view.rows[0].guide_room, view.rows[0].support, view.cuts[0].supports) == ("", "", ())
    assert (view.rows[0].guide_left, view.rows[0].guide_right) == ("", "")
