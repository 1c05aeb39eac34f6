"""The first page: what is built, what the plan rests on, and what its signs mean.

It stands upright, like all pages that are read as lists: their lines are short.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from plans.pages.blocks import Block, Section, moved, side_by_side, space, stack
from plans.pages.cabinet_picture import cabinet_picture
from plans.pages.cut_rows import SIDES, overhangs
from plans.pages.fonts import printable, text_width
from plans.pages.lettering import FIRST_LINE, LINE_STEP, NOTE, fit, heading, paragraph, wrap
from plans.pages.paper import Paper
from plans.pages.rows import blank, dashed, framed, marked_lines, rule
from plans.pages.shapes import Anchor, Role, Shape, Text
from plans.pages.signs import OWN_SIGNS, WIDTH, draw_sign
from plans.plan import Plan
from plans.sections.overview import AssumedNumber

NAME = 9.0
LEAD = 3.6
PICTURE = 62.0  # height of a picture
BESIDE = 54.0  # width of one beside the words
MOST_BESIDE = 2
VALUE = 4.0
BETWEEN = 8.0  # white between two columns of numbers
ALIKE = 3  # numbers with one check, from which on it is said once
ALIKE_STEP = 6.6
ABOUT = 2.0  # mm by which blocks beside each other may differ in height
FOUND = 24.0  # the blank for one's own reading


def overview_sections(plan: Plan, paper: Paper) -> tuple[Section, ...]:
    """Return what is built and what it rests on: the overview, then the numbers to check."""
    width = paper.body_width
    overview = plan.overview
    blocks = [*_name(plan.job_name, width), *_what(plan, width), space(3.0)]
    if overview.unplaced:
        blocks += [framed("NOT PLACED", overview.unplaced, width), space(2.0)]
    for title, lines in (
        ("Changed since the plan before", overview.changes),
        ("Look at this before you buy", overview.warnings),
        ("Left open: decide, and write it here", overview.questions),
        ("How the sizes close", overview.sums),
    ):
        if lines:
            blocks += [*marked_lines(title, lines, width), space(2.0)]
    cautions = [caution.short for caution in plan.cautions if "overview" in caution.where]
    blocks += [*(dashed(line, width, bold=True) for line in cautions), space(2.0)]
    blocks.append(heading("Words and signs", width))
    blocks += _legend((*overview.legend, *_own_signs(plan)), width)
    return (
        Section(title="Overview", blocks=tuple(blocks)),
        Section(title="Numbers to check", blocks=tuple(_assumed(overview.assumed, width))),
    )


def _what(plan: Plan, width: float) -> list[Block]:
    """Return what is built and how good the plan is, with the pictures of up to two designs beside.

    More designs stand two beside each other below.
    """
    pictures = plan.bench.pictures
    is_beside = 0 < len(pictures) <= MOST_BESIDE
    room = width - BESIDE - BETWEEN if is_beside else width
    overview = plan.overview
    words = [
        *(paragraph(line, room, height=LEAD) for line in overview.what),
        space(2.0),
        *(paragraph(line, room) for line in overview.figures),
        paragraph(overview.bound_text, room, bold=True),
        *([paragraph(plan.chance, room)] if plan.chance else []),
    ]
    if is_beside:
        drawn = [cabinet_picture(picture, BESIDE, PICTURE) for picture in pictures]
        return [side_by_side([(0.0, stack(words)), (room + BETWEEN, stack(drawn))])]
    half = (width - BETWEEN) / 2
    drawn = [cabinet_picture(picture, half, PICTURE) for picture in pictures]
    pairs = [drawn[start : start + 2] for start in range(0, len(drawn), 2)]
    return [
        *words,
        *(side_by_side(list(zip((0.0, half + BETWEEN), pair, strict=False))) for pair in pairs),
    ]


def _name(name: str, width: float) -> list[Block]:
    one_line = fit(printable(name), width, NAME, NAME / 2, bold=True)
    height = one_line or NAME / 2
    block = paragraph(name, width, height=height, bold=True, role=Role.TITLE)
    return [replace(block, height=block.height + 1.0)]


def _assumed(numbers: tuple[AssumedNumber, ...], width: float) -> list[Block]:
    """Return the numbers that the plan rests on: first what is measured, with blanks."""
    blocks = [paragraph("Check each number, and write what you find beside it.", width)]
    measured = [number for number in numbers if number.readings]
    chosen = [number for number in numbers if not number.readings]
    for title, ones in (
        ("To be measured", measured),
        ("As you want it; change it in the job file", chosen),
    ):
        if not ones:
            continue
        blocks += [space(2.0), heading(title, width)]
        cells: list[Block] = []
        alike: list[Block] = []
        for check, same in groupby(ones, key=lambda number: number.check):
            group = tuple(same)
            lines = _alike(check, group, width) if len(group) >= ALIKE else None
            if lines:
                alike.append(lines)
            else:
                cells += [_number(number, (width - BETWEEN) / 2) for number in group]
        blocks += [*_in_pairs(cells, width), *alike]
    return blocks


def _in_pairs(cells: Sequence[Block], width: float) -> list[Block]:
    """Return blocks two beside each other, each with the next one that is about as high."""
    waiting, second = list(cells), (width + BETWEEN) / 2
    pairs = []
    while waiting:
        first = waiting.pop(0)
        alike = (one for one in waiting if abs(one.height - first.height) <= ABOUT)
        other = next(alike, waiting[0] if waiting else None)
        pairs.append(side_by_side([(0.0, first), *([(second, other)] if other else [])]))
        if other:
            waiting.remove(other)
    return pairs


def _alike(check: str, numbers: Sequence[AssumedNumber], width: float) -> Block | None:
    """Return numbers that are checked alike, a line each; None where one needs more than that."""
    has_blanks = any(number.readings for number in numbers)
    end = width - (FOUND + 3.0 if has_blanks else 0.0)
    how = paragraph(check, width)
    shapes: list[Shape] = [rule(width), *moved(how.shapes, 0.0, 0.8)]
    y = how.height + 0.8
    for number in numbers:
        name, value = printable(f"{number.name}{_origin(number)}"), printable(number.value)
        if text_width(name, NOTE) + 4.0 >= end:
            return None
        height = fit(value, end - text_width(name, NOTE) - 4.0, VALUE, NOTE, bold=True)
        if height is None:
            return None
        y += ALIKE_STEP if has_blanks else LINE_STEP * VALUE
        line = Text(x=0.0, y=y - 2.0, words=name, height=NOTE)
        shapes += [
            line,
            replace(line, x=end, words=value, height=height, bold=True, anchor=Anchor.END),
        ]
        if number.readings:
            shapes.append(blank(width - FOUND, y - 1.6, FOUND))
    return Block(height=y + 1.0, shapes=tuple(shapes))


def _origin(number: AssumedNumber) -> str:
    """Return the mark of a number that the job file leaves out."""
    return " (default)" if number.origin == "default" else ""


def _number(number: AssumedNumber, width: float) -> Block:
    """Return one number: its name, its value, how to check it, and a blank where it is measured."""
    called = f"{number.name}{_origin(number)}"
    value = printable(number.value)
    height = fit(value, 0.55 * width, VALUE, NOTE, bold=True) or NOTE
    name = paragraph(called, width)
    step = LINE_STEP * NOTE
    # the value is taller than a line, and reaches into the one before the last
    end = max(text_width(line, NOTE) for line in wrap(called, width, NOTE)[-2:])
    is_beside = end + 4.0 + text_width(value, height, bold=True) <= width
    shown = paragraph(number.value, width, height=height, bold=True)
    shapes: list[Shape] = [*moved(name.shapes, 0.0, 0.8)]
    if is_beside:
        words = Text(
            x=width, y=name.height - 0.3, words=value, height=height, bold=True, anchor=Anchor.END
        )
        shapes.append(words)
        upper = name.height + 0.8
    else:
        shapes += moved(shown.shapes, 0.0, name.height + 0.8)
        upper = name.height + shown.height + 0.8
    check = paragraph(number.check, width)
    shapes += moved(check.shapes, 0.0, upper)
    if not number.readings:
        return Block(height=upper + check.height + 1.4, shapes=(rule(width), *shapes))
    last = text_width(wrap(number.check, width, NOTE)[-1], NOTE) if number.check else 0.0
    found = min(FOUND * number.readings, width)
    total = upper + check.height + (0.0 if last <= width - found - 3.0 else step) + 1.4
    return Block(
        height=total, shapes=(rule(width), *shapes, blank(width - found, total - 2.0, found))
    )


def _legend(entries: Sequence[tuple[str, str]], width: float) -> list[Block]:
    """Return the words and signs, two beside each other."""
    half = (width - BETWEEN) / 2
    return _in_pairs([_entry(word, meaning, half) for word, meaning in entries], width)


def _entry(word: str, meaning: str, width: float) -> Block:
    """Return one entry: its sign, its name, and behind the name what it means."""
    sign = draw_sign(word)
    x = WIDTH + 3.0 if sign else 0.0
    name = paragraph(word, width - x, bold=True, x=x)
    start = text_width(printable(word), NOTE, bold=True) + 1.8
    first = wrap(meaning, width - x - start, NOTE)[0]
    words = Text(x=x + start, y=FIRST_LINE * NOTE, words=first, height=NOTE)
    rest = paragraph(printable(meaning)[len(first) :].lstrip(), width - x, x=x)
    return Block(
        height=name.height + rest.height + 1.2,
        shapes=(*sign, *name.shapes, words, *moved(rest.shapes, 0.0, name.height)),
    )


def _own_signs(plan: Plan) -> Iterator[tuple[str, str]]:
    """Yield the signs that the pages add, as far as they stand in this plan."""
    rows = [row for view in plan.sheets for row in view.rows]
    stands = {
        "struck out": any(row.unusable and not row.blocks for row in rows),
        "bar under L or R": any(overhangs(row, side) for row in rows for side in SIDES),
        "on a board": any(row.support for row in rows),
        "bar before KEEP": any(row.same_as for row in rows),
        "thick rule": len(plan.workshop.sessions) > 1,
    }
    yield from (entry for entry in OWN_SIGNS if stands.get(entry[0], True))
