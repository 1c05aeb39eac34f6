"""The shopping list, upright: it goes into a pocket, folded once."""

from collections.abc import Sequence

from plans.pages.blocks import Block, Section, moved, side_by_side, space
from plans.pages.fonts import printable, text_width
from plans.pages.lettering import BIG, FIGURE, NOTE, fit, heading, paragraph
from plans.pages.paper import Paper
from plans.pages.rows import TICK, TICK_COLUMN, dashed, rule, ticked
from plans.pages.shapes import Anchor, LineKind, Rectangle, Role, Shape, Text, TickBox
from plans.pages.ways_table import ways_to_buy
from plans.plan import Plan
from plans.sections.shopping import OtherLine, SheetLine

COUNT = 30.0
PRICES = 34.0
READINGS = 8
MOST_READ = 8  # sheets with boxes for their readings; more are written on the back of the card
BOX_HEIGHT = 7.2
AMOUNT = 15.0  # width of a short amount
SHORT = 8.6
MOST_LINES = 2
BETWEEN = 6.0


def shopping_section(plan: Plan, paper: Paper) -> Section:
    """Return the shopping list with the card for choosing sheets."""
    width = paper.body_width
    shopping = plan.shopping
    total = Text(
        x=width,
        y=FIGURE + 3.0,
        words=printable(f"total {shopping.cost}"),
        height=FIGURE,
        bold=True,
        anchor=Anchor.END,
    )
    blocks: list[Block] = [
        *(_sheet(line, width) for line in shopping.sheets),
        _with_bound(shopping.bound_text, total, width),
        space(2.5),
    ]
    if shopping.others:
        blocks.append(heading("Besides the sheets", width))
        blocks += _others(shopping.others, width)
        blocks.append(space(2.5))
    blocks += ways_to_buy(shopping.ways, width)
    blocks.append(heading("Choosing sheets off the stack", width))
    blocks += _pairs([ticked(line, (width - BETWEEN) / 2) for line in shopping.card], width)
    blocks += _readings(sum(line.count for line in shopping.sheets), width)
    cautions = [caution.short for caution in plan.cautions if "shopping" in caution.where]
    blocks += [space(2.0), *(dashed(line, width, bold=True) for line in cautions)]
    return Section(title="Shopping list", blocks=tuple(blocks))


def _with_bound(bound_text: str, total: Text, width: float) -> Block:
    """Return the total, and before it how good the plan is."""
    room = width - text_width(total.words, total.height, bold=True) - 6.0
    said = paragraph(bound_text, room)
    down = max(0.8, 4.0 - said.height / 2 + 1.6)
    shapes = (rule(width), total, *moved(said.shapes, 0.0, down))
    return Block(height=max(9.5, said.height + 1.6), shapes=shapes)


def _sheet(line: SheetLine, width: float) -> Block:
    x = TICK_COLUMN + COUNT
    room = width - x - PRICES
    count = f"{line.count} ×"
    each = f"{line.each} each" if line.total else line.each
    height = fit(count, COUNT - 2.0, BIG, FIGURE, bold=True) or FIGURE
    title = paragraph(line.material, room, height=FIGURE, bold=True, x=x)
    size = paragraph(line.size, room, height=FIGURE, x=x)
    grain = paragraph(line.grain_text, room, bold=True, x=x)
    more = paragraph(f"“{line.stock}”, {line.mass} kg each", room, x=x)
    shapes: list[Shape] = [
        rule(width),
        TickBox(x=0.25, y=4.0, size=TICK),
        Text(x=TICK_COLUMN, y=BIG + 2.3, words=count, height=height, bold=True),
        Text(x=width, y=FIGURE + 2.0, words=printable(each), height=NOTE, anchor=Anchor.END),
    ]
    if line.total:
        words = printable(line.total)
        size_of_total = fit(words, PRICES - 2.0, FIGURE, NOTE, bold=True) or NOTE
        shapes.append(
            Text(
                x=width,
                y=2 * FIGURE + 5.0,
                words=words,
                height=size_of_total,
                bold=True,
                anchor=Anchor.END,
            )
        )
    down = 1.0
    for block in (title, size, grain, more):
        shapes += moved(block.shapes, 0.0, down)
        down += block.height
    return Block(height=down + 2.0, shapes=tuple(shapes))


