"""Corners of a cabinet cut through: which panel runs through, and where battens stand."""

from collections.abc import Sequence

from shapely import Polygon, box, maximum_inscribed_circle

from nesting.lengths import NM_PER_MM
from plans.pages.blocks import Block, side_by_side, stack
from plans.pages.boxes import Box, text_box
from plans.pages.lettering import NOTE, centred, paragraph
from plans.pages.rounds import path
from plans.pages.shapes import LineKind, Role, Shape, Text
from plans.sections.corners import CornerPicture, CornerShape

GAP = 5.0
AROUND_LETTER = 0.3


def corner_pictures(corners: Sequence[CornerPicture], width: float) -> Block:
    """Return corners side by side, each with its names below."""
    if not corners:
        return Block(height=0.0)
    each = (width - GAP * (len(corners) - 1)) / len(corners)
    size = min(each, 40.0)
    return side_by_side(
        [
            (place * (each + GAP), _corner(corner, size, each))
            for place, corner in enumerate(corners)
        ]
    )


def _corner(corner: CornerPicture, size: float, width: float) -> Block:
    frame = Box(0.6, 1.0, size, size + 0.4)
    shapes: list[Shape] = []
    for solid in corner.shapes:
        shapes += _solid(solid, corner, frame)
    picture = Block(height=size + 2.0, shapes=tuple(shapes))
    names = [paragraph(f"{solid.letter}  {solid.name}", width) for solid in corner.shapes]
    return stack([picture, paragraph(corner.title, width, bold=True), *names])


def _solid(solid: CornerShape, corner: CornerPicture, frame: Box) -> tuple[Shape, ...]:
    scale = frame.width / (corner.window / NM_PER_MM)
    points = []
    for u, v in solid.corners:
        x, y = u / NM_PER_MM * scale, v / NM_PER_MM * scale
        points.append(
            (
                frame.right - x if corner.right else frame.left + x,
                frame.top + y if corner.top else frame.bottom - y,
            )
        )
    lines = path((*points, points[0]), LineKind.BOX, frame)
    return (*lines, *_letter(solid.letter, points, frame))


def _letter(letter: str, points: Sequence[tuple[float, float]], frame: Box) -> tuple[Text, ...]:
    """Return the letter in what is seen of a solid, where there is room for it.

    It stands in the middle, or where there is most room if a slope or a rebate leaves none there.
    """
    seen = Polygon(points).intersection(box(frame.left, frame.top, frame.right, frame.bottom))
    if seen.is_empty or not seen.area:
        return ()
    left, top, right, bottom = seen.bounds
    roomiest = maximum_inscribed_circle(seen, tolerance=0.1).coords[0]
    for x, y in (((left + right) / 2, (top + bottom) / 2), roomiest):
        text = centred(
            x, y, Text(x=0.0, y=0.0, words=letter, height=NOTE, bold=True, role=Role.NOTE)
        )
        around = text_box(text).grown(AROUND_LETTER)
        if seen.contains(box(around.left, around.top, around.right, around.bottom)):
            return (text,)
    return ()
