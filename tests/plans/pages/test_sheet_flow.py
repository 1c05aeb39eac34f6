"""What goes on which page of a sheet, and how large its drawing is for that."""

import pytest

from nesting.lengths import Unit
from plans.pages.blocks import Block
from plans.pages.cut_rows import columns, table_head, table_rows
from plans.pages.drawing_choice import LEAST_SHARE, ROWS_WANTED, choose_drawing
from plans.pages.frame import body_room
from plans.pages.lettering import NOTE, paragraph
from plans.pages.paper import A4, LETTER, Paper
from plans.pages.shapes import Role, Text
from plans.pages.sheet_bodies import fill_pages
from plans.pages.sheet_drawing import size_of_drawing
from plans.pages.sheet_facts import say_why
from plans.pages.sheet_flow import (
    ReasonPlace,
    SheetBlocks,
    plan_pages,
    warning_below,
    warning_beside,
)
from plans.sections.sheet_view import SheetView
from tests.plans.pages.plan_samples import random_sheet, two_bass_cabinets

FACTS = 16.0
WARNING = "Glasses, ears, mask, extraction. " * 10


def blocks(view: SheetView, paper: Paper = A4, foot: float = 40.0) -> SheetBlocks:
    """Return what stands on a sheet's pages, with a foot of lines of about such a height."""
    place = columns(Unit.MM, paper.body_width)
    line = paragraph("P1 1210 = 600 + 2.4 + 607.6 left", paper.body_width)
    return SheetBlocks(
        view=view,
        facts=Block(height=FACTS),
        warning=WARNING,
        head=table_head(place),
        rows=table_rows(view.rows, place),
        why=say_why(view),
        foot=(line,) * round(foot / line.height),
        said="",
        width=paper.body_width,
        first_width=paper.body_width,
        first_room=body_room(paper),
        room=body_room(paper),
        is_turned=False,
    )


def tallest(sheet: SheetBlocks, paper: Paper) -> float:
    room = body_room(paper) - FACTS - warning_below(sheet).height
    return size_of_drawing(sheet.view, paper.body_width, room)[1]


@pytest.mark.parametrize("paper", [A4, LETTER])
@pytest.mark.parametrize("foot", [0.0, 20.0, 45.0, 70.0, 95.0])
def test_as_many_pages_are_filled_as_were_reckoned(paper: Paper, foot: float) -> None:
    for seed in range(6):
        sheet = blocks(random_sheet(seed, 10), paper, foot)
        for height in (70.0, 90.0, 110.0):
            plan = plan_pages(sheet, height)
            bodies = fill_pages(sheet, Block(height=height))
            assert len(bodies) == plan.page_count
            assert sum(plan.counts) == len(sheet.rows)
            assert all(body.height <= body_room(paper) + 1e-6 for body in bodies)


@pytest.mark.parametrize("paper", [A4, LETTER])
@pytest.mark.parametrize("foot", [20.0, 45.0, 70.0])
def test_a_drawing_is_smaller_only_for_a_page_less_or_for_enough_rows(
    paper: Paper, foot: float
) -> None:
    smaller = 0
    for seed in range(8):
        sheet = blocks(random_sheet(seed, 10), paper, foot)
        drawing = choose_drawing(sheet)
        most = tallest(sheet, paper)
        if drawing.block.height > most - 1e-6:
            continue
        smaller += 1
        chosen, largest = (plan_pages(sheet, height) for height in (drawing.block.height, most))
        assert chosen.page_count < largest.page_count or largest.counts[0] < ROWS_WANTED
        assert chosen.page_count <= largest.page_count
        assert drawing.block.height >= LEAST_SHARE * most - 1e-6
        lettering = [shape for shape in drawing.block.shapes if isinstance(shape, Text)]
        assert drawing.unlettered == ()
        assert min(text.height for text in lettering) >= NOTE
    assert smaller


def test_the_reason_stands_once_wherever_it_takes_no_page_of_its_own() -> None:
    view = two_bass_cabinets()
    places = set()
    for paper in (A4, LETTER):
        for foot in range(0, 120, 5):
            sheet = blocks(view, paper, foot)
            places.add(plan_pages(sheet, 90.0).reason_place)
            said = [
                shape.words
                for body in fill_pages(sheet, Block(height=90.0))
                for shape in body.shapes
                if isinstance(shape, Text) and shape.role is Role.NOTE
            ]
            assert " ".join(said).count("Why this order") == 1
    assert ReasonPlace.BESIDE_COPY in places


def test_the_cautions_stand_beside_a_drawing_that_leaves_them_room() -> None:
    sheet = blocks(two_bass_cabinets())
    assert warning_beside(sheet, 100.0) is None
    beside = warning_beside(sheet, 75.0)
    assert beside is not None
    start, words = beside
    drawn, _ = size_of_drawing(sheet.view, A4.body_width, 75.0)
    assert drawn < start
    assert words.height <= 75.0
    for height in (100.0, 75.0):
        first, *_ = fill_pages(sheet, Block(height=height))
        said = [
            shape for shape in first.shapes if isinstance(shape, Text) and "Glasses" in shape.words
        ]
        assert {shape.x for shape in said} == {start if height == 75.0 else 0.0}
