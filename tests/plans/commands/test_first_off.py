"""The first part of its kind is measured, and the others are cut like it or planned again."""

from pathlib import Path

import pytest

from plans.record import read_record, record_path
from tests.plans.commands.invoking import done, plan_of, setout

JOB = """
[job]
name = "Prop shelves"

[saw]
kerf = 2.4

[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = 2440
width = 1220
price = 60.00

[[part]]
name = "Shelf"
length = 562
width = 280
count = 12
grain = "length"
"""


@pytest.fixture
def job(tmp_path: Path) -> Path:
    path = tmp_path / "shelf.toml"
    path.write_text(JOB, "utf-8")
    done("plan", path, "--effort", "1")
    return path


def cut_the_first(job: Path) -> str:
    """Mark cuts until the first shelf is free; return its code."""
    (sheet,) = plan_of(job)["sheets"]
    codes = {part["code"] for part in sheet["parts"]}
    for row in sheet["printed"]["rows"]:
        done("mark", job, f"1.{row['number']}")
        for code in (row["keep_code"], row["free_code"]):
            if code in codes:
                return str(code)
    raise AssertionError("no part comes free")


def test_a_first_part_within_half_a_millimetre_releases_the_others(job: Path) -> None:
    code = cut_the_first(job)
    said = done("mark", job, "--first-off", code.lower(), "561.8x280.1")
    assert (
        f"{code} is 0.2 mm shorter and 0.1 mm wider than planned, within 0.5 mm: cut the other "
        "11 of its kind like it." in said
    )
    assert "as planned, within" in done("mark", job, "--first-off", code, "562x280")
    assert len(read_record(record_path(job))) > 2


def test_a_first_part_that_is_short_stops_the_work_and_the_rest_is_planned_again(job: Path) -> None:
    code = cut_the_first(job)
    said = done("mark", job, "--first-off", code, "560.9x280")
    assert f"{code} is 1.1 mm shorter than planned, more than 0.5 mm: it counts as spoilt" in said
    job.write_text(JOB.replace("kerf = 2.4", "kerf = 3.0"), "utf-8")
    said = done("resume", job, "--effort", "1")
    assert f"{code}, the first of its kind, is 1.1 mm shorter than planned." in said
    assert "The kerf is 3 mm, before 2.4 mm." in said
    again = plan_of(job)
    assert again["saw"]["kerf"] == 3
    assert sum(len(sheet["parts"]) for sheet in again["sheets"]) == 12


def test_a_first_part_that_is_large_is_cut_to_size_and_stays(job: Path) -> None:
    code = cut_the_first(job)
    said = done("mark", job, "--first-off", code, "563x280")
    assert f"{code} is 1 mm longer than planned, more than 0.5 mm: cut it to size." in said
    done("resume", job, "--effort", "1")
    assert code in {part["code"] for part in plan_of(job)["earlier"]["finished"]}


@pytest.mark.parametrize(
    ("code", "size", "why"),
    [
        ("A1", "280x562", "that is far off its size"),
        ("S1", "562x280", "it is not a part"),
        ("Q9", "562x280", "has no such piece"),
    ],
)
def test_what_cannot_be_a_first_part_is_refused(job: Path, code: str, size: str, why: str) -> None:
    first = cut_the_first(job)
    result = setout("mark", job, "--first-off", first if code == "A1" else code, size)
    assert (result.exit_code, why in result.stderr) == (3, True), result.stderr


def test_a_part_that_is_not_cut_yet_is_no_first_one(job: Path) -> None:
    first = cut_the_first(job)
    other = next(
        part["code"]
        for part in reversed(plan_of(job)["sheets"][0]["parts"])
        if part["code"] != first
    )
    result = setout("mark", job, "--first-off", other, "562x280")
    assert (result.exit_code, "it comes free with cut" in result.stderr) == (3, True)
