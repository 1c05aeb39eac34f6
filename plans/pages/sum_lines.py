"""What the pieces of a sheet add up to, several sums on a line where they are short."""

from collections.abc import Sequence
from dataclasses import replace

from plans.pages.blocks import Block, side_by_side
from plans.pages.fonts import printable, text_width
from plans.pages.lettering import FIRST_LINE, NOTE, heading, paragraph
from plans.pages.shapes import Role, Text
from plans.sections.cut_table import StripSum

BETWEEN = 4.0  # white between two sums, at least
CODES = 15.0  # widest that the codes of pieces may be that share a sum
APART = 3.0  # white behind the codes, and before the slack
TIGHT = "TIGHT"
TIGHT_ADVICE = (
    "TIGHT: measure your kerf in scrap first. If it is wider than planned, print again with it."
)


def sum_lines(sums: Sequence[StripSum], width: float) -> list[Block]:
    """Return sums under a heading, with what to do where one is tight; nothing without sums."""
    if not sums:
        return []
    blocks = [
        heading("What each piece adds up to", width, height=NOTE),
        *_on_lines(_together(sums), width),
    ]
    if any(line.is_tight for line in sums):
        blocks.append(paragraph(TIGHT_ADVICE, width))
    return blocks


def _together(sums: Sequence[StripSum]) -> list[StripSum]:
    """Return the sums, those of pieces that are cut up alike as one as far as it has room."""
    lines: list[StripSum] = []
    for line in sums:
        for place, other in enumerate(lines):
            pieces = f"{other.piece}, {line.piece}"
            if _width(pieces, bold=True) <= CODES and replace(other, piece=line.piece) == line:
                lines[place] = replace(other, piece=pieces)
                break
        else:
            lines.append(line)
    return lines


def _on_lines(sums: Sequence[StripSum], width: float) -> list[Block]:
    """Return the sums, each on the first line that has room for it: at mid-page if it can be."""
    codes = max(_width(line.piece, bold=True) for line in sums) + APART
    lines: list[list[tuple[float, Block]]] = []
    ends: list[float] = []
    for line in sums:
        needed = codes + _width(line.text) + APART + _slack_width(line)
        latest = width - needed
        place = next((row for row, end in enumerate(ends) if end + BETWEEN <= latest), len(ends))
        if place == len(ends):
            lines.append([])
            ends.append(0.0)
        start = min(max(width / 2, ends[place] + BETWEEN), latest) if lines[place] else 0.0
        lines[place].append((start, _sum(line, codes, width - start)))
        ends[place] = start + needed
    return [side_by_side(line) for line in lines]


def _sum(line: StripSum, codes: float, room: float) -> Block:
    """Return one sum and its slack, which stands behind the sum's first line."""
    text = paragraph(line.text, room - codes - APART - _slack_width(line), x=codes)
    baseline = NOTE * FIRST_LINE
    first = next(shape for shape in text.shapes if isinstance(shape, Text))
    slack = Text(
        x=codes + text_width(first.words, NOTE) + APART,
        y=baseline,
        words=_slack(line),
        height=NOTE,
        bold=line.is_tight,
    )
    pieces = printable(line.piece)
    piece = Text(x=0.0, y=baseline, words=pieces, height=NOTE, role=Role.CODE, bold=True)
    return Block(height=text.height, shapes=(*text.shapes, piece, slack))


def _slack(line: StripSum) -> str:
    return printable(f"slack {line.slack}" + (f" {TIGHT}" if line.is_tight else ""))


def _slack_width(line: StripSum) -> float:
    return _width(_slack(line), bold=line.is_tight) + 0.1  # rounding


def _width(words: str, *, bold: bool = False) -> float:
    return text_width(printable(words), NOTE, bold=bold)
