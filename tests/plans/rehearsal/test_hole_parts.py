"""Parts from holes on paper: what is printed for them, and that wrong figures are found."""

import copy
import json
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from nesting.reading.job_toml import read_job_text
from nesting.solve import solve
from plans.plan import Plan, make_plan
from plans.plan_file import dump, plan_document
from plans.rehearsal import rehearse

Json = dict[str, Any]
JOB = """
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
measured = [17.7]
length = 2440
width = 1220
[[part]]
name = "Cleat"
length = 120
width = 60
count = 3
[[cabinet]]
name = "Bass box"
count = 2
height = 600
width = 500
depth = 350
baffle = { fit = "inset", held_by = "glue" }
back = { fit = "inset", held_by = "glue" }
[[cabinet.hole]]
name = "woofer"
cut_out = 278
from_bottom = 300
gives = "Cleat"
"""


@cache
def made() -> tuple[Plan, Json]:
    job = read_job_text(JOB, Path("job.toml"))
    result = solve(job, effort=0)
    plan = make_plan(job, result)
    return plan, json.loads(dump(plan_document(job, result, plan)))


def test_a_part_from_a_hole_is_on_no_sheet_and_on_every_list() -> None:
    """Acceptance: label and list say where it comes from; of three cleats one is cut from sheet."""
    plan, document = made()
    names = [part["name"] for part in document["sheets"][0]["parts"]]
    assert names.count("Cleat") == 1
    rows = [row for row in plan.parts if row.name == "Cleat"]
    baffles = [row.code for row in plan.parts if row.name == "Baffle"]
    assert [row.origin for row in rows[1:]] == [("a hole in", code) for code in baffles]
    assert [row.thickness for row in rows] == ["17.7", "17.7", "17.7"]
    labels = {label.code: label for label in plan.labels}
    assert {row.code for row in plan.parts} == {code for code in labels if code[0] != "L"}
    assert labels[rows[1].code].origin == f"from the disc of {baffles[0]}, woofer"
    assert rehearse(document).faults == ()


def test_the_hole_page_takes_the_part_after_the_hole() -> None:
    (order,) = made()[0].bench.hole_orders
    assert order.steps[-1].startswith("From the disc cut the Cleat, 120 × 60")
    assert "Cut the hole: 278 across" in order.steps[-2]


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"opening": [150, 150]}, "it does not come out of its hole"),
        ({"pivot": 150}, "it does not come out of its hole"),
        ({"kerf": 60}, "it does not come out of its hole"),
        ({"blank": [122, 60]}, "its printed size is not the one that was planned"),
        ({"panel": "A99"}, "there is no A99"),
        ({"panel": "A1", "code": "A1"}, "something else of this plan carries this code"),
        ({"is_round": False, "opening": [130, 90]}, "it does not come out of its hole"),
    ],
)
def test_a_wrong_figure_is_found(changes: Json, said: str) -> None:
    document = copy.deepcopy(made()[1])
    document["from_holes"][0].update(changes)
    assert any(fault.what.startswith(said) for fault in rehearse(document).faults)


def test_a_panel_that_an_earlier_plan_cut_is_there() -> None:
    document = copy.deepcopy(made()[1])
    panel = document["from_holes"][0]["panel"]
    document["from_holes"][0]["panel"] = "A99"
    document["earlier"] = {"finished": [{"code": "A99"}]}
    assert panel != "A99"
    assert rehearse(document).faults == ()


def test_another_thickness_or_a_smaller_blank_is_found() -> None:
    for key, value, said in (
        ("thickness", "18", "it is not as thick as"),
        ("finished", "121 × 60", "it is larger when finished"),
        ("blank", "120", "the printed 'blank' cannot be read"),
    ):
        document = copy.deepcopy(made()[1])
        document["from_holes"][0]["printed"][key] = value
        assert any(fault.what.startswith(said) for fault in rehearse(document).faults)
