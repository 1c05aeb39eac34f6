"""Marking and planning again, as a person does it."""

import json
import re
import subprocess
import sys
from itertools import pairwise
from pathlib import Path

import pytest

from plans.locks import hold
from tests.plans.commands.invoking import done, plan_of, setout

ROOT = Path(__file__).parent.parent.parent.parent
JOB = """
[job]
name = "Prop shelves"

[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
measured = [17.7]
length = 1220
width = 610
price = 20.00

[[part]]
name = "Shelf"
length = 562
width = 280
count = 4
grain = "length"
"""


@pytest.fixture
def job(tmp_path: Path) -> Path:
    path = tmp_path / "shelf.toml"
    path.write_text(JOB, "utf-8")
    done("plan", path, "--effort", "0")
    return path


def test_marks_are_recorded_and_the_next_cut_is_named(job: Path) -> None:
    said = done("mark", job, "1.1-1.3")
    assert "Recorded in shelf.record: 3 cuts." in said
    assert "the last was 1.3. Next is cut 1.4: take " in said
    assert len(job.with_name("shelf.record").read_bytes().splitlines()) == 3


def test_all_that_is_marked_at_once_is_counted(job: Path) -> None:
    first = plan_of(job)["sheets"][0]["printed"]["rows"][0]
    others = ("--spoilt", first["keep_code"], "--sheet", 1, "--thickness", 17.6)
    assert "Recorded in shelf.record: cut 1.1 and 2 other marks." in done("mark", job, 1.1, *others)


def test_where_was_i_says_whether_the_guide_still_stands(job: Path) -> None:
    rows = plan_of(job)["sheets"][0]["printed"]["rows"]
    for before, after in pairwise(rows):
        said = done("mark", job, f"1.{before['number']}")
        same = before["setting"] == after["setting"]
        assert ("do not move it" in said) == same, said
        assert f"take {after['hold']} ({after['hold_size']})" in said
    assert done("mark", job) == done("mark", job)  # asking changes nothing


def test_a_mark_out_of_turn_is_refused_and_nothing_recorded(job: Path) -> None:
    result = setout("mark", job, "1.4")
    assert result.exit_code == 3
    assert re.search(r"cut 1\.4: it goes across P\d+, which comes free with cut", result.stderr)
    assert not job.with_name("shelf.record").exists()


def test_all_or_nothing_of_one_command_is_recorded(job: Path) -> None:
    assert setout("mark", job, "1.1-1.2", "--spoilt", "Q9").exit_code == 3
    assert not job.with_name("shelf.record").exists()


def test_taking_back_takes_back_the_last_command(job: Path) -> None:
    done("mark", job, "1.1-1.2")
    done("mark", job, "1.3")
    assert "Taken back: cut 1.3." in done("mark", job, "--undo")
    assert "Taken back: 2 cuts." in done("mark", job, "--undo")
    again = setout("mark", job, "--undo")
    assert (again.exit_code, "nothing is marked" in again.stderr) == (3, True)


def test_a_whole_sheet_is_ticked_at_once(job: Path) -> None:
    said = done("mark", job, "1.all", "--json")
    cuts = len(plan_of(job)["sheets"][0]["cuts"])
    assert json.loads(said)["made"] == cuts


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["1.2-1.1"], "it runs backwards"),
        (["7"], "it does not name cuts"),
        (["1.99999"], "cut 1.99999: sheet 1 of plan"),
        (["1.1-1.99999"], "sheet 1 of plan"),
        (["--spoilt", ""], "the code is empty"),
        (["1.1-2.3"], "it runs over two sheets"),
        (["--left", "400x310"], "Add --spoilt CODE"),
        (["--sheet", "1"], "no reading is given"),
        (["--thickness", "17.6"], "Add --sheet with its number"),
        (["--undo", "1.1"], "stands with other marks"),
        (["--spoilt", "S1", "--left", "400"], "it is not a size"),
        (["--sheet", "1", "--diagonals", "1364"], "a sheet has two"),
    ],
)
def test_what_cannot_be_understood_is_explained(job: Path, arguments: list[str], said: str) -> None:
    result = setout("mark", job, *arguments)
    assert (result.exit_code, said in result.stderr) == (3, True), result.output


