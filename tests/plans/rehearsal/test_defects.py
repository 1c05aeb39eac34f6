"""The rehearsal is tried on a plan round defects, and on the same plan spoilt in one place."""

import copy
from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest

from nesting.defects import solve_clear
from nesting.lengths import mm
from nesting.sheets import Defect, Use
from plans.plan import make_plan
from plans.plan_file import plan_document
from plans.rehearsal import rehearse
from tests.nesting.defects.defect_jobs import chance_job, unsound
from tests.nesting.hand_made import job, part
from tests.plans.plan_rules import faults_of
from tests.plans.rehearsal.mutations import Json, figures_of, slip

KNOT = Defect(what="knot hole", x=mm(1150), y=mm(600), length=mm(80), width=mm(50))
STAIN = Defect(
    what="stain", x=mm(300), y=mm(300), length=mm(90), width=mm(60), use=Use.HIDDEN_PARTS
)


@cache
def good() -> Json:
    """Return the plan of two hidden sides with a knot between them and a stain under one."""
    sides = replace(part("Side", 1100, 1000, count=2), is_hidden=True)
    made = job(sides, sheets=[unsound(KNOT, STAIN)])
    result = solve_clear(made, effort=1)
    return plan_document(made, result, make_plan(made, result))


def faults(change: Callable[[Json], None]) -> list[str]:
    document = copy.deepcopy(good())
    change(document["sheets"][0])
    return [str(fault) for fault in rehearse(document).faults]


def test_a_plan_round_defects_passes() -> None:
    assert rehearse(good()).faults == ()
    (knot, stain) = good()["sheets"][0]["printed"]["defects"]
    assert (knot["along"], knot["across"], knot["size"], knot["parts"]) == (
        "1150",
        "600",
        "80 × 50",
        "",
    )
    assert stain["parts"] in {"A1", "A2"}


@pytest.mark.parametrize(
    ("place", "key", "text", "said"),
    [
        (0, "along", "1152", "its first reading is printed 1152 mm, but is 1150 mm"),
        (0, "across", "598", "its second reading is printed 598 mm, but is 600 mm"),
        (0, "size", "78 × 50", "its length is printed 78 mm, but is 80 mm"),
        (1, "size", "90 × 62", "its width is printed 62 mm, but is 60 mm"),
        (1, "use", "nothing", "the page says otherwise what may lie on it"),
        (1, "parts", "", "the page names no part on it"),
        (1, "parts", "A7", "the page names A7 on it"),
    ],
)
def test_a_defect_that_is_printed_wrong_is_found(
    place: int, key: str, text: str, said: str
) -> None:
    def change(sheet: Json) -> None:
        sheet["printed"]["defects"][place][key] = text

    assert any(said in fault for fault in faults(change))


def test_a_part_on_a_defect_is_found() -> None:
    def change(sheet: Json) -> None:
        sheet["defects"][0]["x"] = 1050
        sheet["printed"]["defects"][0]["along"] = "1050"

    assert any("lies on it, and nothing may" in fault for fault in faults(change))


def test_a_part_that_shows_on_a_stain_is_found() -> None:
    def change(sheet: Json) -> None:
        for one in sheet["parts"]:
            del one["hidden"]

    assert any("lies on it and shows" in fault for fault in faults(change))


def test_an_offcut_with_a_defect_is_found() -> None:
    code = good()["sheets"][0]["offcuts"][0]["code"]
    offcut = good()["sheets"][0]["offcuts"][0]

    def change(sheet: Json) -> None:
        x, y = offcut["x"] + 20, offcut["y"] + 20
        sheet["defects"][0] |= {"x": x, "y": y}
        sheet["printed"]["defects"][0] |= {"along": str(x), "across": str(y)}

    assert any(f"{code} is kept as an offcut and has it" in fault for fault in faults(change))


def test_a_defect_that_is_not_printed_is_found() -> None:
    assert faults(lambda sheet: sheet["printed"]["defects"].pop())
    assert faults(lambda sheet: sheet["printed"].pop("defects"))
    assert faults(lambda sheet: sheet.pop("defects"))


def test_no_slip_of_2_mm_in_a_figure_of_a_defect_passes() -> None:
    figures = [figure for figure in figures_of(good()) if "defects" in figure.path]
    assert len(figures) == 2 * (4 + 4)
    for figure in figures:
        for sign in (-1, 1):
            assert rehearse(slip(good(), figure, sign)).faults, figure


@pytest.mark.property
@pytest.mark.parametrize("seed", range(25))
def test_any_plan_round_defects_passes_the_rehearsal_and_the_rules(seed: int) -> None:
    made = chance_job(seed)
    result = solve_clear(made, effort=1)
    document = plan_document(made, result, make_plan(made, result))
    assert rehearse(document).faults == ()
    assert faults_of(document) == []
