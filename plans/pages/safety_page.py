"""The safety notes in full, and how to set up: before any page that calls for a cut."""

from itertools import zip_longest

from nesting.lengths import Unit
from plans.pages.blocks import Block, flow, moved, space
from plans.pages.fonts import printable, text_width
from plans.pages.frame import Draft, body_room
from plans.pages.lettering import FIGURE, LINE_STEP, NOTE, heading, paragraph, wrap
from plans.pages.paper import Paper
from plans.pages.rows import blank, rule, ticked
from plans.pages.shapes import (
    Anchor,
    Hatch,
    HatchKind,
    Line,
    LineKind,
    Rectangle,
    Role,
    Shape,
    Text,
)
from plans.pages.strokes import arrow_head
from plans.plan import Plan
from plans.sections.cautions import Caution
from plans.sections.set_up import INTRODUCTION, set_up_lines

TOPIC = 26.0
ABOUT_NUMBERS = 3  # lines of setting up, under the drawing of the saw


def safety_pages(plan: Plan, paper: Paper) -> tuple[Draft, ...]:
    """Return the cautions in full."""
    width = paper.body_width
    blocks = [
        paragraph(INTRODUCTION, width),
        space(2.0),
        *(
            _caution(caution, width, is_last=after is None or after.defer_to != caution.defer_to)
            for caution, after in zip_longest(plan.cautions, plan.cautions[1:])
        ),
    ]
    return tuple(
        Draft(title="Safety", paper=paper, body=body) for body in flow(blocks, body_room(paper))
    )


def _caution(caution: Caution, width: float, *, is_last: bool) -> Block:
    """Return one note; the last of those that the same one decides says who that is."""
    room = width - TOPIC
    topic = paragraph(caution.topic, TOPIC - 2.0, bold=True)
    full = paragraph(caution.full, room, x=TOPIC)
    ask = printable(f"Ask: {caution.defer_to}.")
    end = text_width(wrap(caution.full, room, NOTE)[-1], NOTE) + 3.0
    lower, height, decides = full.height, full.height, Block(height=0.0)
    if is_last and end + text_width(ask, NOTE, bold=True) <= room:
        lower -= LINE_STEP * NOTE
        decides = paragraph(ask, room, x=TOPIC + end, bold=True)
    elif is_last:
        decides = paragraph(ask, room, x=TOPIC, bold=True)
        height += decides.height
    return Block(
        height=max(topic.height, height) + 2.6,
        shapes=(
            rule(width),
            *moved(topic.shapes, 0.0, 0.8),
            *moved(full.shapes, 0.0, 0.8),
            *moved(decides.shapes, 0.0, lower + 0.8),
        ),
    )


def set_up_pages(plan: Plan, paper: Paper) -> tuple[Draft, ...]:
    """Return how the saw is measured and the first edge and corner are made."""
    width = paper.body_width
    lines = set_up_lines(plan.unit)
    numbers, edges = lines[:ABOUT_NUMBERS], lines[ABOUT_NUMBERS:]
    blocks = [
        heading("Four numbers, from one test cut in scrap", width),
        _figure(width),
        *(ticked(line, width) for line in numbers),
        space(2.0),
        heading("Straight and square", width),
        *(ticked(line, width) for line in edges),
        ticked(f"At every cut {plan.handed.stand}.", width),
        paragraph(plan.handed.note, width),
        space(2.0),
        heading("Is this print true to size?", width),
        _scale_line(plan.unit, width),
    ]
    return tuple(
        Draft(title="Setting up", paper=paper, body=body) for body in flow(blocks, body_room(paper))
    )


