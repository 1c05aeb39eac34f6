"""Holes: coordinates first, then the order of work, panel by panel."""

from collections.abc import Sequence

from plans.pages.blocks import Block, Section, moved, side_by_side, space, stack
from plans.pages.fonts import printable, text_width
from plans.pages.lettering import FIGURE, NOTE, heading, paragraph
from plans.pages.panel_drawing import panel_drawing
from plans.pages.paper import Paper
from plans.pages.rows import dashed, rule, ticked
from plans.pages.shapes import Role, Shape, Text
from plans.plan import Plan
from plans.sections.holes import HoleOrder, HoleText, PanelHoles

TITLE = "Holes"
DRAWING = 46.0
DRAWING_HEIGHT = 100.0
SMALL_HEIGHT = 44.0
GAP = 5.0
BOLT = 4.0
BOLT_NUMBER = 7.0
BOLT_APART = 4.0
MOST_COLUMNS = 3


def holes_section(plan: Plan, paper: Paper) -> Section:
    """Return the holes; nothing where there are none."""
    if not plan.bench.holes:
        return Section(title=TITLE, blocks=())
    width = paper.body_width
    cautions = [caution.short for caution in plan.cautions if "holes" in caution.where]
    blocks: list[Block] = [dashed(line, width, bold=True) for line in cautions]
    blocks += [
        paragraph(
            "Everything is measured from the named edges, drawn double. No figure is added to "
            "another. Measure the thing itself first: a size that it is called by is not its size.",
            width,
        ),
        space(2.0),
    ]
    for panel in plan.bench.holes:
        blocks += _panel(panel, width)
    blocks += [
        Block(height=1.0, shapes=(rule(width),), is_glued=True),
        heading("Order of work", width),
        *_orders(plan.bench.hole_orders, width),
    ]
    return Section(title=TITLE, blocks=tuple(blocks))


def _panel(panel: PanelHoles, width: float) -> list[Block]:
    rest = width - DRAWING - GAP
    is_small = len(panel.holes) == 1
    drawing = panel_drawing(panel, DRAWING, SMALL_HEIGHT if is_small else DRAWING_HEIGHT)
    figures = stack(
        [
            paragraph(f"The {panel.face} is drawn, {panel.size}. {panel.when}", rest),
            space(1.5),
            *(_hole(hole, rest) for hole in panel.holes),
        ]
    )
    upper = side_by_side([(0.0, drawing), (DRAWING + GAP, figures)])
    name = f"{panel.panel[:1].upper()}{panel.panel[1:]}"
    return [
        Block(height=1.0, shapes=(rule(width),), is_glued=True),
        heading(f"{name} of {panel.design}: {panel.letters}", width),
        Block(height=upper.height + 2.0, shapes=upper.shapes),
        space(1.0),
    ]


def _orders(orders: Sequence[HoleOrder], width: float) -> list[Block]:
    """Return what is done for holes that are made alike, two kinds beside each other."""
    half = (width - GAP) / 2
    each = [
        stack(
            [
                paragraph(order.codes, half, bold=True, height=3.6),
                *(ticked(step, half) for step in order.steps),
                space(1.0),
            ]
        )
        for order in sorted(orders, key=lambda order: -len(order.steps))
    ]
    return [
        side_by_side(list(zip((0.0, half + GAP), each[start : start + 2], strict=False)))
        for start in range(0, len(each), 2)
    ]


def _hole(hole: HoleText, width: float) -> Block:
    """Return one hole: its code and name, its centre, its sizes, its bolts."""
    code = printable(hole.code)
    name_x = text_width(code, FIGURE, bold=True) + 3.0
    head = (
        Text(x=0.0, y=FIGURE + 1.2, words=code, height=FIGURE, bold=True, role=Role.CODE),
        *moved(paragraph(hole.name, width - name_x, x=name_x, bold=True).shapes, 0.0, 1.6),
    )
    centre = _figures(_centre(hole), width)
    sizes = _figures(hole.sizes, width)
    blocks = [Block(height=FIGURE + 3.6, shapes=head), centre, sizes]
    if hole.bolts:
        blocks.append(_bolts(hole, width))
    whole = stack(blocks)
    return Block(height=whole.height + 2.5, shapes=whole.shapes)


def _centre(hole: HoleText) -> tuple[tuple[str, str], ...]:
    (first, _, at), (second, _, other) = (words.partition(" ") for words in hole.centre)
    return (f"centre from {first}", at), (f"from {second}", other)


def _figures(pairs: tuple[tuple[str, str], ...], width: float) -> Block:
    """Return labelled figures in a row, broken where it is full."""
    shapes: list[Shape] = []
    x, y, step = 0.0, FIGURE + 0.8, FIGURE + 2.6
    for name, value in pairs:
        label, figure = printable(name), printable(value)
        long = text_width(label, NOTE) + 1.5 + text_width(figure, FIGURE, bold=True)
        if x and x + long > width:
            x, y = 0.0, y + step
        shapes.append(Text(x=x, y=y, words=label, height=NOTE))
        shapes.append(
            Text(
                x=x + text_width(label, NOTE) + 1.5, y=y, words=figure, height=FIGURE,
                bold=True, role=Role.FIGURE,
            )
        )  # fmt: skip
        x += long + 4.0
    return Block(height=y + 2.0, shapes=tuple(shapes))


def _bolts(hole: HoleText, width: float) -> Block:
    """Return the bolts in columns, each with its distances from the same two edges."""
    first, second = (words.split(" ")[0] for words in hole.centre)
    chord = f", {hole.chord} from one to the next" if hole.chord else ""
    head = paragraph(f"bolts: from {first}, from {second}{chord}", width)
    wide = max(
        text_width(printable(words), BOLT) for bolt in hole.bolts for words in bolt.distances
    )
    second_x = BOLT_NUMBER + wide + BOLT_APART
    columns = min(MOST_COLUMNS, max(1, int(width / (second_x + wide + BOLT_APART + 1.5))))
    rows = -(-len(hole.bolts) // columns)
    shapes: list[Shape] = []
    for place, bolt in enumerate(hole.bolts):
        column, row = divmod(place, rows)
        x, y = column * width / columns, (row + 1) * (BOLT + 1.8) - 1.0
        shapes.append(Text(x=x, y=y, words=f"{bolt.number}.", height=NOTE))
        shapes += [
            Text(x=x + over, y=y, words=printable(words), height=BOLT)
            for over, words in zip((BOLT_NUMBER, second_x), bolt.distances, strict=True)
        ]
    table = Block(height=rows * (BOLT + 1.8) + 0.6, shapes=tuple(shapes))
    return stack([head, table])
