"""Finds what stands in the way of what on a page: a check of the page model, not a part of it.

It measures every text in the typeface that is printed, and every stroke with its thickness.
"""

from collections.abc import Iterator
from math import hypot

from plans.pages.boxes import Box, text_box
from plans.pages.lettering import FIGURE, NOTE
from plans.pages.paper import BOTTOM, LEFT, NOTES, TOP
from plans.pages.shapes import Page, Role, Solid, Text, TickBox
from plans.pages.strokes import Stroke, strokes_of

TOUCH = 0.05  # closer than this is a clash only on paper nobody can measure
LEAST_TICK_BOX = 6.0
LEAST_HEIGHTS = {
    Role.NOTE: NOTE,
    Role.FIGURE: FIGURE,
    Role.CODE: NOTE,
    Role.CUT_NUMBER: NOTE,
    Role.KEEP: FIGURE,
    Role.TITLE: NOTE,
}


def find_clashes(page: Page) -> tuple[str, ...]:
    """Return a line for everything that cannot be read, or is drawn where it must stay white."""
    texts = [(shape, text_box(shape)) for shape in page.shapes if isinstance(shape, Text)]
    return (
        *_too_small(page, texts),
        *_in_the_margin(page, texts),
        *_on_each_other(texts),
        *_crossed(page, texts),
    )


def _too_small(page: Page, texts: list[tuple[Text, Box]]) -> Iterator[str]:
    for text, _ in texts:
        if text.height < LEAST_HEIGHTS[text.role]:
            yield f"{text.words!r} is {text.height:.2f} mm high"
    for shape in page.shapes:
        if isinstance(shape, TickBox) and shape.size < LEAST_TICK_BOX:
            yield f"a tick box is {shape.size} mm"


def _in_the_margin(page: Page, texts: list[tuple[Text, Box]]) -> Iterator[str]:
    body = Box(LEFT, TOP, page.width_mm - NOTES, page.height_mm - BOTTOM).grown(TOUCH)
    for text, box in texts:
        if not body.holds(box):
            yield f"{text.words!r} stands in the margin"
    for stroke in _strokes(page):
        if not body.grown(stroke.pen.thickness / 2).holds(_bounds(stroke, 0.0)):
            yield f"a line stands in the margin: {stroke}"


def _on_each_other(texts: list[tuple[Text, Box]]) -> Iterator[str]:
    by_top = sorted(texts, key=lambda pair: pair[1].top)
    for place, (text, box) in enumerate(by_top):
        for other, other_box in by_top[place + 1 :]:
            if other_box.top >= box.bottom:
                break
            if box.grown(-TOUCH).meets(other_box.grown(-TOUCH)):
                yield f"{text.words!r} and {other.words!r} stand on each other"


def _crossed(page: Page, texts: list[tuple[Text, Box]]) -> Iterator[str]:
    strokes = [(stroke, _bounds(stroke, stroke.pen.thickness / 2)) for stroke in _strokes(page)]
    solids = [_extent(shape) for shape in page.shapes if isinstance(shape, Solid)]
    for text, box in texts:
        inner = box.grown(-TOUCH)
        for stroke, bounds in strokes:
            if bounds.meets(inner) and _crosses(stroke, inner):
                yield f"a line runs through {text.words!r}: {stroke}"
        for solid in solids:
            if solid.meets(inner):
                yield f"a mark stands on {text.words!r}"


def _strokes(page: Page) -> Iterator[Stroke]:
    for shape in page.shapes:
        if not isinstance(shape, Solid | Text):
            yield from strokes_of(shape)


def _bounds(stroke: Stroke, half: float) -> Box:
    left, right = sorted((stroke.x1, stroke.x2))
    top, bottom = sorted((stroke.y1, stroke.y2))
    return Box(left, top, right, bottom).grown(half)


def _extent(solid: Solid) -> Box:
    across, down = [x for x, _ in solid.points], [y for _, y in solid.points]
    return Box(min(across), min(down), max(across), max(down))


def _crosses(stroke: Stroke, box: Box) -> bool:
    """Return True where a stroke with its thickness meets a box: all four corners on one side?"""
    if stroke.x1 == stroke.x2 or stroke.y1 == stroke.y2:
        return True  # its bounds are the stroke itself, and they meet
    along_x, along_y = stroke.x2 - stroke.x1, stroke.y2 - stroke.y1
    reach = stroke.pen.thickness / 2 * hypot(along_x, along_y)
    sides = [
        along_x * (y - stroke.y1) - along_y * (x - stroke.x1)
        for x in (box.left, box.right)
        for y in (box.top, box.bottom)
    ]
    return min(sides) < reach and max(sides) > -reach
