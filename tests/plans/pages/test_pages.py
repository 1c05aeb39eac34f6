import time
from dataclasses import replace

import pytest

from nesting.lengths import Unit
from plans.pages.clashes import find_clashes
from plans.pages.pages import make_pages
from plans.pages.paper import A4, LETTER, Paper
from plans.pages.shapes import Page, Role, Text, TickBox
from plans.writers.pdf import write_pdf
from tests.plans.pages.plan_samples import (
    make_sample_plan,
    random_plan,
    random_sheet,
    two_bass_cabinets_plan,
)

PLAN = two_bass_cabinets_plan()


def words(page: Page) -> list[str]:
    return [shape.words for shape in page.shapes if isinstance(shape, Text)]


def said(pages: tuple[Page, ...], title: str) -> str:
    return " ".join(text for page in called(pages, title) for text in words(page))


def called(pages: tuple[Page, ...], title: str) -> list[Page]:
    return [page for page in pages if title in page.title.split("; ")]


def test_pages_come_in_the_order_of_their_use() -> None:
    titles = [title for page in make_pages(PLAN, A4) for title in page.title.split("; ")]
    firsts = list(dict.fromkeys(titles))
    assert firsts[:6] == [
        "Overview",
        "Numbers to check",
        "Shopping list",
        "Safety",
        "Setting up",
        "Sheet 1",
    ]
    assert firsts[-3:] == ["Parts", "Labels", "Offcuts and log"]
    assert titles.index("Safety") < titles.index("Sheet 1")


@pytest.mark.parametrize("paper", [A4, LETTER])
def test_every_page_stands_alone(paper: Paper) -> None:
    pages = make_pages(PLAN, paper)
    for number, page in enumerate(pages, start=1):
        assert f"plan {PLAN.fingerprint} page {number} of {len(pages)}" in words(page)
        assert PLAN.job_name in words(page)
        assert page.title in words(page)
        assert all(title in words(page) for title in page.title.split("; ")[1:])
        assert {page.width_mm, page.height_mm} == {paper.width_mm, paper.height_mm}


def test_the_overview_says_what_the_plan_rests_on() -> None:
    pages = make_pages(PLAN, A4)
    overview, numbers = said(pages, "Overview"), said(pages, "Numbers to check")
    for line in (*PLAN.overview.what, *PLAN.overview.figures, PLAN.overview.bound_text):
        assert line in overview
    for line in (*PLAN.overview.warnings, *PLAN.overview.unplaced, *PLAN.overview.questions):
        assert line in overview
    for word, meaning in PLAN.overview.legend:
        assert word in overview
        assert meaning in overview
    for number in PLAN.overview.assumed:
        origin = f"{number.name} (default)" if number.origin == "default" else number.name
        for text in (origin, number.value, number.check):
            assert text in numbers


def test_the_shopping_list_prices_and_counts_the_sheets() -> None:
    shopping = said(make_pages(PLAN, A4), "Shopping list")
    line = PLAN.shopping.sheets[0]
    for text in ("1 ×", line.material, line.size, line.grain_text, "62.00 each", "total 62.00"):
        assert text in shopping
    for card in PLAN.shopping.card:
        assert card in shopping


def test_the_safety_page_says_every_note_in_full_and_who_decides() -> None:
    safety = said(make_pages(PLAN, A4), "Safety")
    for caution in PLAN.cautions:
        assert caution.full in safety
        assert f"Ask: {caution.defer_to}." in safety


def test_the_set_up_page_gives_a_square_corner_in_the_unit_of_the_plan() -> None:
    # 3-4-5 and its multiples have a square corner: 600² + 800² = 1000², 18² + 24² = 30².
    assert 600**2 + 800**2 == 1000**2
    assert 18**2 + 24**2 == 30**2
    metric = said(make_pages(PLAN, A4), "Setting up")
    inches = said(make_pages(random_plan(2, (4,)), A4), "Setting up")
    assert "600, 800 and 1000 mm" in metric
    assert "18, 24 and 30 in" in inches
    assert " mm" not in inches.replace("100 mm", "")


