"""A sheet as it is drawn: parts, offcuts, waste, cuts with their numbers, and where one stands.

The order in which things claim their room decides who gives way: marks round the sheet, then the
cut numbers, then the codes of parts too small to hold them, then all other lettering, and grain
arrows last.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from nesting.layout import Rect
from plans.pages.blocks import Block
from plans.pages.boxes import Box, find_room, gap, text_box
from plans.pages.cut_numbers import LINE_HALF, place_numbers
from plans.pages.defect_marks import defect_areas, defect_edges, letter_defects
from plans.pages.leaders import Label
from plans.pages.lettering import NOTE
from plans.pages.piece_lettering import Piece, lead_to_piece, letter_piece
from plans.pages.shapes import Hatch, HatchKind, Line, LineKind, Shape, Solid, Text
from plans.pages.sheet_marks import dimensions, grain_arrow, home_mark, standing
from plans.pages.sheet_scale import CutLine, Scale, cut_line, fit_sheet
from plans.pages.strokes import PENS, REFERENCE_GAP, Stroke, broken
from plans.sections.sheet_view import SheetView

ROOM_LEFT = 9.0  # for the sheet's width, turned
ROOM_TOP = 9.5  # for its length
ROOM_RIGHT = 5.0  # for numbers of cuts close to the edge
ROOM_BOTTOM = 8.5  # for "you stand here"
SMALL_ROOM = 5.5
MARK_CLEAR = 1.2
EDGE = 1.4
GRAIN_LENGTHS = (12.0, 8.0, 5.5)
GRAIN_WIDTH = 1.8


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """A drawn sheet.

    Attributes:
        block: The drawing.
        unlettered: Codes of parts and numbers of cuts that found no room at all.
    """

    block: Block
    unlettered: tuple[str, ...]


def draw_sheet(view: SheetView, width: float, height: float) -> Drawing:
    """Return the full drawing of a sheet, no larger than a width and a height."""
    scale = fit_sheet(view, Box(ROOM_LEFT, ROOM_TOP, width - ROOM_RIGHT, height - ROOM_BOTTOM))
    sheet = _whole(view, scale)
    within = Box(0.0, 0.0, sheet.right + ROOM_RIGHT, sheet.bottom + ROOM_BOTTOM)
    marks = (*home_mark(view, sheet), *dimensions(view, sheet), *standing(sheet))
    lines = [cut_line(cut, scale) for cut in view.cuts]
    wanted = frozenset(line.number for line in lines)
    pieces = [*_parts(view, scale), *_offcuts(view, scale)]
    numbers = place_numbers(
        lines, wanted, within, _boxes_of(marks), [piece.box for piece in pieces]
    )
    taken = [*_boxes_of(marks), *(box for label in numbers for box in label.taken)]
    defects = [box for box, _ in defect_areas(view, scale)]
    labels, unlettered = _letter(pieces, lines, within, [*taken, *defects])
    taken += [box for label in labels for box in label.taken]
    walls = [line.box(LINE_HALF) for line in lines]
    readings = letter_defects(view, scale, within, taken, walls)
    taken += [box for label in readings for box in label.taken]
    labels += readings
    missing = wanted - {label.text.words for label in numbers}
    return Drawing(
        block=Block(
            height=within.bottom,
            shapes=(
                *_areas(view, scale, (*numbers, *labels)),
                *_lines(view, scale, lines, (*numbers, *labels), frozenset()),
                *marks,
                *(shape for label in (*numbers, *labels) for shape in (label.text, *label.others)),
                *_grain_arrows(view, scale, taken),
            ),
        ),
        unlettered=(*(f"cut {number}" for number in sorted(missing, key=int)), *unlettered),
    )


def size_of_drawing(view: SheetView, width: float, height: float) -> tuple[float, float]:
    """Return how wide and high a drawing will be that is no larger than a width and a height."""
    scale = fit_sheet(view, Box(ROOM_LEFT, ROOM_TOP, width - ROOM_RIGHT, height - ROOM_BOTTOM))
    sheet = _whole(view, scale)
    return sheet.right + ROOM_RIGHT, sheet.bottom + ROOM_BOTTOM


def height_of_small(view: SheetView, width: float, height: float) -> float:
    """Return how high a small copy will be that is no larger than a width and a height."""
    return _whole(view, _small_scale(view, width, height)).bottom + SMALL_ROOM


def draw_small(view: SheetView, width: float, height: float, heavy: frozenset[str]) -> Block:
    """Return a small copy for the further pages of a sheet, with what finds room in it.

    Args:
        view: The sheet.
        width: Greatest width.
        height: Greatest height.
        heavy: Numbers of the cuts of that page, which are drawn heavy.
    """
    scale = _small_scale(view, width, height)
    sheet = _whole(view, scale)
    lines = [cut_line(cut, scale) for cut in view.cuts]
    labels: list[Label] = []
    taken = [line.box(LINE_HALF) for line in lines if line.number in heavy]
    taken += [box for box, _ in defect_areas(view, scale)]
    for piece in [*_parts(view, scale), *_offcuts(view, scale)]:
        bare = replace(piece, size="", name="", tallest=6.5, least=NOTE)
        labels += letter_piece(bare, taken)
    return Block(
        height=sheet.bottom + SMALL_ROOM,
        shapes=(
            *_areas(view, scale, labels),
            *_lines(view, scale, lines, (), heavy),
            *(mark for mark in home_mark(view, sheet) if isinstance(mark, Solid)),
            *(label.text for label in labels),
        ),
    )


def _small_scale(view: SheetView, width: float, height: float) -> Scale:
    return fit_sheet(view, Box(SMALL_ROOM, SMALL_ROOM, width - SMALL_ROOM, height - SMALL_ROOM))


def _whole(view: SheetView, scale: Scale) -> Box:
    return scale.box(Rect(x=0, y=0, length=view.length, width=view.width))


def _boxes_of(marks: Sequence[Shape]) -> list[Box]:
    """Return where the marks round a sheet stand, with some white."""
    boxes = []
    for mark in marks:
        match mark:
            case Text():
                boxes.append(text_box(mark).grown(MARK_CLEAR))
            case Solid(points=points):
                across, down = [x for x, _ in points], [y for _, y in points]
                boxes.append(Box(min(across), min(down), max(across), max(down)))
            case Line(x1=x1, y1=y1, x2=x2, y2=y2):
                boxes.append(Box(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)).grown(0.5))
    return boxes


def _parts(view: SheetView, scale: Scale) -> list[Piece]:
    return [
        Piece(
            code=part.code,
            size=part.blank,
            name=part.name if part.status == "final" else f"{part.name}, {part.status}",
            box=scale.box(part.rect),
        )
        for part in view.parts
    ]


def _offcuts(view: SheetView, scale: Scale) -> list[Piece]:
    return [
        Piece(code=rest.code, size=rest.size, name="", box=scale.box(rest.rect), tallest=6.5)
        for rest in view.rests
        if rest.is_offcut
    ]


def _letter(
    pieces: Sequence[Piece], lines: Sequence[CutLine], within: Box, taken: Sequence[Box]
) -> tuple[list[Label], list[str]]:
    """Return the lettering of all pieces, and the codes that found no room at all."""
    walls = [line.box(LINE_HALF) for line in lines]
    full = list(taken)
    labels: list[Label] = []
    unlettered: list[str] = []
    roomy = [bool(letter_piece(piece, taken)) for piece in pieces]
    for wants_room in (False, True):
        for piece, has_room in zip(pieces, roomy, strict=True):
            if has_room is not wants_room:
                continue
            found: tuple[Label, ...] = letter_piece(piece, full)
            if not found:
                others = [other.box for other in pieces if other.name]
                led = lead_to_piece(piece, within, full, walls, others)
                found = (led,) if led else ()
            if not found:
                unlettered.append(piece.code)
            labels += found
            full += [box for label in found for box in label.taken]
    return labels, unlettered


def _areas(view: SheetView, scale: Scale, labels: Sequence[Label]) -> tuple[Shape, ...]:
    """Return what each area of the sheet is, its hatch clear of all lettering."""
    areas = [
        *((part.rect, HatchKind.PART) for part in view.parts),
        *((rect, HatchKind.WASTE) for rect in view.trims),
        *(
            (rest.rect, HatchKind.OFFCUT if rest.is_offcut else HatchKind.WASTE)
            for rest in view.rests
        ),
    ]
    boxes = [(scale.box(rect), kind) for rect, kind in areas]
    hatches = []
    for box, kind in (*boxes, *defect_areas(view, scale)):
        gaps = [gap(taken) for label in labels for taken in label.taken if taken.meets(box)]
        hatches.append(
            Hatch(
                x=box.left,
                y=box.top,
                width=box.width,
                height=box.height,
                kind=kind,
                gaps=tuple(gaps),
            )
        )
    return tuple(hatches)


def _lines(
    view: SheetView,
    scale: Scale,
    cuts: Sequence[CutLine],
    labels: Sequence[Label],
    heavy: frozenset[str],
) -> tuple[Shape, ...]:
    """Return the sheet's edges and the cuts, open where a number stands in them."""
    sheet = _whole(view, scale)
    gaps = [label.taken[0] for label in labels if label.is_open]
    is_top = view.home.startswith("top")
    plain, double = LineKind.SHEET_EDGE, LineKind.REFERENCE_EDGE
    # The second line of a reference edge lies to the left of the direction of travel: outside.
    edges = [
        Line(
            x1=sheet.left,
            y1=sheet.top,
            x2=sheet.right,
            y2=sheet.top,
            kind=double if is_top else plain,
        ),
        Line(x1=sheet.right, y1=sheet.top, x2=sheet.right, y2=sheet.bottom, kind=plain),
        Line(
            x1=sheet.right,
            y1=sheet.bottom,
            x2=sheet.left,
            y2=sheet.bottom,
            kind=plain if is_top else double,
        ),
        Line(x1=sheet.left, y1=sheet.bottom, x2=sheet.left, y2=sheet.top, kind=double),
    ]
    for cut in cuts:
        (x1, y1), (x2, y2) = cut.point(cut.start), cut.point(cut.end)
        kind = LineKind.NEXT_CUT if cut.number in heavy else LineKind.CUT
        edges.append(Line(x1=x1, y1=y1, x2=x2, y2=y2, kind=kind))
    edges += defect_edges(view, scale)
    return tuple(piece for edge in edges for piece in _open(edge, gaps))


