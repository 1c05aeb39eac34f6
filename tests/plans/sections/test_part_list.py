"""The parts list."""

from dataclasses import replace

from nesting.layout import Layout, PartLeaf, Unplaced
from nesting.lengths import mm
from nesting.parts import Grain, Part, Status
from plans.sections.part_list import PartRow, make_part_rows
from tests.nesting.hand_made import BIRCH, job, part, strips, two_cabinets
from tests.plans.sections.helpers import worked_out


def rows_of(*parts: Part) -> tuple[PartRow, ...]:
    made = job(*parts)
    unplaced = tuple(
        Unplaced(part=index, count=kind.count, reason="no sheet")
        for index, kind in enumerate(parts)
    )
    return make_part_rows(worked_out(made, Layout(sheets=(), unplaced=unplaced)))


def test_there_is_one_row_a_piece_by_kind_and_code() -> None:
    made, layout = two_cabinets()
    rows = make_part_rows(worked_out(made, layout))
    assert [row.code for row in rows] == [
        "A1",
        "A2",
        "A3",
        "A4",
        "B1",
        "B2",
        "B3",
        "B4",
        "C1",
        "C2",
    ]
    first = rows[0]
    assert (first.name, first.copy, first.finished, first.blank) == (
        "Side",
        "1 of 4",
        "562 × 300",
        "562 × 300",
    )
    assert (first.thickness, first.sheet, first.cut, first.status) == ("17.7", "1", "12", "final")


def test_what_is_not_placed_has_no_sheet_and_its_nominal_thickness() -> None:
    row = rows_of(part("Shelf", 562, 300))[0]
    assert (row.code, row.sheet, row.cut, row.thickness) == ("A1", "-", "-", "18")


def test_only_some_copies_placed_leave_their_codes_to_the_rest() -> None:
    made = job(part("Shelf", 562, 300, 3))
    sheet = strips(made, [(mm(300), [PartLeaf(part=0, copy=2), PartLeaf(part=0, copy=0)])])
    gap = Unplaced(part=0, count=1, reason="no room")
    rows = make_part_rows(worked_out(made, Layout(sheets=(sheet,), unplaced=(gap,))))
    assert [(row.code, row.sheet, row.copy) for row in rows] == [
        ("A1", "1", "1 of 3"),
        ("A2", "1", "2 of 3"),
        ("A3", "-", "3 of 3"),
    ]


def test_parts_within_15_mm_in_both_sizes_name_each_other() -> None:
    side, lid = part("Side", 562, 300, 2), part("Lid", 300, 550)
    rows = rows_of(side, lid, part("Base", 578, 300), part("Shelf", 562, 316))
    assert {row.code: row.look_alikes for row in rows} == {
        "A1": ("B1",),
        "A2": ("B1",),
        "B1": ("A1",),
        "C1": (),
        "D1": (),
    }


def test_equal_parts_are_interchangeable_unless_something_is_still_done_to_one() -> None:
    top, bottom = part("Top", 500, 300), part("Bottom", 500, 300)
    assert [row.look_alikes for row in rows_of(top, bottom)] == [(), ()]
    holed = replace(bottom, to_do=("hole H1",))
    assert [row.look_alikes for row in rows_of(top, holed)] == [("B1",), ("A1",)]


def test_status_and_blank_of_an_oversize_part() -> None:
    row = rows_of(replace(part("Baffle", 464, 300), oversize=mm(3), status=Status.OVERSIZE))[0]
    assert (row.status, row.finished, row.blank) == ("oversize +3", "464 × 300", "467 × 303")


def test_a_blank_with_wood_to_spare_on_one_edge_is_oversize() -> None:
    row = rows_of(replace(part("Side", 600, 400), extra_width=mm(5), allowances=("front +5",)))[0]
    assert (row.status, row.blank) == ("oversize +0 × +5", "600 × 405")
    assert row.allowances == ("front +5",)


def test_a_part_that_is_measured_first_says_so_whatever_its_blank() -> None:
    row = rows_of(replace(part("Back", 464, 300), oversize=mm(3), status=Status.MEASURE_FIRST))[0]
    assert row.status == "measure first"


def test_grain_is_said_by_the_side_it_runs_along() -> None:
    shelf = part("Shelf", 562, 300)
    grains = [
        rows_of(replace(shelf, grain=grain))[0].grain
        for grain in (Grain.LENGTH, Grain.WIDTH, Grain.ANY)
    ]
    assert grains == ["grain along the 562", "grain along the 300", "any"]
    assert rows_of(replace(shelf, width=mm(562), grain=Grain.WIDTH))[0].grain == (
        "grain along the second 562"
    )


def test_a_sheet_that_was_not_measured_gives_its_nominal_thickness() -> None:
    made = job(part("Shelf", 562, 300), sheets=[replace(BIRCH, measured=())])
    sheet = strips(made, [(mm(300), [PartLeaf(part=0, copy=0)])])
    assert make_part_rows(worked_out(made, Layout(sheets=(sheet,))))[0].thickness == "18"
