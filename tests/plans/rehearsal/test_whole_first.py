"""One whole cabinet first, as printed: rehearsed, marked, and gone on from with new readings."""

import copy
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

from plans.rehearsal import rehearse
from tests.plans.commands.invoking import done, plan_of

JOB = """
[job]
name = "Rehearsal room crates"

[[sheet]]
name = "birch 15"
material = "birch plywood"
thickness = 15
measured = [14.9]
length = 2440
width = 1220
price = 61.00
trim = 10

[[cabinet]]
name = "Crate"
count = 3
height = 420
width = 560
depth = 400
baffle = { fit = "inset" }
back = { fit = "inset" }

[[cabinet]]
name = "Trunk"
count = 2
height = 520
width = 660
depth = 430
baffle = { fit = "inset" }
back = { fit = "inset" }

[batch]
first_whole = "Trunk"

[session]
minutes = 600
"""


@pytest.fixture(scope="module")
def planned(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, str, dict[str, Any]]:
    job = tmp_path_factory.mktemp("crates") / "crates.toml"
    job.write_text(JOB, "utf-8")
    said = done("plan", job, "--effort", "1")
    return job, said, plan_of(job)


def test_the_first_trunk_is_rehearsed_before_anything_else(
    planned: tuple[Path, str, dict[str, Any]],
) -> None:
    _, said, document = planned
    first = document["whole_first"]
    assert first["cabinet"] == "D"
    assert f"Cabinet D comes first: make cuts {first['cuts']}, and put it together dry" in said
    assert "Session 1: cuts 1.1 to" in said
    assert "Only the cuts for cabinet D." in said
    assert rehearse(document).faults == ()


def test_a_stop_that_comes_too_early_is_found_by_the_rehearsal(
    planned: tuple[Path, str, dict[str, Any]],
) -> None:
    document = copy.deepcopy(planned[2])
    first = document["whole_first"]
    sheet, cut = first["after"][0]["sheet"], first["after"][0]["cut"]
    first["after"][0]["cut"] = cut - 1
    (fault,) = rehearse(document).faults
    assert "are printed as" in fault.what
    first["cuts"] = first["cuts"].replace(f"{sheet}.{cut}", f"{sheet}.{cut - 1}")
    assert any("is not cut by then" in fault.what for fault in rehearse(document).faults)


def test_the_rest_is_planned_again_with_the_readings_taken_at_the_stop(
    planned: tuple[Path, str, dict[str, Any]],
) -> None:
    job, _, document = planned
    cuts = document["whole_first"]["cuts"].split()
    for named, after in pairwise(cuts):
        assert f"Next is cut {after.split('-')[0]}:" in done("mark", job, named)
    said = done("mark", job, cuts[-1])
    assert "Cabinet D is cut whole: put it together dry now." in said
    finished = {
        part["code"]
        for sheet in document["sheets"]
        for part in sheet["parts"]
        if part["name"].endswith("cabinet D")
    }
    done("mark", job, "--sheet", "1", "--thickness", "14.7")
    said = done("resume", job, "--effort", "1")
    again = plan_of(job)
    assert rehearse(again).faults == ()
    assert finished <= {part["code"] for part in again["earlier"]["finished"]}
    assert "Nothing has to be bought." in said
    assert "whole_first" not in again
