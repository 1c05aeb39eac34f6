"""The pages of one sheet: the drawing, and below it the cut table.

A page stands upright, so that the drawing and the first cuts are seen together, except where a
sheet holds so many parts that only the longer side of the paper leaves room for their codes; then
it is turned, and the whole table stands on upright pages. What does not fit goes on to further
pages with a small copy of the drawing; nothing is ever shrunk to fit.
"""

from collections.abc import Sequence
from dataclasses import replace

from nesting.lengths import Unit
from plans.pages.blocks import Block, flow, side_by_side, space, stack
from plans.pages.boxes import Box
from plans.pages.cut_rows import columns, table_head, table_rows
from plans.pages.fonts import printable, text_width
from plans.pages.frame import Draft, body_room
from plans.pages.lettering import FIRST_LINE, LINE_STEP, NOTE, heading, paragraph
from plans.pages.paper import Paper, turn
from plans.pages.shapes import Anchor, Role, Shape, Text
from plans.pages.sheet_drawing import draw_sheet, draw_small
from plans.pages.sheet_marks import grain_arrow
from plans.sections.cautions import Caution
from plans.sections.cut_table import StripSum
from plans.sections.sheet_view import SheetView

CROWDED = 18  # parts on a sheet, above which the page is turned
FEWEST_ROWS = 3  # under a drawing; fewer would look like the whole table
SMALL_WIDTH = 84.0
SMALL_HEIGHT = 52.0
SUM_CODE = 12.0
SUM_SLACK = 46.0


def sheet_pages(
    view: SheetView, unit: Unit, cautions: Sequence[Caution], paper: Paper
) -> tuple[Draft, ...]:
    """Return the pages of one sheet."""
    first_page = choose_paper(view, paper)
    is_turned = first_page != paper
    width, room = paper.body_width, body_room(paper)
    place = columns(unit, width)
    rows = table_rows(view.rows, place)
    head = replace(stack([space(3.0), table_head(place)]), is_glued=True)

    facts = _facts(view, first_page.body_width)
    drawing = draw_sheet(view, first_page.body_width, body_room(first_page) - facts.height)
    upper = stack([facts, drawing.block])
    warning = _short_cautions(cautions, first_page.body_width)
    why = _why(view)
    left = body_room(first_page) - upper.height - warning.height
    count = 0 if is_turned else _fitting(rows, left - head.height)
    if count < min(FEWEST_ROWS, len(rows)):
        count = 0
    table = [head, *rows[:count]] if count else []
    bodies = [stack([upper, *table, warning] if warning.height <= left else [upper])]
    foot = _sums(view, drawing.unlettered, width)
    if warning.height > left:
        foot.append(warning)
    if count == len(rows):
        foot.append(paragraph(why, width))
    while count < len(rows):
        beside = why if len(bodies) == 1 else ""
        body, count = _later_page(view, rows, count, room, width, head, why=beside)
        bodies.append(body)
    bodies = [*bodies[:-1], *flow([bodies[-1], *foot], room)]
    return tuple(
        Draft(
            title=f"Sheet {view.number}" if number == 1 else f"Sheet {view.number}, page {number}",
            beside=f"{view.material}, sheet “{view.stock}”" if number == 1 else view.material,
            paper=first_page if number == 1 else paper,
            body=body,
        )
        for number, body in enumerate(bodies, start=1)
    )


def choose_paper(view: SheetView, paper: Paper) -> Paper:
    """Return the paper for a sheet's drawing, turned where its parts would be too small."""
    is_turned = len(view.parts) > CROWDED and view.length > view.width
    return turn(paper) if is_turned else paper


def _fitting(rows: Sequence[Block], room: float) -> int:
    """Return how many rows fit."""
    count, used = 0, 0.0
    while count < len(rows) and used + rows[count].height <= room:
        used += rows[count].height
        count += 1
    return count


