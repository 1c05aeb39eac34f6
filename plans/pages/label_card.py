"""One label: a card with all that must be known of a piece once it is off the sheet."""

from collections.abc import Iterator
from dataclasses import dataclass

from plans.pages.boxes import Box
from plans.pages.fonts import printable, text_ink, text_width
from plans.pages.lettering import BIG, FIGURE, NOTE, fit, shorten, wrap
from plans.pages.rows import blank
from plans.pages.shapes import Anchor, Line, LineKind, Role, Shape, Solid, Text, TickBox
from plans.pages.sheet_marks import grain_arrow
from plans.pages.spare_figure import WIDTH, spare_figure
from plans.pages.strokes import arrow_head
from plans.sections.labels import Label

CODE = 10.5
NAME = 3.6
INSET = 3.0
STEP = 1.5 * NOTE
HEAD_END = INSET - 0.6 + CODE  # baseline of the code
SIZE_STEP = 6.3
UP = 15.0  # width of the arrow with its word
FRONT = 22.0  # width of the boxes for the side that faces the front, or of the arrow to it
SHORT_FRONT = 12.0  # width of that arrow on a narrow card
HAND = 12.0  # width of the triangle
FOOT = 1.3
LAST_STEP = 1.3 * NOTE  # to the last line, which stands apart anyway
ARROW = 9.0
SMALL_HEAD = 1.5  # of an upright arrow, which is no longer than its line is high
NARROW = 80.0
MOST_TO_DO = 6  # lines for what is still to be done; more are on the parts list


@dataclass(frozen=True, slots=True, kw_only=True)
class CardSize:
    """Width and height of every card, in millimetres."""

    width: float
    height: float


def draw_card(label: Label, fingerprint: str, size: CardSize) -> tuple[Shape, ...]:
    """Return a label as a card, from its top left corner; what has no room is cut short."""
    foot = size.height - FOOT
    origin = printable(label.origin)
    words = printable(fingerprint if size.width < NARROW else f"plan {fingerprint}")
    room = size.width - 2 * INSET - text_width(words, NOTE) - 2.0
    shapes, _ = _body(label, size.width, foot - LAST_STEP)
    return (
        *_head(label, size.width),
        *shapes,
        *_front(label, size.width),
        Text(x=INSET, y=foot, words=shorten(origin, room, NOTE), height=NOTE),
        Text(x=size.width - INSET, y=foot, words=words, height=NOTE, anchor=Anchor.END),
    )


def needed_height(label: Label, width: float) -> float:
    """Return the height of a card that holds all of a label; infinite where it is too narrow."""
    room = _beside_front(label, width)
    code = text_width(printable(label.code), BIG, bold=True)
    size = text_width(printable(label.size), NOTE, bold=True)
    if size > room or code > width - 2 * INSET - _corner(label) - 2.0:
        return float("inf")
    return _body(label, width, float("inf"))[1] + LAST_STEP + FOOT


def is_offcut(label: Label) -> bool:
    """Return whether a label is an offcut's: those are no copies of anything."""
    return not label.copy


def _corner(label: Label) -> float:
    """Return the width of what stands right of the code."""
    if is_offcut(label):
        return 22.0
    return UP + (HAND + 2.0 if label.share else 0.0)


def _head(label: Label, width: float) -> Iterator[Shape]:
    """Yield the code and, at the right, the way up and the triangle, or an offcut's date."""
    code = printable(label.code)
    room = width - 2 * INSET - _corner(label) - 2.0
    height = fit(code, room, CODE, BIG, bold=True) or BIG
    yield Text(x=INSET, y=HEAD_END, words=code, height=height, role=Role.CODE, bold=True)
    right = width - INSET
    if is_offcut(label):
        yield Text(x=right - 20.0, y=INSET + NOTE, words="date", height=NOTE)
        yield blank(right - 20.0, HEAD_END, 20.0)
        return
    tip = right - 9.5
    yield arrow_head(tip, INSET, (0, -1), 6.0)
    yield Line(x1=tip, y1=INSET + 5.0, x2=tip, y2=INSET + 10.0, kind=LineKind.CUT)
    yield Text(x=right, y=INSET + 9.5, words="UP", height=NOTE, bold=True, anchor=Anchor.END)
    if label.share:
        yield from triangle(label.share, Box(tip - 6.0 - HAND, INSET, tip - 6.0, INSET + 10.0))


