"""Going on with a plan whose strips are not yet cut apart, and whose holes give parts."""

from pathlib import Path
from typing import Any

import pytest

from tests.plans.commands.invoking import done, plan_of

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


def plan(path: Path, command: str) -> dict[str, Any]:
    done(command, path, "--effort", "0")
    return plan_of(path)


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
    done("mark", path, "1.1-1.2")
    assert remarks(plan(path, "resume")) == [STOP]


def test_the_part_from_a_hole_keeps_its_code_and_its_panel_when_that_is_cut(path: Path) -> None:
    before = plan(path, "plan")
    rows = before["sheets"][0]["printed"]["rows"]
    panel = before["from_holes"][0]["panel"]
    freed = next(row["number"] for row in rows if panel in (row["keep_code"], row["free_code"]))
    done("mark", path, f"1.1-1.{freed}")
    after = plan(path, "resume")
    assert panel not in [part["code"] for sheet in after["sheets"] for part in sheet["parts"]]
    assert after["from_holes"] == before["from_holes"]
