"""The book of leftovers, as a person uses it."""

import csv
import json
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest

from tests.plans.commands.invoking import done, setout

ROOT = Path(__file__).parent.parent.parent.parent
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
count = 2
"""


@pytest.fixture(autouse=True)
def data(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SETOUT_DATA", str(tmp_path / "data"))


def write_job(folder: Path, name: str) -> Path:
    path = folder / f"{name}.toml"
    path.write_text(JOB, "utf-8")
    return path


def add_plank() -> None:
    done(
        *("offcuts", "add", "birch plywood", "1150x290", "--thickness", "18"),
        *("--measured", "17.6", "--good", "all", "--date", "2026-05-01"),
    )


def listed() -> list[dict[str, Any]]:
    return list(json.loads(done("offcuts", "list", "--json"))["offcuts"])


def test_a_leftover_is_listed_with_all_that_is_known_of_it() -> None:
    add_plank()
    assert done("offcuts", "list", "--date", "2026-05-31") == (
        "1: 1150 × 290 × 17.6 mm, birch plywood, grain along the first; good edges: left, right, "
        "top, bottom; 30 days\n"
        "1 offcut, 0.33 m²; kept is what measures 300 × 100 mm or more.\n"
    )


def test_a_plan_with_the_book_takes_a_leftover_instead_of_buying(tmp_path: Path) -> None:
    add_plank()
    job = write_job(tmp_path, "shelf")
    assert "0 sheets to buy" in done("plan", job, "--book", "--effort", "0")
    (entry,) = listed()
    assert entry["reserved_for"] == str(job.resolve())
    assert "0 sheets to buy" in done("plan", job, "--book", "--effort", "0")  # its own again


def test_the_job_file_can_ask_for_the_book(tmp_path: Path) -> None:
    add_plank()
    job = write_job(tmp_path, "shelf")
    job.write_text(JOB + "[keep]\nuse_book = true\n", "utf-8")
    assert "0 sheets to buy" in done("plan", job, "--effort", "0")


def test_without_asking_the_book_is_left_alone(tmp_path: Path) -> None:
    add_plank()
    assert "1 sheet to buy" in done("plan", write_job(tmp_path, "shelf"), "--effort", "0")
    assert listed()[0]["reserved_for"] == ""


def test_a_second_job_does_not_get_what_the_first_has_reserved(tmp_path: Path) -> None:
    add_plank()
    first, second = write_job(tmp_path, "first"), write_job(tmp_path, "second")
    done("plan", first, "--book", "--effort", "0")
    assert "1 sheet to buy" in done("plan", second, "--book", "--effort", "0")
    done("offcuts", "release", "1")
    assert "0 sheets to buy" in done("plan", second, "--book", "--effort", "0")


def test_a_plan_that_cannot_be_written_gives_back_what_it_reserved(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    add_plank()
    monkeypatch.setattr("plans.writers.whole_file.write_whole", full)
    job = write_job(tmp_path, "shelf")
    assert setout("plan", job, "--book", "--effort", "0").exit_code == 1
    assert listed()[0]["reserved_for"] == ""


def test_a_plan_printed_as_json_reserves_nothing(tmp_path: Path) -> None:
    add_plank()
    done("plan", write_job(tmp_path, "shelf"), "--book", "--effort", "0", "--json")
    assert listed()[0]["reserved_for"] == ""


def test_two_plans_at_once_never_use_one_leftover_twice(tmp_path: Path) -> None:
    add_plank()
    jobs = [write_job(tmp_path, name) for name in ("one", "two")]
    code = "from plans.cli import main; main()"
    both = [
        subprocess.Popen(
            [sys.executable, "-c", code, "plan", str(job), "--book", "--effort", "0"],
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            cwd=ROOT,
        )
        for job in jobs
    ]
    said = [process.communicate(timeout=120)[0] for process in both]
    assert [process.returncode for process in both] == [0, 0]
    assert sorted("0 sheets to buy" in text for text in said) == [False, True]
    holder = listed()[0]["reserved_for"]
    winner = next(job for job, text in zip(jobs, said, strict=True) if "0 sheets" in text)
    assert holder == str(winner.resolve())


def test_the_leftovers_of_a_plan_are_taken_over_once(tmp_path: Path) -> None:
    job = write_job(tmp_path, "shelf")
    done("plan", job, "--effort", "0")
    plan = job.with_name("shelf.plan.json")
    document = json.loads(plan.read_text("utf-8"))
    planned = {
        (str(offcut["length"]), str(offcut["width"]))
        for sheet in document["sheets"]
        for offcut in sheet["offcuts"]
    }
    assert planned
    done("mark", job, "1.1-1.2")
    assert "There is nothing to keep." in done("offcuts", "from", plan)
    done("mark", job, "1.all")
    done("offcuts", "from", plan)
    assert {(entry["length"], entry["width"]) for entry in listed()} == planned
    assert "is in the book already" in done("offcuts", "from", plan)
    assert len(listed()) == len(planned)


def test_what_is_too_small_for_the_rule_is_refused() -> None:
    done("offcuts", "rule", "--smallest", "400x200")
    result = setout("offcuts", "add", "birch plywood", "390x390", "--thickness", "18")
    assert (result.exit_code, "does not keep so small a piece" in result.stderr) == (3, True)


def test_with_too_little_space_it_says_what_to_throw() -> None:
    add_plank()
    add_plank()
    said = done("offcuts", "rule", "--space", "0.5")
    assert "Throw out, the oldest and smallest first: 1." in said
    done("offcuts", "take", "1", "--date", "2026-06-01")
    assert [entry["number"] for entry in listed()] == [2]


def test_the_book_is_written_as_a_table(tmp_path: Path) -> None:
    add_plank()
    done("offcuts", "export", tmp_path / "book.csv", "--units", "in")
    with (tmp_path / "book.csv").open(encoding="utf-8", newline="") as file:
        (row,) = csv.DictReader(file)
    assert (row["number"], row["material"], row["unit"], row["width"]) == (
        "1",
        "birch plywood",
        "in",
        "11.417",
    )


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--grain", "across"], "is no side"),
        (["--good", "front"], "is no edge"),
        (["--date", "25.11.2026"], "is no day"),
        (["--units", "cm"], "is no unit here"),
        (["--measured", "thin"], "is not a length"),
    ],
)
def test_a_leftover_described_wrongly_is_explained(arguments: list[str], said: str) -> None:
    result = setout("offcuts", "add", "birch", "600x300", "--thickness", "18", *arguments)
    assert (result.exit_code, said in result.stderr) == (3, True), result.output


@pytest.mark.parametrize(
    ("arguments", "status", "said"),
    [
        (["add", "birch", "999999999999999x1", "--thickness", "18"], 3, "too long to be meant"),
        (["add", "birch", "600x300", "--thickness", "18,5"], 3, "--thickness 18,5: it has a comma"),
        (["add", "a\nb", "600x300", "--thickness", "18"], 3, "MATERIAL: the text has a line break"),
        (["add", "x" * 300, "600x300", "--thickness", "18"], 3, "has 300 characters"),
        (["rule", "--smallest", "999999999999999x1"], 3, "too long to be meant"),
        (["take", "9" * 30], 2, "Invalid value"),
        (["take", "0"], 2, "Invalid value"),
    ],
)
def test_figures_that_no_book_can_hold_are_refused(
    arguments: list[str], status: int, said: str
) -> None:
    result = setout("offcuts", *arguments)
    assert (result.exit_code, "unexpected" in result.stderr) == (status, False)
    assert said in result.stderr
    assert listed() == []


def test_a_book_that_cannot_be_opened_is_named(tmp_path: Path) -> None:
    book = tmp_path / "data" / "offcuts.sqlite3"
    book.mkdir(parents=True)
    result = setout("offcuts", "list")
    assert (result.exit_code, "unexpected" in result.stderr) == (1, False)
    assert f"{book}: the book of leftovers cannot be read or written" in result.stderr


def test_a_database_of_another_program_is_no_book(tmp_path: Path) -> None:
    book = tmp_path / "data" / "offcuts.sqlite3"
    book.parent.mkdir()
    with closing(sqlite3.connect(book)) as other:
        other.execute("PRAGMA user_version = 1")
    result = setout("offcuts", "list")
    assert (result.exit_code, "unexpected" in result.stderr) == (3, False)
    assert "cannot be used as a book of leftovers" in result.stderr
