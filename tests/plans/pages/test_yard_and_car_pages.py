"""The pages for the yard and the car carry what is asked for there, and nothing is in the way."""

from dataclasses import replace

import pytest

from plans.pages.clashes import find_clashes
from plans.pages.pages import make_pages
from plans.pages.paper import A4, LETTER, Paper
from plans.pages.shapes import Line as LineShape
from plans.pages.shapes import LineKind, Page, Role, Text
from plans.plan import Plan
from tests.plans.yard_plans import half_sheets, narrow_pieces


def page_of(plan: Plan, title: str, paper: Paper = A4) -> Page:
    return next(page for page in make_pages(plan, paper) if page.title == title)


def texts(page: Page, role: Role | None = None) -> list[str]:
    shapes = [shape for shape in page.shapes if isinstance(shape, Text)]
    return [shape.words for shape in shapes if role in (None, shape.role)]


@pytest.mark.parametrize("paper", [A4, LETTER])
def test_nothing_stands_in_the_way_on_either_page(paper: Paper) -> None:
    for plan in (half_sheets()[2], narrow_pieces()[2]):
        for title in ("For the yard", "Into the car"):
            assert find_clashes(page_of(plan, title, paper)) == ()


def test_the_yard_reads_every_cut_large_and_no_part() -> None:
    job, _, plan = narrow_pieces()
    page = page_of(plan, "For the yard")
    cuts = plan.yard[0].patterns[0].cuts
    assert texts(page, Role.KEEP) == [cut.size for cut in cuts]
    drawn_and_listed = [cut.number for cut in cuts] * 2
    assert sorted(texts(page, Role.CUT_NUMBER)) == sorted(drawn_and_listed)
    said = " ".join(texts(page))
    assert not any(part.name in said for part in job.parts)
    assert "ROUGH CUTS" in said
    heavy = [shape for shape in page.shapes if isinstance(shape, LineShape)]
    assert sum(line.kind is LineKind.NEXT_CUT for line in heavy) >= len(cuts)


def test_the_car_is_loaded_in_the_order_of_the_list() -> None:
    plan = narrow_pieces()[2]
    assert plan.car is not None
    page = page_of(plan, "Into the car")
    assert texts(page, Role.CODE) == [piece.code for piece in plan.car.pieces]
    assert texts(page, Role.CUT_NUMBER) == [str(piece.number) for piece in plan.car.pieces]
    said = " ".join(texts(page))
    assert all(note in said for note in plan.car.notes)


def test_a_plan_without_yard_or_car_has_no_such_page() -> None:
    titles = {page.title for page in make_pages(without(narrow_pieces()[2]), A4)}
    assert not titles & {"For the yard", "Into the car"}


def without(plan: Plan) -> Plan:
    return replace(plan, yard=(), car=None)
