"""The marks round a drawn sheet: home corner, sizes, where one stands; and the grain arrow."""

from dataclasses import replace

from plans.pages.boxes import Box
from plans.pages.fonts import printable, text_width
from plans.pages.lettering import FIGURE, NOTE
from plans.pages.shapes import Anchor, Line, LineKind, Role, Shape, Solid, Text
from plans.pages.strokes import arrow_head
from plans.sections.sheet_view import SheetView

ARROW = 9.0
MIDDLE = 18.0  # half of "you stand here"


def home_mark(view: SheetView, sheet: Box) -> tuple[Shape, ...]:
    """Return a heavy bracket round the home corner, and its name."""
    outer, inner, leg = 4.6, 3.0, 8.0
    down = 1 if view.home.startswith("top") else -1
    y = sheet.top if down == 1 else sheet.bottom
    x = sheet.left
    level = bar(Box(x - outer, y - down * outer, x + leg, y - down * inner))
    upright = bar(Box(x - outer, y - down * outer, x - inner, y + down * leg))
    baseline = y - inner if down == 1 else y + outer + 1.0
    room = sheet.width / 2 - leg - 2.5 - _middle(view.size.split(" × ")[0])
    names = tuple(
        Text(x=x + leg + 1.5, y=baseline, words=words, height=NOTE, bold=True)
        for words in (f"HOME: {view.home} as you stand", "HOME")
        if text_width(words, NOTE, bold=True) <= room
    )
    return (level, upright, *names[:1], *_edge_names(view, sheet))


def _middle(size: str) -> float:
    """Return half of what stands in the middle of a side: its size between arrows, or a mark."""
    return max(MIDDLE, text_width(printable(size), FIGURE, bold=True) / 2 + 3.0 + ARROW)


def _edge_names(view: SheetView, sheet: Box) -> tuple[Shape, ...]:
    """Return the names of the two edges that are measured from, where they have room."""
    names: list[Shape] = []
    along, across = view.size.split(" × ")
    is_top = view.home.startswith("top")
    words = "top edge" if is_top else "bottom edge"
    if text_width(words, NOTE) <= sheet.width / 2 - _middle(along):
        y = sheet.top - 3.0 if is_top else sheet.bottom + 6.4
        names.append(Text(x=sheet.right, y=y, words=words, height=NOTE, anchor=Anchor.END))
    if text_width("left edge", NOTE) <= sheet.height / 2 - _middle(across):
        name = Text(x=sheet.left - 3.0, y=sheet.bottom, words="left edge", height=NOTE)
        far = replace(name, y=sheet.top, anchor=Anchor.END)
        names.append(replace(name if is_top else far, is_upright=True))
    return tuple(names)


def bar(box: Box) -> Solid:
    """Return a box filled black."""
    return Solid(
        points=(
            (box.left, box.top),
            (box.right, box.top),
            (box.right, box.bottom),
            (box.left, box.bottom),
        )
    )


def dimensions(view: SheetView, sheet: Box) -> tuple[Shape, ...]:
    """Return the sheet's length above it and its width beside it, between arrows."""
    along, across = (printable(size) for size in view.size.split(" × "))
    middle_x, middle_y = (sheet.left + sheet.right) / 2, (sheet.top + sheet.bottom) / 2
    half_x = text_width(along, FIGURE, bold=True) / 2 + 2.0
    half_y = text_width(across, FIGURE, bold=True) / 2 + 2.0
    y, x = sheet.top - 3.0 - FIGURE / 2, sheet.left - 3.0 - FIGURE / 2
    shapes: list[Shape] = [
        Text(
            x=middle_x,
            y=sheet.top - 3.0,
            words=along,
            height=FIGURE,
            role=Role.FIGURE,
            bold=True,
            anchor=Anchor.MIDDLE,
        ),
        Text(
            x=sheet.left - 3.0,
            y=middle_y,
            words=across,
            height=FIGURE,
            role=Role.FIGURE,
            bold=True,
            anchor=Anchor.MIDDLE,
            is_upright=True,
        ),
    ]
    for sign in (-1, 1):
        near, far = middle_x + sign * half_x, middle_x + sign * (half_x + ARROW)
        shapes += [
            Line(x1=near, y1=y, x2=far, y2=y, kind=LineKind.DIMENSION),
            arrow_head(far, y, (sign, 0)),
        ]
        near, far = middle_y + sign * half_y, middle_y + sign * (half_y + ARROW)
        shapes += [
            Line(x1=x, y1=near, x2=x, y2=far, kind=LineKind.DIMENSION),
            arrow_head(x, far, (0, sign)),
        ]
    return tuple(shapes)


def standing(sheet: Box) -> tuple[Shape, ...]:
    """Return the mark that says on which side the person stands."""
    words, y = "you stand here", sheet.bottom + 3.2
    width = text_width(words, NOTE)
    # Right of a home corner at the bottom left, however narrow the sheet.
    middle = max((sheet.left + sheet.right) / 2, sheet.left + 16.0 + width / 2)
    tip = middle - width / 2 - 4.0
    return (
        Solid(points=((tip, y), (tip + 2.0, y + 3.4), (tip - 2.0, y + 3.4))),
        Text(x=middle, y=y + 3.2, words=words, height=NOTE, anchor=Anchor.MIDDLE),
    )


def grain_arrow(place: Box) -> tuple[Shape, ...]:
    """Return a line with a head at both ends, along the longer side of a place."""
    x, y = (place.left + place.right) / 2, (place.top + place.bottom) / 2
    if place.width >= place.height:
        line = Line(x1=place.left + 1, y1=y, x2=place.right - 1, y2=y, kind=LineKind.GRAIN)
        return (line, arrow_head(place.left, y, (-1, 0)), arrow_head(place.right, y, (1, 0)))
    line = Line(x1=x, y1=place.top + 1, x2=x, y2=place.bottom - 1, kind=LineKind.GRAIN)
    return (line, arrow_head(x, place.top, (0, -1)), arrow_head(x, place.bottom, (0, 1)))
