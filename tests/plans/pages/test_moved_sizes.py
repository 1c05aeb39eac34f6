"""What a measured thickness moves is on paper: every size, with what it was and what it is."""

from pathlib import Path

import pytest

from nesting.lengths import mm
from nesting.reading.job_toml import read_job_text
from nesting.solve import solve
from plans.pages.pages import make_pages
from plans.pages.paper import A4
from plans.pages.shapes import Text
from plans.plan import Plan, make_plan

JOB = """
[job]
step = 0.1
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
measured = [{readings}]
length = 2440
width = 1220
[[cabinet]]
name = "Side fill"
family = "box"
height = 600
width = 500
depth = 350
baffle = "{baffle}"
back = {{ fit = "inset", held_by = "screws" }}
braces = {{ depth = 100, count = 1 }}
"""
MEASURED = "17.7, 17.6, 17.8, 17.7, 17.7, 17.7, 17.7, 17.7"  # eight readings, mean 17.7


def planned(readings: str, baffle: str) -> Plan:
    job = read_job_text(JOB.format(readings=readings, baffle=baffle), Path("job.toml"))
    return make_plan(job, solve(job, effort=0))


def finished(plan: Plan) -> dict[str, str]:
    return {part.name: part.finished for part in plan.parts}


def outside(plan: Plan) -> set[str]:
    return {line for line in plan.overview.what if "600" in line}


@pytest.mark.parametrize("baffle", ["inset", "planted"])
def test_every_size_that_moved_is_on_a_page_with_old_and_new_value(baffle: str) -> None:
    before, after = planned("18", baffle), planned(MEASURED, baffle)
    assert outside(before) == outside(after) != set()
    words = " ".join(
        shape.words
        for page in make_pages(after, A4)
        for shape in page.shapes
        if isinstance(shape, Text)
    )
    moved = 0
    for name, old in finished(before).items():
        new = finished(after)[name]
        for was, becomes in zip(old.split(" × "), new.split(" × "), strict=True):
            if was != becomes:
                moved += 1
                assert mm(becomes) - mm(was) in {mm("0.6"), mm("0.3")}
                assert f"{was} → {becomes}" in words, name
    assert moved >= 4


def test_no_size_is_said_to_move_where_the_board_is_as_thick_as_it_is_called() -> None:
    plan = planned("18", "inset")
    words = [s.words for page in make_pages(plan, A4) for s in page.shapes if isinstance(s, Text)]
    assert not any("→" in line for line in words)
