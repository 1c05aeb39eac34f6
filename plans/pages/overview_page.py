"""The first page: what is built, what the plan rests on, and what its signs mean.

It stands upright, like all pages that are read as lists: their lines are short.
"""

from dataclasses import replace

from plans.pages.blocks import Block, flow, moved, space
from plans.pages.fonts import printable
from plans.pages.frame import Draft, body_room
from plans.pages.lettering import NOTE, fit, heading, paragraph
from plans.pages.paper import Paper
from plans.pages.rows import blank, dashed, framed, marked_lines, rule
from plans.pages.shapes import Role
from plans.pages.signs import OWN_SIGNS, WIDTH, draw_sign
from plans.plan import Plan
from plans.sections.overview import AssumedNumber

NAME = 9.0
LEAD = 3.6
WORD = 40.0
VALUE = 4.0
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
    blocks += [_entry(word, meaning, width) for word, meaning in (*overview.legend, *OWN_SIGNS)]
    room = body_room(paper)
    return (
        *(Draft(title="Overview", paper=paper, body=body) for body in flow(blocks, room)),
        *(
            Draft(title="Numbers to check", paper=paper, body=body)
            for body in flow(_assumed(overview.assumed, width), room)
        ),
    )


def _name(name: str, width: float) -> list[Block]:
    one_line = fit(printable(name), width, NAME, NAME / 2, bold=True)
    height = one_line or NAME / 2
    block = paragraph(name, width, height=height, bold=True, role=Role.TITLE)
    return [replace(block, height=block.height + 1.0)]


def _assumed(numbers: tuple[AssumedNumber, ...], width: float) -> list[Block]:
    """Return the numbers that the plan rests on, the same origin together, to write beside."""
    blocks = [paragraph("Check each number, and write what you find beside it.", width)]
    for origin in sorted({number.origin for number in numbers}):
        blocks += [space(2.0), heading(f"{origin[:1].upper()}{origin[1:]}", width)]
        blocks += [_number(number, width) for number in numbers if number.origin == origin]
    return [*blocks, Block(height=3.0, shapes=(rule(width),))]


def _number(number: AssumedNumber, width: float) -> Block:
    """Return a row: name, value, how to check it, and a blank."""
    value_x, check_x = 42.0, 84.0
    value_width = check_x - value_x - 2.0
    value_height = fit(printable(number.value), value_width, VALUE, NOTE, bold=True) or NOTE
    name = paragraph(number.name, value_x - 2.0)
    value = paragraph(number.value, value_width, height=value_height, bold=True, x=value_x)
    check = paragraph(number.check, width - check_x - FOUND - 3.0, x=check_x)
    height = max(name.height, value.height, check.height, 7.5) + 1.6
    return Block(
        height=height,
        shapes=(
            rule(width),
            *moved(name.shapes, 0.0, 0.5),
            *moved(value.shapes, 0.0, 0.3),
            *moved(check.shapes, 0.0, 0.5),
            blank(width - FOUND, height - 2.2, FOUND),
        ),
    )


def _entry(word: str, meaning: str, width: float) -> Block:
    name = paragraph(word, WORD - 2.0, bold=True, x=WIDTH + 3.0)
    text = paragraph(meaning, width - WIDTH - 3.0 - WORD, x=WIDTH + 3.0 + WORD)
    height = max(name.height, text.height) + 0.8
    return Block(height=height, shapes=(*draw_sign(word), *name.shapes, *text.shapes))
