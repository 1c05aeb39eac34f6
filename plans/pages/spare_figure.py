"""A small figure of a part: its finished outline, and black strips where the blank is larger.

The way that is up is up, as on its label. A level panel is seen from above with its front below.
"""

from collections.abc import Iterator, Sequence

from plans.pages.boxes import Box
from plans.pages.lettering import NOTE
from plans.pages.shapes import Anchor, Line, LineKind, Shape, Solid, Text

STRIP = 1.5
WORD = 9.5  # beside the outline, for the name of an edge
OUTLINE = (13.0, 4.6)
WIDTH = OUTLINE[0] + 2 * (STRIP + WORD)
HEIGHT = OUTLINE[1] + 2 * STRIP
UPRIGHT = ("top", "bottom")
LEVEL = ("rear", "front")
ACROSS = ("left", "right")


def spare_figure(edges: Sequence[str], x: float, y: float) -> tuple[Shape, ...]:
    """Return the figure from its top left corner.

    Args:
        edges: Names of the edges that have wood to spare: "left", "top", "front" and so on.
        x: Of its left edge.
        y: Of its upper edge.
    """
    named = set(edges)
    is_level = not named & set(UPRIGHT) and bool(named & set(ACROSS))
    upper, lower = LEVEL if is_level else UPRIGHT
    sides = ("front", "rear") if not is_level and named & set(LEVEL) else ACROSS
    left, top = x + WORD + STRIP, y + STRIP
    box = Box(left, top, left + OUTLINE[0], top + OUTLINE[1])
    strips = {
        upper: Box(box.left, box.top - STRIP, box.right, box.top),
        lower: Box(box.left, box.bottom, box.right, box.bottom + STRIP),
        sides[0]: Box(box.left - STRIP, box.top, box.left, box.bottom),
        sides[1]: Box(box.right, box.top, box.right + STRIP, box.bottom),
    }
    return (
        *_outline(box),
        *(_fill(strip) for edge, strip in strips.items() if edge in edges),
        *_words(sides, edges, box),
    )


def _outline(box: Box) -> Iterator[Shape]:
    corners = (
        (box.left, box.top),
        (box.right, box.top),
        (box.right, box.bottom),
        (box.left, box.bottom),
    )
    for (x1, y1), (x2, y2) in zip(corners, (*corners[1:], corners[0]), strict=True):
        yield Line(x1=x1, y1=y1, x2=x2, y2=y2, kind=LineKind.BOX)


def _fill(box: Box) -> Solid:
    return Solid(
        points=(
            (box.left, box.top),
            (box.right, box.top),
            (box.right, box.bottom),
            (box.left, box.bottom),
        )
    )


def _words(sides: tuple[str, str], edges: Sequence[str], box: Box) -> Iterator[Text]:
    """Yield the names of the edges at the sides that have wood to spare."""
    y = (box.top + box.bottom + NOTE) / 2 - 0.3
    gap = STRIP + 1.0
    for side, x, anchor in (
        (sides[0], box.left - gap, Anchor.END),
        (sides[1], box.right + gap, Anchor.START),
    ):
        if side in edges:
            yield Text(x=x, y=y, words=side, height=NOTE, anchor=anchor)
