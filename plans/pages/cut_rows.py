"""The cut table: one row a cut, in the order of doing, the keep size largest.

A row reads from left to right as the hands work: tick, cut number, the piece to hold, the edge to
measure from, the size to keep, where the guide goes, what it gives. A thin rule stands wherever
the guide is moved, and only there; a bar joins the rows that share one setting.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from nesting.lengths import Unit
from plans.pages.blocks import Block, moved
from plans.pages.fonts import printable, text_width
from plans.pages.lettering import BIG, FIGURE, LINE_STEP, NOTE, fit, paragraph, wrap
from plans.pages.shapes import Line, LineKind, Role, Shape, Solid, Text, TickBox
from plans.sections.cut_table import CutRow
from plans.sections.sheet_notes import SheetNotes

SIDES = ("left", "right")
NO_NOTES = SheetNotes()
TICK = 6.5
FIRST = 6.6  # baseline of the upper line of a row
STEP = 6.5  # to the next line
ROW = 15.0  # height of a row of two lines
UNDER_BAR = 0.6  # by which a remark keeps clear of the bar under the lower letter
BIG_LINE = FIRST + 5.2  # baseline of what is two lines high
# Heights of a keep size and of the fraction in it, where it is too wide at full height.
KEEP_HEIGHTS = ((BIG, BIG), (BIG, 8.0), (BIG, 6.5), (BIG, 5.5), (8.0, 5.5), (6.5, FIGURE))
HEAD = 11.5
EDGE_WORDS = 4.0
TWO = "2 people"
BOARD = "on a board"
WASTE_WORD = 3.8
STACKED = 2  # sheets whose boxes stand below each other
BOX_STEP = 16.0
BOX_LINE = 8.2
MARK_X = 5.0  # of the mark, behind the word before it
STOP_RULE = 3.2  # room for the thick rule where the work can be left


@dataclass(frozen=True, slots=True, kw_only=True)
class Columns:
    """Where the columns of the table begin; each ends where the next begins."""

    number: float
    hold: float
    edge: float
    keep: float
    guide: float
    codes: float
    end: float


def columns(unit: Unit, width: float) -> Columns:
    """Return the columns for a width of table; what is left over is shared out.

    Fractions of an inch need wide guide figures; their keep sizes set the fraction smaller.
    """
    hold, edge, keep, guide, codes = (
        (50.0, 19.3, 49.3, 28.2, 17.3) if unit is Unit.MM else (50.0, 19.3, 43.3, 34.2, 17.3)
    )
    tick, number = 7.6, 15.9
    spare = (width - tick - number - hold - edge - keep - guide - codes) / 6
    places = [tick]
    for column in (number, hold, edge, keep, guide):
        places.append(places[-1] + column + spare)
    return Columns(
        number=places[0],
        hold=places[1],
        edge=places[2],
        keep=places[3],
        guide=places[4],
        codes=places[5],
        end=width,
    )


def table_head(
    place: Columns,
    numbers: Sequence[int] = (),
    sides: tuple[str, str] = SIDES,
    *,
    has_blocks: bool = False,
) -> Block:
    """Return the head of the table.

    Args:
        place: The columns.
        numbers: Of the sheets that are cut alike; two have their boxes below each other.
        sides: Of the guide, the one first that suits the hand.
        has_blocks: Whether blocks set the guide, so that its places are not printed.
    """
    guide = ("block", "at the mark") if has_blocks else ("guide at", ", ".join(sides))
    two = [str(number) for number in numbers] if len(numbers) == STACKED else []
    heads: tuple[tuple[float, tuple[str, ...]], ...] = (
        (0.0, tuple(two)),
        (place.number, ("cut", "")),
        (place.hold, ("take this piece", "its size")),
        (place.edge, ("measure", "from")),
        (place.keep, ("", "KEEP")),
        (place.guide, guide),
        (place.codes, ("is kept", "falls free")),
    )
    words = [
        Text(x=x, y=NOTE + line * LINE_STEP * NOTE, words=text, height=NOTE, bold=text == "KEEP")
        for x, texts in heads
        for line, text in enumerate(texts)
        if text
    ]
    rule = Line(x1=0, y1=HEAD - 0.5, x2=place.end, y2=HEAD - 0.5, kind=LineKind.HEAVY_RULE)
    return Block(height=HEAD, shapes=(*words, rule), is_glued=True)


def table_rows(
    rows: tuple[CutRow, ...],
    place: Columns,
    numbers: Sequence[int] = (1,),
    sides: tuple[str, str] = SIDES,
    notes: SheetNotes = NO_NOTES,
) -> tuple[Block, ...]:
    """Return one block for each cut, with a box to tick for every sheet that is cut alike.

    Args:
        rows: The cuts.
        place: The columns.
        numbers: Of the sheets that are cut alike.
        sides: Of the guide, the one first that suits the hand.
        notes: What stands below a cut: a cabinet complete, or that the work can be left.
    """
    joining = {row.number for row, after in pairwise(rows) if after.same_as}
    blocks = []
    for row in rows:
        closes, stop = (said.get(row.number, "") for said in (notes.closes, notes.stops))
        block = _row(
            row,
            place,
            numbers,
            sides,
            joins_next=row.number in joining,
            is_noted=bool(closes or stop),
        )
        blocks.append(_noted(block, closes, stop, place))
    return tuple(blocks)


def _noted(row: Block, closes: str, stop: str, place: Columns) -> Block:
    """Return a row with what is said below it; where the work can be left a thick rule ends it."""
    words = " ".join(text for text in (closes, stop) if text)
    if not words:
        return row
    said = paragraph(words, place.end - place.hold, x=place.hold, bold=True)
    height = row.height + said.height + (STOP_RULE if stop else 0.8)
    rule = Line(x1=0, y1=height - 0.9, x2=place.end, y2=height - 0.9, kind=LineKind.STOP)
    return Block(
        height=height,
        shapes=(
            *row.shapes,
            *moved(said.shapes, 0.0, row.height - 0.2),
            *((rule,) if stop else ()),
        ),
    )


def _row(
    row: CutRow,
    place: Columns,
    numbers: Sequence[int],
    sides: tuple[str, str],
    *,
    joins_next: bool,
    is_noted: bool,
) -> Block:
    hold = _hold(row, place)
    height = ROW + STEP * max(0, sum(text.role is not Role.NOTE for text in hold) - 2)
    upper = height
    bar_room = UNDER_BAR if overhangs(row, sides[1]) else 0.0
    remark, remark_height = _remark(row, place, height - 0.2 + bar_room)
    height += remark_height + bar_room if remark else 0.0
    boxes, boxes_height = _boxes(numbers, place, height - 0.6)
    height += boxes_height
    return Block(
        height=height,
        shapes=(
            *_setting_mark(
                row,
                place,
                height if height == upper and not is_noted else upper - 1.5,
                joins_next=joins_next,
            ),
            *boxes,
            _number(row, place),
            *hold,
            *_edge(row, place),
            *keep_texts(row.keep, place.keep, BIG_LINE, place.guide - place.keep - 1.5),
            *_guides(row, sides, place),
            *_code(row.keep_code, place, FIRST, is_kept=True),
            *_code(row.free_code, place, FIRST + STEP, is_kept=False),
            *remark,
        ),
    )


def _boxes(numbers: Sequence[int], place: Columns, top: float) -> tuple[tuple[Shape, ...], float]:
    """Return a box to tick for every sheet, and the height of the lines that they need.

    One stands before the cut, two stand there below each other; more have lines of their own.
    """
    if len(numbers) == 1:
        return (TickBox(x=0.25, y=FIRST - 2.4, size=TICK),), 0.0
    if len(numbers) == STACKED:
        return tuple(TickBox(x=0.25, y=0.8 + 7.1 * line, size=TICK) for line in (0, 1)), 0.0
    each = int((place.end - place.hold) // BOX_STEP)
    shapes: list[Shape] = []
    for order, number in enumerate(numbers):
        down, over = divmod(order, each)
        x, y = place.hold + over * BOX_STEP, top + 1.4 + down * BOX_LINE
        shapes += [
            TickBox(x=x, y=y, size=TICK),
            Text(x=x + TICK + 1.2, y=y + 4.8, words=str(number), height=NOTE),
        ]
    return tuple(shapes), BOX_LINE * -(-len(numbers) // each)


def _setting_mark(
    row: CutRow, place: Columns, height: float, *, joins_next: bool
) -> tuple[Shape, ...]:
    """Return a rule above a row where the guide is moved, and a bar down rows of one setting.

    The bar leaves out the remarks and boxes below a row, which stand across it.
    """
    rule = Line(x1=0, y1=0, x2=place.end, y2=0, kind=LineKind.RULE)
    x = place.keep - 1.3
    top = 0.0 if row.same_as else BIG_LINE - BIG
    bottom = height if joins_next else BIG_LINE
    bar = Line(x1=x, y1=top, x2=x, y2=bottom, kind=LineKind.SAME_SETTING)
    if row.same_as:
        return (bar,)
    return (rule, bar) if joins_next else (rule,)


def _number(row: CutRow, place: Columns) -> Text:
    height = fit(row.number, place.hold - place.number - 1.5, BIG, FIGURE) or FIGURE
    return Text(x=place.number, y=BIG_LINE, words=row.number, height=height, role=Role.CUT_NUMBER)


def _hold(row: CutRow, place: Columns) -> tuple[Text, ...]:
    """Return the held piece: code, mass and, where they find room beside it, two people."""
    room = place.edge - place.hold - 1.0
    code = Text(
        x=place.hold, y=FIRST, words=printable(row.hold), height=FIGURE, role=Role.CODE, bold=True
    )
    start = place.hold + text_width(code.words, FIGURE, bold=True) + 1.8
    mass = Text(x=start, y=FIRST, words=printable(f"{row.hold_mass} kg"), height=NOTE)
    beside = _beside_mass(row, place)
    people = replace(mass, x=start + text_width(mass.words, NOTE) + 1.8, words=beside, bold=True)
    size = printable(row.hold_size)
    along, _, across = size.partition(" × ")
    lines = [size] if fit(size, room, FIGURE, FIGURE) else [f"{along} ×", across]
    return (
        code,
        mass,
        *((people,) if beside else ()),
        *(
            Text(
                x=place.hold,
                y=FIRST + STEP * (number + 1),
                words=words,
                height=fit(words, room, FIGURE, NOTE) or NOTE,
                role=Role.FIGURE,
            )
            for number, words in enumerate(lines)
        ),
    )


def _beside_mass(row: CutRow, place: Columns) -> str:
    """Return what is said behind the held piece's mass: two people, or on a board, if it fits."""
    words = TWO if row.people > 1 else BOARD if row.support else ""
    width = (
        text_width(printable(row.hold), FIGURE, bold=True)
        + text_width(printable(f"{row.hold_mass} kg"), NOTE)
        + text_width(words, NOTE, bold=True)
        + 2 * 1.8
    )
    return words if width <= place.edge - place.hold - 1.0 else ""


