"""A panel with its holes, as its face is seen: small, not to scale for measuring."""

from collections.abc import Iterator
from math import hypot

from nesting.lengths import NM_PER_MM, Length
from plans.pages.blocks import Block
from plans.pages.boxes import Box, box_at, find_room, text_box
from plans.pages.fonts import text_ink, text_width
from plans.pages.lettering import FIGURE, NOTE
from plans.pages.rounds import circle
from plans.pages.shapes import Anchor, Line, LineKind, Rectangle, Role, Shape, Text
from plans.sections.holes import HoleText, PanelHoles

EDGE = 6.0  # for the names of the edges
CROSS = 1.6
CLEAR = 1.0
UNDERLINE = 1.2  # below a code with a 6 or 9
CODES = (FIGURE, 4.0, NOTE)
INSIDE_EDGE = 2.6  # clear of the second line of a double edge


def panel_drawing(panel: PanelHoles, width: float, height: float) -> Block:
    """Return the panel with its reference edges, holes and their codes, as large as fits."""
    across, up = panel.across / NM_PER_MM, panel.up / NM_PER_MM
    scale = min((width - 2 * EDGE) / across, (height - 2 * EDGE) / up)
    sheet = box_at(EDGE, EDGE, across * scale, up * scale)
    shapes: list[Shape] = [*_outline(panel, sheet), *_names(panel, sheet)]
    taken = [_reach(hole, sheet, scale) for hole in panel.holes]
    for hole in panel.holes:
        shapes += _hole(hole, sheet, scale)
        code = _code(hole, sheet, scale, taken)
        shapes.append(code)
        taken.append(text_box(code).grown(CLEAR))
    return Block(height=sheet.bottom + EDGE, shapes=tuple(shapes))


def _outline(panel: PanelHoles, sheet: Box) -> Iterator[Line]:
    """Yield the four edges; those that are measured from are double, the second line inside."""
    left, right, bottom, top = panel.sides
    for name, x1, y1, x2, y2 in (
        (left, sheet.left, sheet.top, sheet.left, sheet.bottom),
        (bottom, sheet.left, sheet.bottom, sheet.right, sheet.bottom),
        (right, sheet.right, sheet.bottom, sheet.right, sheet.top),
        (top, sheet.right, sheet.top, sheet.left, sheet.top),
    ):
        kind = LineKind.REFERENCE_EDGE if name in panel.edges else LineKind.SHEET_EDGE
        yield Line(x1=x1, y1=y1, x2=x2, y2=y2, kind=kind)


def _names(panel: PanelHoles, sheet: Box) -> Iterator[Text]:
    left, right, bottom, top = panel.sides
    middle_x, middle_y = (sheet.left + sheet.right) / 2, (sheet.top + sheet.bottom) / 2
    for words, x, y, is_upright in (
        (left, sheet.left - 1.8, middle_y, True),
        (right, sheet.right + 1.8 + NOTE, middle_y, True),
        (top, middle_x, sheet.top - 1.8, False),
        (bottom, middle_x, sheet.bottom + 1.4 + NOTE, False),
    ):
        yield Text(x=x, y=y, words=words, height=NOTE, anchor=Anchor.MIDDLE, is_upright=is_upright)


def _hole(hole: HoleText, sheet: Box, scale: float) -> Iterator[Shape]:
    x, y = _at(hole.at, sheet, scale)
    if hole.window:
        across, up = (side / NM_PER_MM * scale for side in hole.window)
        yield Rectangle(x=x - across / 2, y=y - up / 2, width=across, height=up, kind=LineKind.CUT)
    else:
        yield from circle(x, y, _radius(hole.cut_out, scale), LineKind.CUT, sheet)
    if hole.flange and not hole.window:
        yield from circle(x, y, _radius(hole.flange, scale), LineKind.DIMENSION, sheet)
    yield Line(x1=x - CROSS, y1=y, x2=x + CROSS, y2=y, kind=LineKind.DIMENSION)
    yield Line(x1=x, y1=y - CROSS, x2=x, y2=y + CROSS, kind=LineKind.DIMENSION)
    for bolt in hole.bolts:
        bolt_x, bolt_y = _at(bolt.at, sheet, scale)
        yield from circle(bolt_x, bolt_y, 0.5, LineKind.DIMENSION, sheet)


def _code(hole: HoleText, sheet: Box, scale: float, taken: list[Box]) -> Text:
    """Return the code of a hole, as large as fits: below its centre, or beside the hole."""
    x, y = _at(hole.at, sheet, scale)
    across, up = (side / NM_PER_MM * scale / 2 for side in hole.window or (hole.cut_out,) * 2)
    sizes = [(height, _size(hole.code, height)) for height in CODES]
    for height, (wide, high) in sizes:
        inner = box_at(x - wide / 2, y + CROSS + CLEAR, wide, high)
        if hole.window:
            is_inside = inner.bottom + CLEAR < y + up and wide / 2 + CLEAR < across
        else:
            is_inside = hypot(wide / 2, inner.bottom - y) + CLEAR < across
        if is_inside:
            return _write(hole.code, height, inner.left, inner.top)
    for height, (wide, high) in sizes:
        room = sheet.grown(-INSIDE_EDGE)
        found = find_room(room, wide, high, taken, (x + across + wide, y))
        if found:
            return _write(hole.code, height, found.left, found.top)
    return _write(hole.code, NOTE, sheet.left + INSIDE_EDGE, sheet.top + INSIDE_EDGE)


def _size(code: str, height: float) -> tuple[float, float]:
    """Return how wide and how high a code is, the underline of a 6 or 9 included."""
    ink = text_ink(code, height, bold=True)
    return text_width(code, height, bold=True), ink.above + ink.below + UNDERLINE


def _write(code: str, height: float, x: float, top: float) -> Text:
    y = top + text_ink(code, height, bold=True).above
    return Text(x=x, y=y, words=code, height=height, bold=True, role=Role.CODE)


def _reach(hole: HoleText, sheet: Box, scale: float) -> Box:
    """Return all that is drawn of a hole, in a box."""
    x, y = _at(hole.at, sheet, scale)
    sides = hole.window or (max(hole.cut_out, hole.flange),) * 2
    across, up = (side / NM_PER_MM * scale for side in sides)
    return Box(x - across / 2, y - up / 2, x + across / 2, y + up / 2).grown(CLEAR)


def _at(point: tuple[Length, Length], sheet: Box, scale: float) -> tuple[float, float]:
    return (
        sheet.left + point[0] / NM_PER_MM * scale,
        sheet.bottom - point[1] / NM_PER_MM * scale,
    )


def _radius(diameter: Length, scale: float) -> float:
    return diameter / NM_PER_MM * scale / 2