def _later_page(
    view: SheetView,
    rows: Sequence[Block],
    done: int,
    room: float,
    width: float,
    head: Block,
    *,
    why: str,
) -> tuple[Block, int]:
    """Return a further page of the table, and how many rows are done after it."""
    start = SMALL_WIDTH + 6.0
    words = stack(
        [
            space(10.0),
            *(
                paragraph(text, width - start)
                for text in (
                    f"Heavy: the cuts of this page. {view.home_text}. {view.face_text}",
                    why,
                )
                if text
            ),
        ]
    )
    # The copy's height does not depend on which cuts it shows.
    copy = draw_small(view, SMALL_WIDTH, SMALL_HEIGHT, frozenset())
    height = max(copy.height, words.height)
    count = max(1, _fitting(rows[done:], room - height - head.height))
    numbers = [row.number for row in view.rows[done : done + count]]
    copy = draw_small(view, SMALL_WIDTH, SMALL_HEIGHT, frozenset(numbers))
    cuts = f"Cuts {numbers[0]} to {numbers[-1]}" if count > 1 else f"Cut {numbers[0]}"
    title = heading(f"{cuts} of {len(rows)}", width - start)
    upper = side_by_side([(0.0, copy), (start, title), (start, words)])
    upper = Block(height=height, shapes=upper.shapes)
    return stack([upper, head, *rows[done : done + count]]), done + count


def _facts(view: SheetView, width: float) -> Block:
    """Return what holds for the whole sheet: grain, size, mass, face, home corner."""
    thickness = f"measured {view.measured}" if view.measured else "thickness not measured"
    baseline = NOTE * FIRST_LINE
    grain = printable(view.grain_text)
    shapes: list[Shape] = [
        Text(x=0, y=baseline, words=grain, height=NOTE, bold=True),
        Text(
            x=width,
            y=baseline,
            words=printable(f"{view.size}, {thickness}, {view.mass} kg"),
            height=NOTE,
            anchor=Anchor.END,
        ),
    ]
    start, middle = text_width(grain, NOTE, bold=True) + 3.0, baseline - NOTE / 2
    if view.grain == "length":
        shapes += grain_arrow(Box(start, middle - 0.9, start + 16.0, middle + 0.9))
    elif view.grain == "width":
        shapes += grain_arrow(Box(start, middle - 3.2, start + 1.8, middle + 3.2))
    return stack(
        [
            Block(height=NOTE * LINE_STEP, shapes=tuple(shapes)),
            paragraph(f"{view.face_text} {view.home_text}.", width),
            space(1.5),
        ]
    )


def _sums(view: SheetView, unlettered: Sequence[str], width: float) -> list[Block]:
    """Return what each strip adds up to, and what the drawing had no room for."""
    blocks = [space(3.0)]
    if view.sums:
        blocks.append(heading("What each piece adds up to", width))
        blocks += [_sum(line, width) for line in view.sums]
    if unlettered:
        blocks.append(paragraph(f"No room in the drawing for: {', '.join(unlettered)}.", width))
    return blocks


def _why(view: SheetView) -> str:
    return (
        f"Why this order: {view.why} {view.settings} settings of the guide, about"
        f" {view.minutes} minutes."
    )


def _short_cautions(cautions: Sequence[Caution], width: float) -> Block:
    """Return the short cautions as one paragraph, nothing where there are none."""
    lines = [caution.short for caution in cautions if "sheet" in caution.where]
    if not lines:
        return Block(height=0.0)
    return stack([space(2.0), paragraph(" ".join(lines), width, bold=True)])


def _sum(line: StripSum, width: float) -> Block:
    text = paragraph(line.text, width - SUM_CODE - SUM_SLACK - 2, x=SUM_CODE)
    baseline = NOTE * FIRST_LINE
    slack, tight = printable(f"slack {line.slack}"), "TIGHT"
    shapes = [
        Text(x=0, y=baseline, words=printable(line.piece), height=NOTE, role=Role.CODE, bold=True),
        Text(x=width - SUM_SLACK, y=baseline, words=slack, height=NOTE),
    ]
    if line.is_tight:
        x = width - text_width(tight, NOTE, bold=True)
        shapes.append(Text(x=x, y=baseline, words=tight, height=NOTE, bold=True))
    return Block(height=text.height, shapes=(*text.shapes, *shapes))
