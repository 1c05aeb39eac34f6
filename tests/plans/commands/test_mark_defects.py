"""A defect found at home, marked on its sheet, and planned round."""

from pathlib import Path
from typing import Any

import pytest

from tests.plans.commands.invoking import done, plan_of, setout

SHEET = """
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = 1220
width = 610
price = 20.00
count = 3
"""
JOB = f"""
[job]
name = "Prop shelves"
{SHEET}
[[part]]
name = "Shelf"
length = 562
width = 280
count = 6
grain = "length"
"""
KNOT = "\n[[sheet.defect]]\non = 2\nalong = 600\nacross = 100\nlength = 40\nwidth = 40\n"


def lies_on(part: dict[str, Any], defect: dict[str, Any]) -> bool:
    return all(
        part[low] < defect[low] + defect[extent] and defect[low] < part[low] + part[extent]
        for low, extent in (("x", "length"), ("y", "width"))
    )


@pytest.fixture
def job(tmp_path: Path) -> Path:
    path = tmp_path / "shelf.toml"
    path.write_text(JOB, "utf-8")
    done("plan", path, "--effort", "0")
    return path


def test_the_rest_is_planned_round_a_defect_and_finished_parts_stay(job: Path) -> None:
    done("mark", job, "1.all")
    finished = {part["code"] for part in plan_of(job)["sheets"][0]["parts"]}
    said = done("mark", job, "--sheet", 2, "--defect", "300,100,40x40")
    assert "Plan the rest with 'setout resume'." in said
    said = done("resume", job, "--effort", "0")
    assert "Sheet 2 has a defect of 40 × 40 mm at 300 / 100" in said
    again = plan_of(job)
    assert {part["code"] for part in again["earlier"]["finished"]} == finished
    sheets = [sheet for sheet in again["sheets"] if sheet.get("defects")]
    for sheet in sheets:
        (defect,) = sheet["defects"]
        assert (defect["x"], defect["y"], defect["use"]) == (300, 100, "nothing")
        assert not any(lies_on(part, defect) for part in sheet["parts"])
    planned = sum(len(sheet["parts"]) for sheet in again["sheets"])
    assert planned + len(finished) == 6


def test_a_defect_goes_on_from_plan_to_plan(job: Path) -> None:
    done("mark", job, "--sheet", 2, "--defect", "300,100,40x40")
    done("resume", job, "--effort", "0")
    before = plan_of(job)
    kept = [*before["sheets"], *before["earlier"]["kept"]]
    assert sum(len(piece.get("defects", ())) for piece in kept) == 1
    done("mark", job, "1.1")
    done("resume", job, "--effort", "0")
    after = plan_of(job)
    kept = [*after["sheets"], *after["earlier"]["kept"]]
    assert sum(len(piece.get("defects", ())) for piece in kept) == 1


def test_a_defect_on_a_sheet_that_is_begun_is_marked_otherwise(job: Path) -> None:
    done("mark", job, "1.1")
    result = setout("mark", job, "--sheet", 1, "--defect", "300,100,40x40")
    assert result.exit_code == 3
    assert "its home corner is gone" in result.stderr
    assert "Mark the piece that has the defect as spoilt" in result.stderr


@pytest.mark.parametrize(
    ("place", "said"),
    [
        ("300,40x40", "it is not two distances and a size"),
        ("1200,100,40x40", "a defect reaches beyond its edge"),
        ("300,100,40", "it is not a size"),
        ("300,100,40x0", "a length is 0"),
    ],
)
def test_a_place_that_cannot_be_is_refused(job: Path, place: str, said: str) -> None:
    result = setout("mark", job, "--sheet", 2, "--stain", place)
    assert result.exit_code == 3
    assert said in result.stderr
    assert not job.with_name("shelf.record").exists()


def test_a_defect_written_into_the_job_file_replans_before_the_first_cut(job: Path) -> None:
    job.write_text(JOB.replace(SHEET, SHEET + KNOT), "utf-8")
    done("plan", job, "--effort", "0")
    unsound = [sheet for sheet in plan_of(job)["sheets"] if "defects" in sheet]
    for sheet in unsound:
        assert sheet["stock"] == "birch 18, no. 2"
        assert not any(lies_on(part, sheet["defects"][0]) for part in sheet["parts"])
    assert plan_of(job)["unsound"] == ["birch 18, no. 2"]
    # From now on the plan knows of it, and work goes on from it.
    done("mark", job, "1.1")
    done("resume", job, "--effort", "0")


def test_a_defect_written_into_the_job_file_is_refused_while_its_sheet_is_cut(job: Path) -> None:
    done("mark", job, "1.1")
    job.write_text(JOB.replace(SHEET, SHEET + KNOT), "utf-8")
    result = setout("resume", job, "--effort", "0")
    assert result.exit_code == 3
    assert "knows of no defect of it" in result.stderr
    assert "setout mark JOB --sheet 2 --defect" in result.stderr