def test_without_a_plan_nothing_can_be_marked(tmp_path: Path) -> None:
    (tmp_path / "new.toml").write_text(JOB, "utf-8")
    result = setout("mark", tmp_path / "new.toml", "1.1")
    assert (result.exit_code, "there is no plan yet" in result.stderr) == (3, True)


def test_the_rest_is_planned_with_a_new_code_and_says_what_changed(job: Path) -> None:
    before = plan_of(job)
    done("mark", job, "1.all", "--spoilt", "A1")
    said = done("resume", job, "--effort", "1")
    after = plan_of(job)
    assert after["fingerprint"] != before["fingerprint"]
    changes = "\n".join(after["earlier"]["changes"])
    assert f"Goes on from plan {before['fingerprint']}" in changes
    assert "Spoilt: A1; nothing is left of it." in changes
    assert [part["code"] for sheet in after["sheets"] for part in sheet["parts"]] == ["A1"]
    assert f"of plan {after['fingerprint']}" in said


def test_the_smallest_piece_is_named_before_anything_is_bought(job: Path) -> None:
    done("mark", job, "1.all", "--spoilt", "A1")
    said = done("resume", job, "--effort", "1")
    assert (
        "Before buying, look for any piece 17.5 to 17.9 mm thick of at least 562 × 280 mm, "
        "grain along the 562." in said
    )


def test_with_nothing_marked_there_is_nothing_to_go_on_from(job: Path) -> None:
    result = setout("resume", job)
    assert (result.exit_code, "nothing is marked of plan" in result.stderr) == (3, True)


def test_when_everything_is_cut_no_plan_is_written(job: Path) -> None:
    before = job.with_name("shelf.plan.json").read_bytes()
    cuts = [f"{sheet['number']}.all" for sheet in plan_of(job)["sheets"]]
    done("mark", job, *cuts)
    assert "Everything is cut." in done("resume", job)
    assert job.with_name("shelf.plan.json").read_bytes() == before


def test_a_sheet_measured_smaller_is_planned_again_within_its_size(job: Path) -> None:
    done("mark", job, "--sheet", "1", "--measured", "1218.5x609", "--thickness", "17.6,17.8")
    done("resume", job, "--effort", "1")
    (sheet, *_) = plan_of(job)["sheets"]
    assert (sheet["length"], sheet["width"], sheet["measured"]) == (1218.5, 609, 17.7)


def test_a_new_plan_does_not_replace_one_that_is_being_cut(job: Path, tmp_path: Path) -> None:
    done("mark", job, "1.1")
    job.write_text(JOB.replace("562", "550"), "utf-8")
    before = job.with_name("shelf.plan.json").read_bytes()
    result = setout("plan", job, "--effort", "0")
    assert (result.exit_code, "is being cut" in result.stderr) == (3, True)
    assert job.with_name("shelf.plan.json").read_bytes() == before
    assert setout("plan", job, "--effort", "0", "--out", tmp_path / "else").exit_code == 0


def test_a_plan_of_another_version_is_not_replaced_and_can_be_moved_away(job: Path) -> None:
    """The remedy of the file itself, to plan again, would lead back to the same refusal."""
    plan_file = job.with_name("shelf.plan.json")
    older = plan_file.read_text("utf-8").replace('"version": 1', '"version": 0', 1)
    plan_file.write_text(older, "utf-8")
    result = setout("plan", job, "--effort", "0", "--quiet")
    assert result.exit_code == 3
    assert result.stderr == (
        f"{plan_file}: it is not of version 1, which this program reads, and a new plan would "
        "replace it.\nMove shelf.plan.json away, or name another folder with --out.\n"
    )
    plan_file.rename(job.with_name("old.json"))
    done("plan", job, "--effort", "0")


def test_a_plan_that_goes_on_is_not_replaced_either(job: Path) -> None:
    done("mark", job, "1.all", "--spoilt", "A1")
    done("resume", job, "--effort", "1")
    before = job.with_name("shelf.plan.json").read_bytes()
    assert setout("plan", job, "--effort", "0").exit_code == 3
    assert job.with_name("shelf.plan.json").read_bytes() == before


