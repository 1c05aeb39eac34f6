"""Going on after a mistake: the book of leftovers before the shop, the yard for what is bought."""

from pathlib import Path

import pytest

from tests.plans.commands.invoking import done, plan_of
from tests.plans.commands.test_offcuts import add_plank, listed, write_job

QUAY = (Path(__file__).parents[3] / "samples" / "quay_stage.toml").read_text("utf-8")


@pytest.fixture(autouse=True)
def data(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SETOUT_DATA", str(tmp_path / "data"))


def spoil_both_shelves(job: Path) -> None:
    done("mark", job, "1.all")
    codes = [part["code"] for part in plan_of(job)["sheets"][0]["parts"]]
    for code in codes:
        done("mark", job, "--spoilt", code)
    for offcut in plan_of(job)["sheets"][0]["offcuts"]:
        done("mark", job, "--spoilt", offcut["code"])


def test_a_leftover_of_the_book_is_taken_before_a_sheet_is_bought(tmp_path: Path) -> None:
    job = write_job(tmp_path, "shelf")
    done("plan", job, "--effort", "0")
    add_plank()
    spoil_both_shelves(job)
    said = done("resume", job, "--book", "--effort", "1")
    assert "Nothing has to be bought." in said
    assert [sheet["stock"] for sheet in plan_of(job)["sheets"]] == ["offcut 1 of the book"]
    assert listed()[0]["reserved_for"] == str(job.resolve())


def test_without_asking_the_book_is_left_alone(tmp_path: Path) -> None:
    job = write_job(tmp_path, "shelf")
    done("plan", job, "--effort", "0")
    add_plank()
    spoil_both_shelves(job)
    assert "1 sheet to buy" in done("resume", job, "--effort", "1")
    assert listed()[0]["reserved_for"] == ""


def test_what_is_in_hand_is_used_up_before_the_book(tmp_path: Path) -> None:
    job = write_job(tmp_path, "shelf")
    done("plan", job, "--effort", "0")
    add_plank()
    done("mark", job, "1.1")
    done("resume", job, "--book", "--effort", "1")
    assert not any("of the book" in sheet["stock"] for sheet in plan_of(job)["sheets"])
    assert listed()[0]["reserved_for"] == ""


def test_a_leftover_that_is_cut_up_is_not_offered_again_and_is_struck_out(tmp_path: Path) -> None:
    job = write_job(tmp_path, "shelf")
    add_plank()
    done("plan", job, "--book", "--effort", "0")
    done("mark", job, "1.1")
    for _ in range(2):  # also where planning goes on from a plan that has gone on
        done("resume", job, "--effort", "1")
        (sheet,) = plan_of(job)["sheets"]
        assert sheet["stock"].startswith("P")
        assert listed()[0]["reserved_for"] == str(job.resolve())
        done("mark", job, "1.1")
    done("mark", job, "1.all")
    said = done("offcuts", "from", job.with_suffix(".plan.json"))
    assert "Struck out, because this job has cut them up: 1." in said
    assert 1 not in [entry["number"] for entry in listed()]


def test_a_leftover_that_is_not_needed_any_more_goes_back(tmp_path: Path) -> None:
    job = write_job(tmp_path, "shelf")
    add_plank()
    done("plan", job, "--book", "--effort", "0")
    job.write_text(job.read_text("utf-8").replace("width = 280", "width = 300"), "utf-8")
    done("mark", job, "--sheet", "1", "--thickness", "17.5")
    assert "1 sheet to buy" in done("resume", job, "--effort", "1")
    assert listed()[0]["reserved_for"] == ""
    assert plan_of(job)["earlier"]["kept"] == []


@pytest.mark.slow
def test_a_sheet_that_is_bought_anew_gets_its_first_cuts_at_the_yard(tmp_path: Path) -> None:
    job = tmp_path / "quay.toml"
    job.write_text(QUAY, "utf-8")
    done("plan", job, "--effort", "1")
    before = plan_of(job)
    done("mark", job, "--missing", "1")
    done("resume", job, "--effort", "1")
    after = plan_of(job)
    bought = [sheet for sheet in after["sheets"] if sheet["price"]]
    assert bought
    assert all(any(cut["by"] == "yard" for cut in sheet["cuts"]) for sheet in bought)
    assert before["yard"]["rough"] == after["yard"]["rough"]
