"""The pages of one sheet: the drawing, and below it the cut table.

A page stands upright, so that the drawing and the first cuts are seen together, except where a
sheet holds so many parts that only the longer side of the paper leaves room for their codes; then
it is turned, and the whole table stands on upright pages. What does not fit goes on to further
pages with a small copy of the drawing. The drawing may be a little smaller where that saves a page;
lettering is never shrunk to fit.
"""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from nesting.lengths import Unit
from plans.pages.blocks import Block, space, stack
from plans.pages.cut_rows import NO_NOTES, Columns, columns, table_head, table_rows
from plans.pages.drawing_choice import choose_drawing
from plans.pages.first_off import first_off_blocks
from plans.pages.frame import Draft, body_room
from plans.pages.lettering import paragraph
from plans.pages.paper import Paper, turn
from plans.pages.sheet_bodies import fill_pages
from plans.pages.sheet_facts import (
    say_alike,
    say_unlettered,
    say_why,
    sheet_facts,
    sheet_foot,
    short_cautions,
)
from plans.pages.sheet_flow import SheetBlocks
from plans.plan import RIGHT_HANDED
from plans.sections.cautions import Caution
from plans.sections.first_off import make_first_off
from plans.sections.handed import Handed
from plans.sections.repeats import Repeat
from plans.sections.sheet_notes import SheetNotes
from plans.sections.sheet_view import SheetView

CROWDED = 18  # parts on a sheet, above which the page is turned


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
    first_page = choose_paper(view, paper)
    place = columns(unit, paper.body_width)
    sheet = SheetBlocks(
        view=view,
        facts=sheet_facts(repeat, say_alike(view, alike), first_page.body_width),
        warning=short_cautions(cautions, handed),
        head=_table_head(repeat, place, handed),
        rows=table_rows(view.rows, place, repeat.numbers, handed.columns, notes),
        why=say_why(view),
        foot=_foot(repeat, notes, paper.body_width),
        said=say_alike(view, alike),
        width=paper.body_width,
        first_width=first_page.body_width,
        first_room=body_room(first_page),
        room=body_room(paper),
        is_turned=first_page != paper,
    )
    drawing = choose_drawing(sheet)
    foot = (*sheet.foot, *say_unlettered(drawing.unlettered, paper.body_width))
    bodies = fill_pages(replace(sheet, foot=foot), drawing.block)
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


def _table_head(repeat: Repeat, place: Columns, handed: Handed) -> Block:
    has_blocks = any(row.blocks for row in repeat.view.rows)
    top = table_head(place, repeat.numbers, handed.columns, has_blocks=has_blocks)
    return replace(stack([space(3.0), top]), is_glued=True)


def _foot(repeat: Repeat, notes: SheetNotes, width: float) -> tuple[Block, ...]:
    """Return what stands below the table: sums, test piece, what is measured of the first copy."""
    first_off = make_first_off(repeat)
    return (
        *sheet_foot(repeat, width),
        *([paragraph(notes.test_piece, width)] if notes.test_piece else []),
        *(first_off_blocks(first_off, width) if first_off else []),
    )


def choose_paper(view: SheetView, paper: Paper) -> Paper:
    """Return the paper for a sheet's drawing, turned where its parts would be too small."""
    is_turned = len(view.parts) > CROWDED and view.length > view.width
    return turn(paper) if is_turned else paper
