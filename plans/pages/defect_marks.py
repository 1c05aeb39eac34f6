"""The places of a drawn sheet that are not sound: a hatch of their own, and their two readings."""

from collections.abc import Iterator, Sequence

from plans.pages.boxes import Box, find_room, text_box
from plans.pages.fonts import text_width
from plans.pages.leaders import Label, find_leader
from plans.pages.lettering import NOTE, centred
from plans.pages.shapes import HatchKind, Line, LineKind, Text
from plans.pages.sheet_scale import Scale
from plans.sections.defects import DefectView
from plans.sections.sheet_view import SheetView

LEAST = 2.0  # a smaller place would show no hatch
EDGE = 0.8
SHARES = (0.5, 0.2, 0.8)


def defect_box(defect: DefectView, scale: Scale) -> Box:
    """Return where a defect is drawn, a little larger where it would not be seen."""
    box = scale.box(defect.rect)
    more_x, more_y = (max(0.0, LEAST - side) / 2 for side in (box.width, box.height))
    return Box(box.left - more_x, box.top - more_y, box.right + more_x, box.bottom + more_y)


def defect_areas(view: SheetView, scale: Scale) -> Iterator[tuple[Box, HatchKind]]:
    """Yield where the defects of a sheet are drawn, and their hatches."""
    for defect in view.defects:
        kind = HatchKind.STAIN if defect.is_for_hidden else HatchKind.DEFECT
        yield defect_box(defect, scale), kind


def defect_edges(view: SheetView, scale: Scale) -> Iterator[Line]:
    """Yield the outlines of the defects of a sheet."""
    for defect in view.defects:
        box = defect_box(defect, scale)
        corners = [
            (box.left, box.top),
            (box.right, box.top),
            (box.right, box.bottom),
            (box.left, box.bottom),
        ]
        for (x1, y1), (x2, y2) in zip(corners, [*corners[1:], corners[0]], strict=True):
            yield Line(x1=x1, y1=y1, x2=x2, y2=y2, kind=LineKind.DEFECT_EDGE)


def letter_defects(
    view: SheetView,
    scale: Scale,
    within: Box,
    taken: Sequence[Box],
    lines: Sequence[Box],
) -> list[Label]:
    """Return the two readings of each defect, in it or beside it; all stand above the drawing too.

    Args:
        view: The sheet.
        scale: Of the drawing.
        within: The drawing with the white round it.
        taken: Where something stands already.
        lines: The cuts, as thin boxes.
    """
    full = list(taken)
    labels: list[Label] = []
    boxes = [box for box, _ in defect_areas(view, scale)]
    for defect in view.defects:
        words = f"{defect.along} / {defect.across}"
        box = defect_box(defect, scale)
        starts = [
            (box.left + across * box.width, box.top + down * box.height)
            for down in SHARES
            for across in SHARES
        ]
        text = Text(x=0, y=0, words=words, height=NOTE)
        label = _inside(words, box, full) or find_leader(text, starts, within, full, lines, boxes)
        if label is not None:
            labels.append(label)
            full += label.taken
    return labels


def _inside(words: str, box: Box, taken: Sequence[Box]) -> Label | None:
    room = box.grown(-EDGE)
    middle = ((room.left + room.right) / 2, (room.top + room.bottom) / 2)
    place = find_room(room, text_width(words, NOTE), NOTE, taken, middle)
    if place is None:
        return None
    text = centred(
        (place.left + place.right) / 2,
        (place.top + place.bottom) / 2,
        Text(x=0, y=0, words=words, height=NOTE),
    )
    return Label(text=text, taken=(text_box(text).grown(0.6),))