def _figure(width: float) -> Block:
    """Return the saw on a piece, from above: what a, k and b are, and where L and R lie."""
    edge, kerf, kerf_end = 12.0, 92.0, 97.0
    base_left, base_right = 66.0, width - 34.0
    top, bottom = 22.0, 58.0
    shapes: list[Shape] = [
        Line(x1=edge, y1=bottom, x2=edge, y2=top, kind=LineKind.REFERENCE_EDGE),
        Line(x1=edge, y1=top, x2=width, y2=top, kind=LineKind.SHEET_EDGE),
        Line(x1=edge, y1=bottom, x2=width, y2=bottom, kind=LineKind.SHEET_EDGE),
        Hatch(x=kerf, y=top, width=kerf_end - kerf, height=bottom - top, kind=HatchKind.WASTE),
        Line(x1=kerf, y1=top, x2=kerf, y2=bottom, kind=LineKind.CUT),
        Line(x1=kerf_end, y1=top, x2=kerf_end, y2=bottom, kind=LineKind.CUT),
        Rectangle(
            x=base_left, y=31.0, width=base_right - base_left, height=20.0, kind=LineKind.BOX
        ),
        Text(x=base_right - 2, y=48.5, words="base plate", height=NOTE, anchor=Anchor.END),
    ]
    for left, right, words in ((40.0, base_left, "guide at L"), (base_right, width, "guide at R")):
        shapes += [
            Line(x1=left, y1=14.0, x2=left, y2=66.0, kind=LineKind.RULE),
            Line(x1=right, y1=14.0, x2=right, y2=66.0, kind=LineKind.RULE),
            Line(x1=left, y1=14.0, x2=right, y2=14.0, kind=LineKind.RULE),
            Line(x1=left, y1=66.0, x2=right, y2=66.0, kind=LineKind.RULE),
            Text(x=(left + right) / 2, y=64.0, words=words, height=NOTE, anchor=Anchor.MIDDLE),
        ]
    shapes += _span(edge, kerf, 9.0, "KEEP")
    shapes += _span(edge, base_left, 72.0, "L")
    shapes += _span(edge, base_right, 82.0, "R")
    shapes += _span(base_left, kerf, 38.5, "a")
    shapes += _span(kerf_end, base_right, 38.5, "b")
    shapes.append(
        Text(
            x=(kerf + kerf_end) / 2, y=20.0, words="k", height=FIGURE, bold=True,
            anchor=Anchor.MIDDLE, role=Role.FIGURE,
        )
    )  # fmt: skip
    column = width / 4
    for place, words in enumerate(("a =", "k =", "b =", "thickness =")):
        x = place * column
        start = text_width(words, 4.0, bold=True) + 2.0
        shapes += [
            Text(x=x, y=97.0, words=words, height=4.0, bold=True),
            blank(x + start, 97.8, column - start - 4.0),
        ]
    return Block(height=103.0, shapes=tuple(shapes))


def _span(start: float, end: float, y: float, words: str) -> tuple[Shape, ...]:
    """Return a size between two places: an arrow either way from its name."""
    middle = (start + end) / 2
    half = 3.5 if len(words) == 1 else 11.0
    return (
        Text(
            x=middle, y=y + FIGURE / 2, words=words, height=FIGURE, bold=True,
            anchor=Anchor.MIDDLE, role=Role.FIGURE,
        ),
        Line(x1=start, y1=y, x2=middle - half, y2=y, kind=LineKind.DIMENSION),
        Line(x1=middle + half, y1=y, x2=end, y2=y, kind=LineKind.DIMENSION),
        arrow_head(start, y, (-1, 0)),
        arrow_head(end, y, (1, 0)),
    )  # fmt: skip


def _scale_line(unit: Unit, width: float) -> Block:
    length, name = (100.0, "100 mm") if unit is Unit.MM else (101.6, "4 in")
    y = 6.0
    line = (
        Line(x1=0.25, y1=y, x2=length + 0.25, y2=y, kind=LineKind.CUT),
        Line(x1=0.25, y1=y - 2.5, x2=0.25, y2=y + 2.5, kind=LineKind.RULE),
        Line(x1=length + 0.25, y1=y - 2.5, x2=length + 0.25, y2=y + 2.5, kind=LineKind.RULE),
    )
    words = paragraph(
        f"This line is {name} long on paper that was printed unscaled. No page depends on it: "
        "sizes are read, never measured off the drawing.",
        width,
    )
    return Block(height=12.0 + words.height, shapes=(*line, *moved(words.shapes, 0.0, 11.0)))
