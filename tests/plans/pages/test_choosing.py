"""Some pages only, which keep their numbers."""

import pytest

from nesting.errors import InputError
from plans.pages.blocks import Block, Section
from plans.pages.choosing import check_page_names, choose_pages
from plans.pages.frame import body_room, number_pages, share_pages
from plans.pages.pages import make_pages
from plans.pages.paper import A4
from plans.pages.shapes import Line, LineKind, Text
from tests.plans.pages.plan_samples import random_plan

SHAPE = Line(x1=0, y1=0, x2=1, y2=0, kind=LineKind.RULE)
PAGES = make_pages(random_plan(1, (5,) * 11), A4)


def titles(wanted: str) -> list[str]:
    found = choose_pages(PAGES, wanted)
    return list(dict.fromkeys(page.title.split(",")[0].split("; ")[0] for page in found))


def test_names_pick_all_pages_that_bear_them() -> None:
    assert titles("labels, overview") == ["Overview", "Labels"]
    assert titles("sheets") == [f"Sheet {number}" for number in range(1, 12)]


def test_one_sheet_is_not_taken_for_another() -> None:
    assert titles("sheet 1") == ["Sheet 1"]
    assert titles("Sheet 11") == ["Sheet 11"]


def test_numbers_and_ranges_pick_pages_as_they_are_numbered() -> None:
    assert choose_pages(PAGES, "2,4-6") == (PAGES[1], *PAGES[3:6])
    said = [text.words for text in choose_pages(PAGES, "4")[0].shapes if isinstance(text, Text)]
    assert any(f"page 4 of {len(PAGES)}" in words for words in said)


@pytest.mark.parametrize("wanted", ["lables", "0", "999", "", "labels,,sheets"])
def test_what_stands_for_no_page_is_refused_with_the_names_there_are(wanted: str) -> None:
    with pytest.raises(InputError, match="sheets, parts, labels"):
        choose_pages(PAGES, wanted)


@pytest.mark.parametrize("wanted", ["lables", "0", "8-5", "", "labels,,sheets", "sheet two"])
def test_what_no_plan_can_have_is_refused_before_the_search(wanted: str) -> None:
    with pytest.raises(InputError, match="sheets, read aloud, parts"):
        check_page_names(wanted)


def test_every_page_of_a_plan_can_be_asked_for_before_the_search() -> None:
    for page in PAGES:
        for title in page.title.split("; "):
            check_page_names(title.split(",")[0])
    check_page_names("sheets, Sheet 2, template H1, 3,5-8,999")


def test_short_pages_are_joined_and_answer_to_both_names() -> None:
    room = body_room(A4)
    heights = {"Frame": 0.5, "Assembly": 0.3, "Holes": 0.75}
    sections = [
        Section(title=title, blocks=(Block(height=share * room, shapes=(SHAPE,)),))
        for title, share in heights.items()
    ]
    pages = number_pages(share_pages(sections, A4), random_plan(1, (5,)))
    assert [page.title for page in pages] == ["Frame; Assembly", "Holes"]
    for name in ("frame", "assembly"):
        assert choose_pages(pages, name) == pages[:1]
    said = [text.words for text in pages[0].shapes if isinstance(text, Text)]
    assert said.count("Assembly") == 1
