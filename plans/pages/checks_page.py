"""Checks at the bench: diagonals, sums and stacks, and what comes before the box is closed."""

from collections.abc import Sequence

from plans.pages.blocks import Block, Section, moved, space
from plans.pages.lettering import FIGURE, NOTE, heading, paragraph
from plans.pages.paper import Paper
from plans.pages.rows import TICK, TICK_COLUMN, blank, ticked
from plans.pages.shapes import Shape, Text, TickBox
from plans.plan import Plan
from plans.sections.bench_checks import BenchChecks, CheckText

BLANK = 19.0
LETTER = 6.0
MOST_CABINETS = 2  # beside the text; more have their blanks on rows of their own
ROW = 9.0


def checks_section(plan: Plan, paper: Paper) -> Section:
    """Return the checks; nothing where no cabinet is built."""
    width = paper.body_width
    blocks: list[Block] = []
    for checks in plan.bench.checks:
        blocks += _design(checks, width)
    return Section(title="Checks", blocks=tuple(blocks))


def _design(checks: BenchChecks, width: float) -> list[Block]:
    name = f"{checks.name}: {', '.join(checks.letters)}"
    blocks: list[Block] = [
        paragraph(name, width, height=FIGURE, bold=True, glued=True),
        space(1.0),
    ]
    for title, lines in (
        ("Diagonals", checks.diagonals),
        ("Sums, measured over all", checks.sums),
        ("Without a tape", checks.stacks),
    ):
        if not lines:
            continue
        blocks.append(heading(title, width))
        if lines is checks.diagonals:
            blocks.append(paragraph(checks.tolerance, width, glued=True))
        blocks += [block for line in lines for block in _check(line, checks.letters, width)]
        blocks.append(space(2.0))
    if checks.closing:
        blocks.append(heading("Before you close the box", width))
        blocks += [ticked(line, width) for line in checks.closing]
        blocks.append(space(3.0))
    return blocks


def _check(line: CheckText, letters: Sequence[str], width: float) -> list[Block]:
    if not line.readings:
        return [ticked(line.text, width)]
    each = LETTER + line.readings * BLANK + 1.0
    beside = each * min(len(letters), MOST_CABINETS)
    text = paragraph(line.text, width - TICK_COLUMN - beside - 3.0, x=TICK_COLUMN)
    height = max(text.height + 1.0, ROW)
    shapes: list[Shape] = [
        TickBox(x=0.25, y=1.0, size=TICK),
        *moved(text.shapes, 0.0, max(0.0, (ROW - text.height) / 2)),
    ]
    if len(letters) <= MOST_CABINETS:
        shapes += _blanks(line, letters, width - beside, ROW - 2.0)
        return [Block(height=height, shapes=tuple(shapes))]
    per_row = max(1, int((width - TICK_COLUMN) / each))
    rows = [letters[start : start + per_row] for start in range(0, len(letters), per_row)]
    return [
        Block(height=height, shapes=tuple(shapes), is_glued=True),
        *(
            Block(height=ROW, shapes=tuple(_blanks(line, row, TICK_COLUMN, ROW - 2.0)))
            for row in rows
        ),
    ]


def _blanks(line: CheckText, letters: Sequence[str], x: float, y: float) -> list[Shape]:
    """Return for every cabinet its letter and a blank for each reading."""
    shapes: list[Shape] = []
    each = LETTER + line.readings * BLANK + 1.0
    for place, letter in enumerate(letters):
        at = x + place * each
        shapes.append(Text(x=at, y=y - 0.6, words=letter, height=NOTE, bold=True))
        shapes += [
            blank(at + LETTER + number * BLANK, y, BLANK - 2.5) for number in range(line.readings)
        ]
    return shapes
