from pathlib import Path

import pytest
from typer.testing import CliRunner

from plans.cli import app
from tests.plans.commands.test_offcuts import JOB


@pytest.fixture
def plan(tmp_path: Path) -> str:
    job = tmp_path / "shelf.toml"
    job.write_text(JOB, "utf-8")
    assert CliRunner().invoke(app, ["plan", str(job), "--effort", "0"]).exit_code == 0
    return str(tmp_path / "shelf.plan.json")


def test_the_chance_of_every_strip_and_the_worst_are_told(plan: str) -> None:
    result = CliRunner().invoke(app, ["rehearse", plan, "--errors", "0.5"])
    assert result.exit_code == 0
    assert result.stdout.startswith("With settings a little off, two in three by less than 0.5 mm,")
    assert "Worst: sheet 1, " in result.stdout
    assert "With every blank 5 mm larger: 100.0 %." in result.stdout


def test_without_errors_nothing_can_go_wrong_but_a_wrong_length_is_refused(plan: str) -> None:
    assert CliRunner().invoke(app, ["rehearse", plan, "--errors", "0"]).exit_code == 0
    result = CliRunner().invoke(app, ["rehearse", plan, "--errors", "much"])
    assert (result.exit_code, "--errors" in result.stderr) == (3, True)
