"""A template spread over tiles: what each shows of it, and the lines along which they join."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import ceil

from nesting.lengths import NM_PER_MM, Length
from plans.pages.boxes import Box
from plans.pages.rounds import circle, inside, path
from plans.pages.shapes import Line, LineKind, Rectangle, Shape, Solid
from plans.pages.strokes import arrow_head
from plans.sections.templates import Template

OVERLAP = 16.0  # two tiles share a strip of this width; they join along its middle
OFF_MIDDLE = 9.0
MARGIN = 6.0  # round the outermost outline
BOLT = 2.5  # radius of the mark for a bolt
ARROW = 9.0  # length of the arrow that points up
ARROW_IN = 4.0  # from the corner of the tile
MAP = 6.0  # height of a tile in the small plan of all


@dataclass(frozen=True, slots=True, kw_only=True)
class Tiling:
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

    def is_alternate(self, number: int) -> bool:
        """Return whether a tile is a black field, tiles being laid like a chessboard's fields."""
        row, place = divmod(number, self.across)
        return (row + place) % 2 == 1


def spread(template: Template, view: Box) -> Tiling:
    """Return how a template is spread over tiles that show so much each."""
    sizes = [_mm(side) + 2 * MARGIN for side in _sides(template)]
    rooms = (view.width, view.height)
    counts = [
        1 if size <= room else ceil((size - OVERLAP) / (room - OVERLAP))
        for size, room in zip(sizes, rooms, strict=True)
    ]
    whole = [
        count * room - (count - 1) * OVERLAP for count, room in zip(counts, rooms, strict=True)
    ]
    # Off the middle where there is room, so that no join lies on the centre lines.
    left, top = (
        -long / 2 + (min(OFF_MIDDLE, (long - size) / 2) if count % 2 == 0 else 0.0)
        for long, count, size in zip(whole, counts, sizes, strict=True)
    )
    return Tiling(across=counts[0], down=counts[1], view=view, left=left, top=top)


def draw_tile(
    template: Template, tiling: Tiling, number: int, *, is_turned: bool
) -> Iterator[Shape]:
    """Yield what one tile shows of a template, its frame, its joining lines, an arrow up.

    Args:
        template: The template.
        tiling: How it is spread.
        number: Of the tile, from 0, row by row.
        is_turned: Whether it is drawn upside down.
    """
    view = tiling.view
    row, place = divmod(number, tiling.across)
    x = view.left - tiling.left - place * (view.width - OVERLAP)
    y = view.top - tiling.top - row * (view.height - OVERLAP)
    shapes: list[Line | Solid] = [
        *_outlines(template, x, y, view),
        *_marks(template, x, y, view),
        *_joins(tiling, place, row),
        *_arrow(tiling, place, row),
    ]
    yield Rectangle(
        x=view.left, y=view.top, width=view.width, height=view.height, kind=LineKind.RULE
    )
    for shape in shapes:
        yield _upside_down(shape, view) if is_turned else shape


def draw_map(tiling: Tiling, number: int, left: float, top: float) -> Iterator[Shape]:
    """Yield a small plan of all tiles, one of them black."""
    wide = MAP * tiling.view.width / tiling.view.height
    for place in range(tiling.count):
        row, column = divmod(place, tiling.across)
        x, y = left + column * wide, top + row * MAP
        yield Rectangle(x=x, y=y, width=wide, height=MAP, kind=LineKind.BOX)
        if place == number:
            yield Solid(points=((x, y), (x + wide, y), (x + wide, y + MAP), (x, y + MAP)))


def _sides(template: Template) -> tuple[Length, Length]:
    if template.window:
        return template.window
    widest = max(template.cut_out, template.bolt_circle, template.flange)
    return widest, widest


def _outlines(template: Template, x: float, y: float, view: Box) -> Iterator[Line]:
    if template.window:
        half_across, half_up = (_mm(side) / 2 for side in template.window)
        corners = [
            (x + across * half_across, y + up * half_up)
            for across, up in ((-1, -1), (1, -1), (1, 1), (-1, 1), (-1, -1))
        ]
        yield from path(corners, LineKind.CUT, view)
        return
    for diameter, kind in (
        (template.cut_out, LineKind.CUT),
        (template.bolt_circle, LineKind.DIMENSION),
        (template.flange, LineKind.SHEET_EDGE),
    ):
        if diameter:
            yield from circle(x, y, _mm(diameter) / 2, kind, view)


def _marks(template: Template, x: float, y: float, view: Box) -> Iterator[Line]:
    """Yield the centre lines and the bolts, as far as the tile shows them."""
    reach = view.right + view.bottom + abs(x) + abs(y)  # beyond the tile; cut off at its edge
    cross = [*_cross(x, y, reach)]
    for over, up in template.bolts:
        bolt_x, bolt_y = x + _mm(over), y - _mm(up)
        cross += _cross(bolt_x, bolt_y, BOLT)
        yield from circle(bolt_x, bolt_y, BOLT, LineKind.DIMENSION, view)
    yield from inside(cross, view)


def _cross(x: float, y: float, half: float) -> tuple[Line, Line]:
    return (
        Line(x1=x - half, y1=y, x2=x + half, y2=y, kind=LineKind.DIMENSION),
        Line(x1=x, y1=y - half, x2=x, y2=y + half, kind=LineKind.DIMENSION),
    )


def _joins(tiling: Tiling, place: int, row: int) -> Iterator[Line]:
    """Yield the lines that lie on those of the neighbours."""
    view, half = tiling.view, OVERLAP / 2
    level = Line(x1=view.left, y1=0.0, x2=view.right, y2=0.0, kind=LineKind.SCISSORS)
    upright = Line(x1=0.0, y1=view.top, x2=0.0, y2=view.bottom, kind=LineKind.SCISSORS)
    for is_there, x in (
        (place > 0, view.left + half),
        (place < tiling.across - 1, view.right - half),
    ):
        if is_there:
            yield replace(upright, x1=x, x2=x)
    for is_there, y in ((row > 0, view.top + half), (row < tiling.down - 1, view.bottom - half)):
        if is_there:
            yield replace(level, y1=y, y2=y)


def _arrow(tiling: Tiling, place: int, row: int) -> Iterator[Line | Solid]:
    """Yield an arrow that points up, in the corner of the tile that lies outermost."""
    view = tiling.view
    x = view.left + ARROW_IN if place < tiling.across / 2 else view.right - ARROW_IN
    top = view.top + ARROW_IN if row < tiling.down / 2 else view.bottom - ARROW_IN - ARROW
    yield arrow_head(x, top, (0, -1), 4.0)
    yield Line(x1=x, y1=top + 3.5, x2=x, y2=top + ARROW, kind=LineKind.CUT)


def _upside_down(shape: Line | Solid, view: Box) -> Line | Solid:
    across, down = view.left + view.right, view.top + view.bottom
    if isinstance(shape, Solid):
        return Solid(points=tuple((across - x, down - y) for x, y in shape.points))
    return replace(
        shape,
        x1=across - shape.x1,
        y1=down - shape.y1,
        x2=across - shape.x2,
        y2=down - shape.y2,
    )


def _mm(length: Length) -> float:
    return length / NM_PER_MM
