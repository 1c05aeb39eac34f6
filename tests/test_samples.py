"""Every sample plans, rehearses and says what it should."""

import json
import re
import tomllib
from pathlib import Path

import pytest

from plans.commands.plan import plan
from plans.commands.plan_options import PlanOptions
from plans.outcome import ExitStatus
from tests.plans.plan_rules import faults_of

SAMPLES = sorted((Path(__file__).parent.parent / "samples").glob("*.toml"))
INCOMPLETE = {"mill_table"}
LISTED = r"(?m)^\| `([a-z_]+)\.toml` \|"


def test_there_are_samples() -> None:
    assert len(SAMPLES) >= 4


def test_the_list_of_samples_names_each_of_them() -> None:
    text = (SAMPLES[0].parent / "README.md").read_text("utf-8")
    assert sorted(re.findall(LISTED, text)) == [sample.stem for sample in SAMPLES]


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_a_sample_plans_and_its_plan_keeps_every_rule(sample: Path, tmp_path: Path) -> None:
    outcome = plan(sample, PlanOptions(out=tmp_path))
    expected = ExitStatus.SOME_PARTS_DO_NOT_FIT if sample.stem in INCOMPLETE else ExitStatus.DONE
    assert outcome.status == expected
    written = json.loads((tmp_path / f"{sample.stem}.plan.json").read_text("utf-8"))
    job = tomllib.loads(sample.read_text("utf-8"))
    has_plain_parts_only = "cabinet" not in job and "part_list" not in job
    assert faults_of(written, job if has_plain_parts_only else None) == []
