from dataclasses import fields, replace
from decimal import Decimal

import pytest

from nesting.first_cuts import solve_with_yard
from nesting.job import Job
from nesting.lengths import Unit, inch, mm
from nesting.saw import Face
from plans.plan import make_plan
from plans.sections.yard import YardPage, show_at_yard
from tests.nesting.first_cuts.samples import SMALL, YARD, with_car
from tests.nesting.hand_made import part
from tests.plans.yard_plans import half_sheets, narrow_pieces


def pages_of(job: Job) -> tuple[YardPage, ...]:
    return make_plan(job, solve_with_yard(job, effort=0)).yard


def test_a_plan_without_a_yard_has_no_page_for_it() -> None:
    assert pages_of(with_car(yard=None)) == ()


def test_the_page_carries_the_yards_cuts_and_nothing_of_the_parts() -> None:
    job, _, plan = narrow_pieces()
    (page,) = plan.yard
    texts = repr(page)
    assert not any(part.name in texts for part in job.parts)
    assert not any(row.code in texts.replace("'P", "") for row in plan.parts)
    pattern = page.patterns[0]
    yard_rows = [row for row in plan.sheets[0].rows if "YARD" in row.remark]
    assert [cut.number for cut in pattern.cuts] == [row.number for row in yard_rows]
    assert [cut.size for cut in pattern.cuts] == [row.keep for row in yard_rows]
    assert len(pattern.pieces) == len(pattern.cuts) + 1


def test_only_a_cut_of_a_piece_names_the_piece() -> None:
    (page,) = narrow_pieces()[2].yard
    first, second = (cut.text for cut in page.patterns[0].cuts)
    assert first.startswith("CUT 1: ")
    assert " of the piece of " not in first
    assert " of the piece of " in second


def test_what_is_drawn_covers_the_sheet_exactly() -> None:
    (page,) = narrow_pieces()[2].yard
    pattern = page.patterns[0]
    rects = [piece.rect for piece in pattern.pieces] + [cut.line for cut in pattern.cuts]
    assert sum(rect.length * rect.width for rect in rects) == page.length * page.width
    for cut in pattern.cuts:
        kept, line = cut.kept, cut.line
        assert (kept.x + kept.length, kept.y) == (line.x, line.y) or (
            kept.x,
            kept.y + kept.width,
        ) == (line.x, line.y)


def test_with_the_good_face_up_the_kept_piece_lies_below_its_line() -> None:
    job = with_car(car=SMALL)
    job = replace(job, saw=replace(job.saw, marked_face=Face.FRONT))
    (page,) = pages_of(job)
    rip = page.patterns[0].cuts[1]
    assert rip.kept.y == rip.line.y + rip.line.width
    assert "from the bottom edge" in rip.text


def test_how_rough_and_what_it_costs_is_on_the_page() -> None:
    (page,) = half_sheets()[2].yard
    assert page.rough_text == (
        "ROUGH CUTS: 3 mm off either way is fine. Every edge is cut again at home."
    )
    assert page.price_lines == (("1 cut at 2.00", ""), ("in all", "2.00"))
    assert page.total_text == "1 cut in all in 1 sheet"
    assert page.grain_text == "GRAIN RUNS ALONG THE 2440"
    assert page.mass_text == "36.7 kg a sheet: TWO PEOPLE"  # a maker's datasheet, 18 mm birch


def test_a_yard_in_inches_reads_eighths_and_no_other_unit() -> None:
    job = with_car(
        yard=replace(YARD, unit=Unit.INCH, kerf=inch("1/8"), rough=inch("1/8")),
    )
    (page,) = pages_of(job)
    assert page.unit_text == "All sizes in inches"
    texts = [
        str(getattr(page, field.name))
        for field in fields(page)
        if field.name.endswith("_text") or field.name in {"heading", "size"}
    ]
    assert not any(" mm" in text or " cm" in text for text in texts)
    for cut in page.patterns[0].cuts:
        assert cut.kept.length % inch("1/8") == 0
    assert make_plan(job, solve_with_yard(job, effort=0)).unit is Unit.MM


@pytest.mark.parametrize(
    ("length", "unit", "text"),
    [
        (mm("1420.8"), Unit.MM, "1421"),
        (mm("0.4"), Unit.MM, "0"),
        (mm(2440), Unit.INCH, "96 1/8"),  # 2440 / 25.4 = 96.063
        (inch("47 15/16"), Unit.INCH, "48"),
    ],
)
def test_sizes_are_whole_millimetres_or_eighths(length: int, unit: Unit, text: str) -> None:
    assert show_at_yard(length, unit) == text


def test_sheets_cut_alike_share_a_drawing() -> None:
    job = with_car(part("Deck", 1000, 500, 8))
    (page,) = pages_of(job)
    assert sum(pattern.count for pattern in page.patterns) >= 2
    assert page.patterns[0].heading.endswith("sheets, cut like this")
    assert all(
        len(piece.codes) == pattern.count for pattern in page.patterns for piece in pattern.pieces
    )


def test_cuts_whose_price_is_not_known_leave_the_box_empty() -> None:
    (page,) = pages_of(with_car(yard=replace(YARD, price_per_cut=Decimal(0))))
    assert page.price_lines == (("1 cut", ""), ("in all", ""))