def _edge(row: CutRow, place: Columns) -> tuple[Text, ...]:
    """Return the name of the edge; in a row that keeps its setting, from which cut."""
    name, _, rest = printable(row.measure_from).partition(" ")
    if row.same_as:
        rest = f"as cut {row.same_as}"
    room = place.keep - place.edge - 2.0
    height = fit(name, room, EDGE_WORDS, NOTE) or NOTE
    below = fit(rest, room, EDGE_WORDS if not row.same_as else NOTE, NOTE) or NOTE
    return (
        Text(x=place.edge, y=FIRST, words=name, height=height),
        Text(x=place.edge, y=FIRST + STEP, words=rest, height=below),
    )


def keep_texts(keep: str, x: float, baseline: float, width: float) -> tuple[Text, ...]:
    """Return a keep size in its full height.

    A word before it is set smaller, and so is the fraction where the whole would be too wide:
    never below what is used at the saw.
    """
    tokens = printable(keep).split(" ")
    for big, fraction in KEEP_HEIGHTS:
        heights = [
            FIGURE if token.isalpha() else fraction if "/" in token else big for token in tokens
        ]
        widths = [
            text_width(token, height, bold=True)
            for token, height in zip(tokens, heights, strict=True)
        ]
        if sum(widths) + 2.0 * (len(tokens) - 1) <= width:
            break
    starts = [x + sum(widths[:place]) + 2.0 * place for place in range(len(tokens))]
    return tuple(
        Text(x=start, y=baseline, words=token, height=height, role=Role.KEEP, bold=True)
        for start, token, height in zip(starts, tokens, heights, strict=True)
    )


