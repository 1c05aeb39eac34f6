"""The small drawing of a sheet: this cut heavy, the piece in hand outlined.

Co-ordinates are CSS pixels, to a tenth, y downwards.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from nesting.layout import Direction, Rect
from plans.phone.held import LOW_EDGES, Held
from plans.phone.lettering import LEAST_TYPE, LINE, text_width
from plans.sections.codes import WASTE
from plans.sections.sheet_view import SheetView

HEIGHT = 160  # at most, so that cut and figures are seen together
EDGE = 10  # white round the sheet, for the marks of its edges
HEAVY = 8  # thickness of the cut that is next
CORNER = 34  # length of either arm of the home corner's mark
CODE_TYPE = LEAST_TYPE


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """A rectangle on the screen."""

    x: float
    y: float
    width: float
    height: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """A straight line on the screen."""

    x1: float
    y1: float
    x2: float
    y2: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Code:
    """A code in the drawing; x and y are the middle of its baseline."""

    words: str
    x: float
    y: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPicture:
    """What all screens of a sheet share.

    Attributes:
        width: Of the whole picture.
        height: Of the whole picture.
        outline: The sheet.
        parts: Plain outlines.
        waste: Hatched.
        offcuts: Dotted outlines.
        home: The two arms of the mark at the home corner.
        defects: Hatched crosswise.
        stains: Hatched with dashes: only hidden parts may lie on these defects.
    """

    width: float
    height: float
    outline: Box
    parts: tuple[Box, ...]
    waste: tuple[Box, ...]
    offcuts: tuple[Box, ...]
    home: tuple[Stroke, Stroke]
    defects: tuple[Box, ...]
    stains: tuple[Box, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CutPicture:
    """What one cut adds.

    Attributes:
        piece: The piece in hand.
        edge: The second line along the edge that is measured from.
        band: The cut, at least as thick as a heavy line.
        codes: Of the pieces that the cut makes, where there is room.
    """

    piece: Box
    edge: Stroke
    band: Box
    codes: tuple[Code, ...]


def draw_sheet(view: SheetView) -> SheetPicture:
    """Return the picture of a sheet before any cut."""
    scale = _scale(view)
    outline = _box(Rect(x=0, y=0, length=view.length, width=view.width), scale)
    return SheetPicture(
        width=_tenth(outline.width + 2 * EDGE),
        height=_tenth(outline.height + 2 * EDGE),
        outline=outline,
        parts=tuple(_box(part.rect, scale) for part in view.parts),
        waste=tuple(_box(rest.rect, scale) for rest in view.rests if not rest.is_offcut),
        offcuts=tuple(_box(rest.rect, scale) for rest in view.rests if rest.is_offcut),
        home=_home(outline, is_top=view.home.startswith("top")),
        defects=tuple(_box(each.rect, scale) for each in view.defects if not each.is_for_hidden),
        stains=tuple(_box(each.rect, scale) for each in view.defects if each.is_for_hidden),
    )


def draw_codes(view: SheetView) -> tuple[Code, ...]:
    """Return the codes of all parts and offcuts of a sheet that have room for one."""
    scale = _scale(view)
    parts = [(part.code, part.rect) for part in view.parts]
    offcuts = [(rest.code, rest.rect) for rest in view.rests if rest.code != WASTE]
    return tuple(_codes([*parts, *offcuts], scale))


def draw_cut(view: SheetView, held: Held) -> CutPicture:
    """Return what one cut adds to the picture of its sheet."""
    scale = _scale(view)
    piece = _box(held.piece, scale)
    made = ((held.row.keep_code, held.kept), (held.row.free_code, held.freed))
    return CutPicture(
        piece=piece,
        edge=_edge(piece, held.row.measure_from),
        band=_band(_box(held.cut.band, scale), held.cut.direction),
        codes=tuple(_codes(made, scale)),
    )


def _scale(view: SheetView) -> float:
    """Return CSS pixels in a nanometre."""
    return min((LINE - 2 * EDGE) / view.length, (HEIGHT - 2 * EDGE) / view.width)


def _box(rect: Rect, scale: float) -> Box:
    return Box(
        x=_tenth(EDGE + rect.x * scale),
        y=_tenth(EDGE + rect.y * scale),
        width=_tenth(rect.length * scale),
        height=_tenth(rect.width * scale),
    )


def _home(outline: Box, *, is_top: bool) -> tuple[Stroke, Stroke]:
    x = outline.x - EDGE / 2
    if is_top:
        y, along = outline.y - EDGE / 2, CORNER
    else:
        y, along = _tenth(outline.y + outline.height + EDGE / 2), -CORNER
    start = x - 2  # the arms overlap, so that their corner is whole
    return (
        Stroke(x1=start, y1=y, x2=x + CORNER, y2=y),
        Stroke(x1=x, y1=y, x2=x, y2=_tenth(y + along)),
    )


def _edge(piece: Box, name: str) -> Stroke:
    """Return a line just inside an edge of the piece in hand."""
    inside = 7.0
    right, bottom = _tenth(piece.x + piece.width), _tenth(piece.y + piece.height)
    if name == "left edge":
        x = piece.x + inside
        return Stroke(x1=x, y1=piece.y, x2=x, y2=bottom)
    y = piece.y + inside if name in LOW_EDGES else _tenth(bottom - inside)
    return Stroke(x1=piece.x, y1=y, x2=right, y2=y)


def _band(band: Box, direction: Direction) -> Box:
    """Return a band as a heavy line about its middle."""
    if direction is Direction.RIP:
        middle = band.y + band.height / 2
        return Box(x=band.x, y=_tenth(middle - HEAVY / 2), width=band.width, height=HEAVY)
    middle = band.x + band.width / 2
    return Box(x=_tenth(middle - HEAVY / 2), y=band.y, width=HEAVY, height=band.height)


def _codes(things: Iterable[tuple[str, Rect]], scale: float) -> Iterator[Code]:
    """Yield the codes that fit where they belong."""
    for words, rect in things:
        box = _box(rect, scale)
        wide, high = text_width(words, CODE_TYPE) + 6, CODE_TYPE * 0.72 + 8
        if words and wide <= box.width and high <= box.height:
            yield Code(
                words=words,
                x=_tenth(box.x + box.width / 2),
                y=_tenth(box.y + box.height / 2 + CODE_TYPE * 0.36),
            )


def _tenth(value: float) -> float:
    return round(value, 1)
