"""A test piece out of every sheet that leaves one, in a whole job."""

import re
from pathlib import Path
from typing import Any

import pytest

from nesting.job import Job
from nesting.reading.job_toml import read_job
from nesting.search.result import Result
from nesting.solve import solve
from plans.pages.pages import make_pages
from plans.pages.paper import A4
from plans.pages.shapes import Text
from plans.plan import Plan, make_plan
from plans.plan_file import plan_document

SAMPLES = Path(__file__).parents[3] / "samples"
SIZE = (80, 250)


@pytest.fixture(scope="module", params=["hall_bass_cabinets", "quay_stage"])
def planned(request: pytest.FixtureRequest) -> tuple[Job, Result, Plan]:
    job = read_job(SAMPLES / f"{request.param}.toml")
    result = solve(job, effort=0)
    return job, result, make_plan(job, result)


def usable_sides(sheet: dict[str, Any], offcut: dict[str, float]) -> tuple[float, float]:
    """Return the sides of an offcut without the raw strips along the sheet's own edges."""
    trim = sheet["trim"]
    left = max(offcut["x"], trim["left"])
    low = max(offcut["y"], trim["bottom"])
    right = min(offcut["x"] + offcut["length"], sheet["length"] - trim["right"])
    high = min(offcut["y"] + offcut["width"], sheet["width"] - trim["top"])
    small, large = sorted((right - left, high - low))
    return small, large


def test_every_sheet_with_an_offcut_that_holds_one_names_a_test_piece_with_its_number(
    planned: tuple[Job, Result, Plan],
) -> None:
    job, result, plan = planned
    pages = make_pages(plan, A4)
    found = 0
    for sheet in plan_document(job, result, plan)["sheets"]:
        sides = [usable_sides(sheet, offcut) for offcut in sheet["offcuts"]]
        if not any(small >= SIZE[0] and large >= SIZE[1] for small, large in sides):
            continue
        found += 1
        marks = {coupon.sheet: coupon.mark for coupon in plan.workshop.coupons}
        assert marks[str(sheet["number"])] == f"TEST S{sheet['number']}"
        words = " ".join(
            shape.words for page in pages for shape in page.shapes if isinstance(shape, Text)
        )
        assert re.search(r"Test piece for saw and router, 250 × 80", words)
        assert re.search(rf"\bTEST S{sheet['number']}\b", words)
    assert found


def test_a_test_piece_comes_out_of_what_is_left_and_moves_no_part(
    planned: tuple[Job, Result, Plan],
) -> None:
    """It comes out of waste or an offcut of a layout that the search made without it."""
    job, result, plan = planned
    document = plan_document(job, result, plan)
    left = {offcut["code"] for sheet in document["sheets"] for offcut in sheet["offcuts"]}
    assert all(coupon.source in {"waste", *left} for coupon in plan.workshop.coupons)
    assert document["cost"] == float(result.cost)