def _guides(row: CutRow, sides: tuple[str, str], place: Columns) -> tuple[Shape, ...]:
    """Return where the guide goes on both sides, or the block and the mark that bring it there."""
    if row.blocks:
        room = place.codes - place.guide - 1.5
        named = Text(
            x=place.guide,
            y=FIRST,
            words=printable(row.blocks),
            height=fit(row.blocks, room, FIGURE, NOTE, bold=True) or NOTE,
            role=Role.FIGURE,
            bold=True,
        )
        if not row.mark:
            return (named,)
        mark = printable(row.mark)
        height = fit(mark, room - MARK_X, FIGURE, NOTE) or NOTE
        at = Text(x=place.guide, y=FIRST + STEP, words="at", height=NOTE)
        return (
            named,
            at,
            replace(at, x=at.x + MARK_X, words=mark, height=height, role=Role.FIGURE),
        )
    return (
        *_guide(row, sides[0], place, FIRST),
        *_guide(row, sides[1], place, FIRST + STEP),
        *_needs_board(row, sides[0], place, FIRST),
        *_needs_board(row, sides[1], place, FIRST + STEP),
    )


def overhangs(row: CutRow, side: str) -> bool:
    """Return whether the guide could be used on a side, but needs a board beside the piece."""
    is_struck = row.unusable in (side, "both")
    return not (row.blocks or is_struck or row.guide_room in ("", "either", side))