def triangle(share: str, box: Box) -> tuple[Shape, ...]:
    """Return the triangle mark across a carcass, one part's share of it black.

    Where the share is open, as in "left or right", a line divides the two, to blacken one.
    """
    middle, half = (box.left + box.right) / 2, (box.top + box.bottom) / 2
    quarter = box.width / 4
    apex, left, right = (middle, box.top), (box.left, box.bottom), (box.right, box.bottom)
    foot, one, other = (middle, box.bottom), (middle - quarter, half), (middle + quarter, half)
    shares = {
        "left": (apex, foot, left),
        "right": (apex, right, foot),
        "top": (apex, other, one),
        "bottom": (one, other, right, left),
    }
    outline = tuple(
        Line(x1=x1, y1=y1, x2=x2, y2=y2, kind=LineKind.BOX)
        for (x1, y1), (x2, y2) in ((apex, right), (right, left), (left, apex))
    )
    if share in shares:
        return (Solid(points=shares[share]), *outline)
    (x1, y1), (x2, y2) = (apex, foot) if share == "left or right" else (one, other)
    return (*outline, Line(x1=x1, y1=y1, x2=x2, y2=y2, kind=LineKind.BOX))


def _body(label: Label, width: float, last: float) -> tuple[tuple[Shape, ...], float]:
    """Return what stands below the code as far as it reaches, and the baseline it ends at."""
    inner = width - 2 * INSET
    shapes, y = _name_and_size(label, width)
    y += STEP
    shapes += _grain(label, y)
    face, room = printable(label.face), inner - _grain_width(label) - 3.0
    has_figure = bool(label.spare) and _figure_fits(label, width)
    if has_figure:
        shapes += spare_figure(label.spare, width - INSET - WIDTH, y - NOTE)
    if text_width(face, NOTE) <= room and not has_figure:
        shapes.append(Text(x=width - INSET, y=y, words=face, height=NOTE, anchor=Anchor.END))
    else:
        y += STEP
        short = face.removeprefix("this is the ").replace(" face:", ":")
        short = short if width < NARROW else face
        shapes.append(Text(x=INSET, y=y, words=short, height=NOTE))
        y += 2.4 if width < NARROW and not is_offcut(label) else 0.0
    for words, is_bold in _lower(label, inner):
        if y + STEP > last:
            break
        y += STEP
        text = shorten(words, inner, NOTE, bold=is_bold)
        shapes.append(Text(x=INSET, y=y, words=text, height=NOTE, bold=is_bold))
    return tuple(shapes), y


def _figure_fits(label: Label, width: float) -> bool:
    """Return whether the figure of the edges with wood to spare stands beside grain and face."""
    beside = max(_grain_width(label), text_width(printable(label.face), NOTE))
    return width >= NARROW and beside + 2.0 + WIDTH <= width - 2 * INSET


def _name_and_size(label: Label, width: float) -> tuple[list[Shape], float]:
    """Return status, name and size, and the baseline of the size."""
    beside, shapes = _beside_front(label, width), list[Shape]()
    y = HEAD_END + max(1.2, text_ink(printable(label.code), CODE, bold=True).below - 0.6)
    status = _status(label)
    start = INSET + text_width(printable(label.code), CODE, bold=True) + 3.0
    end = width - INSET - _corner(label) - 2.0
    if text_width(status, NOTE, bold=True) <= end - start:
        shapes.append(Text(x=start, y=HEAD_END, words=status, height=NOTE, bold=True))
    else:
        for words in wrap(status, beside, NOTE, bold=True):
            y += STEP
            shapes.append(Text(x=INSET, y=y, words=words, height=NOTE, bold=True))
    name = printable(label.name)
    height = fit(name, beside, NAME, NOTE, bold=True) or NOTE
    for words in wrap(name, beside, height, bold=True):
        y += STEP
        shapes.append(Text(x=INSET, y=y, words=words, height=height, bold=True))
    size = printable(label.size)
    height = fit(size, beside, FIGURE, NOTE, bold=True) or NOTE
    y += SIZE_STEP
    text = shorten(size, beside, height, bold=True)
    shapes.append(Text(x=INSET, y=y, words=text, height=height, bold=True))
    return shapes, y