def test_every_part_has_a_row_with_four_boxes_to_tick() -> None:
    pages = called(make_pages(PLAN, A4), "Parts")
    shapes = [shape for page in pages for shape in page.shapes]
    codes = [shape.words for shape in shapes if isinstance(shape, Text) and shape.role is Role.CODE]
    assert sorted(codes) == sorted(part.code for part in PLAN.parts)
    assert sum(isinstance(shape, TickBox) for shape in shapes) == 4 * len(PLAN.parts)
    listed = said(tuple(pages), "Parts")
    assert "MEASURE FIRST" in listed
    assert "≠ B1" in listed


def test_labels_come_in_order_with_all_they_must_carry() -> None:
    pages = [page for page in make_pages(PLAN, A4) if page.title == "Labels"]
    texts = [shape for page in pages for shape in page.shapes if isinstance(shape, Text)]
    codes = [text.words for text in texts if text.role is Role.CODE]
    assert codes == [label.code for label in PLAN.labels]
    assert all(text.height >= 10 for text in texts if text.role is Role.CODE)
    listed = " ".join(text.words for text in texts)
    label = PLAN.labels[0]
    for text in (label.name, label.size, label.grain, label.face, label.copy, label.origin):
        assert text in listed
    assert listed.count(f"plan {PLAN.fingerprint}") >= len(PLAN.labels)
    assert "UP" in listed
    assert "rebate the front edge" in listed


def test_the_last_page_lists_what_is_left_and_has_lines_to_write_on() -> None:
    last = make_pages(PLAN, A4)[-1]
    listed = " ".join(words(last))
    for row in PLAN.offcuts:
        assert row.code in words(last)
        assert row.size in words(last)
    assert "could become A1, A2 again" in listed
    assert "What went wrong" in listed


@pytest.mark.parametrize("unit", [Unit.MM, Unit.INCH])
def test_grain_stands_in_words_on_every_sheet_part_and_label(unit: Unit) -> None:
    plan = random_plan(3 if unit is Unit.MM else 4, (6,))
    pages = make_pages(plan, A4)
    assert plan.sheets[0].grain_text in said(pages, "Sheet 1")
    assert said(pages, "Parts").count("rain along the") == len(plan.parts)
    assert said(pages, "Labels").count("grain a") == len(plan.labels)


def test_no_page_speaks_of_centimetres() -> None:
    for page in make_pages(PLAN, A4):
        said_here = {word for text in words(page) for word in text.split()}
        assert not said_here & {"cm", "centimetres"}


def test_the_same_plan_gives_the_same_pages() -> None:
    assert make_pages(PLAN, A4) == make_pages(two_bass_cabinets_plan(), A4)


@pytest.mark.parametrize("paper", [A4, LETTER])
@pytest.mark.parametrize("seed", [1, 2])
def test_nothing_stands_in_the_way_of_anything(seed: int, paper: Paper) -> None:
    plan = random_plan(seed, (5, 24), job_name="Ein sehr langer Name einer Arbeit " * 4)
    for page in make_pages(plan, paper):
        assert find_clashes(page) == ()


def test_a_plan_of_one_uncut_sheet_still_prints() -> None:
    plan = make_sample_plan((random_sheet(5, 1),))
    for page in make_pages(plan, A4):
        assert find_clashes(page) == ()


@pytest.mark.slow
def test_five_hundred_parts_stay_below_two_hundred_pages_and_twenty_megabytes() -> None:
    kinds = [random_sheet(seed, 17, unit=Unit.MM) for seed in range(3)]
    sheets = tuple(replace(kinds[place % 3], number=place + 1) for place in range(30))
    plan = make_sample_plan(sheets)
    assert len(plan.parts) >= 500
    start = time.perf_counter()
    pages = make_pages(plan, A4)
    content = write_pdf(pages)
    assert len(pages) < 200
    assert len(content) < 20_000_000
    assert time.perf_counter() - start < 30
