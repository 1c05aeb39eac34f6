"""Plan file and record are all that is needed to know where the work stands."""

import json
import re
import shutil
from itertools import pairwise
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
[[part]]
name = "Rail"
length = 562
width = 80
count = 3
[session]
minutes = 20
store = [1250, 300]
"""


@pytest.fixture
def job(tmp_path: Path) -> Path:
    path = tmp_path / "shelf.toml"
    path.write_text(JOB, "utf-8")
    done("plan", path, "--effort", "0")
    return path


def work(job: Path) -> list[tuple[str, dict[str, object]]]:
    return [
        (f"{sheet['number']}.{row['number']}", row)
        for sheet in plan_of(job)["sheets"]
        for row in sheet["printed"]["rows"]
    ]


def test_after_every_tick_the_next_cut_and_the_guide_are_told_from_the_files_alone(
    job: Path, tmp_path: Path
) -> None:
    elsewhere = tmp_path / "elsewhere"
    rows = work(job)
    for done_so_far, ((number, row), (following, after)) in enumerate(pairwise(rows), start=1):
        done("mark", job, number)
        shutil.rmtree(elsewhere, ignore_errors=True)
        elsewhere.mkdir()
        for suffix in (".toml", ".plan.json", ".record"):
            shutil.copy(job.with_suffix(suffix), elsewhere)
        said = done("mark", elsewhere / job.name)
        assert said == done("mark", job)
        assert len(said.strip().splitlines()) == 1
        assert f"{done_so_far} of {len(rows)} cuts are marked, the last was {number}." in said
        assert f"Next is cut {following}: take {after['hold']}" in said
        is_same_sheet = number.partition(".")[0] == following.partition(".")[0]
        stands = is_same_sheet and row["setting"] == after["setting"]
        assert ("do not move it" in said) == stands


def test_planning_on_from_ticks_is_the_same_wherever_the_files_lie(
    job: Path, tmp_path: Path
) -> None:
    done("mark", job, work(job)[0][0], work(job)[1][0])
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    for suffix in (".toml", ".plan.json", ".record"):
        shutil.copy(job.with_suffix(suffix), elsewhere)
    done("resume", job, "--effort", "0")
    done("resume", elsewhere / job.name, "--effort", "0")
    again = elsewhere / "shelf.plan.json"
    assert json.loads(again.read_text("utf-8")) == plan_of(job)


def test_the_order_of_work_names_the_cut_after_which_one_can_stop(job: Path) -> None:
    said = done("plan", job, "--effort", "0", "--out", job.parent / "out")
    ends = re.findall(r"Session \d+: cuts \S+ to (\d+\.\d+),", said)
    numbers = [number for number, _ in work(job)]
    assert len(ends) > 1
    assert ends == sorted(ends, key=numbers.index)
    assert ends[-1] == numbers[-1]