def _others(lines: Sequence[OtherLine], width: float) -> list[Block]:
    """Return the other things: short ones two beside each other, long ones on their own."""
    half = (width - BETWEEN) / 2
    blocks: list[Block] = []
    short: list[Block] = []
    for line in lines:
        brief = _short_other(line, half)
        if brief:
            short.append(brief)
        else:
            blocks.append(_other(line, width))
    return blocks + _pairs(short, width)


def _pairs(blocks: Sequence[Block], width: float) -> list[Block]:
    """Return blocks of half the width two beside each other."""
    second = (width + BETWEEN) / 2
    return [
        side_by_side(list(zip((0.0, second), blocks[start : start + 2], strict=False)))
        for start in range(0, len(blocks), 2)
    ]


def _short_other(line: OtherLine, width: float) -> Block | None:
    """Return a thing with what it is for on at most two short lines, None where it is longer."""
    amount = printable(line.amount)
    height = fit(amount, AMOUNT - 2.0, 4.0, NOTE, bold=True)
    what = paragraph(
        f"{line.what}, {line.purpose}", width - TICK_COLUMN - AMOUNT, x=TICK_COLUMN + AMOUNT
    )
    if height is None or len(what.shapes) > MOST_LINES:
        return None
    down = max(0.4, (SHORT - what.height) / 2)
    return Block(
        height=max(SHORT, what.height + 1.4),
        shapes=(
            TickBox(x=0.25, y=1.0, size=TICK),
            Text(x=TICK_COLUMN, y=6.0, words=amount, height=height, bold=True),
            *moved(what.shapes, 0.0, down),
        ),
    )


def _other(line: OtherLine, width: float) -> Block:
    what_x = TICK_COLUMN + 44.0
    amount = paragraph(
        line.amount, what_x - TICK_COLUMN - 2.0, height=4.0, bold=True, x=TICK_COLUMN
    )
    what = paragraph(line.what, width - what_x, height=3.6, x=what_x)
    purpose = paragraph(line.purpose, width - what_x, x=what_x)
    upper = max(amount.height, what.height, TICK)
    return Block(
        height=upper + purpose.height + 2.2,
        shapes=(
            rule(width),
            TickBox(x=0.25, y=1.2, size=TICK),
            *moved(amount.shapes, 0.0, 1.0),
            *moved(what.shapes, 0.0, 1.0),
            *moved(purpose.shapes, 0.0, upper + 0.8),
        ),
    )


def _readings(sheets: int, width: float) -> Sequence[Block]:
    """Return boxes for the readings: eight of thickness and two diagonals for every sheet."""
    number_width, diagonal = 16.0, 24.0
    cell = (width - number_width - 2 * diagonal - 4.0) / READINGS
    second = number_width + READINGS * cell + 4.0
    head = Block(
        height=6.0,
        shapes=(
            Text(x=number_width, y=4.4, words="thickness, eight readings", height=NOTE),
            Text(x=second, y=4.4, words="diagonals", height=NOTE),
        ),
        is_glued=True,
    )
    rows = []
    for number in range(1, min(sheets, MOST_READ) + 1):
        cells = [number_width + cell * place for place in range(READINGS)]
        boxes = [
            *((x, cell) for x in cells),
            *((second + diagonal * place, diagonal) for place in range(2)),
        ]
        rows.append(
            Block(
                height=BOX_HEIGHT,
                shapes=(
                    Text(x=0, y=5.2, words=f"sheet {number}", height=NOTE, role=Role.NOTE),
                    *(
                        Rectangle(x=x, y=0, width=box_width, height=BOX_HEIGHT, kind=LineKind.RULE)
                        for x, box_width in boxes
                    ),
                ),
            )
        )
    return [space(1.0), head, *rows]
