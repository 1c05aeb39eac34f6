"""The session that README.md shows, run as it stands there."""

import re
from pathlib import Path

import pytest
from typer.testing import CliRunner

from plans.cli import app

README = (Path(__file__).parent.parent / "README.md").read_text("utf-8")


def block(language: str) -> str:
    found = re.search(rf"```{language}\n(.*?)```", README, re.DOTALL)
    assert found is not None
    return found[1]


def as_pattern(shown: str) -> str:
    """Return a pattern for what is shown; an ellipsis stands for anything."""
    return ".*".join(map(re.escape, shown.strip().split("…")))


def test_the_slip_at_the_saw_goes_as_shown(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    Path("prop_shelf.toml").write_text(block("toml"), "utf-8")
    assert CliRunner().invoke(app, ["plan", "prop_shelf.toml"]).exit_code == 0
    steps = block("console").split("$ setout ")[1:]
    assert len(steps) >= 4
    for step in steps:
        command, _, shown = step.partition("\n")
        result = CliRunner().invoke(app, command.split())
        assert result.exit_code == 0, result.output
        assert re.fullmatch(as_pattern(shown), result.stdout.strip(), re.DOTALL), result.stdout
