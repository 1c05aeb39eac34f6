"""Going on with a plan whose strips are not yet cut apart, and whose holes give parts."""

import json
from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner

from plans.cli import app
from tests.plans.plan_rules import faults_of

JOB = """
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
measured = [17.7]
length = 2440
width = 1220

[[part]]
name = "Cleat"
length = 120
width = 60
count = 2

[[cabinet]]
name = "Prop box"
height = 500
width = 420
depth = 300
joint = "rebate"
joint_first = true
baffle = { fit = "inset", held_by = "glue" }
back = { fit = "inset", held_by = "glue" }

[[cabinet.hole]]
name = "woofer"
cut_out = 278
gives = "Cleat"
"""
STOP = "STOP: make the grooves and rebates across this piece first, then rip it"


def plan(path: Path, *arguments: str) -> dict[str, Any]:
    result = CliRunner().invoke(app, [*arguments, str(path), "--effort", "0"])
    assert result.exit_code == 0, result.output
    document = json.loads(path.with_suffix(".plan.json").read_text("utf-8"))
    assert faults_of(document) == []
    return dict(document)


def remarks(document: dict[str, Any]) -> list[str]:
    return [
        cut["remark"] for sheet in document["sheets"] for cut in sheet["cuts"] if "remark" in cut
    ]


@pytest.fixture
def path(tmp_path: Path) -> Path:
    job = tmp_path / "box.toml"
    job.write_text(JOB, "utf-8")
    return job


def test_what_is_done_before_a_strip_is_cut_apart_is_said_again(path: Path) -> None:
    assert remarks(plan(path, "plan")) == [STOP]
    assert CliRunner().invoke(app, ["mark", str(path), "1.1-1.2"]).exit_code == 0
    assert remarks(plan(path, "resume")) == [STOP]


def test_the_part_from_a_hole_keeps_its_code_and_its_panel_when_that_is_cut(path: Path) -> None:
    before = plan(path, "plan")
    rows = before["sheets"][0]["printed"]["rows"]
    panel = before["from_holes"][0]["panel"]
    freed = next(row["number"] for row in rows if panel in (row["keep_code"], row["free_code"]))
    assert CliRunner().invoke(app, ["mark", str(path), f"1.1-1.{freed}"]).exit_code == 0
    after = plan(path, "resume")
    assert panel not in [part["code"] for sheet in after["sheets"] for part in sheet["parts"]]
    assert after["from_holes"] == before["from_holes"]