def test_nothing_in_the_garage_is_forgotten_by_the_plan_that_goes_on(job: Path) -> None:
    job.write_text(JOB.replace("width = 280", "width = 180"), "utf-8")
    done("plan", job, "--effort", "0")
    offcuts = {offcut["code"] for sheet in plan_of(job)["sheets"] for offcut in sheet["offcuts"]}
    assert offcuts
    done("mark", job, "1.all", "--spoilt", "A1", "--left", "300x180")
    done("resume", job, "--effort", "1")
    after = plan_of(job)
    kept = {piece["code"].split("-")[0] for piece in after["earlier"]["kept"]}
    used = {sheet["stock"].split(" ")[0] for sheet in after["sheets"]}
    assert kept | used >= offcuts | {"A1"}
    assert not kept & used


def test_parts_changed_midway_are_told_and_those_cut_stay_cut(job: Path) -> None:
    done("mark", job, "1.all", "--spoilt", "A1")
    job.write_text(JOB.replace("562", "550"), "utf-8")
    said = done("resume", job, "--effort", "1")
    assert "A2 Shelf was cut as 562 × 280; the job file no longer asks for that." in said
    assert "Shelf: 550 × 280, before 562 × 280." in said
    (part,) = [part for sheet in plan_of(job)["sheets"] for part in sheet["parts"]]
    assert (part["code"], part["finished"]) == ("A1", [550, 280])


def test_a_second_command_waits_a_little_and_then_says_so(
    job: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("plans.locks.PATIENCE_S", 0.2)
    code = (
        "import sys, time; from pathlib import Path; from plans.locks import hold\n"
        f"with hold(Path({str(job)!r})): print('held', flush=True); time.sleep(30)"
    )
    other = subprocess.Popen(
        [sys.executable, "-c", code], stdout=subprocess.PIPE, text=True, cwd=ROOT
    )
    try:
        assert other.stdout is not None
        other.stdout.readline()
        result = setout("mark", job, "1.1")
    finally:
        other.kill()
        other.communicate()
    assert result.exit_code == 1
    assert "another setout command is working on this job" in result.stderr
    assert not job.with_name("shelf.record").exists()
    with hold(job):  # a killed command leaves nothing locked
        pass


RAIL = '\n[[part]]\nname = "Rail"\nlength = 400\nwidth = 80\ncount = 2\ngrain = "length"\n'


@pytest.fixture
def shelves_and_rails(tmp_path: Path) -> Path:
    path = tmp_path / "shelf.toml"
    path.write_text(JOB + RAIL, "utf-8")  # four shelves fill one sheet, the rails take another
    done("plan", path, "--effort", "0")
    return path


def sheet_of(job: Path, code: str) -> str:
    """Return the word for all cuts of the sheet that a part comes from."""
    for sheet in plan_of(job)["sheets"]:
        if code in [part["code"] for part in sheet["parts"]]:
            return f"{sheet['number']}.all"
    raise AssertionError(code)


def test_a_spoilt_part_says_what_it_can_still_become(shelves_and_rails: Path) -> None:
    said = done("mark", shelves_and_rails, sheet_of(shelves_and_rails, "A1"), "--spoilt", "A1")
    # a kerf of 2.4 comes off both ways: 277.6 hold three rows of 80 with two kerfs between
    assert "A1 can still become 3 × Rail 400 × 80, if so much of it is sound" in said


def test_what_is_left_of_a_spoilt_part_counts_as_it_is(shelves_and_rails: Path) -> None:
    cuts = sheet_of(shelves_and_rails, "A1")
    said = done("mark", shelves_and_rails, cuts, "--spoilt", "A1", "--left", "410x80")
    assert "What is left of A1 can still become 1 × Rail 400 × 80." in said


def test_parts_that_are_cut_already_are_not_offered(shelves_and_rails: Path) -> None:
    said = done("mark", shelves_and_rails, "1.all", "2.all", "--spoilt", "A1")
    assert "can still become" not in said