def _needs_board(row: CutRow, side: str, place: Columns, baseline: float) -> tuple[Solid, ...]:
    """Return the bar under the letter of a side where guide and clamps have no room."""
    if not overhangs(row, side):
        return ()
    left, top = place.guide, baseline + 0.7
    right, bottom = left + 2.0, top + 0.8
    corners = ((left, top), (right, top), (right, bottom), (left, bottom))
    return (Solid(points=corners),)


def _guide(row: CutRow, side: str, place: Columns, baseline: float) -> tuple[Text, ...]:
    """Return where the guide goes on one side of the blade, struck out where it cannot lie."""
    figure = row.guide_left if side == "left" else row.guide_right
    is_struck = row.unusable in (side, "both")
    if not figure:  # the yard sets its own saw
        return ()
    x = place.guide + 2.5
    words = printable(figure)
    height = fit(words, place.codes - x - 0.2, FIGURE, NOTE) or NOTE
    return (
        Text(x=place.guide, y=baseline, words=side[0].upper(), height=NOTE),
        Text(x=x, y=baseline, words=words, height=height, role=Role.FIGURE, is_struck=is_struck),
    )


def _code(code: str, place: Columns, baseline: float, *, is_kept: bool) -> tuple[Text, ...]:
    words = printable(code)
    if not words:
        return ()
    if words == "WASTE":
        return (Text(x=place.codes, y=baseline, words=words, height=WASTE_WORD),)
    height = fit(words, place.end - place.codes, FIGURE, NOTE, bold=is_kept) or NOTE
    return (
        Text(
            x=place.codes,
            y=baseline,
            words=words,
            height=height,
            role=Role.CODE,
            bold=is_kept,
        ),
    )


def _remark(row: CutRow, place: Columns, top: float) -> tuple[tuple[Text, ...], float]:
    beside = _beside_mass(row, place)
    support = "" if beside == BOARD else row.support
    remark = "; ".join(words for words in (row.remark, support) if words)
    rest = remark.removeprefix("TWO PEOPLE").lstrip(" .;,")
    two = ["TWO PEOPLE"] if row.people > 1 and beside != TWO else []
    words = ". ".join([*two, *([f"{rest[:1].upper()}{rest[1:]}"] if rest else [])])
    if not words:
        return (), 0.0
    lines = wrap(words, place.end - place.hold, NOTE, bold=True)
    step = LINE_STEP * NOTE
    line = Text(x=place.hold, y=top, words="", height=NOTE, bold=True)
    texts = tuple(
        replace(line, y=top + NOTE + step * number, words=text) for number, text in enumerate(lines)
    )
    return texts, step * len(lines)
