"""The first page: what is built, what the plan rests on, and what its signs mean.

It stands upright, like all pages that are read as lists: their lines are short.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from plans.pages.blocks import Block, flow, moved, side_by_side, space
from plans.pages.cabinet_picture import cabinet_picture
from plans.pages.fonts import printable, text_width
from plans.pages.frame import Draft, body_room
from plans.pages.lettering import FIRST_LINE, LINE_STEP, NOTE, fit, heading, paragraph, wrap
from plans.pages.paper import Paper
from plans.pages.rows import blank, dashed, framed, marked_lines, rule
from plans.pages.shapes import Anchor, Role, Shape, Text
from plans.pages.signs import OWN_SIGNS, WIDTH, draw_sign
from plans.plan import Plan
from plans.sections.overview import AssumedNumber

NAME = 9.0
LEAD = 3.6
PICTURE = 62.0
VALUE = 4.0
BETWEEN = 8.0  # white between two columns of numbers
ALIKE = 3  # numbers with one check, from which on it is said once
ALIKE_STEP = 6.6
FOUND = 24.0  # the blank for one's own reading


def overview_pages(plan: Plan, paper: Paper) -> tuple[Draft, ...]:
    """Return the first page, and more where the job asks for it."""
    width = paper.body_width
    overview = plan.overview
    blocks = [
        *_name(plan.job_name, width),
        *(paragraph(line, width, height=LEAD) for line in overview.what),
        space(2.0),
        *(paragraph(line, width) for line in overview.figures),
        paragraph(overview.bound_text, width, bold=True),
        space(3.0),
    ]
    blocks += [cabinet_picture(picture, width, PICTURE) for picture in plan.bench.pictures]
    if overview.unplaced:
        blocks += [framed("NOT PLACED", overview.unplaced, width), space(2.0)]
    for title, lines in (
        ("Changed since the plan before", overview.changes),
        ("Look at this before you buy", overview.warnings),
        ("Left open: decide, and write it here", overview.questions),
    ):
        blocks += [*marked_lines(title, lines, width), space(2.0)]
    blocks += [*marked_lines("How the sizes close", overview.sums, width), space(2.0)]
    cautions = [caution.short for caution in plan.cautions if "overview" in caution.where]
    blocks += [*(dashed(line, width, bold=True) for line in cautions), space(2.0)]
    blocks.append(heading("Words and signs", width))
    blocks += _legend((*overview.legend, *_own_signs(plan)), width)
    room = body_room(paper)
    numbers = _assumed(overview.assumed, width)
    first = flow(blocks, room)
    if len(first) == 1:  # the numbers have a page of their own, to be written on at the saw
        return (
            *_drafts("Overview", first, paper),
            *_drafts("Numbers to check", flow(numbers, room), paper),
        )
    head = heading("Numbers to check", width)
    bodies = flow([*blocks, space(4.0), head, *numbers], room)
    return (
        *_drafts("Overview", bodies[: len(first)], paper),
        *_drafts("Numbers to check", bodies[len(first) :], paper),
    )


def _drafts(title: str, bodies: Iterable[Block], paper: Paper) -> tuple[Draft, ...]:
    return tuple(Draft(title=title, paper=paper, body=body) for body in bodies)


def _name(name: str, width: float) -> list[Block]:
    one_line = fit(printable(name), width, NAME, NAME / 2, bold=True)
    height = one_line or NAME / 2
    block = paragraph(name, width, height=height, bold=True, role=Role.TITLE)
    return [replace(block, height=block.height + 1.0)]


def _assumed(numbers: tuple[AssumedNumber, ...], width: float) -> list[Block]:
    """Return the numbers that the plan rests on, the same origin together, to write beside."""
    blocks = [paragraph("Check each number, and write what you find beside it.", width)]
    half = (width - BETWEEN) / 2
    for origin in sorted({number.origin for number in numbers}):
        blocks += [space(2.0), heading(f"{origin[:1].upper()}{origin[1:]}", width)]
        cells: list[Block] = []
        alike: list[Block] = []
        checks = [number for number in numbers if number.origin == origin]
        for check, same in groupby(checks, key=lambda number: number.check):
            group = tuple(same)
            lines = _alike(check, group, width) if len(group) >= ALIKE else None
            if lines:
                alike.append(lines)
            else:
                cells += [_number(number, half) for number in group]
        for start in range(0, len(cells), 2):
            columns = enumerate(cells[start : start + 2])
            blocks.append(
                side_by_side([(place * (half + BETWEEN), cell) for place, cell in columns])
            )
        blocks += alike
    return blocks


def _alike(check: str, numbers: Sequence[AssumedNumber], width: float) -> Block | None:
    """Return numbers that are checked alike, a line each; None where one needs more than that."""
    end = width - FOUND - 3.0
    how = paragraph(check, width)
    shapes: list[Shape] = [rule(width), *moved(how.shapes, 0.0, 0.8)]
    y = how.height + 0.8
    for number in numbers:
        name, value = printable(number.name), printable(number.value)
        if text_width(name, NOTE) + 4.0 >= end:
            return None
        height = fit(value, end - text_width(name, NOTE) - 4.0, VALUE, NOTE, bold=True)
        if height is None:
            return None
        y += ALIKE_STEP
        line = Text(x=0.0, y=y - 2.0, words=name, height=NOTE)
        shapes += [
            line,
            replace(line, x=end, words=value, height=height, bold=True, anchor=Anchor.END),
            blank(width - FOUND, y - 1.6, FOUND),
        ]
    return Block(height=y + 1.0, shapes=tuple(shapes))


def _number(number: AssumedNumber, width: float) -> Block:
    """Return one number: its name, its value, how to check it, and a blank."""
    value = printable(number.value)
    height = fit(value, 0.55 * width, VALUE, NOTE, bold=True) or NOTE
    name = paragraph(number.name, width)
    step = LINE_STEP * NOTE
    end = text_width(wrap(number.name, width, NOTE)[-1], NOTE)
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
    last = text_width(wrap(number.check, width, NOTE)[-1], NOTE) if number.check else 0.0
    found = min(FOUND * number.readings, width)
    total = upper + check.height + (0.0 if last <= width - found - 3.0 else step) + 1.4
    shapes += moved(check.shapes, 0.0, upper)
    return Block(
        height=total, shapes=(rule(width), *shapes, blank(width - found, total - 2.0, found))
    )


def _legend(entries: Sequence[tuple[str, str]], width: float) -> list[Block]:
    """Return the words and signs, two beside each other."""
    half = (width - BETWEEN) / 2
    cells = [_entry(word, meaning, half) for word, meaning in entries]
    return [
        side_by_side(
            [
                (place * (half + BETWEEN), cell)
                for place, cell in enumerate(cells[start : start + 2])
            ]
        )
        for start in range(0, len(cells), 2)
    ]


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
        "struck out": any(row.unusable for row in rows),
        "on a board": any(row.support for row in rows),
        "bar before KEEP": any(row.same_as for row in rows),
    }
    yield from (entry for entry in OWN_SIGNS if stands.get(entry[0], True))
