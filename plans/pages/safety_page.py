"""The safety notes in full, and how to set up: before any page that calls for a cut."""

from collections.abc import Sequence
from itertools import zip_longest

from nesting.lengths import Unit
from plans.pages.blocks import Block, Section, moved, side_by_side, space
from plans.pages.fonts import printable, text_width
from plans.pages.lettering import FIGURE, LINE_STEP, NOTE, heading, paragraph, wrap
from plans.pages.paper import Paper
from plans.pages.rows import rule, ticked
from plans.pages.saw_figure import saw_figure
from plans.pages.shapes import Line, LineKind, Role, Text
from plans.plan import Plan
from plans.sections.cautions import Caution
from plans.sections.gauge_blocks import GaugeBlock
from plans.sections.set_up import INTRODUCTION, edge_lines, saw_lines

TOPIC = 26.0
BLOCK = 11.0  # height of the line of the blocks to cut
BLOCK_PLACE = 54.0
BETWEEN = 8.0  # white between the two blocks


def safety_section(plan: Plan, paper: Paper) -> Section:
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
    return Section(title="Safety", blocks=tuple(blocks))


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
        height=max(topic.height, height) + 1.5,
        shapes=(
            rule(width),
            *moved(topic.shapes, 0.0, 0.8),
            *moved(full.shapes, 0.0, 0.8),
            *moved(decides.shapes, 0.0, lower + 0.8),
        ),
    )


def set_up_section(plan: Plan, paper: Paper) -> Section:
    """Return how the saw is measured and the first edge and corner are made."""
    width = paper.body_width
    blocks = [
        heading("Four numbers, from one test cut in scrap", width),
        saw_figure(width, has_blocks=bool(plan.blocks)),
        *([_gauge_blocks(plan.blocks, width)] if plan.blocks else []),
        *(ticked(line, width) for line in saw_lines(plan.blocks)),
        space(2.0),
        heading("Straight and square", width),
        *(ticked(line, width) for line in edge_lines(plan.unit)),
        ticked(f"At every cut {plan.handed.stand}.", width),
        paragraph(plan.handed.note, width),
        space(2.0),
        heading("Is this print true to size?", width),
        _scale_line(plan.unit, width),
    ]
    return Section(title="Setting up", blocks=tuple(blocks))


def _gauge_blocks(blocks: Sequence[GaugeBlock], width: float) -> Block:
    """Return the two blocks to cut, beside each other."""
    half = (width - BETWEEN) / 2
    return side_by_side(
        [
            (place * (half + BETWEEN), _gauge_block(block, half))
            for place, block in enumerate(blocks)
        ]
    )


def _gauge_block(block: GaugeBlock, width: float) -> Block:
    """Return one block to cut: its letter and its width large, and where it lies."""
    name, size = printable(block.name), printable(block.size)
    place = paragraph(block.place, width - BLOCK_PLACE, x=BLOCK_PLACE)
    return Block(
        height=max(BLOCK, place.height + 2.0),
        shapes=(
            rule(width),
            Text(x=0.0, y=8.4, words=name, height=7.0, bold=True, role=Role.CODE),
            Text(x=16.0, y=8.4, words=size, height=FIGURE, bold=True, role=Role.FIGURE),
            *moved(place.shapes, 0.0, 2.0),
        ),
    )


def _scale_line(unit: Unit, width: float) -> Block:
    length, name = (100.0, "100 mm") if unit is Unit.MM else (101.6, "4 in")
    y = 4.0
    line = (
        Line(x1=0.25, y1=y, x2=length + 0.25, y2=y, kind=LineKind.CUT),
        Line(x1=0.25, y1=y - 2.5, x2=0.25, y2=y + 2.5, kind=LineKind.RULE),
        Line(x1=length + 0.25, y1=y - 2.5, x2=length + 0.25, y2=y + 2.5, kind=LineKind.RULE),
    )
    words = paragraph(
        f"This line is {name} long if printed unscaled. Read the sizes, never scale a drawing.",
        width,
    )
    return Block(height=9.0 + words.height, shapes=(*line, *moved(words.shapes, 0.0, 8.0)))
