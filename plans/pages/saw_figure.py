"""The saw on a piece, from above: what is measured of it, and where the guide lies."""

from collections.abc import Iterator

from plans.pages.blocks import Block
from plans.pages.fonts import text_width
from plans.pages.lettering import FIGURE, NOTE
from plans.pages.rows import blank
from plans.pages.shapes import (
    Anchor,
    Hatch,
    HatchKind,
    Line,
    LineKind,
    Rectangle,
    Role,
    Shape,
    Text,
)
from plans.pages.strokes import arrow_head

EDGE, GUIDE_START, BASE_LEFT, KERF, KERF_END = 12.0, 40.0, 66.0, 92.0, 97.0
BEYOND = 34.0  # from the right edge of the base plate to the end of the piece
TOP, BOTTOM = 18.0, 47.0  # of the piece
GUIDE_TOP, GUIDE_BOTTOM = 12.0, 54.0
FIRST_SPAN, SPAN_STEP = 59.0, 9.0
VALUE = 4.0


def saw_figure(width: float, *, has_blocks: bool) -> Block:
    """Return the drawing, with blanks for what is measured.

    Args:
        width: Of the page.
        has_blocks: Whether two blocks set the guide; else their places are measured as L and R.
    """
    base_right = width - BEYOND
    shapes: list[Shape] = [*_piece(width), *_guides(base_right, width, has_blocks=has_blocks)]
    shapes += span(EDGE, KERF, 7.0, "KEEP")
    shapes += span(BASE_LEFT, KERF, 32.5, "a")
    shapes += span(KERF_END, base_right, 32.5, "b")
    last_span = FIRST_SPAN if has_blocks else FIRST_SPAN + SPAN_STEP
    if has_blocks:
        shapes += span(BASE_LEFT, KERF, FIRST_SPAN, "A")
        shapes += span(KERF, base_right, FIRST_SPAN, "B")
    else:
        shapes += span(EDGE, BASE_LEFT, FIRST_SPAN, "L")
        shapes += span(EDGE, base_right, last_span, "R")
    shapes.append(
        Text(
            x=(KERF + KERF_END) / 2,
            y=16.4,
            words="k",
            height=FIGURE,
            bold=True,
            anchor=Anchor.MIDDLE,
            role=Role.FIGURE,
        )
    )
    under = last_span + 11.0
    column = width / 4
    for place, words in enumerate(("a =", "k =", "b =", "thickness =")):
        x = place * column
        start = text_width(words, VALUE, bold=True) + 2.0
        shapes += [
            Text(x=x, y=under, words=words, height=VALUE, bold=True),
            blank(x + start, under + 0.8, column - start - 4.0),
        ]
    return Block(height=under + 5.0, shapes=tuple(shapes))


def _piece(width: float) -> Iterator[Shape]:
    """Yield the piece with its kerf, and the base plate on it."""
    base_right = width - BEYOND
    yield Line(x1=EDGE, y1=BOTTOM, x2=EDGE, y2=TOP, kind=LineKind.REFERENCE_EDGE)
    for y in (TOP, BOTTOM):
        yield Line(x1=EDGE, y1=y, x2=width, y2=y, kind=LineKind.SHEET_EDGE)
    yield Hatch(x=KERF, y=TOP, width=KERF_END - KERF, height=BOTTOM - TOP, kind=HatchKind.WASTE)
    for x in (KERF, KERF_END):
        yield Line(x1=x, y1=TOP, x2=x, y2=BOTTOM, kind=LineKind.CUT)
    yield Rectangle(
        x=BASE_LEFT, y=25.0, width=base_right - BASE_LEFT, height=18.0, kind=LineKind.BOX
    )
    yield Text(x=base_right - 2, y=40.6, words="base plate", height=NOTE, anchor=Anchor.END)


def _guides(base_right: float, width: float, *, has_blocks: bool) -> Iterator[Shape]:
    """Yield the two places that the guide can have."""
    names = ("guide, with A", "guide, with B") if has_blocks else ("guide at L", "guide at R")
    ends = ((GUIDE_START, BASE_LEFT), (base_right, width))
    for (left, right), words in zip(ends, names, strict=True):
        yield Rectangle(
            x=left,
            y=GUIDE_TOP,
            width=right - left,
            height=GUIDE_BOTTOM - GUIDE_TOP,
            kind=LineKind.RULE,
        )
        yield Text(x=(left + right) / 2, y=52.2, words=words, height=NOTE, anchor=Anchor.MIDDLE)


def span(start: float, end: float, y: float, words: str) -> tuple[Shape, ...]:
    """Return a size between two places: an arrow either way from its name."""
    middle = (start + end) / 2
    half = 3.5 if len(words) == 1 else 11.0
    return (
        Text(
            x=middle,
            y=y + FIGURE / 2,
            words=words,
            height=FIGURE,
            bold=True,
            anchor=Anchor.MIDDLE,
            role=Role.FIGURE,
        ),
        Line(x1=start, y1=y, x2=middle - half, y2=y, kind=LineKind.DIMENSION),
        Line(x1=middle + half, y1=y, x2=end, y2=y, kind=LineKind.DIMENSION),
        arrow_head(start, y, (-1, 0)),
        arrow_head(end, y, (1, 0)),
    )
