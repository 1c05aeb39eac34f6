"""The pages of one sheet: the drawing, and below it the cut table.

A page stands upright, so that the drawing and the first cuts are seen together, except where a
sheet holds so many parts that only the longer side of the paper leaves room for their codes; then
it is turned, and the whole table stands on upright pages. What does not fit goes on to further
pages with a small copy of the drawing; nothing is ever shrunk to fit.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from nesting.lengths import Unit
from plans.pages.blocks import Block, space, stack
from plans.pages.cut_rows import NO_NOTES, columns, table_head, table_rows
from plans.pages.first_off import first_off_blocks
from plans.pages.frame import Draft, body_room
from plans.pages.lettering import FIGURE, paragraph
from plans.pages.paper import Paper, turn
from plans.pages.shapes import Line, LineKind, Role, Text
from plans.pages.sheet_drawing import Drawing, draw_sheet, height_of_drawing
from plans.pages.sheet_facts import (
    say_alike,
    say_why,
    sheet_facts,
    sheet_foot,
    short_cautions,
)
from plans.pages.sheet_rest import Rest, count_fitting, fill_pages
from plans.plan import RIGHT_HANDED
from plans.sections.cautions import Caution
from plans.sections.first_off import make_first_off
from plans.sections.handed import Handed
from plans.sections.repeats import Repeat
from plans.sections.sheet_notes import SheetNotes
from plans.sections.sheet_view import SheetView

CROWDED = 18  # parts on a sheet, above which the page is turned
ROWS_WANTED = 5  # under a drawing that is as good a little smaller
LETTERED = (Role.CODE, Role.CUT_NUMBER)
LEAST_DRAWING = 120.0
FEW = 4  # one code or number in so many may be small
FEWEST_ROWS = 3  # under a drawing; fewer would look like the whole table


def sheet_pages(
    repeat: Repeat,
    unit: Unit,
    cautions: Sequence[Caution],
    paper: Paper,
    alike: Mapping[str, tuple[str, ...]] = MappingProxyType({}),
    handed: Handed = RIGHT_HANDED,
    *,
    notes: SheetNotes = NO_NOTES,
) -> tuple[Draft, ...]:
    """Return the pages of one sheet, or of several that are cut alike.

    Args:
        repeat: The sheet.
        unit: Of the plan.
        cautions: Of the plan.
        paper: To print on.
        alike: For every code of a part the codes of those that look like it.
        handed: What depends on the hand that holds the saw.
        notes: Where the work can be left, what is complete, the test piece.
    """
    view = repeat.view
    warned = say_alike(view, alike)
    first_page = choose_paper(view, paper)
    is_turned = first_page != paper
    width, room = paper.body_width, body_room(paper)
    place = columns(unit, width)
    rows = table_rows(view.rows, place, repeat.numbers, handed.columns, notes)
    has_blocks = any(row.blocks for row in view.rows)
    top = table_head(place, repeat.numbers, handed.columns, has_blocks=has_blocks)
    head = replace(stack([space(3.0), top]), is_glued=True)

    facts = sheet_facts(repeat, warned, first_page.body_width)
    warning = short_cautions(cautions, handed, first_page.body_width)
    room_above = body_room(first_page) - facts.height
    above_rows = 0.0 if is_turned else room_above - warning.height - head.height
    drawing = _draw(view, first_page.body_width, room_above, above_rows, rows)
    upper = stack([facts, drawing.block])
    why = say_why(view)
    left = body_room(first_page) - upper.height - warning.height
    count = 0 if is_turned else count_fitting(rows, left - head.height)
    if count < min(FEWEST_ROWS, len(rows)):
        count = 0
    table = [head, *rows[:count]] if count else []
    first = stack([upper, *table, warning] if warning.height <= left else [upper])
    reason = stack([space(1.0), paragraph(why, width)])
    has_reason = first.height + reason.height <= body_room(first_page)
    foot = [
        *sheet_foot(repeat, drawing.unlettered, width),
        *([paragraph(notes.test_piece, width)] if notes.test_piece else []),
        *([short_cautions(cautions, handed, width)] if warning.height > left else []),
        *([reason] if count == len(rows) and not has_reason else []),
        *_measured_first(repeat, width),
    ]
    if has_reason:
        first = stack([first, reason])
    rest = Rest(
        view=view,
        head=head,
        rows=rows,
        foot=tuple(foot),
        width=width,
        room=room,
        said=warned,
        said_once="" if has_reason else why,
    )
    bodies = fill_pages(rest, first, count)
    title = f"Sheet {view.number}" + (f" × {repeat.count}" if repeat.count > 1 else "")
    return tuple(
        Draft(
            title=title if number == 1 else f"{title}, page {number}",
            beside=f"{view.material}, sheet “{view.stock}”" if number == 1 else view.material,
            paper=first_page if number == 1 else paper,
            body=body,
        )
        for number, body in enumerate(bodies, start=1)
    )


def _measured_first(repeat: Repeat, width: float) -> list[Block]:
    """Return room for what is measured of the first of several sheets."""
    first_off = make_first_off(repeat)
    return first_off_blocks(first_off, width) if first_off else []


def _draw(
    view: SheetView, width: float, room: float, above_rows: float, rows: Sequence[Block]
) -> Drawing:
    """Return the drawing of a sheet, smaller for some rows' sake where that costs no lettering."""
    tallest = height_of_drawing(view, width, room)
    for count in range(min(ROWS_WANTED, len(rows)), FEWEST_ROWS - 1, -1):
        height = above_rows - sum(row.height for row in rows[:count])
        if tallest <= height:
            break
        if height >= LEAST_DRAWING:
            smaller = draw_sheet(view, width, height)
            few = (len(view.parts) + len(view.cuts)) // FEW
            is_as_good = not smaller.unlettered and _small_codes(smaller) <= few
            return smaller if is_as_good else draw_sheet(view, width, room)
    return draw_sheet(view, width, room)


def _small_codes(drawing: Drawing) -> int:
    """Return how many codes and numbers are small, or stand beside what they name."""
    return sum(
        (isinstance(shape, Text) and shape.role in LETTERED and shape.height < FIGURE)
        or (isinstance(shape, Line) and shape.kind is LineKind.LEADER)
        for shape in drawing.block.shapes
    )


def _height(rows: Sequence[Block]) -> float:
    return sum(row.height for row in rows)


def choose_paper(view: SheetView, paper: Paper) -> Paper:
    """Return the paper for a sheet's drawing, turned where its parts would be too small."""
    is_turned = len(view.parts) > CROWDED and view.length > view.width
    return turn(paper) if is_turned else paper
