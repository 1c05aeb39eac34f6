"""Spares from the job file to the pages, and to the plan that goes on."""

import json
from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner

from plans.cli import app
from tests.plans.plan_rules import faults_of

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


def setout(*arguments: object) -> str:
    result = CliRunner().invoke(app, [str(argument) for argument in arguments])
    assert result.exit_code == 0, result.output
    return result.stdout


def plan_of(job: Path) -> dict[str, Any]:
    document = json.loads(job.with_name("shelf.plan.json").read_text("utf-8"))
    assert faults_of(document) == []
    return dict(document)


@pytest.fixture
def job(tmp_path: Path) -> Path:
    path = tmp_path / "shelf.toml"
    path.write_text(JOB + SPARES, "utf-8")
    return path


def test_a_spare_is_named_with_its_sheet_and_counted_for_itself(job: Path) -> None:
    said = setout("plan", job, "--effort", "1")
    assert "1 sheet, 3 parts, " in said
    assert "B1, a spare of A1, A2, A3, comes out of what is left of sheet 1" in said
    (sheet,) = plan_of(job)["sheets"]
    assert [each["name"] for each in sheet["parts"]].count("Spare: Shelf") == 1
    assert len(sheet["parts"]) == 4


def test_without_minutes_for_it_there_is_none(job: Path) -> None:
    job.write_text(JOB, "utf-8")
    assert "spare" not in setout("plan", job, "--effort", "1")


def test_a_spare_that_is_cut_is_no_part_too_many_when_the_plan_goes_on(job: Path) -> None:
    setout("plan", job, "--effort", "1")
    (sheet,) = plan_of(job)["sheets"]
    last = max(cut["number"] for cut in sheet["cuts"])
    setout("mark", job, f"1.1-1.{last}", "--spoilt", "A1")
    said = setout("resume", job, "--effort", "1")
    assert "B1" in said
    assert "no longer asks" not in said
    assert [part["name"] for each in plan_of(job)["sheets"] for part in each["parts"]] == ["Shelf"]
