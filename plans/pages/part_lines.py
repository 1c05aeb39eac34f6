"""The rows of the parts list: one part, a kind with its copies below it, the table's head."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from plans.pages.blocks import Block, moved
from plans.pages.fonts import printable, text_width
from plans.pages.lettering import FIGURE, NOTE, fit, paragraph, shorten
from plans.pages.rows import blank, rule
from plans.pages.shapes import Anchor, LineKind, Role, Shape, Text, TickBox
from plans.sections.part_list import PartRow

CODE = 7.0
NAME = 3.6
NAME_X = 21.0
SIZE_X = 77.0
FROM_X = 130.5
BOXES = ("cut", "checked", "drilled", "covered")
BOX = 6.5
BOX_STEP = 9.6
HEAD = 17.0
FIRST = 7.6  # baseline of the upper line
SECOND = FIRST + 3.8  # of the lower one
SIZE_STEP = 5.8
ROW = 13.6
READING = 9.0
COPY = 9.8
WHOLE = 60.0  # a kind with its copies that is no higher stands on one page
BETWEEN = 8.0


def table_head(width: float) -> Block:
    """Return the head of the list, the words over the boxes upright."""
    turned = [
        Text(
            x=_box_x(place, width) + BOX - 1.6,
            y=HEAD - 2.0,
            words=words,
            height=NOTE,
            is_upright=True,
        )
        for place, words in enumerate(BOXES)
    ]
    level = [
        Text(x=x, y=HEAD - 2.0, words=words, height=NOTE)
        for x, words in (
            (0.0, "code"),
            (NAME_X, "part"),
            (SIZE_X, "finished size"),
            (FROM_X, "from"),
        )
    ]
    heavy = moved((rule(width, LineKind.HEAVY_RULE),), 0.0, HEAD - 0.5)
    return Block(height=HEAD, shapes=(*level, *turned, *heavy), is_glued=True)


def _box_x(place: int, width: float) -> float:
    return width - BOX_STEP * (len(BOXES) - place) + BOX_STEP - BOX - 0.3


def kind_rows(
    kind: PartRow, rows: Sequence[PartRow], width: float, *, is_first: bool
) -> Iterator[Block]:
    """Yield a kind with many copies: what they share once, then two copies beside each other."""
    shared = replace(kind, code=f"{len(rows)} ×", copy="")
    row = part_row(shared, width, is_first=is_first, is_kind=True)
    yield replace(row, is_glued=True)
    half = (width + BETWEEN) / 2
    is_short = row.height + COPY * ((len(rows) + 1) // 2) <= WHOLE
    for start in range(0, len(rows), 2):
        shapes = [
            shape
            for place, row_of_copy in enumerate(rows[start : start + 2])
            for shape in moved(_copy(row_of_copy, half - BETWEEN), place * half, 0.0)
        ]
        yield Block(height=COPY, shapes=tuple(shapes), is_glued=is_short and start + 2 < len(rows))


def _copy(part: PartRow, width: float) -> tuple[Shape, ...]:
    """Return one copy of many: its code, where it comes from, and its boxes."""
    code = printable(part.code)
    height = fit(code, NAME_X - 1.5, CODE, FIGURE, bold=True) or FIGURE
    return (
        Text(x=0, y=CODE + 0.6, words=code, height=height, role=Role.CODE, bold=True),
        *(
            Text(x=NAME_X, y=y, words=words, height=NOTE)
            for y, words in zip((3.6, 8.0), map(printable, part.origin), strict=True)
        ),
        *(TickBox(x=_box_x(place, width), y=1.2, size=BOX) for place in range(len(BOXES))),
    )


def part_row(
    part: PartRow, width: float, *, is_first: bool, is_kind: bool = False, reads: bool = False
) -> Block:
    """Return one part with its boxes, or what the copies of a kind share.

    Args:
        part: The part.
        width: Of the page.
        is_first: Whether to say how its sizes come about and what is to be done to it.
        is_kind: True where the copies stand below, each with its boxes.
        reads: True where it needs room for the sizes measured from the work.
    """
    code = printable(part.code)
    code_height = fit(code, NAME_X - 1.5, CODE, FIGURE, bold=True) or FIGURE
    name_room = SIZE_X - NAME_X - 2.0
    sizes = _size_lines(part)
    stock = ", ".join(filter(None, (part.copy, f"{part.material} {part.thickness}")))
    has_room = text_width(printable(stock), NOTE) <= name_room
    shapes: list[Shape] = [
        rule(width),
        Text(
            x=0,
            y=FIRST + 1.2,
            words=code,
            height=code_height,
            role=Role.NOTE if is_kind else Role.CODE,
            bold=True,
        ),
        Text(
            x=NAME_X,
            y=FIRST - 1.4,
            words=shorten(part.name, name_room, NAME, bold=True),
            height=NAME,
            bold=True,
        ),
        *([Text(x=NAME_X, y=SECOND, words=printable(stock), height=NOTE)] if has_room else []),
        *(
            Text(
                x=SIZE_X,
                y=FIRST - 1.0 + SIZE_STEP * line,
                words=words,
                height=FIGURE,
                role=Role.FIGURE,
            )
            for line, words in enumerate(sizes)
        ),
    ]
    if is_kind:
        lines = ("boxes in this order:", ", ".join(BOXES))
        shapes += [
            Text(x=width, y=y, words=words, height=NOTE, anchor=Anchor.END)
            for y, words in zip((FIRST - 1.4, SECOND), lines, strict=True)
        ]
    else:
        shapes += [
            *(
                Text(x=FROM_X, y=y, words=printable(words), height=NOTE)
                for y, words in zip((FIRST - 1.4, SECOND), part.origin, strict=True)
            ),
            *(TickBox(x=_box_x(place, width), y=2.6, size=BOX) for place in range(len(BOXES))),
        ]
    notes = list(_notes(part, is_first=is_first))
    if len(sizes) == 1:
        grain = shorten(part.grain, FROM_X - SIZE_X - 2.0, NOTE)
        shapes.append(Text(x=SIZE_X, y=SECOND, words=grain, height=NOTE))
    else:
        notes.insert(0, (part.grain, False))
    if not has_room:
        notes.insert(0, (stock, False))
    height = ROW
    for words, is_bold in notes:
        block = paragraph(words, width - NAME_X, x=NAME_X, bold=is_bold)
        shapes += moved(block.shapes, 0.0, height - 1.2)
        height += block.height
    if reads:
        shapes += moved(_reading(), NAME_X, height)
        height += READING
    return Block(height=height, shapes=tuple(shapes))


def _reading() -> tuple[Shape, ...]:
    """Return room for the two sizes that are measured from the work."""
    return (
        Text(x=0, y=READING - 2.6, words="measured", height=NOTE),
        blank(19.0, READING - 2.0, 28.0),
        Text(x=49.0, y=READING - 2.6, words="×", height=NOTE),
        blank(53.5, READING - 2.0, 28.0),
    )


def _size_lines(part: PartRow) -> tuple[str, ...]:
    """Return the finished size on one line, or on two where one is too narrow."""
    size = printable(part.finished)
    if fit(size, FROM_X - SIZE_X - 1.5, FIGURE, FIGURE):
        return (size,)
    along, _, across = size.partition(" × ")
    return (f"{along} ×", across)


def _notes(part: PartRow, *, is_first: bool) -> Iterator[tuple[str, bool]]:
    """Yield the lines below a part, and whether each is bold; the sums once for all copies."""
    status = [] if part.status == "final" else [part.status.upper()]
    if part.blank != part.finished:
        status.append(f"blank {part.blank}")
    status += part.allowances
    if part.look_alikes:
        status.append(f"≠ {', '.join(part.look_alikes)}")
    if status:
        yield ";  ".join(status), True
    if is_first:
        if part.to_do:
            yield f"To do: {'; '.join(part.to_do)}", False
        if part.sums:
            yield ";  ".join(part.sums), False
