"""Parts of several kinds that must match, from a job file to the settings and the overview."""

from pathlib import Path

from nesting.reading.job_toml import read_job_text
from nesting.solve import solve
from plans.plan import Plan, make_plan

SHEET = """
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = {length}
width = {width}
"""
PARTS = """
[[part]]
name = "Side"
length = 562
width = 300
count = 4
match = "depth"
[[part]]
name = "Top"
length = 400
width = 300
count = 4
match = "depth"
[[part]]
name = "Shelf"
length = 380
width = 300
count = 2
match = "depth"
[[part]]
name = "Door"
length = 500
width = 210
count = 3
"""
"""Sides, tops and shelves share the depth of 300."""


def planned(length: int, width: int) -> Plan:
    text = SHEET.format(length=length, width=width) + PARTS
    return make_plan(job := read_job_text(text, Path("job.toml")), solve(job, effort=4, seed=1))


def settings_of(plan: Plan) -> set[tuple[int, int]]:
    """Return sheet and setting of every cut that leaves 300 across: the common size."""
    return {
        (sheet.number, row.setting)
        for sheet in plan.sheets
        for row in sheet.rows
        if row.keep == "300"
    }


def test_parts_of_different_kinds_that_must_match_come_off_one_setting_of_a_sheet() -> None:
    plan = planned(2440, 1220)
    assert len(plan.sheets) == 1
    assert len(settings_of(plan)) == 1
    assert not [line for line in plan.overview.warnings if "must match" in line]
    count = plan.sheets[0].settings
    assert any(f"{count} settings" in line for line in plan.overview.figures)


def test_parts_that_cannot_share_the_setting_are_listed_by_name() -> None:
    plan = planned(1300, 640)
    assert len(plan.sheets) > 1
    (warning,) = (line for line in plan.overview.warnings if "must match" in line)
    assert "another setting than the parts that must match them in 300 mm" in warning
    named = {name for name in ("Side", "Top", "Shelf") if name in warning}
    assert named
    assert "Door" not in warning