def _open(line: Line, gaps: Sequence[Box]) -> tuple[Line, ...]:
    """Return a line without its part inside the gaps."""
    margin = REFERENCE_GAP if line.kind is LineKind.REFERENCE_EDGE else 0.0
    stroke = Stroke(line.x1, line.y1, line.x2, line.y2, PENS[line.kind])
    return tuple(
        replace(line, x1=piece.x1, y1=piece.y1, x2=piece.x2, y2=piece.y2)
        for piece in broken(stroke, [box.grown(margin) for box in gaps])
    )


def _grain_arrows(view: SheetView, scale: Scale, taken: Sequence[Box]) -> tuple[Shape, ...]:
    """Return an arrow along the grain in every part that has room for one."""
    shapes: list[Shape] = []
    for part in view.parts:
        room = scale.box(part.rect).grown(-EDGE)
        near = [box for box in taken if box.meets(room)]
        middle = ((room.left + room.right) / 2, (room.top + room.bottom) / 2)
        for length in GRAIN_LENGTHS if part.grain != "none" else ():
            if part.grain == "length":
                place = find_room(room, length, GRAIN_WIDTH, near, (middle[0], room.bottom))
            else:
                place = find_room(room, GRAIN_WIDTH, length, near, (room.right, middle[1]))
            if place is not None:
                shapes += grain_arrow(place)
                break
    return tuple(shapes)
