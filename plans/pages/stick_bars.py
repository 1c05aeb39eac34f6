"""Sticks of timber drawn as bars, with the pieces that are cut from them."""

from collections.abc import Iterator

from plans.pages.blocks import Block, moved, stack
from plans.pages.fonts import text_width
from plans.pages.lettering import FIGURE, NOTE, centred, paragraph
from plans.pages.shapes import (
    Hatch,
    HatchKind,
    LineKind,
    Rectangle,
    Role,
    Shape,
    Text,
)
from plans.sections.battens import BattenSection, StickPlan

COUNT = 16.0
HIGH = 8.5
LEAST_DRAWN = 0.6


def stick_bars(section: BattenSection, width: float) -> list[Block]:
    """Return the battens of one section: the list, and every kind of stick as a bar."""
    blocks = [paragraph(f"Battens {section.section}", width, height=3.6, bold=True, glued=True)]
    blocks += [paragraph(line, width - 4.0, x=4.0) for line in section.pieces]
    if section.verdict:
        blocks.append(paragraph(section.verdict, width, bold=True))
    longest = max((stick.length for stick in section.sticks), default=1)
    for stick in section.sticks:
        scale = (width - COUNT - 1.0) / longest
        blocks.append(_bar(stick, scale, width))
    return blocks


def _bar(stick: StickPlan, scale: float, width: float) -> Block:
    shapes: list[Shape] = [
        Text(x=0.0, y=HIGH - 1.6, words=f"{stick.count} ×", height=FIGURE, bold=True)
    ]
    shapes += moved(_pieces(stick, scale), COUNT, 1.0)
    figures = ", ".join(stick.texts)
    trim = "trim the end, then " if stick.trim else ""
    words = paragraph(
        f"{stick.timber}: {trim}{figures}; {stick.left} is left.", width - COUNT, x=COUNT
    )
    bar = Block(height=HIGH + 1.6, shapes=tuple(shapes))
    whole = stack([bar, words])
    return Block(height=whole.height + 1.5, shapes=whole.shapes)


def _pieces(stick: StickPlan, scale: float) -> Iterator[Shape]:
    whole = stick.length * scale
    yield Rectangle(x=0.0, y=0.0, width=whole, height=HIGH, kind=LineKind.SHEET_EDGE)
    at = stick.trim
    if at * scale > LEAST_DRAWN:
        yield Hatch(x=0.0, y=0.0, width=at * scale, height=HIGH, kind=HatchKind.WASTE)
    for length, words in zip(stick.pieces, stick.texts, strict=True):
        x, long = at * scale, length * scale
        yield Rectangle(x=x, y=0.0, width=long, height=HIGH, kind=LineKind.CUT)
        for height in (FIGURE, NOTE):
            if text_width(words, height) + 2.0 <= long:
                text = Text(x=0.0, y=0.0, words=words, height=height, role=_role(height))
                yield centred(x + long / 2, HIGH / 2, text)
                break
        at += length + stick.kerf
    rest = whole - at * scale
    if rest > LEAST_DRAWN:
        yield Hatch(x=at * scale, y=0.0, width=rest, height=HIGH, kind=HatchKind.WASTE)


def _role(height: float) -> Role:
    return Role.FIGURE if height >= FIGURE else Role.NOTE
