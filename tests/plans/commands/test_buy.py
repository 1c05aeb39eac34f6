"""`setout buy` as a person and as a program meet it."""

import json
from pathlib import Path

import pytest
from typer.testing import CliRunner

from plans.cli import app
from plans.outcome import ExitStatus

SHEETS = """
[job]
name = "Prop shelf"

[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = 1220
width = 610
trim = 0
price = 20.00

[[sheet]]
name = "birch 18 half"
material = "birch plywood"
thickness = 18
length = 610
width = 610
trim = 0
price = 12.00
"""
SHELF = """
[[part]]
name = "Shelf"
length = 612
width = 300
count = 4
grain = "length"
free = ["length"]
free_limit = 10
"""


@pytest.fixture
def job(tmp_path: Path) -> Path:
    path = tmp_path / "shelf.toml"
    path.write_text(SHEETS + SHELF, "utf-8")
    return path


def test_the_ways_and_the_near_misses_are_printed_and_nothing_is_written(job: Path) -> None:
    before = sorted(job.parent.iterdir())
    result = CliRunner().invoke(app, ["buy", str(job), "--effort", "1", "--quiet"])
    assert result.exit_code == ExitStatus.DONE
    assert "A  2 × birch 18  40.00" in result.output
    assert "all kinds; proven cheapest from this stock" in result.output
    # 610 fits the half sheets, two on each; two lengths and a kerf of 2.4 mm fit 1220 from
    # 608.8 down, so 608.5 on steps of half a millimetre
    assert "Shelf: 610 instead of 612 long saves 16.00." in result.output
    assert (
        "Shelf: 608.5 instead of 612 long needs one sheet fewer and saves 20.00." in result.output
    )
    assert sorted(job.parent.iterdir()) == before


def test_a_program_gets_the_same_as_data(job: Path) -> None:
    result = CliRunner().invoke(app, ["buy", str(job), "--effort", "1", "--json", "--quiet"])
    data = json.loads(result.output)
    first = data["ways"][0]
    assert (first["label"], first["total"], first["proven"]) == ("A", 40, True)
    assert first["sheets"] == [{"stock": "birch 18", "count": 2, "each": 20, "owned": False}]
    assert [(miss["changes"][0]["after"], miss["price"]) for miss in data["near_misses"]] == [
        (610, 24),
        (608.5, 20),
    ]
    assert all(
        (change["of"], change["size"], change["before"], miss["price_before"])
        == ("Shelf", "length", 612, 40)
        for miss in data["near_misses"]
        for change in miss["changes"]
    )


def test_a_part_that_fits_no_sheet_is_named_and_the_status_says_so(job: Path) -> None:
    job.write_text(SHEETS + SHELF.replace("612", "1300"), "utf-8")
    result = CliRunner().invoke(app, ["buy", str(job), "--effort", "0", "--quiet"])
    assert result.exit_code == ExitStatus.SOME_PARTS_DO_NOT_FIT
    assert "4 × Shelf: " in result.output


def test_a_faulty_job_file_is_refused(job: Path) -> None:
    job.write_text(SHEETS, "utf-8")
    result = CliRunner().invoke(app, ["buy", str(job)])
    assert result.exit_code == ExitStatus.WRONG_INPUT


def test_a_plan_prints_the_ways_where_it_is_asked(job: Path) -> None:
    arguments = ["plan", str(job), "--effort", "0", "--quiet"]
    assert CliRunner().invoke(app, arguments).exit_code == ExitStatus.DONE
    plain = job.with_suffix(".pdf").read_bytes()
    assert CliRunner().invoke(app, [*arguments, "--ways"]).exit_code == ExitStatus.DONE
    assert job.with_suffix(".pdf").read_bytes() != plain


def test_what_was_found_is_shown_where_the_user_stops(
    job: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stopped(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("plans.commands.buy._near_misses", stopped)
    result = CliRunner().invoke(app, ["buy", str(job), "--effort", "0"])
    assert result.exit_code == ExitStatus.INTERRUPTED
    assert "A  2 × birch 18" in result.stdout
    assert "No change" not in result.stdout


def test_cheaper_stock_for_what_is_hidden_is_offered(tmp_path: Path) -> None:
    path = tmp_path / "plinth.toml"
    poplar = SHEETS.split("[[sheet]]")[1].replace("birch", "poplar").replace("20.00", "9.00")
    path.write_text(
        f"{SHEETS}[[sheet]]{poplar}"
        '[[part]]\nname = "Plinth"\nlength = 600\nwidth = 300\ncount = 4\n'
        'material = "birch plywood"\nface = "hidden"\n',
        "utf-8",
    )
    result = CliRunner().invoke(app, ["buy", str(path), "--effort", "1", "--quiet"])
    assert result.exit_code == ExitStatus.DONE
    assert (
        "Plinth from poplar plywood saves 11.00 (9.00 instead of 20.00): "
        'write material = "poplar plywood" under [[part]] Plinth.'
    ) in result.output
    program = CliRunner().invoke(app, ["buy", str(path), "--effort", "1", "--quiet", "--json"])
    (cheaper,) = json.loads(program.stdout)["cheaper_stock"]
    assert (cheaper["price"], cheaper["price_before"]) == (9, 20)
