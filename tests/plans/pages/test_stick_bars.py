"""Sticks as bars: what is drawn adds up to the stick, to scale, waste hatched."""

from dataclasses import replace

import pytest

from nesting.lengths import mm
from plans.pages.shapes import Hatch, LineKind, Rectangle, Text
from plans.pages.stick_bars import COUNT, HIGH, stick_bars
from plans.sections.battens import BattenSection, StickPlan

WIDTH = 186.0
STICK = StickPlan(
    count=4,
    timber="pine 20 × 30",
    length=mm(2400),
    trim=mm(5),
    kerf=mm("2.4"),
    pieces=(mm("827.5"), mm("827.5"), mm("447.5")),
    texts=("827.5", "827.5", "447.5"),
    left="280.3",
)
SECTION = BattenSection(
    section="20 × 30 mm", pieces=("8 × 827.5: upright",), sticks=(STICK,), buy=(), verdict="",
    total="",
)  # fmt: skip


def shapes_of(section: BattenSection) -> list[object]:
    return [shape for block in stick_bars(section, WIDTH) for shape in block.shapes]


def test_pieces_are_drawn_to_scale_one_kerf_apart() -> None:
    drawn = [one for one in shapes_of(SECTION) if isinstance(one, Rectangle)]
    (whole,) = [one for one in drawn if one.kind is LineKind.SHEET_EDGE]
    pieces = [one for one in drawn if one.kind is LineKind.CUT]
    scale = whole.width / 2400
    assert [one.width / scale for one in pieces] == pytest.approx([827.5, 827.5, 447.5])
    starts = [(one.x - whole.x) / scale for one in pieces]
    assert starts == pytest.approx([5.0, 5 + 827.5 + 2.4, 5 + 2 * (827.5 + 2.4)])
    assert whole.x + whole.width <= WIDTH


def test_what_is_left_is_hatched_up_to_the_end_of_the_stick() -> None:
    shapes = shapes_of(SECTION)
    (whole,) = [
        one for one in shapes if isinstance(one, Rectangle) and one.kind is LineKind.SHEET_EDGE
    ]
    rest = [one for one in shapes if isinstance(one, Hatch)][-1]
    scale = whole.width / 2400
    # 2400 - 5 - 2 × 827.5 - 447.5 - 3 × 2.4 = 285.3; the far trim of 5 is part of the waste
    assert rest.width / scale == pytest.approx(285.3)
    assert rest.x + rest.width == pytest.approx(whole.x + whole.width)


def test_the_sum_in_words_is_that_of_the_stick() -> None:
    words = [one.words for one in shapes_of(SECTION) if isinstance(one, Text)]
    assert "4 ×" in words
    assert "pine 20 × 30: trim the end, then 827.5, 827.5, 447.5; 280.3 is left." in words


def test_a_figure_that_does_not_fit_its_piece_stands_in_the_words_alone() -> None:
    short = replace(STICK, pieces=(mm(30),), texts=("30",), left="2362.6")
    texts = [one for one in shapes_of(replace(SECTION, sticks=(short,))) if isinstance(one, Text)]
    assert not [one for one in texts if one.words == "30"]
    assert any("then 30; 2362.6 is left." in one.words for one in texts)


def test_sticks_of_two_lengths_share_one_scale() -> None:
    half = replace(STICK, length=mm(1200), pieces=(mm(800),), texts=("800",))
    bars = [
        one.width
        for one in shapes_of(replace(SECTION, sticks=(STICK, half)))
        if isinstance(one, Rectangle) and one.kind is LineKind.SHEET_EDGE
    ]
    assert bars == pytest.approx([WIDTH - COUNT - 1.0, (WIDTH - COUNT - 1.0) / 2])
    assert HIGH > 5.0  # room for a figure that is used at the saw
