"""The reason given on a sheet is the limit that decided its order."""

import re
from dataclasses import replace
from pathlib import Path

import pytest

from nesting.first_cuts import solve_with_yard
from nesting.job import Job
from nesting.layout import Direction
from nesting.lengths import mm
from nesting.reading.job_toml import read_job, read_job_text
from nesting.search.result import Result
from plans.pages.pages import make_pages
from plans.pages.paper import A4
from plans.pages.shapes import Text
from plans.plan import Plan, make_plan

SAMPLES = Path(__file__).parents[3] / "samples"
JOB = """
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = 2440
width = 1220
[[part]]
name = "Door"
length = 1150
width = 590
count = 4
"""
YARD = "[yard]\nmax_cuts = 2\n"
CAR = "[car]\nopening = [1260, 760]\nfloor_length = 1700\n"


def planned(job: Job) -> tuple[Result, Plan]:
    result = solve_with_yard(job, effort=0)
    return result, make_plan(job, result)


def read(text: str) -> Job:
    return read_job_text(text, Path("why.toml"))


@pytest.mark.parametrize("name", ["hall_bass_cabinets", "quay_stage", "choir_risers"])
def test_every_sheet_has_its_reason_and_its_price_on_its_pages(name: str) -> None:
    _, plan = planned(read_job(SAMPLES / f"{name}.toml"))
    pages = make_pages(plan, A4)
    words = "".join(s.words for page in pages for s in page.shapes if isinstance(s, Text))
    said = re.sub(r"\s", "", words)
    assert said.count("Whythisorder:") >= len({view.why for view in plan.sheets})
    for view in plan.sheets:
        assert re.sub(r"\s", "", view.why) in said
        assert "would cost" in view.why


def test_a_car_is_the_reason_where_it_makes_the_yard_cut() -> None:
    _, plan = planned(read(JOB + YARD + CAR))
    assert plan.sheets[0].why.startswith(
        "The yard's cuts come first, so that every piece goes into the car; "
    )


def test_a_car_that_takes_whole_sheets_is_no_reason() -> None:
    roomy = "[car]\nopening = [1400, 1300]\nfloor_length = 2600\n"
    _, plan = planned(read(JOB + YARD + roomy))
    assert all("car" not in view.why and "yard" not in view.why for view in plan.sheets)


def test_without_a_car_the_weight_is_the_reason_for_the_yard() -> None:
    _, plan = planned(read(JOB + YARD))
    assert "so that one person can lift every piece" in plan.sheets[0].why
    strong = read("[saw]\nlift_limit_kg = 60\n" + JOB + YARD)
    _, other = planned(strong)
    assert "lift" not in other.sheets[0].why


def test_the_guide_is_the_reason_only_where_a_longer_one_would_rip_first() -> None:
    """The same job with a guide that reaches along the sheet does not name it."""
    job = read(JOB)
    for reach, is_short in ((2700, False), (1400, True)):
        made = replace(job, saw=replace(job.saw, guide_length=mm(reach)))
        _, plan = planned(made)
        (view,) = plan.sheets
        first = next(cut for cut in view.cuts if not cut.is_trim)
        named = f"the guide ({reach} mm) does not reach along the sheet" in view.why
        assert named == is_short
        if named:
            assert first.direction is Direction.CROSSCUT


def test_the_settings_that_are_named_are_those_of_the_table() -> None:
    _, plan = planned(read_job(SAMPLES / "quay_stage.toml"))
    told = [re.search(r"(\d+) cuts come off (\d+) settings", view.why) for view in plan.sheets]
    assert any(told)
    for view, found in zip(plan.sheets, told, strict=True):
        if found:
            rows = [row for row in view.rows if row.guide_left]
            assert int(found[1]) == len(rows)
            assert int(found[2]) == len({row.setting for row in rows})
