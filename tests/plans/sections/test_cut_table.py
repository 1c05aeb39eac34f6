"""The cut table: what is set on the guide and what comes of it."""

from dataclasses import replace
from itertools import pairwise

from nesting.cut_sequence import Step
from nesting.layout import By, Direction, Layout, PartLeaf, Rect
from nesting.lengths import mm
from nesting.saw import Face
from nesting.sheets import Trim
from plans.sections.cut_table import CutRow, guide_positions, make_rows
from tests.nesting.hand_made import BIRCH, SAW, job, part, strips, two_cabinets
from tests.plans.sections.helpers import worked_out


def step(keep: str, *, is_trim: bool = False) -> Step:
    anywhere = Rect(x=0, y=0, length=mm(2440), width=mm(1220))
    return Step(
        number=1,
        path=(),
        setting=1,
        direction=Direction.CROSSCUT,
        is_trim=is_trim,
        by=By.HOME,
        keep=mm(keep),
        piece=anywhere,
        band=anywhere,
    )


def rows() -> tuple[CutRow, ...]:
    made, layout = two_cabinets()
    return make_rows(made, worked_out(made, layout).sheets[0])


def test_the_guide_stands_one_base_plate_beside_the_kerf() -> None:
    # Left guide at w - a, right guide at w + k + b: a circular saw whose base reaches 38 mm left
    # and 130 mm right of a kerf of 2.4 mm keeps 356 mm from 318 mm or 488.4 mm (arithmetic).
    assert guide_positions(job(), step("356")) == (mm(318), mm("488.4"))


def test_a_trim_has_its_kerf_on_the_raw_side() -> None:
    # The fresh edge lies at 10 mm, the blade between 7.6 and 10 mm (arithmetic).
    assert guide_positions(job(), step("10", is_trim=True)) == (-mm("30.4"), mm(140))


def test_both_guide_figures_always_differ_by_the_base_plate() -> None:
    plate = SAW.base_left + SAW.kerf + SAW.base_right
    for one in (step("45"), step("356"), step("10", is_trim=True)):
        left, right = guide_positions(job(), one)
        assert right - left == plate


def test_the_first_row_trims_the_long_edge() -> None:
    row = rows()[0]
    assert (row.number, row.hold, row.hold_size, row.hold_mass) == (
        "1",
        "S1",
        "2440 × 1220",
        "36.7",
    )
    assert (row.direction, row.measure_from, row.keep) == (Direction.RIP, "top edge", "trim 10")
    assert (row.keep_code, row.free_code) == ("P1", "WASTE")
    assert (row.guide_left, row.guide_right, row.unusable) == ("-30.4", "140", "left")
    assert (row.people, row.remark) == (2, "TWO PEOPLE")


def test_a_row_keeps_a_part_and_frees_the_rest() -> None:
    row = next(row for row in rows() if row.keep_code == "A4")
    assert (row.measure_from, row.keep, row.free_code) == ("left edge", "562", "WASTE")
    assert row.people == 1


def test_every_piece_held_was_made_before_and_is_held_once() -> None:
    lying = {"S1"}
    for row in rows():
        assert row.hold in lying
        lying.remove(row.hold)
        lying |= {row.keep_code, row.free_code} - {"", "WASTE"}
    assert not any(code.startswith("P") for code in lying)


def test_rows_of_one_setting_follow_each_other_and_name_its_first_cut() -> None:
    table = rows()
    for before, row in pairwise(table):
        same = row.setting == before.setting
        assert bool(row.same_as) == same
        if same:
            first = next(one for one in table if one.setting == row.setting)
            assert row.same_as == first.number
            assert (row.keep, row.direction, row.guide_left) == (
                first.keep,
                first.direction,
                first.guide_left,
            )


def test_with_the_good_face_up_the_long_edge_is_at_the_bottom() -> None:
    made, layout = two_cabinets()
    front = replace(made, saw=replace(SAW, marked_face=Face.FRONT))
    table = make_rows(front, worked_out(front, layout).sheets[0])
    assert table[0].measure_from == "bottom edge"
    plain = [replace(row, measure_from="") for row in rows()]
    assert [replace(row, measure_from="") for row in table] == plain


def test_a_guide_that_is_too_short_is_said_with_both_figures() -> None:
    made, layout = two_cabinets()
    short = replace(made, saw=replace(SAW, guide_length=mm(1400)))
    table = make_rows(short, worked_out(short, layout).sheets[0])
    assert table[0].remark == "TWO PEOPLE; GUIDE TOO SHORT: cut 2440, guide 1400 mm"


def test_a_narrow_piece_is_clamped_or_cut_by_hand() -> None:
    made = job(part("Cleat", 400, 45))
    sheet = strips(made, [(mm(45), [PartLeaf(part=0, copy=0)])])
    table = make_rows(made, worked_out(made, Layout(sheets=(sheet,))).sheets[0])
    assert table[-1].hold_size == "2430 × 45"
    assert "clamp or cut by hand: 45 wide" in table[-1].remark


def test_where_the_blade_runs_off_nothing_falls_free() -> None:
    stock = replace(BIRCH, length=mm(402), trim=Trim())
    made = job(part("Lid", 400, 300), sheets=[stock])
    sheet = strips(made, [(mm(300), [PartLeaf(part=0, copy=0)])])
    row = make_rows(made, worked_out(made, Layout(sheets=(sheet,))).sheets[0])[-1]
    assert (row.keep_code, row.free_code) == ("A1", "")
    assert "the blade runs half off the edge" in row.remark
