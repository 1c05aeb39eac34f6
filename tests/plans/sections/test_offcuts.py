"""What is left over, and what could be cut again from it."""

from dataclasses import replace

import pytest

from nesting.layout import Rect
from nesting.lengths import mm
from nesting.parts import Grain
from nesting.saw import Face
from nesting.sheets import SheetGrain
from plans.sections.offcuts import could_become, make_offcut_rows
from tests.nesting.hand_made import BIRCH, SAW, part, two_cabinets
from tests.plans.sections.helpers import worked_out

MIDDLE = Rect(x=mm(100), y=mm(100), length=mm(600), width=mm(300))
SHELF = part("Shelf", 600, 300)


def test_every_offcut_is_listed_with_what_could_come_of_it() -> None:
    made, layout = two_cabinets()
    rows = {row.code: row for row in make_offcut_rows(worked_out(made, layout))}
    assert rows["L1"].size == "2430 × 522.8"
    assert (rows["L1"].sheet, rows["L1"].cut, rows["L1"].material) == (
        "1",
        "5",
        "birch plywood 17.7",
    )
    assert rows["L1"].could_be == ("A1", "A2", "A3", "A4", "B1", "B2", "B3", "B4", "C1", "C2")
    assert rows["L2"].could_be == ("C1", "C2")


def test_the_edges_of_the_sheet_itself_are_raw() -> None:
    made, layout = two_cabinets()
    row = make_offcut_rows(worked_out(made, layout))[0]
    assert row.good_edges == "left, top"
    front = replace(made, saw=replace(SAW, marked_face=Face.FRONT))
    assert make_offcut_rows(worked_out(front, layout))[0].good_edges == "left, bottom"


def test_a_part_of_just_the_size_could_be_cut_again_and_a_larger_one_not() -> None:
    assert could_become(SHELF, BIRCH, MIDDLE)
    assert not could_become(replace(SHELF, length=mm("600.1")), BIRCH, MIDDLE)
    assert not could_become(replace(SHELF, oversize=mm(1)), BIRCH, MIDDLE)


@pytest.mark.parametrize(
    ("part_grain", "sheet_grain", "as_it_lies", "turned"),
    [
        (Grain.ANY, SheetGrain.LENGTH, True, True),
        (Grain.LENGTH, SheetGrain.LENGTH, True, False),
        (Grain.LENGTH, SheetGrain.WIDTH, False, True),
        (Grain.WIDTH, SheetGrain.LENGTH, False, True),
        (Grain.WIDTH, SheetGrain.NONE, True, True),
    ],
)
def test_the_grain_of_the_leftover_must_suit(
    part_grain: Grain, sheet_grain: SheetGrain, *, as_it_lies: bool, turned: bool
) -> None:
    sheet = replace(BIRCH, grain=sheet_grain)
    upright = replace(MIDDLE, length=mm(300), width=mm(600))
    assert could_become(replace(SHELF, grain=part_grain), sheet, MIDDLE) is as_it_lies
    assert could_become(replace(SHELF, grain=part_grain), sheet, upright) is turned


def test_trims_and_other_materials_are_no_use() -> None:
    corner = Rect(x=mm(1840), y=mm(920), length=mm(600), width=mm(300))
    assert not could_become(SHELF, BIRCH, corner)
    assert could_become(part("Shelf", 590, 290), BIRCH, corner)
    assert not could_become(replace(SHELF, material="poplar plywood"), BIRCH, MIDDLE)
    assert not could_become(replace(SHELF, thickness=mm(12)), BIRCH, MIDDLE)
