import pytest

from nesting.lengths import Unit, mm
from plans.pages.blocks import Block
from plans.pages.frame import Draft, body_room
from plans.pages.paper import A4, LETTER, Paper
from plans.pages.shapes import Line as LineShape
from plans.pages.shapes import LineKind, Role, Text
from plans.pages.sheet_page import choose_paper, sheet_pages
from plans.sections.repeats import Repeat
from plans.sections.sheet_view import SheetView
from tests.plans.pages.plan_samples import (
    CAUTION,
    Leaf,
    cross,
    make_sheet,
    random_sheet,
    rip,
    trimmed,
    two_bass_cabinets,
)

VIEW = two_bass_cabinets()


def drafts(view: SheetView = VIEW, paper: Paper = A4) -> tuple[Draft, ...]:
    unit = Unit.INCH if "/" in view.measured else Unit.MM
    return sheet_pages(Repeat(view=view, numbers=(view.number,)), unit, (CAUTION,), paper)


def words(block: Block, role: Role | None = None) -> list[str]:
    return [
        shape.words
        for shape in block.shapes
        if isinstance(shape, Text) and role in (None, shape.role)
    ]


@pytest.mark.parametrize("paper", [A4, LETTER])
def test_the_drawing_and_the_first_cuts_stand_on_one_page(paper: Paper) -> None:
    first = drafts(paper=paper)[0]
    keeps = words(first.body, Role.KEEP)
    assert len(keeps) >= 6
    assert "A1" in words(first.body, Role.CODE)
    assert first.paper == paper


@pytest.mark.parametrize("paper", [A4, LETTER])
@pytest.mark.parametrize("seed", range(3))
def test_every_cut_has_its_row_once_and_no_page_overflows(seed: int, paper: Paper) -> None:
    view = random_sheet(seed, 20)
    pages = drafts(view, paper)
    assert all(page.body.height <= body_room(page.paper) + 1e-6 for page in pages)
    tall = [
        shape
        for page in pages
        for shape in page.body.shapes
        if isinstance(shape, Text) and shape.role is Role.KEEP
    ]
    tokens = [token for row in view.rows for token in row.keep.split(" ")]
    assert sorted(text.words for text in tall) == sorted(tokens)


def test_a_page_says_what_holds_for_its_sheet() -> None:
    for page in drafts():
        said = " ".join(words(page.body))
        if "KEEP" in said:
            assert VIEW.face_text in said
            assert VIEW.home_text in said
    first = " ".join(words(drafts()[0].body))
    assert VIEW.grain_text in first
    assert "measured 17.7" in first
    assert "36.7 kg" in first
    assert CAUTION.short in first


def test_further_pages_carry_a_small_copy_with_their_own_cuts_heavy() -> None:
    for page in drafts()[1:]:
        if not words(page.body, Role.KEEP):
            continue
        heavy = [
            shape
            for shape in page.body.shapes
            if isinstance(shape, LineShape) and shape.kind is LineKind.NEXT_CUT
        ]
        assert heavy
        assert "B1" in words(page.body, Role.CODE)


def test_the_sums_the_flags_and_the_reason_stand_at_the_foot() -> None:
    said = " ".join(text for page in drafts() for text in words(page.body))
    for line in VIEW.sums:
        assert line.text in said
        assert f"slack {line.slack}" in said
    # Once for each tight row, and once more in what to do about it.
    assert said.count("TIGHT") == sum(line.is_tight for line in VIEW.sums) + 1
    assert "Why this order" in said
    assert f"{VIEW.why} About {VIEW.minutes} minutes." in said


def test_a_crowded_long_sheet_is_turned_and_its_table_stands_upright() -> None:
    view = random_sheet(1, 40)
    assert view.length > view.width
    pages = drafts(view)
    assert pages[0].paper.width_mm > pages[0].paper.height_mm
    assert all(page.paper == A4 for page in pages[1:])
    assert words(pages[0].body, Role.KEEP) == []


def test_a_tall_sheet_is_never_turned() -> None:
    view = random_sheet(6, 40)
    assert view.length < view.width
    assert choose_paper(view, A4) == A4


@pytest.mark.parametrize("paper", [A4, LETTER])
@pytest.mark.parametrize("count", [8, 25, 60])
def test_the_short_cautions_stand_on_the_first_page_and_only_there(
    count: int, paper: Paper
) -> None:
    for seed in range(3):
        first, *later = drafts(random_sheet(seed, count), paper)
        assert CAUTION.short in " ".join(words(first.body))
        assert CAUTION.short not in " ".join(text for page in later for text in words(page.body))


def test_a_few_cuts_their_sums_and_supports_stand_on_the_page_of_the_drawing() -> None:
    tree = trimmed(cross("600", rip("380", Leaf(code="A1"), Leaf()), Leaf(code="L1")))
    view = make_sheet(tree, mm(2440), mm(1220))
    (page,) = drafts(view)
    said = " ".join(words(page.body))
    assert "What each piece adds up to" in said
    assert "Why this order" in said
