"""Ways to buy as a table: A, B, C with what each costs and leaves over."""

from collections.abc import Iterator, Sequence

from plans.pages.blocks import Block, moved, space, stack
from plans.pages.fonts import printable
from plans.pages.lettering import FIGURE, NOTE, fit, heading, paragraph
from plans.pages.rows import rule
from plans.pages.shapes import Anchor, Role, Shape, Text
from plans.sections.ways import WayLine

LABEL = 8.0
LABEL_COLUMN = 12.0
TOTAL = 34.0
LEAST_WAYS = 2  # one way is the plan itself
INTRODUCTION = (
    "Each is complete and goes instead of the sheets above. If you buy otherwise than listed "
    "there, make the plan again with what you bought."
)


def ways_to_buy(ways: Sequence[WayLine], width: float) -> list[Block]:
    """Return the ways, the cheapest first; nothing where there is no other."""
    if len(ways) < LEAST_WAYS:
        return []
    return [
        heading("Ways to buy", width),
        paragraph(INTRODUCTION, width, glued=True),
        *(_way(way, width) for way in ways),
        space(2.5),
    ]


def _way(way: WayLine, width: float) -> Block:
    room = width - LABEL_COLUMN - TOTAL
    sheets = paragraph(way.sheets, room, height=4.0, bold=True, x=LABEL_COLUMN)
    words = stack(paragraph(line, room, x=LABEL_COLUMN) for line in _lines(way))
    total = printable(way.total)
    height = fit(total, TOTAL - 2.0, FIGURE, NOTE, bold=True) or NOTE
    shapes: list[Shape] = [
        rule(width),
        Text(x=0, y=LABEL + 2.0, words=way.label, height=LABEL, bold=True, role=Role.CODE),
        Text(x=width, y=FIGURE + 2.0, words=total, height=height, bold=True, anchor=Anchor.END),
        *moved(sheets.shapes, 0.0, 0.8),
        *moved(words.shapes, 0.0, 0.8 + sheets.height),
    ]
    return Block(height=max(LABEL + 4.0, sheets.height + words.height + 2.0), shapes=tuple(shapes))


def _lines(way: WayLine) -> Iterator[str]:
    besides = f", {way.besides}" if way.besides else ""
    yield f"{way.when}: sheets {way.price}{besides}, about {way.minutes} minutes at the saw"
    yield f"left over: {way.left}; {way.verdict}"
