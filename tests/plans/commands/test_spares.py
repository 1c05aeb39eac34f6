"""Spares from the job file to the pages, and to the plan that goes on."""

from pathlib import Path

import pytest

from tests.plans.commands.invoking import done, plan_of

JOB = """
[job]
name = "Prop shelves"

[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = 1220
width = 610
price = 20.00

[[part]]
name = "Shelf"
length = 562
width = 280
count = 3
grain = "length"
"""
SPARES = "[batch]\nspare_minutes = 20\n"


@pytest.fixture
def job(tmp_path: Path) -> Path:
    path = tmp_path / "shelf.toml"
    path.write_text(JOB + SPARES, "utf-8")
    return path


def test_a_spare_is_named_with_its_sheet_and_counted_for_itself(job: Path) -> None:
    said = done("plan", job, "--effort", "1")
    assert "1 sheet, 3 parts, " in said
    assert "B1, a spare of A1, A2, A3, comes out of what is left of sheet 1" in said
    (sheet,) = plan_of(job)["sheets"]
    assert [each["name"] for each in sheet["parts"]].count("Spare: Shelf") == 1
    assert len(sheet["parts"]) == 4


def test_without_minutes_for_it_there_is_none(job: Path) -> None:
    job.write_text(JOB, "utf-8")
    assert "spare" not in done("plan", job, "--effort", "1")


def test_a_spare_that_is_cut_is_no_part_too_many_when_the_plan_goes_on(job: Path) -> None:
    done("plan", job, "--effort", "1")
    (sheet,) = plan_of(job)["sheets"]
    last = max(cut["number"] for cut in sheet["cuts"])
    done("mark", job, f"1.1-1.{last}", "--spoilt", "A1")
    said = done("resume", job, "--effort", "1")
    assert "B1" in said
    assert "no longer asks" not in said
    assert [part["name"] for each in plan_of(job)["sheets"] for part in each["parts"]] == ["Shelf"]
