"""Templates at full size, in tiles: the only pages that are measured, and never the only source.

Every tile carries a square to check in both directions and along its diagonal, two rulers, and the
lines along which it joins its neighbours. Printers feed paper a little askew, every sheet the same
way: where every other tile is printed upside down, the errors of neighbours do not add up.
"""

from collections.abc import Iterator

from nesting.lengths import Unit
from plans.pages.blocks import Block, moved, space, stack
from plans.pages.boxes import Box
from plans.pages.frame import Draft, body_room
from plans.pages.lettering import NOTE, paragraph
from plans.pages.paper import Paper, turn
from plans.pages.shapes import Line, LineKind, Rectangle, Text
from plans.pages.template_tiles import Tiling, draw_map, draw_tile, spread
from plans.plan import Plan
from plans.sections.templates import Template

RULER = 5.0
COLUMN_GAP = 6.0
TICK = 10.0
LONG_TICK = 50.0
MAP_IN = 8.0  # from the corner of the check square to the small plan of the tiles


def template_pages(plan: Plan, paper: Paper, *, turns: bool = False) -> tuple[Draft, ...]:
    """Return the templates, the paper lying; nothing where there are no holes.

    Args:
        plan: The plan.
        paper: To print on.
        turns: Whether every other tile is printed upside down.
    """
    lying = turn(paper)
    return tuple(
        draft
        for template in plan.bench.templates
        for draft in _template(template, plan.unit, lying, turns=turns)
    )


def check_square(unit: Unit) -> tuple[float, str, str]:
    """Return the side of the square in millimetres, and side and diagonal in words."""
    if unit is Unit.MM:
        return 100.0, "100 mm", "141.4 mm"
    return 101.6, "4 in", "5 21/32 in"


def _template(template: Template, unit: Unit, paper: Paper, *, turns: bool) -> Iterator[Draft]:
    side, _, _ = check_square(unit)
    column = paper.body_width - side - 1.0
    view = Box(RULER, 0.0, column - COLUMN_GAP, body_room(paper) - RULER)
    tiling = spread(template, view)
    for number in range(tiling.count):
        is_turned = turns and tiling.is_alternate(number)
        drawing = draw_tile(template, tiling, number, is_turned=is_turned)
        beside = _column(template, unit, number, tiling, is_turned=is_turned)
        yield Draft(
            title=f"Template {template.codes}",
            beside=f"tile {number + 1} of {tiling.count}, full size",
            paper=paper,
            body=Block(
                height=body_room(paper),
                shapes=(*drawing, *_rulers(view, unit), *moved(beside.shapes, column, 0.0)),
            ),
        )


def _rulers(view: Box, unit: Unit) -> Iterator[Line]:
    """Yield a ruler below the drawing and one at its left, a long tick every 50 mm or 2 in."""
    step = TICK if unit is Unit.MM else 12.7
    every = round(LONG_TICK / step) if unit is Unit.MM else 4
    for number in range(int(view.width / step) + 1):
        long = RULER - 0.5 if number % every == 0 else RULER / 2
        x = view.left + number * step
        yield Line(x1=x, y1=view.bottom, x2=x, y2=view.bottom + long, kind=LineKind.RULE)
    for number in range(int(view.height / step) + 1):
        long = RULER - 0.5 if number % every == 0 else RULER / 2
        y = view.bottom - number * step
        yield Line(x1=view.left - long, y1=y, x2=view.left, y2=y, kind=LineKind.RULE)


def _column(
    template: Template, unit: Unit, number: int, tiling: Tiling, *, is_turned: bool
) -> Block:
    """Return the square to check with the small plan of the tiles, and the words of one tile."""
    side, side_words, diagonal = check_square(unit)
    plan = draw_map(tiling, number, MAP_IN + NOTE, MAP_IN) if tiling.count > 1 else ()
    square = Block(
        height=side + 3.0,
        shapes=(
            Rectangle(x=0.5, y=0.5, width=side, height=side, kind=LineKind.SHEET_EDGE),
            Line(x1=0.5, y1=0.5 + side, x2=0.5 + side, y2=0.5, kind=LineKind.SHEET_EDGE),
            Text(x=0.6 * side, y=side - 1.8, words=side_words, height=NOTE),
            Text(x=5.4, y=0.5 * side, words=side_words, height=NOTE, is_upright=True),
            Text(x=0.56 * side, y=0.56 * side, words=diagonal, height=NOTE),
            *plan,
        ),
    )
    use = (
        f"DO NOT USE this tile if the square is not {side_words} both ways, or its diagonal not "
        f"{diagonal}. Print at 100 %, without fitting to the page."
    )
    words = (
        (use, True),
        (template.title, True),
        (f"{template.numbers}. These figures decide, not the print.", False),
        (_how_to_read(template, unit), False),
        (_how_to_join(number, tiling, is_turned=is_turned), is_turned),
    )
    return stack(
        [
            square,
            *(
                block
                for text, is_bold in words
                for block in (paragraph(text, side, bold=is_bold), space(1.2))
            ),
        ]
    )


def _how_to_read(template: Template, unit: Unit) -> str:
    lines = "the window" if template.window else "cut-out. Outermost: flange"
    every = "10 mm, long every 50 mm" if unit is Unit.MM else "1/2 in, long every 2 in"
    return (
        "The arrow points up, seen as on the page Holes. "
        f"Heavy: {lines}. The cross is the centre. Rulers: {every}."
    )


def _how_to_join(number: int, tiling: Tiling, *, is_turned: bool) -> str:
    if tiling.count == 1:
        return "One tile."
    turned = "Printed upside down: turn it first. " if is_turned else ""
    return (
        f"{turned}Tile {number + 1} of {tiling.count}, black in the small plan. Dashed: lay each "
        "on the same line of the next tile."
    )
