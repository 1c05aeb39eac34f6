from collections.abc import Sequence

import pytest

from plans.pages.boxes import Box, text_box
from plans.pages.shapes import Gap, Hatch, HatchKind, Line, LineKind, Rectangle, Role, Text, TickBox
from plans.pages.strokes import (
    HATCH_PENS,
    PENS,
    Pen,
    Stroke,
    broken,
    strokes_of,
)

PEN = Pen(0.35)


def hatch(kind: HatchKind, gaps: tuple[Gap, ...] = ()) -> tuple[Stroke, ...]:
    return strokes_of(Hatch(x=10.0, y=20.0, width=60.0, height=30.0, kind=kind, gaps=gaps))


def inside(strokes: Sequence[Stroke], box: Box) -> bool:
    return all(
        box.left <= x <= box.right and box.top <= y <= box.bottom
        for stroke in strokes
        for x, y in ((stroke.x1, stroke.y1), (stroke.x2, stroke.y2))
    )


def test_no_line_is_thinner_than_can_be_seen_and_cuts_are_twice_as_thick() -> None:
    # The least thicknesses are those of the page contract (judgement); the series is that of
    # technical drawing: 0.35, 0.5, 0.7, 1.0, 1.4 mm.
    assert min(pen.thickness for pen in (*PENS.values(), *HATCH_PENS.values())) >= 0.35
    assert PENS[LineKind.CUT].thickness >= 0.7
    assert PENS[LineKind.NEXT_CUT].thickness >= 2 * PENS[LineKind.CUT].thickness
    assert {pen.thickness for pen in PENS.values()} <= {0.35, 0.5, 0.7, 1.0, 1.4}


def test_waste_runs_one_way_and_a_defect_both_ways() -> None:
    def slopes(strokes: Sequence[Stroke]) -> set[int]:
        return {
            round((stroke.y2 - stroke.y1) / (stroke.x2 - stroke.x1))
            for stroke in strokes
            if abs(stroke.x2 - stroke.x1) > 1e-6
        }

    assert slopes(hatch(HatchKind.WASTE)) == {-1}
    assert slopes(hatch(HatchKind.DEFECT)) == {-1, 1}


def test_a_part_is_blank_and_an_offcut_is_dotted_inside_its_edge() -> None:
    assert hatch(HatchKind.PART) == ()
    dotted = hatch(HatchKind.OFFCUT)
    assert all(stroke.pen.dashes for stroke in dotted)
    assert inside(dotted, Box(11.0, 21.0, 69.0, 49.0))


def test_no_hatch_leaves_its_area() -> None:
    for kind in HatchKind:
        assert inside(hatch(kind), Box(10.0, 20.0, 70.0, 50.0).grown(1e-9))


def test_a_hatch_leaves_its_gaps_white() -> None:
    gap = Gap(x=30.0, y=25.0, width=12.0, height=8.0)
    inner = Box(30.0, 25.0, 42.0, 33.0).grown(-1e-6)
    for stroke in hatch(HatchKind.WASTE, (gap,)):
        middle = ((stroke.x1 + stroke.x2) / 2, (stroke.y1 + stroke.y2) / 2)
        for x, y in ((stroke.x1, stroke.y1), middle, (stroke.x2, stroke.y2)):
            assert not (inner.left < x < inner.right and inner.top < y < inner.bottom)


def test_a_line_is_interrupted_where_a_number_stands_in_it() -> None:
    line = Stroke(0.0, 5.0, 100.0, 5.0, PEN)
    pieces = broken(line, [Box(40.0, 0.0, 60.0, 10.0), Box(55.0, 0.0, 70.0, 10.0)])
    assert pieces == (Stroke(0.0, 5.0, 40.0, 5.0, PEN), Stroke(70.0, 5.0, 100.0, 5.0, PEN))
    assert broken(line, [Box(40.0, 6.0, 60.0, 10.0)]) == (line,)
    assert broken(line, [Box(-1.0, 0.0, 101.0, 10.0)]) == ()


def test_a_reference_edge_is_two_lines_the_second_outside() -> None:
    first, second = strokes_of(
        Line(x1=10.0, y1=90.0, x2=10.0, y2=10.0, kind=LineKind.REFERENCE_EDGE)
    )
    assert first.x1 == first.x2 == 10.0
    assert second.x1 == second.x2 < 10.0
    top = strokes_of(Line(x1=10.0, y1=10.0, x2=90.0, y2=10.0, kind=LineKind.REFERENCE_EDGE))
    assert top[1].y1 < 10.0


@pytest.mark.parametrize("is_upright", [False, True])
def test_six_and_nine_are_underlined_in_codes_and_nothing_else_is(*, is_upright: bool) -> None:
    def lines(words: str, role: Role) -> int:
        text = Text(x=50, y=50, words=words, height=10.0, role=role, is_upright=is_upright)
        strokes = strokes_of(text)
        assert inside(strokes, text_box(text))
        return len(strokes)

    assert lines("A69", Role.CODE) == 2
    assert lines("16", Role.CUT_NUMBER) == 1
    assert lines("A18", Role.CODE) == 0
    assert lines("690", Role.KEEP) == 0


def test_a_struck_figure_has_one_line_through_its_middle() -> None:
    text = Text(x=0.0, y=10.0, words="318", height=5.0, is_struck=True)
    (line,) = strokes_of(text)
    box = text_box(text)
    assert line.y1 == line.y2 == 7.5
    assert line.x1 < box.left
    assert line.x2 > box.right


def test_boxes_are_closed() -> None:
    for shape in (
        TickBox(x=0, y=0, size=6.5),
        Rectangle(x=0, y=0, width=6.5, height=6.5, kind=LineKind.BOX),
    ):
        strokes = strokes_of(shape)
        ends = [(stroke.x2, stroke.y2) for stroke in strokes]
        starts = [(stroke.x1, stroke.y1) for stroke in strokes]
        assert sorted(ends) == sorted(starts)
        assert len(strokes) == 4
