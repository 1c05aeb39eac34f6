"""Sessions, kits, test pieces, fallbacks and ways to buy, where they are used."""

from dataclasses import replace

import pytest

from plans.pages.clashes import find_clashes
from plans.pages.pages import make_pages
from plans.pages.paper import A4, LETTER, Paper
from plans.pages.shapes import Line, LineKind, Page, Role, Text
from plans.plan import Plan
from plans.sections.coupons import Coupon
from plans.sections.fallbacks import FallbackRow
from plans.sections.sessions import LARGE, SMALL, KitRow, SessionRow
from plans.sections.ways import WayLine
from plans.sections.workshop import Workshop
from tests.plans.pages.plan_samples import two_bass_cabinets_plan


def session(number: int, first: int, last: int, text: str) -> SessionRow:
    return SessionRow(
        number=str(number),
        first=f"1.{first}",
        last=f"1.{last}",
        minutes=str(12 * number),
        sawn="7.4 m",
        settings=str(number),
        lifts=str(number - 1),
        text=text,
    )


def way(label: str, when: str) -> WayLine:
    return WayLine(
        label=label,
        title="",
        when=when,
        sheets="1 × birch 18, 2 × birch 18 half",
        price="144.00",
        besides="4.50 for the yard's cuts",
        total="148.50",
        minutes="96",
        left="600 × 300, 500 × 300, 400 × 300 and 1 more",
        verdict="proven cheapest from this stock",
    )


def with_workshop() -> Plan:
    plan = two_bass_cabinets_plan()
    last = len(plan.sheets[0].rows)
    codes = tuple(part.code for part in plan.parts if part.code.startswith("A"))
    return replace(
        plan,
        workshop=Workshop(
            sessions=(session(1, 1, 5, SMALL), session(2, 6, last, LARGE)),
            kits=(
                KitRow(cabinet="A", parts="4", sheets="1", closes="1.5", stack=codes),
                KitRow(cabinet="B", parts="4", sheets="1", closes=f"1.{last}", stack=("B1",)),
            ),
            coupons=(
                Coupon(
                    mark="TEST S1",
                    sheet="1",
                    stock="birch 18",
                    size="250 × 80",
                    source="waste",
                    source_size="600 × 120",
                    cut="3",
                ),
            ),
            fallbacks=(
                FallbackRow(
                    codes=("A1", "B1"), name="Side", size="600 × 380", becomes="1 × Brace 380 × 80"
                ),
            ),
        ),
        shopping=replace(
            plan.shopping,
            ways=(way("A", "all kinds"), way("B", "if there is no birch 18 half")),
        ),
    )


PLAN = with_workshop()


def said(pages: tuple[Page, ...], title: str) -> str:
    return " ".join(
        shape.words
        for page in pages
        if title in page.title.split("; ")
        for shape in page.shapes
        if isinstance(shape, Text)
    )


@pytest.mark.parametrize("paper", [A4, LETTER])
def test_nothing_stands_in_the_way_of_anything(paper: Paper) -> None:
    for page in make_pages(PLAN, paper):
        assert find_clashes(page) == (), page.title


def test_every_session_has_its_cuts_minutes_and_lifts() -> None:
    work = said(make_pages(PLAN, A4), "Order of work")
    for row in PLAN.workshop.sessions:
        assert f"{row.first} to {row.last}" in work
        assert f"About {row.minutes} minutes" in work
        assert row.text in work
    assert "1 setting, no heavy lift" in work
    assert "2 settings, 1 for two people" in work


def test_a_thick_rule_ends_the_row_after_which_the_work_can_be_left() -> None:
    pages = [page for page in make_pages(PLAN, A4) if page.title.startswith("Sheet 1")]
    thick = [
        shape
        for page in pages
        for shape in page.shapes
        if isinstance(shape, Line) and shape.kind is LineKind.STOP
    ]
    assert len(thick) == len(PLAN.workshop.sessions) - 1
    (page,) = (page for page in pages if thick[0] in page.shapes)
    numbers = {
        int(shape.words): shape.y
        for shape in page.shapes
        if isinstance(shape, Text)
        and shape.role is Role.CUT_NUMBER
        and shape.height == 10.0
        and shape.x < 30.0
        and shape.y > thick[0].y1 - 60.0
    }
    assert numbers[5] < thick[0].y1 < numbers.get(6, page.height_mm)
    words = " ".join(said((page,), page.title) for page in pages)
    assert "STOP HERE. Session 1 is over." in words
    assert "Session 2 is over." not in words
    assert "Now all 4 parts of cabinet A are there." in words
    assert "Write TEST S1 on it." in words


def test_the_parts_list_says_when_a_cabinet_is_whole_and_has_room_for_where_it_is_kept() -> None:
    listed = said(make_pages(PLAN, A4), "Parts")
    assert "A: 4 parts off sheet 1, complete after cut 1.5. Stack, from the top:" in listed
    assert listed.count("kept at") == 2


def test_the_last_page_says_what_a_spoilt_part_can_become() -> None:
    last = said(make_pages(PLAN, A4), "Offcuts and log")
    assert "A1, B1: Side, 600 × 380" in last
    assert "1 × Brace 380 × 80" in last


def test_the_shopping_list_compares_the_ways_to_buy() -> None:
    shopping = said(make_pages(PLAN, A4), "Shopping list")
    for text in ("148.50", "if there is no birch 18 half: sheets 144.00", "left over: 600 × 300"):
        assert text in shopping
    alone = replace(PLAN, shopping=replace(PLAN.shopping, ways=PLAN.shopping.ways[:1]))
    assert "Ways to buy" not in said(make_pages(alone, A4), "Shopping list")


def test_a_plan_without_sessions_has_no_order_of_work() -> None:
    pages = make_pages(two_bass_cabinets_plan(), A4)
    assert said(pages, "Order of work") == ""
    assert not any(
        isinstance(shape, Line) and shape.kind is LineKind.STOP
        for page in pages
        for shape in page.shapes
    )
