"""The yard's page, one for each kind of sheet: handed over the counter, it shows no part.

It stands upright and is read from a step away: numbers and sizes are as large as at the saw.
"""

from dataclasses import replace

from plans.pages.blocks import Block, flow, moved, space, stack
from plans.pages.boxes import Box
from plans.pages.cut_numbers import LINE_HALF, place_numbers
from plans.pages.fonts import printable, text_width
from plans.pages.frame import Draft, body_room
from plans.pages.lettering import BIG, FIGURE, NOTE, fit, heading, paragraph
from plans.pages.paper import Paper
from plans.pages.piece_lettering import Piece, letter_piece
from plans.pages.rows import TICK, rule
from plans.pages.shapes import (
    Anchor,
    Line,
    LineKind,
    Rectangle,
    Role,
    Shape,
    Text,
    TickBox,
)
from plans.pages.sheet_facts import say_numbers
from plans.pages.sheet_marks import grain_arrow
from plans.pages.sheet_scale import CutLine, Scale, cut_line
from plans.pages.strokes import PENS, Stroke, broken
from plans.plan import Plan
from plans.sections.sheet_view import CutView
from plans.sections.yard import YardCut, YardPage, YardPattern

DRAWING = 88.0  # height of the tallest drawing
SIDE = 12.0  # white beside it
ROW = 14.0
SIZE_X = 24.0
TEXT_X = 66.0
PRICE = 60.0


def yard_pages(plan: Plan, paper: Paper) -> tuple[Draft, ...]:
    """Return what the yard is asked for; nothing where it makes no cut."""
    return tuple(
        Draft(title="For the yard", beside=page.unit_text, paper=paper, body=body)
        for page in plan.yard
        for body in flow(_blocks(page, paper.body_width), body_room(paper))
    )


def _blocks(page: YardPage, width: float) -> list[Block]:
    blocks = [
        paragraph(page.heading, width, height=FIGURE, bold=True, glued=True),
        paragraph(f"{page.grain_text}. {page.mass_text}. {page.total_text}.", width, bold=True),
        paragraph(page.line_text, width),
        paragraph(page.order_text, width),
        paragraph(page.rough_text, width),
        space(2.0),
    ]
    for pattern in page.patterns:
        blocks += [
            heading(pattern.heading, width),
            replace(_drawing(page, pattern, width), is_glued=True),
            *(_cut(cut, width) for cut in pattern.cuts),
            paragraph(_ours(pattern), width),
            space(3.0),
        ]
    return [*blocks, _prices(page, width)]


def _ours(pattern: YardPattern) -> str:
    noun = "sheet" if pattern.count == 1 else "sheets"
    numbers = say_numbers(pattern.sheets)
    return f"For us: {noun} {numbers} of the plan. Write the codes on the pieces at once."


def _drawing(page: YardPage, pattern: YardPattern, width: float) -> Block:
    """Return the sheet with the yard's cuts, and the pieces with their codes and sizes."""
    room = width - 2 * SIDE
    ratio = min(room / page.length, DRAWING / page.width)
    scale = Scale(left=SIDE, top=SIDE / 2, ratio=ratio)
    sheet = Box(SIDE, SIDE / 2, SIDE + page.length * ratio, SIDE / 2 + page.width * ratio)
    lines = [
        cut_line(
            CutView(number=cut.number, band=cut.line, direction=cut.direction, is_trim=False),
            scale,
        )
        for cut in pattern.cuts
    ]
    boxes = [scale.box(piece.rect) for piece in pattern.pieces]
    wanted = frozenset(line.number for line in lines)
    numbers = place_numbers(lines, wanted, sheet.grown(5.0), [], boxes)
    taken = [box for label in numbers for box in label.taken]
    taken += [line.box(LINE_HALF) for line in lines]
    shapes: list[Shape] = [
        Rectangle(
            x=sheet.left,
            y=sheet.top,
            width=sheet.width,
            height=sheet.height,
            kind=LineKind.SHEET_EDGE,
        )
    ]
    for piece, box in zip(pattern.pieces, boxes, strict=True):
        code = ", ".join(piece.codes[:3]) + ("…" if len(piece.codes) > 3 else "")  # noqa: PLR2004
        lettered = Piece(code=code, size=piece.size, name="", box=box, tallest=6.5, least=NOTE)
        shapes += [label.text for label in letter_piece(lettered, taken)]
    gaps = [label.taken[0] for label in numbers if label.is_open]
    for line in lines:
        shapes += _open_line(line, gaps)
    for label in numbers:
        shapes += [label.text, *label.others]
    height = sheet.bottom + 7.0
    if page.grain != "none":
        middle = (sheet.left + sheet.right) / 2
        shapes += _grain(page, middle, sheet.bottom + 4.0)
    return Block(height=height + 3.0, shapes=tuple(shapes))


def _grain(page: YardPage, middle: float, y: float) -> tuple[Shape, ...]:
    words = "grain"
    width = text_width(words, NOTE)
    text = Text(x=middle - width - 2.0, y=y + NOTE / 2, words=words, height=NOTE)
    if page.grain == "length":
        return (text, *grain_arrow(Box(middle, y - 0.9, middle + 20.0, y + 0.9)))
    return (text, *grain_arrow(Box(middle + 1.0, y - 3.0, middle + 2.8, y + 3.0)))


def _open_line(line: CutLine, gaps: list[Box]) -> tuple[Line, ...]:
    (x1, y1), (x2, y2) = line.point(line.start), line.point(line.end)
    stroke = Stroke(x1, y1, x2, y2, PENS[LineKind.NEXT_CUT])
    return tuple(
        Line(x1=piece.x1, y1=piece.y1, x2=piece.x2, y2=piece.y2, kind=LineKind.NEXT_CUT)
        for piece in broken(stroke, gaps)
    )


def _cut(cut: YardCut, width: float) -> Block:
    """Return one cut as a row: a box, its number, the size kept and the words."""
    size = printable(cut.size)
    height = fit(size, TEXT_X - SIZE_X - 3.0, BIG, FIGURE, bold=True) or FIGURE
    words = paragraph(cut.text, width - TEXT_X, height=4.0, x=TEXT_X)
    total = max(ROW, words.height + 3.0)
    return Block(
        height=total,
        shapes=(
            rule(width),
            TickBox(x=0.25, y=3.6, size=TICK),
            Text(x=10.0, y=12.0, words=cut.number, height=BIG, role=Role.CUT_NUMBER, bold=True),
            Text(x=SIZE_X, y=12.0, words=size, height=height, role=Role.KEEP, bold=True),
            *moved(words.shapes, 0.0, max(0.5, (total - words.height) / 2)),
        ),
    )


def _prices(page: YardPage, width: float) -> Block:
    """Return the price box; an amount that is not known is a line to write on."""
    rows = []
    for words, amount in page.price_lines:
        text = paragraph(words, width - PRICE - 4.0, height=4.0)
        end = (
            Text(x=width, y=5.0, words=printable(amount), height=4.0, anchor=Anchor.END)
            if amount
            else Line(x1=width - 30.0, y1=5.6, x2=width, y2=5.6, kind=LineKind.BLANK)
        )
        rows.append(Block(height=max(text.height, 7.0) + 1.0, shapes=(*text.shapes, end)))
    inner = stack(rows)
    return Block(
        height=inner.height, shapes=(rule(width, LineKind.HEAVY_RULE), *moved(inner.shapes, 0, 1.0))
    )
