"""The labels of whole jobs: one for every piece, with all that must be known of it at the bench."""

import re
from functools import cache
from pathlib import Path

import pytest

from nesting.first_cuts import solve_with_yard
from nesting.reading.job_toml import read_job
from plans.pages.labels_page import labels_pages
from plans.pages.paper import A4, LETTER, Paper
from plans.pages.shapes import Role, Text
from plans.plan import Plan, make_plan
from plans.plan_file import plan_document
from plans.sections.labels import Label
from tests.plans.full_plan import full_plan

SAMPLES = Path(__file__).parents[3] / "samples"
NAMES = ("hall_bass_cabinets", "quay_stage", "full")


@cache
def planned(name: str) -> tuple[Plan, dict[str, object]]:
    if name == "full":
        job, result, plan = full_plan()
    else:
        job = read_job(SAMPLES / f"{name}.toml")
        result = solve_with_yard(job, effort=0)
        plan = make_plan(job, result)
    return plan, plan_document(job, result, plan)


@pytest.mark.parametrize("name", NAMES)
def test_every_part_blank_and_offcut_of_the_plan_file_has_one_label(name: str) -> None:
    plan, document = planned(name)
    sheets: list[dict[str, list[dict[str, str]]]] = document["sheets"]  # type: ignore[assignment]
    pieces = [each["code"] for sheet in sheets for each in (*sheet["parts"], *sheet["offcuts"])]
    pieces += [row.code for row in plan.parts if row.panel]
    assert sorted(label.code for label in plan.labels) == sorted(pieces)


@pytest.mark.parametrize("name", NAMES)
def test_labels_come_in_the_order_of_cutting(name: str) -> None:
    cut = re.compile(r"sheet (\d+), cut (\d+)")
    found = [cut.fullmatch(label.origin) for label in planned(name)[0].labels]
    order = [(int(one[1]), int(one[2])) for one in found if one]
    assert order == sorted(order)
    assert order


@pytest.mark.parametrize("name", NAMES)
def test_a_label_agrees_with_the_parts_list(name: str) -> None:
    plan, _ = planned(name)
    rows = {row.code: row for row in plan.parts}
    for label in plan.labels:
        if label.code not in rows:
            assert label.status == "offcut, keep"
            continue
        row = rows[label.code]
        assert label.size == f"{row.finished} × {row.thickness}"
        assert label.blank == ("" if row.blank == row.finished else row.blank)
        assert label.status == row.status
        assert label.look_alikes == row.look_alikes
        assert label.allowances == row.allowances
        assert {*label.to_do} <= {*row.to_do}
        assert label.grain in {"any grain", row.grain}
        assert label.face


@pytest.mark.parametrize("paper", [A4, LETTER])
@pytest.mark.parametrize("name", NAMES)
def test_all_of_it_is_printed(name: str, paper: Paper) -> None:
    plan, _ = planned(name)
    texts = [
        shape
        for draft in labels_pages(plan, paper)
        for shape in draft.body.shapes
        if isinstance(shape, Text)
    ]
    everything = re.sub(r"\s+", "", "".join(text.words for text in texts))
    codes = [text for text in texts if text.role is Role.CODE]
    assert sorted(text.words for text in codes) == sorted(label.code for label in plan.labels)
    assert all(text.height >= 10 for text in codes)
    assert everything.count(plan.fingerprint) == len(plan.labels)
    for label in plan.labels:
        for words in fields(label):
            assert re.sub(r"\s+", "", words) in everything, (label.code, words)


def fields(label: Label) -> tuple[str, ...]:
    return (
        label.name,
        label.size,
        label.grain,
        label.face.removeprefix("this is the "),
        label.copy,
        label.origin,
        *([label.status.upper()] if label.copy else []),
        *([f"blank {label.blank}"] if label.blank else []),
        *([f"≠ {', '.join(label.look_alikes)}"] if label.look_alikes else []),
        *label.allowances,
    )
