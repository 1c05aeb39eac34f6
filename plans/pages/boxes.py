"""Upright rectangles on paper: where something stands, and where there is still room."""

from collections.abc import Iterable
from dataclasses import dataclass

from plans.pages.fonts import text_ink, text_width
from plans.pages.shapes import Anchor, Gap, Role, Text

UNDERLINE_THICKNESS = 0.5


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle from its top left corner to its bottom right one."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """Extent left to right."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Extent top to bottom."""
        return self.bottom - self.top

    def grown(self, by: float) -> "Box":
        """Return the box with a margin all round; a negative one shrinks it."""
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def meets(self, other: "Box") -> bool:
        """Return True where the two have some area in common."""
        return (
            self.left < other.right
            and other.left < self.right
            and self.top < other.bottom
            and other.top < self.bottom
        )

    def holds(self, other: "Box") -> bool:
        """Return True where the other lies within this one, edges included."""
        return (
            self.left <= other.left
            and self.top <= other.top
            and other.right <= self.right
            and other.bottom <= self.bottom
        )


def box_at(x: float, y: float, width: float, height: float) -> Box:
    """Return the box with a top left corner and an extent."""
    return Box(x, y, x + width, y + height)


def text_box(text: Text) -> Box:
    """Return the box that a text and its underlines lie in, measured from the typeface."""
    width = text_width(text.words, text.height, bold=text.bold)
    ink = text_ink(text.words, text.height, bold=text.bold)
    below = ink.below
    if underlined(text):
        below = max(below, underline_drop(text.height) + UNDERLINE_THICKNESS / 2)
    before = {Anchor.START: 0.0, Anchor.MIDDLE: width / 2, Anchor.END: width}[text.anchor]
    if text.is_upright:
        return Box(text.x - ink.above, text.y + before - width, text.x + below, text.y + before)
    return Box(text.x - before, text.y - ink.above, text.x - before + width, text.y + below)


def underlined(text: Text) -> tuple[int, ...]:
    """Return the places of the characters to underline: 6 and 9, where the sheet may be turned."""
    if text.role not in (Role.CODE, Role.CUT_NUMBER):
        return ()
    return tuple(place for place, character in enumerate(text.words) if character in "69")


def underline_drop(height: float) -> float:
    """Return how far below the baseline a 6 or 9 is underlined."""
    return max(0.9, 0.14 * height)


def gap(box: Box) -> Gap:
    """Return a box as the gap of a hatch."""
    return Gap(x=box.left, y=box.top, width=box.width, height=box.height)


def find_room(
    within: Box, width: float, height: float, taken: Iterable[Box], near: tuple[float, float]
) -> Box | None:
    """Return the place for a box that is nearest to a point, or None where there is none.

    A nearest place touches something on each side it is kept from, so it is enough to try the
    point itself, the walls and the edges of what is taken.
    """
    if width > within.width or height > within.height:
        return None
    blocks = [box for box in taken if box.meets(within)]
    lefts = {within.left, within.right - width, near[0] - width / 2}
    tops = {within.top, within.bottom - height, near[1] - height / 2}
    for block in blocks:
        lefts |= {block.right, block.left - width}
        tops |= {block.bottom, block.top - height}
    best, best_distance = None, float("inf")
    in_order = sorted(top for top in tops if within.top <= top and top + height <= within.bottom)
    for left in sorted(lefts):
        right = left + width
        across = (left + width / 2 - near[0]) ** 2
        if across >= best_distance or left < within.left or right > within.right:
            continue
        column = [
            (block.top, block.bottom)
            for block in blocks
            if left < block.right and block.left < right
        ]
        for top in in_order:
            bottom = top + height
            distance = across + (top + height / 2 - near[1]) ** 2
            if distance < best_distance and not any(
                top < under and over < bottom for over, under in column
            ):
                best, best_distance = Box(left, top, right, bottom), distance
    return best
