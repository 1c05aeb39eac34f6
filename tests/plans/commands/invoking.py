"""Commands run in this process, as a person types them."""

import json
from pathlib import Path
from typing import Any

from typer.testing import CliRunner, Result

from plans.cli import app
from tests.plans.plan_rules import faults_of


def setout(*arguments: object) -> Result:
    return CliRunner().invoke(app, [str(argument) for argument in arguments])


def done(*arguments: object) -> str:
    result = setout(*arguments)
    assert result.exit_code == 0, result.output
    return result.stdout


def plan_of(job: Path) -> dict[str, Any]:
    """Return the plan file beside a job file; it keeps every rule."""
    document = dict(json.loads(job.with_suffix(".plan.json").read_text("utf-8")))
    assert faults_of(document) == []
    return document
