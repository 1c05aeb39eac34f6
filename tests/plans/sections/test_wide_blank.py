"""A wide blank for two sides with a joint across, from the job file to the cut table.

Joints that are cut once across both halves line up (a trade practice); the figures are plain
arithmetic.
"""

from pathlib import Path

import pytest

from nesting.job import Job
from nesting.reading.job_toml import read_job_text
from nesting.solve import solve
from plans.plan import Plan, make_plan
from plans.plan_file import plan_document
from plans.rehearsal import rehearse
from plans.sections.cut_table import CutRow

JOB = """
[saw]
kerf = 2.4
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
measured = [17.7]
length = 2440
width = 1220
[[cabinet]]
name = "Tool chest"
height = 500
width = 620
depth = 380
joint = "rebate"
joint_first = true
baffle = { fit = "inset", held_by = "glue" }
back = { fit = "inset", held_by = "glue" }
"""
WIDE = 2 * 380 + 2.4


@pytest.fixture(scope="module")
def planned() -> tuple[Job, Plan]:
    job = read_job_text(JOB, Path("chest.toml"))
    result = solve(job, effort=1)
    plan = make_plan(job, result)
    assert rehearse(plan_document(job, result, plan)).faults == ()
    return job, plan


def row_of_blank(plan: Plan) -> CutRow:
    rows = [row for sheet in plan.sheets for row in sheet.rows]
    (found,) = [row for row in rows if "STOP: make the grooves and rebates" in row.remark]
    return found


def test_the_blank_is_twice_the_width_and_a_kerf(planned: tuple[Job, Plan]) -> None:
    row = row_of_blank(planned[1])
    length, width = sorted(map(float, row.hold_size.split(" × ")))
    assert (length, width) == (500, WIDE)
    assert row.keep == "380"


def test_the_rip_gives_both_sides_and_nothing_else(planned: tuple[Job, Plan]) -> None:
    _, plan = planned
    row = row_of_blank(plan)
    sides = {part.code for part in plan.parts if part.name == "Side"}
    assert {row.keep_code, row.free_code} == sides
    assert len(sides) == 2


def test_the_blank_lies_on_battens_can_be_held_and_is_lifted_by_one(
    planned: tuple[Job, Plan],
) -> None:
    """0.5 m by 0.7624 m of 18 mm birch at a maker's 685 kg/m3: 4.7 kg."""
    _, plan = planned
    row = row_of_blank(plan)
    assert float(row.hold_mass) == pytest.approx(0.5 * WIDE / 1000 * 0.018 * 685, abs=0.05)
    assert row.people == 1
    assert "by hand" not in row.remark
    (cut,) = [
        cut
        for sheet in plan.sheets
        for cut, each in zip(sheet.cuts, sheet.rows, strict=True)
        if each is row
    ]
    end = cut.band.y + cut.band.width
    assert sum(batten.y + batten.width <= cut.band.y for batten in cut.supports) >= 2
    assert sum(batten.y >= end for batten in cut.supports) >= 2
