"""Pieces that several pages share: ticked lines, blanks to write on, framed notes."""

from collections.abc import Sequence
from dataclasses import replace

from plans.pages.blocks import Block, moved, stack
from plans.pages.lettering import FIRST_LINE, NOTE, heading, paragraph
from plans.pages.shapes import Line, LineKind, Rectangle, Text, TickBox

TICK = 6.5
TICK_COLUMN = 9.5


def ticked(words: str, width: float, *, height: float = NOTE, bold: bool = False) -> Block:
    """Return a text with a box to tick before it."""
    text = paragraph(words, width - TICK_COLUMN, height=height, bold=bold, x=TICK_COLUMN)
    needed = TICK + 2.0
    down = max(0.0, (needed - text.height) / 2)
    return Block(
        height=max(text.height + 1.0, needed),
        shapes=(TickBox(x=0.25, y=1.0, size=TICK), *moved(text.shapes, 0.0, down)),
    )


def blank(x: float, y: float, width: float) -> Line:
    """Return a line to write on."""
    return Line(x1=x, y1=y, x2=x + width, y2=y, kind=LineKind.BLANK)


def marked_lines(title: str, lines: Sequence[str], width: float) -> list[Block]:
    """Return lines under a heading, a dash before each; nothing where there are none."""
    if not lines:
        return []
    return [heading(title, width), *(dashed(line, width) for line in lines)]


def dashed(words: str, width: float, *, bold: bool = False) -> Block:
    """Return a text with a dash before it."""
    text = paragraph(words, width - 4.0, x=4.0, bold=bold)
    dash = Text(x=0.0, y=NOTE * FIRST_LINE, words="–", height=NOTE, bold=bold)
    return replace(text, shapes=(dash, *text.shapes))


def framed(title: str, lines: Sequence[str], width: float) -> Block:
    """Return lines in a heavy frame under a title, for what must not be missed."""
    inner = stack([heading(title, width - 8.0), *(dashed(line, width - 8.0) for line in lines)])
    frame = Rectangle(
        x=0.5, y=0.5, width=width - 1.0, height=inner.height + 5.0, kind=LineKind.HEAVY_RULE
    )
    return Block(height=inner.height + 8.0, shapes=(frame, *moved(inner.shapes, 4.0, 2.5)))


def rule(width: float, kind: LineKind = LineKind.RULE) -> Line:
    """Return a rule across the top of a block."""
    return Line(x1=0.0, y1=0.0, x2=width, y2=0.0, kind=kind)
