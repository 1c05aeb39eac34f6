"""Templates at full size, in tiles: the only pages that are measured, and never the only source.

Every tile carries a square to check in both directions and along its diagonal, two rulers, and the
lines along which it joins its neighbours.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import ceil

from nesting.lengths import NM_PER_MM, Length, Unit
from plans.pages.blocks import Block, moved, space, stack
from plans.pages.boxes import Box
from plans.pages.frame import Draft, body_room
from plans.pages.lettering import NOTE, paragraph
from plans.pages.paper import Paper, turn
from plans.pages.rounds import circle, inside
from plans.pages.shapes import Line, LineKind, Rectangle, Shape, Text
from plans.plan import Plan
from plans.sections.templates import Template

OVERLAP = 16.0  # two tiles share a strip of this width; they join along its middle
OFF_MIDDLE = 9.0
MARGIN = 6.0  # round the outermost circle
RULER = 5.0
COLUMN_GAP = 6.0
BOLT = 2.5  # radius of the mark for a bolt
TICK = 10.0
LONG_TICK = 50.0


@dataclass(frozen=True, slots=True, kw_only=True)
class _Tiling:
    """How a template is spread over tiles.

    Attributes:
        across: Tiles side by side.
        down: Tiles one below the other.
        view: What one tile shows, on the tile.
        left: Of the first tile, from the centre of the template.
        top: Of the first tile, likewise, downwards.
    """

    across: int
    down: int
    view: Box
    left: float
    top: float

    @property
    def count(self) -> int:
        """Number of tiles."""
        return self.across * self.down


def template_pages(plan: Plan, paper: Paper) -> tuple[Draft, ...]:
    """Return the templates, the paper lying; nothing where there are no round holes."""
    lying = turn(paper)
    return tuple(
        draft for template in plan.bench.templates for draft in _template(template, plan, lying)
    )


def check_square(unit: Unit) -> tuple[float, str, str]:
    """Return the side of the square in millimetres, and side and diagonal in words."""
    if unit is Unit.MM:
        return 100.0, "100 mm", "141.4 mm"
    return 101.6, "4 in", "5 21/32 in"


def _template(template: Template, plan: Plan, paper: Paper) -> Iterator[Draft]:
    side, _, _ = check_square(plan.unit)
    column = paper.body_width - side - 1.0
    view = Box(RULER, 0.0, column - COLUMN_GAP, body_room(paper) - RULER)
    tiling = _tile(template, view)
    for number in range(tiling.count):
        row, place = divmod(number, tiling.across)
        drawing = _tile_drawing(template, tiling, place, row)
        beside = _column(template, plan.unit, number, tiling)
        yield Draft(
            title=f"Template {template.codes}",
            beside=f"tile {number + 1} of {tiling.count}, full size",
            paper=paper,
            body=Block(
                height=body_room(paper),
                shapes=(*drawing, *_rulers(view, plan.unit), *moved(beside.shapes, column, 0.0)),
            ),
        )


def _tile(template: Template, view: Box) -> _Tiling:
    size = 2 * (_mm(max(template.cut_out, template.bolt_circle, template.flange)) / 2 + MARGIN)
    counts = [
        1 if size <= room else ceil((size - OVERLAP) / (room - OVERLAP))
        for room in (view.width, view.height)
    ]
    whole = [
        count * room - (count - 1) * OVERLAP
        for count, room in zip(counts, (view.width, view.height), strict=True)
    ]
    # Off the middle where there is room, so that no join lies on the centre lines.
    left, top = (
        -long / 2 + (min(OFF_MIDDLE, (long - size) / 2) if count % 2 == 0 else 0.0)
        for long, count in zip(whole, counts, strict=True)
    )
    return _Tiling(across=counts[0], down=counts[1], view=view, left=left, top=top)


def _tile_drawing(template: Template, tiling: _Tiling, place: int, row: int) -> Iterator[Shape]:
    """Yield what one tile shows of the template, its frame and its joining lines."""
    view = tiling.view
    step_x, step_y = view.width - OVERLAP, view.height - OVERLAP
    x = view.left - tiling.left - place * step_x
    y = view.top - tiling.top - row * step_y
    yield Rectangle(
        x=view.left, y=view.top, width=view.width, height=view.height, kind=LineKind.RULE
    )
    for diameter, kind in (
        (template.cut_out, LineKind.CUT),
        (template.bolt_circle, LineKind.DIMENSION),
        (template.flange, LineKind.SHEET_EDGE),
    ):
        if diameter:
            yield from circle(x, y, _mm(diameter) / 2, kind, view)
    reach = view.right + view.bottom + abs(x) + abs(y)  # beyond the tile; cut off at its edge
    cross = [
        Line(x1=x - reach, y1=y, x2=x + reach, y2=y, kind=LineKind.DIMENSION),
        Line(x1=x, y1=y - reach, x2=x, y2=y + reach, kind=LineKind.DIMENSION),
    ]
    for over, up in template.bolts:
        bolt_x, bolt_y = x + _mm(over), y - _mm(up)
        cross += [
            Line(x1=bolt_x - BOLT, y1=bolt_y, x2=bolt_x + BOLT, y2=bolt_y, kind=LineKind.DIMENSION),
            Line(x1=bolt_x, y1=bolt_y - BOLT, x2=bolt_x, y2=bolt_y + BOLT, kind=LineKind.DIMENSION),
        ]
        yield from circle(bolt_x, bolt_y, BOLT, LineKind.DIMENSION, view)
    yield from inside(cross, view)
    half = OVERLAP / 2
    joins = []
    if place:
        joins.append((view.left + half, view.top, view.left + half, view.bottom))
    if place < tiling.across - 1:
        joins.append((view.right - half, view.top, view.right - half, view.bottom))
    if row:
        joins.append((view.left, view.top + half, view.right, view.top + half))
    if row < tiling.down - 1:
        joins.append((view.left, view.bottom - half, view.right, view.bottom - half))
    for x1, y1, x2, y2 in joins:
        yield Line(x1=x1, y1=y1, x2=x2, y2=y2, kind=LineKind.SCISSORS)


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


def _column(template: Template, unit: Unit, number: int, tiling: _Tiling) -> Block:
    """Return the square to check, and the words of one tile."""
    side, side_words, diagonal = check_square(unit)
    square = Block(
        height=side + 3.0,
        shapes=(
            Rectangle(x=0.5, y=0.5, width=side, height=side, kind=LineKind.SHEET_EDGE),
            Line(x1=0.5, y1=0.5 + side, x2=0.5 + side, y2=0.5, kind=LineKind.SHEET_EDGE),
            Text(x=0.6 * side, y=side - 1.8, words=side_words, height=NOTE),
            Text(x=5.4, y=0.5 * side, words=side_words, height=NOTE, is_upright=True),
            Text(x=0.56 * side, y=0.56 * side, words=diagonal, height=NOTE),
        ),
    )
    every = "10 mm, long every 50 mm" if unit is Unit.MM else "1/2 in, long every 2 in"
    joining = (
        f"Tile {number + 1} of {tiling.count}, {tiling.across} side by side. Dashed: lay each on "
        "the same line of the next tile."
        if tiling.count > 1
        else "One tile."
    )
    words = (
        (
            (
                f"DO NOT USE this tile if the square is not {side_words} both ways, or its "
                f"diagonal not {diagonal}. Print at 100 %, without fitting to the page."
            ),
            True,
        ),
        (template.title, True),
        (f"{template.numbers}. These figures decide, not the print.", False),
        (
            (
                "Up is up, seen as on the page Holes. Heavy: cut-out. Outermost: flange. The "
                f"cross is the centre. Rulers: {every}."
            ),
            False,
        ),
        (joining, False),
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


def _mm(length: Length) -> float:
    return length / NM_PER_MM
