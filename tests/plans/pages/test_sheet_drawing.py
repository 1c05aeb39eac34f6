import pytest

from plans.pages.boxes import Box, text_box
from plans.pages.frame import body_room
from plans.pages.lettering import BIG, FIGURE, NOTE
from plans.pages.paper import A4
from plans.pages.shapes import Hatch, HatchKind, Line, LineKind, Role, Shape, Solid, Text
from plans.pages.sheet_drawing import Drawing, draw_sheet, draw_small
from plans.pages.sheet_page import choose_paper
from plans.pages.strokes import REFERENCE_GAP
from plans.sections.sheet_view import SheetView
from tests.plans.pages.plan_samples import random_sheet, two_bass_cabinets

VIEW = two_bass_cabinets()
WIDTH, HEIGHT = A4.body_width, 150.0


def draw(view: SheetView = VIEW) -> Drawing:
    return draw_sheet(view, WIDTH, HEIGHT)


def texts(shapes: tuple[Shape, ...], role: Role) -> list[Text]:
    return [shape for shape in shapes if isinstance(shape, Text) and shape.role is role]


def hatches(drawing: Drawing, kind: HatchKind) -> list[Hatch]:
    shapes = drawing.block.shapes
    return [shape for shape in shapes if isinstance(shape, Hatch) and shape.kind is kind]


def test_every_part_offcut_and_cut_is_named_once() -> None:
    shapes = draw().block.shapes
    codes = [text.words for text in texts(shapes, Role.CODE)]
    numbers = [text.words for text in texts(shapes, Role.CUT_NUMBER)]
    offcuts = [rest.code for rest in VIEW.rests if rest.is_offcut]
    assert sorted(codes) == sorted([part.code for part in VIEW.parts] + offcuts)
    assert sorted(numbers) == sorted(cut.number for cut in VIEW.cuts)
    assert draw().unlettered == ()


def test_codes_are_ten_millimetres_where_their_part_has_room() -> None:
    # A 600 x 380 side is 43 x 27 mm on this drawing; a 464.5 x 80 brace is 5.7 mm high.
    heights = {text.words: text.height for text in texts(draw().block.shapes, Role.CODE)}
    assert {heights[code] for code in ("A1", "A2", "A3", "A4", "B1", "B2", "C1", "D1")} == {BIG}
    assert heights["E1"] == heights["E2"] == FIGURE


def test_a_part_too_small_for_its_code_has_a_leader_that_starts_in_it() -> None:
    drawing = draw()
    leaders = [
        shape
        for shape in drawing.block.shapes
        if isinstance(shape, Line) and shape.kind is LineKind.LEADER
    ]
    parts = hatches(drawing, HatchKind.PART)
    small = [part for part in parts if part.height < FIGURE + 1.5]
    assert len(small) == 2
    for part in small:
        box = Box(part.x, part.y, part.x + part.width, part.y + part.height)
        starts = [line for line in leaders if box.holds(Box(line.x1, line.y1, line.x1, line.y1))]
        assert starts
        # Never along a cut, so that it is never taken for one.
        assert all(line.x1 != line.x2 and line.y1 != line.y2 for line in starts)


def test_areas_lie_to_scale() -> None:
    drawing = draw()
    a1 = hatches(drawing, HatchKind.PART)[0]
    assert a1.width / a1.height == pytest.approx(600 / 380)
    sheet_length = (a1.width / 600) * 2440
    assert sheet_length == pytest.approx(WIDTH - 14.0)
    assert {hatch.kind for hatch in drawing.block.shapes if isinstance(hatch, Hatch)} == {
        HatchKind.PART,
        HatchKind.WASTE,
        HatchKind.OFFCUT,
    }


def test_a_number_stands_in_a_gap_of_its_own_line() -> None:
    shapes = draw().block.shapes
    number = next(text for text in texts(shapes, Role.CUT_NUMBER) if text.words == "3")
    box = text_box(number)
    middle = (box.left + box.right) / 2
    pieces = [
        shape
        for shape in shapes
        if isinstance(shape, Line)
        and shape.kind is LineKind.CUT
        and shape.x1 == shape.x2 == pytest.approx(middle)
    ]
    assert len(pieces) == 2
    ends = sorted((min(piece.y1, piece.y2), max(piece.y1, piece.y2)) for piece in pieces)
    assert ends[0][1] < box.top
    assert ends[1][0] > box.bottom


@pytest.mark.parametrize(("home", "seed"), [("top left", 4), ("bottom left", 1)])
def test_the_reference_edges_meet_in_the_home_corner(home: str, seed: int) -> None:
    view = random_sheet(seed, 10)
    assert view.home == home
    shapes = draw_sheet(view, WIDTH, HEIGHT).block.shapes
    edges = [
        shape
        for shape in shapes
        if isinstance(shape, Line) and shape.kind is LineKind.REFERENCE_EDGE
    ]
    lefts = [line for line in edges if line.x1 == line.x2]
    levels = [line for line in edges if line.y1 == line.y2]
    assert {line.x1 for line in lefts} == {min(line.x1 for line in edges)}
    down = [max(line.y1, line.y2) for line in lefts]
    up = [min(line.y1, line.y2) for line in lefts]
    corner = min(up) if home == "top left" else max(down)
    assert all(line.y1 == pytest.approx(corner, abs=REFERENCE_GAP) for line in levels)
    bars = [shape for shape in shapes if isinstance(shape, Solid) and len(shape.points) == 4]
    assert any(abs(y - corner) < 5 for bar in bars for _, y in bar.points)


def test_a_sheet_with_grain_has_an_arrow_in_every_part_with_room() -> None:
    arrows = [
        shape
        for shape in draw().block.shapes
        if isinstance(shape, Line) and shape.kind is LineKind.GRAIN
    ]
    assert len(arrows) >= 10
    assert all(line.y1 == line.y2 for line in arrows)


def test_the_small_copy_draws_only_its_own_cuts_heavy() -> None:
    block = draw_small(VIEW, 84.0, 52.0, frozenset({"3", "4"}))
    heavy = [
        shape
        for shape in block.shapes
        if isinstance(shape, Line) and shape.kind is LineKind.NEXT_CUT
    ]
    assert len(heavy) == 2
    assert block.height <= 52.0
    codes = {text.words for text in texts(block.shapes, Role.CODE)}
    assert {"A1", "B2", "C1", "L2"} <= codes
    assert min(text.height for text in texts(block.shapes, Role.CODE)) >= NOTE


@pytest.mark.parametrize("count", [1, 8, 25, 60])
def test_crowded_sheets_keep_every_code_and_number_legible(count: int) -> None:
    for seed in range(3):
        view = random_sheet(seed, count)
        paper = choose_paper(view, A4)
        drawing = draw_sheet(view, paper.body_width, body_room(paper) - 14.0)
        shapes = drawing.block.shapes
        leaders = sum(isinstance(shape, Line) and shape.kind is LineKind.LEADER for shape in shapes)
        small = [
            text
            for text in (*texts(shapes, Role.CODE), *texts(shapes, Role.CUT_NUMBER))
            if text.height < FIGURE
        ]
        assert drawing.unlettered == ()
        assert len(small) <= leaders
        assert all(text.height >= NOTE for text in small)
