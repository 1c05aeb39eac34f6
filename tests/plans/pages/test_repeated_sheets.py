"""Sheets that are cut alike are printed once, with a box for each in every row."""

import re

import pytest

from nesting.lengths import Unit
from plans.pages.clashes import find_clashes
from plans.pages.pages import make_pages
from plans.pages.paper import A4
from plans.pages.shapes import Page, Role, Text, TickBox
from tests.plans.pages.plan_samples import make_sample_plan, random_sheet

KIND = random_sheet(3, 6, unit=Unit.MM)


def sheet_pages(count: int) -> list[Page]:
    views = tuple(random_sheet(3, 6, number, Unit.MM) for number in range(1, count + 1))
    return [page for page in make_pages(make_sample_plan(views), A4) if "Sheet" in page.title]


@pytest.mark.parametrize("count", [2, 3, 7, 14])
def test_every_row_has_a_box_for_every_sheet(count: int) -> None:
    pages = sheet_pages(count)
    shapes = [shape for page in pages for shape in page.shapes]
    assert pages[0].title == f"Sheet 1 × {count}"
    assert sum(isinstance(shape, TickBox) for shape in shapes) == count * len(KIND.rows)
    keeps = [shape for shape in shapes if isinstance(shape, Text) and shape.role is Role.KEEP]
    assert len(keeps) == sum(len(row.keep.split(" ")) for row in KIND.rows)
    for page in pages:
        assert find_clashes(page) == ()


def test_sheets_that_differ_are_printed_each() -> None:
    pages = make_pages(make_sample_plan((KIND, random_sheet(4, 6, 2, Unit.MM))), A4)
    titles = {page.title for page in pages}
    assert {"Sheet 1", "Sheet 2"} <= titles


@pytest.mark.parametrize("count", [1, 2, 3, 14, 40])
def test_the_first_of_three_or_more_is_measured_and_every_sheet_initialled(count: int) -> None:
    pages = sheet_pages(count)
    said = [shape.words for page in pages for shape in page.shapes if isinstance(shape, Text)]
    title = f"First of {count}: measure sheet 1 before the others"
    if count < 3:
        assert title not in said
        return
    assert title in said
    read = [words for words in said if re.fullmatch(r"sheet [0-9]+", words)]
    assert read[0] == "sheet 1"
    assert len(read) <= 4
    assert {"3": 1, "14": 3, "40": 4}[str(count)] == len(read)
    start = said.index("Initials, sheet by sheet, once all its parts are labelled:")
    assert [words for words in said[start + 1 :] if words.isdigit()][:count] == [
        str(number) for number in range(1, count + 1)
    ]
    kinds = {(part.name, part.blank) for part in KIND.parts}
    together = " ".join(said)  # lines that are wrapped
    for name, blank in kinds:
        assert name in together
        assert blank in together
    for page in pages:
        assert find_clashes(page) == ()
