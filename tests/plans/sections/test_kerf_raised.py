"""A wider kerf, from a job file to the printed sums: strips go TIGHT or parts move, none runs over.

The sums are added up here by plain arithmetic; the rule for TIGHT, less than 1 mm a cut and 2 mm
left, is the project's own choice.
"""

import re
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from nesting.reading.job_toml import read_job_text
from nesting.search.result import Result
from nesting.solve import solve
from plans.plan import Plan, make_plan
from plans.plan_file import plan_document
from plans.rehearsal import rehearse

JOB = """
[saw]
kerf = {kerf}
[[sheet]]
name = "board"
material = "birch plywood"
thickness = 18
length = 1220
width = 340
trim = 0
price = 20
{count}
[[part]]
name = "Shelf"
length = {length}
width = 340
count = 4
grain = "length"
"""
EASY, TIGHT, FULL = 301, 302, 303
"""Four of these in 1220 with a kerf of 2.4 leave 6.4 mm, 2.4 mm, and less than the last kerf."""


def planned(length: int, kerf: str, count: str = "") -> tuple[Result, Plan, dict[str, Any]]:
    job = read_job_text(JOB.format(length=length, kerf=kerf, count=count), Path("job.toml"))
    result = solve(job, effort=1)
    plan = make_plan(job, result)
    document = plan_document(job, result, plan)
    assert rehearse(document).faults == ()
    return result, plan, document


def test_four_of_305_do_not_come_out_of_1220_and_the_plan_says_which_is_missing() -> None:
    result, plan, _ = planned(305, "2.4", "count = 1")
    (gap,) = result.layout.unplaced
    assert gap.count == 1
    assert "one sheet more would do" in gap.reason
    assert any("Shelf" in line and gap.reason in line for line in plan.overview.unplaced)
    (line,) = plan.sheets[0].sums
    assert line.text == "1220 = 305 + 2.4 + 305 + 2.4 + 305 + 2.4 + 297.8 left"


@pytest.mark.parametrize("length", [EASY, TIGHT, FULL, 304, 305])
@pytest.mark.parametrize("kerf", ["1.9", "2.4", "2.9", "3.4"])
def test_a_wider_kerf_makes_a_strip_tight_or_takes_another_sheet(length: int, kerf: str) -> None:
    result, plan, _ = planned(length, kerf)
    assert result.layout.unplaced == ()
    fits = 4 * length + 3 * Fraction(kerf) <= 1220
    assert (len(plan.sheets) == 1) == fits
    for sheet in plan.sheets:
        for line in sheet.sums:
            whole, *items = (Fraction(size) for size in re.findall(r"[0-9.]+", line.text))
            assert whole == sum(items), line.text
            cuts = (len(items) - 1) // 2
            assert line.is_tight == (items[-1] < cuts + 2), line.text
