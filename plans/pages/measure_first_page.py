"""Measure first: the parts whose size comes from the work, with blanks for the readings."""

from collections.abc import Iterator, Sequence

from plans.pages.blocks import Block, Section, moved, space
from plans.pages.fonts import printable, text_width
from plans.pages.lettering import FIGURE, NOTE, paragraph
from plans.pages.paper import Paper
from plans.pages.rows import blank, rule
from plans.pages.shapes import Role, Shape, Text
from plans.plan import Plan
from plans.sections.measure_first import Reading, Waiting, WaitingPiece

TITLE = "Measure first"
CODE = 20.0
READINGS = 3
HEAD = 3.8
ROW = 10.5
CAPTION = 4.4
INTRODUCTION = (
    "Cut these blanks with the rest, and leave them so. When the carcass stands, measure each "
    "place three times, at both ends and in the middle. Take the smallest reading, make the sum, "
    "and cut the blank to it. The planned size only tells whether a reading can be right."
)


def measure_first_section(plan: Plan, paper: Paper) -> Section:
    """Return the parts that wait; nothing where none does."""
    if not plan.bench.waiting:
        return Section(title=TITLE, blocks=())
    width = paper.body_width
    blocks = [paragraph(INTRODUCTION, width), space(2.0)]
    for waiting in plan.bench.waiting:
        blocks += _kind(waiting, width)
    return Section(title=TITLE, blocks=tuple(blocks))


def _kind(waiting: Waiting, width: float) -> list[Block]:
    """Return a kind of part: its head glued to its first row, then the others."""
    planned = " × ".join(reading.planned for reading in waiting.readings)
    name = paragraph(waiting.name, width * 0.44, height=HEAD, bold=True)
    sizes = paragraph(
        f"blank {waiting.blank}, planned {planned}", width * 0.54, height=HEAD, x=width * 0.46
    )
    head = Block(
        height=max(name.height, sizes.height) + 1.6,
        shapes=(rule(width), *moved((*name.shapes, *sizes.shapes), 0.0, 0.8)),
        is_glued=True,
    )
    notes = [paragraph(line, width, glued=True) for line in waiting.why]
    measured = [reading for reading in waiting.readings if reading.what]
    fixed = [reading.planned for reading in waiting.readings if not reading.what]
    if fixed:
        words = f"Not measured: cut it to {' and '.join(fixed)}."
        notes.append(paragraph(words, width, bold=True, glued=True))
    per_row = 2 if len(measured) <= 1 else 1
    rows = [
        _row(waiting.pieces[start : start + per_row], measured, width, is_first=start == 0)
        for start in range(0, len(waiting.pieces), per_row)
    ]
    return [head, *notes, *rows, space(1.5)]


def _row(
    pieces: Sequence[WaitingPiece], readings: list[Reading], width: float, *, is_first: bool
) -> Block:
    """Return one piece with two readings, or two pieces with one reading each."""
    half, down = width / 2, CAPTION if is_first else 0.0
    shapes: list[Shape] = []
    for place, piece in enumerate(pieces):
        x, code = place * half, printable(piece.code)
        shapes += [
            Text(x=x, y=down + FIGURE + 0.8, words=code, height=FIGURE, bold=True, role=Role.CODE),
            Text(x=x, y=down + ROW, words=printable(piece.origin), height=NOTE),
        ]
    if len(pieces) == 1 and len(readings) > 1:
        room = (width - CODE) / len(readings) - 3.0
        columns = [(reading, CODE + place * (room + 3.0)) for place, reading in enumerate(readings)]
    else:
        room = half - CODE - 4.0
        columns = [
            (reading, CODE + place * half) for place in range(len(pieces)) for reading in readings
        ]
    for reading, x in columns:
        if is_first:
            shapes += paragraph(reading.what, room, x=x).shapes
        shapes += moved(_blanks(reading, x, room), 0.0, down)
    return Block(height=down + ROW + 1.6, shapes=tuple(shapes))


def _blanks(reading: Reading, x: float, room: float) -> Iterator[Shape]:
    """Yield three blanks for readings, what is taken off the smallest, and one for the result."""
    change = printable(f"{reading.change} =" if reading.change else "=")
    change_width = text_width(change, NOTE, bold=True) + 3.0
    result = 20.0
    each = (room - change_width - result) / READINGS
    for place in range(READINGS):
        yield blank(x + place * each, ROW - 4.5, each - 2.5)
    at = x + READINGS * each
    yield Text(x=at, y=ROW - 5.0, words=change, height=NOTE, bold=True)
    yield blank(at + change_width, ROW - 4.5, result)
