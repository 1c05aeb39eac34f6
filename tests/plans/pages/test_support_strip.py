"""The small drawings at the foot: one for each setting, its battens clear of its cut."""

from dataclasses import replace
from math import ceil

from plans.pages.boxes import Box
from plans.pages.fonts import text_width
from plans.pages.lettering import NOTE
from plans.pages.paper import A4
from plans.pages.shapes import Line, LineKind, Rectangle, Role, Shape, Text
from plans.pages.support_strip import BETWEEN, MOST, per_row, support_strip
from plans.sections.sheet_view import SheetView, make_sheet_view
from tests.nesting.hand_made import two_cabinets
from tests.plans.sections.helpers import worked_out


def view() -> SheetView:
    job, layout = two_cabinets()
    return make_sheet_view(job, worked_out(job, layout).sheets[0])


def shapes() -> list[Shape]:
    return [shape for block in support_strip(view(), 188.0) for shape in block.shapes]


def lines(kind: LineKind) -> list[Line]:
    return [shape for shape in shapes() if isinstance(shape, Line) and shape.kind is kind]


def test_every_setting_with_battens_has_one_drawing() -> None:
    with_battens = {
        row.setting for row, cut in zip(view().rows, view().cuts, strict=True) if cut.supports
    }
    pieces = [shape for shape in shapes() if isinstance(shape, Rectangle)]
    assert len(with_battens) > 1
    assert len(pieces) == len(lines(LineKind.NEXT_CUT)) == len(with_battens)
    numbers = [text for text in shapes() if isinstance(text, Text) and text.role is Role.CUT_NUMBER]
    assert len(numbers) == len(with_battens)


def test_a_cut_lies_within_its_piece_and_battens_run_along_it() -> None:
    pieces = [shape for shape in shapes() if isinstance(shape, Rectangle)]
    for piece, cut in zip(pieces, lines(LineKind.NEXT_CUT), strict=True):
        box = Box(piece.x, piece.y, piece.x + piece.width, piece.y + piece.height).grown(1e-6)
        assert box.holds(Box(cut.x1, cut.y1, cut.x2, cut.y2))
    battens = lines(LineKind.SUPPORT)
    assert len(battens) >= 2 * len(pieces)
    assert all(line.x1 == line.x2 or line.y1 == line.y2 for line in battens)


def test_a_sheet_without_battens_has_no_strip() -> None:
    bare = replace(view(), cuts=tuple(replace(cut, supports=()) for cut in view().cuts))
    assert support_strip(bare, 188.0) == []


def test_the_numbers_of_two_cuts_fit_above_the_narrowest_drawing() -> None:
    narrowest = (A4.body_width + BETWEEN) / MOST - BETWEEN
    assert all(text_width(f"{n} to {n + 1}", NOTE, bold=True) <= narrowest for n in range(10, 99))


def test_nine_settings_stand_in_one_row() -> None:
    for count, rows in ((8, 1), (9, 1), (10, 2), (16, 2), (17, 2), (18, 2), (19, 3)):
        assert ceil(count / per_row(count)) == rows
