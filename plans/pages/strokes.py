"""How each meaning is drawn: the thickness, dash and hatch that stand for it on every page.

Lines are at least 0.35 mm thick and cuts at least 0.7 mm (judgement); the steps follow the series
0.35, 0.5, 0.7, 1.0, 1.4 of technical drawing. A thick line is at least twice a thin one.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from plans.pages.boxes import UNDERLINE_THICKNESS, Box, text_box, underline_drop, underlined
from plans.pages.fonts import text_width
from plans.pages.shapes import (
    Hatch,
    HatchKind,
    Line,
    LineKind,
    Rectangle,
    Solid,
    Text,
    TickBox,
)


@dataclass(frozen=True, slots=True)
class Pen:
    """A thickness, and lengths of dash and gap in turn (none: drawn through)."""

    thickness: float
    dashes: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Stroke:
    """A straight stroke of a pen: all that a writer has to draw beside texts and solids."""

    x1: float
    y1: float
    x2: float
    y2: float
    pen: Pen


PENS = {
    LineKind.CUT: Pen(0.7),
    LineKind.NEXT_CUT: Pen(1.4),
    LineKind.SHEET_EDGE: Pen(0.5),
    LineKind.REFERENCE_EDGE: Pen(0.5),
    LineKind.GRAIN: Pen(0.35),
    LineKind.LEADER: Pen(0.35),
    LineKind.DIMENSION: Pen(0.35),
    LineKind.RULE: Pen(0.35),
    LineKind.HEAVY_RULE: Pen(1.0),
    LineKind.SAME_SETTING: Pen(0.7),
    LineKind.STOP: Pen(1.4),
    LineKind.BLANK: Pen(0.35),
    LineKind.BOX: Pen(0.5),
    LineKind.SCISSORS: Pen(0.35, (3.0, 1.5)),
    LineKind.SUPPORT: Pen(0.7, (1.4, 1.0)),
    LineKind.DEFECT_EDGE: Pen(0.5),
}
HATCH_PENS = {
    HatchKind.WASTE: Pen(0.35),
    HatchKind.DEFECT: Pen(0.35),
    HatchKind.STAIN: Pen(0.35, (1.0, 0.8)),
    HatchKind.OFFCUT: Pen(0.5, (0.6, 1.2)),
}
TICK_BOX = Pen(0.5)
UNDERLINE = Pen(UNDERLINE_THICKNESS)
STRIKE = Pen(0.7)

REFERENCE_GAP = 1.5  # between the two lines of a reference edge, middle to middle
HATCH_STEP = 2.4  # between hatch lines, measured along an edge
OFFCUT_INSET = 1.3


def strokes_of(shape: Line | Rectangle | TickBox | Hatch | Text) -> tuple[Stroke, ...]:
    """Return the strokes that draw a shape; for a text those that go with its letters."""
    match shape:
        case Line():
            return _line(shape)
        case Rectangle(x=x, y=y, width=width, height=height, kind=kind):
            return _outline(Box(x, y, x + width, y + height), PENS[kind])
        case TickBox(x=x, y=y, size=size):
            return _outline(Box(x, y, x + size, y + size), TICK_BOX)
        case Hatch():
            return _hatch(shape)
        case Text():
            return (*_underlines(shape), *_strike(shape))


def broken(stroke: Stroke, gaps: Iterable[Box]) -> tuple[Stroke, ...]:
    """Return what is left of a stroke outside the gaps, from its start to its end."""
    hidden = sorted(span for box in gaps if (span := _span_inside(stroke, box)) is not None)
    pieces, done = [], 0.0
    for start, end in [*hidden, (1.0, 1.0)]:
        if start > done:
            pieces.append(_part_of(stroke, done, start))
        done = max(done, end)
    return tuple(pieces)


def _part_of(stroke: Stroke, start: float, end: float) -> Stroke:
    along_x, along_y = stroke.x2 - stroke.x1, stroke.y2 - stroke.y1
    return Stroke(
        stroke.x1 + start * along_x,
        stroke.y1 + start * along_y,
        stroke.x1 + end * along_x,
        stroke.y1 + end * along_y,
        stroke.pen,
    )


def _span_inside(stroke: Stroke, box: Box) -> tuple[float, float] | None:
    """Return the part of a stroke inside a box, as fractions of its length (Liang and Barsky)."""
    start, end = 0.0, 1.0
    for origin, along, low, high in (
        (stroke.x1, stroke.x2 - stroke.x1, box.left, box.right),
        (stroke.y1, stroke.y2 - stroke.y1, box.top, box.bottom),
    ):
        if along == 0:
            if not low < origin < high:
                return None
            continue
        near, far = sorted(((low - origin) / along, (high - origin) / along))
        start, end = max(start, near), min(end, far)
    return (start, end) if start < end else None


def _line(line: Line) -> tuple[Stroke, ...]:
    pen = PENS[line.kind]
    first = Stroke(line.x1, line.y1, line.x2, line.y2, pen)
    if line.kind is not LineKind.REFERENCE_EDGE:
        return (first,)
    length = ((line.x2 - line.x1) ** 2 + (line.y2 - line.y1) ** 2) ** 0.5
    # The second line lies to the left of the direction of travel.
    over_x = REFERENCE_GAP * (line.y2 - line.y1) / length
    over_y = -REFERENCE_GAP * (line.x2 - line.x1) / length
    return (
        first,
        Stroke(line.x1 + over_x, line.y1 + over_y, line.x2 + over_x, line.y2 + over_y, pen),
    )


def _outline(box: Box, pen: Pen) -> tuple[Stroke, ...]:
    return (
        Stroke(box.left, box.top, box.right, box.top, pen),
        Stroke(box.right, box.top, box.right, box.bottom, pen),
        Stroke(box.right, box.bottom, box.left, box.bottom, pen),
        Stroke(box.left, box.bottom, box.left, box.top, pen),
    )


def _hatch(hatch: Hatch) -> tuple[Stroke, ...]:
    area = Box(hatch.x, hatch.y, hatch.x + hatch.width, hatch.y + hatch.height)
    gaps = [Box(gap.x, gap.y, gap.x + gap.width, gap.y + gap.height) for gap in hatch.gaps]
    match hatch.kind:
        case HatchKind.PART:
            return ()
        case HatchKind.OFFCUT:
            inset = min(OFFCUT_INSET, area.width / 4, area.height / 4)
            lines = _outline(area.grown(-inset), HATCH_PENS[hatch.kind])
        case HatchKind.WASTE:
            lines = _diagonals(area, HATCH_PENS[hatch.kind], rising=True)
        case HatchKind.STAIN:
            lines = _diagonals(area, HATCH_PENS[hatch.kind], rising=False)
        case HatchKind.DEFECT:
            pen = HATCH_PENS[hatch.kind]
            lines = (*_diagonals(area, pen, rising=True), *_diagonals(area, pen, rising=False))
    return tuple(piece for line in lines for piece in broken(line, gaps))


def _diagonals(area: Box, pen: Pen, *, rising: bool) -> tuple[Stroke, ...]:
    """Return lines at 45 degrees across an area, on one raster for the whole page.

    The raster keeps the hatches of neighbouring areas in line.
    """
    strokes = []
    if rising:  # x + y is the same all along a line
        first, last = area.left + area.top, area.right + area.bottom
    else:  # x - y is
        first, last = area.left - area.bottom, area.right - area.top
    number = int(first // HATCH_STEP) + 1
    while number * HATCH_STEP < last:
        at = number * HATCH_STEP
        number += 1
        if rising:
            left, right = max(area.left, at - area.bottom), min(area.right, at - area.top)
            strokes.append(Stroke(left, at - left, right, at - right, pen))
        else:
            left, right = max(area.left, at + area.top), min(area.right, at + area.bottom)
            strokes.append(Stroke(left, left - at, right, right - at, pen))
    return tuple(strokes)


def _underlines(text: Text) -> tuple[Stroke, ...]:
    box = text_box(text)
    strokes = []
    for place in underlined(text):
        start = text_width(text.words[:place], text.height, bold=text.bold)
        end = start + text_width(text.words[place], text.height, bold=text.bold)
        inset = 0.08 * (end - start)
        start, end, drop = start + inset, end - inset, underline_drop(text.height)
        if text.is_upright:
            at = text.x + drop
            strokes.append(Stroke(at, box.bottom - start, at, box.bottom - end, UNDERLINE))
        else:
            at = text.y + drop
            strokes.append(Stroke(box.left + start, at, box.left + end, at, UNDERLINE))
    return tuple(strokes)


def _strike(text: Text) -> tuple[Stroke, ...]:
    if not text.is_struck:
        return ()
    box = text_box(text).grown(0.6)
    if text.is_upright:
        middle = text.x - text.height / 2
        return (Stroke(middle, box.bottom, middle, box.top, STRIKE),)
    middle = text.y - text.height / 2
    return (Stroke(box.left, middle, box.right, middle, STRIKE),)


def arrow_head(x: float, y: float, towards: tuple[int, int], length: float = 2.2) -> Solid:
    """Return an arrow head with its tip at a point, pointing along one axis."""
    along_x, along_y = towards
    half = length * 0.4
    back_x, back_y = x - along_x * length, y - along_y * length
    return Solid(
        points=(
            (x, y),
            (back_x - along_y * half, back_y - along_x * half),
            (back_x + along_y * half, back_y + along_x * half),
        )
    )