def _beside_front(label: Label, width: float) -> float:
    """Return the room for name and size; on a wide card the boxes for the front stand there."""
    return width - 2 * INSET - (0.0 if is_offcut(label) or width < NARROW else FRONT + 2.0)


def _status(label: Label) -> str:
    words = (label.status.upper(), label.copy, label.hand.upper())
    return printable("  ".join(word for word in words if word))


def _grain_width(label: Label) -> float:
    return text_width(printable(label.grain), NOTE) + 3.0 + ARROW


def _grain(label: Label, y: float) -> tuple[Shape, ...]:
    """Return the grain in words, and an arrow: level along the part's length, upright across."""
    grain = printable(label.grain)
    words = Text(x=INSET, y=y, words=grain, height=NOTE)
    x, middle = INSET + text_width(grain, NOTE) + 3.0, y - NOTE / 2
    if label.grain_along_length is None:
        return (words,)
    if label.grain_along_length:
        return (words, *grain_arrow(Box(x, middle - 0.9, x + ARROW, middle + 0.9)))
    top, bottom = y - 3.5, y + 1.3
    line = Line(x1=x, y1=top + 1.0, x2=x, y2=bottom - 1.0, kind=LineKind.GRAIN)
    heads = (arrow_head(x, top, (0, -1), SMALL_HEAD), arrow_head(x, bottom, (0, 1), SMALL_HEAD))
    return (words, line, *heads)


def _lower(label: Label, inner: float) -> Iterator[tuple[str, bool]]:
    """Yield the lines below the grain, the most needed first, and whether each is bold."""
    marks = [f"≠ {', '.join(label.look_alikes)}"] if label.look_alikes else []
    marks += [f"blank {label.blank}"] if label.blank else []
    marks += label.allowances
    for line in wrap(";  ".join(marks), inner, NOTE, bold=True) if marks else ():
        yield line, True
    rest = "; ".join([*([label.note] if label.note else []), *label.to_do])
    lines = wrap(rest, inner, NOTE) if rest else ()
    if len(lines) > MOST_TO_DO:
        lines = (*lines[: MOST_TO_DO - 1], "more: see the parts list")
    for line in lines:
        yield line, False


def _front(label: Label, width: float) -> Iterator[Shape]:
    """Yield an arrow to the front, or boxes to tick for it: beside the size, or the face."""
    if is_offcut(label):
        return
    room = SHORT_FRONT if label.front and width < NARROW else FRONT
    left = width - INSET - room
    if width < NARROW:
        top = _name_and_size(label, width)[1] + STEP + 1.1
        word = Text(x=left - 10.0, y=top + 4.0, words="front", height=NOTE)
    else:
        top = HEAD_END + 5.4
        x = left + room / 2
        word = Text(x=x, y=top - 1.3, words="front", height=NOTE, anchor=Anchor.MIDDLE)
    yield word
    if label.front:
        right, y = left + room, top + 3.0
        yield from _arrow_to_front(left, right, y, is_left=label.front == "left")
        return
    yield arrow_head(left, top + 3.0, (-1, 0), 3.0)
    yield TickBox(x=left + 4.0, y=top, size=6.0)
    yield TickBox(x=left + FRONT - 10.0, y=top, size=6.0)
    yield arrow_head(left + FRONT, top + 3.0, (1, 0), 3.0)


def _arrow_to_front(left: float, right: float, y: float, *, is_left: bool) -> Iterator[Shape]:
    yield arrow_head(left if is_left else right, y, (-1 if is_left else 1, 0), 6.0)
    start, end = (left + 5.0, right) if is_left else (left, right - 5.0)
    yield Line(x1=start, y1=y, x2=end, y2=y, kind=LineKind.CUT)
