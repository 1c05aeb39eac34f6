"""What lies under a cut, and whether the guide has room on the piece.

Battens lie along the cut, so that none of them crosses the kerf: two at least on either side, one
close to the line and one close to the far edge, and more between where the piece would hang free
for too long. All distances are judgement; the saw's manual decides.
"""

from dataclasses import dataclass
from itertools import pairwise

from nesting.layout import Direction, Rect
from nesting.lengths import Length, mm
from nesting.saw import Saw

BATTEN = mm(40)
"""How wide a batten is drawn."""

FROM_LINE = mm(50)
"""From the kerf to the middle of the nearest batten: the blade passes beside it."""

FROM_EDGE = mm(40)
"""From an edge of the piece to the middle of the last batten."""

LONGEST_FREE = mm(400)
"""Between the middles of two battens, the most that hangs free."""

CLAMP_ROOM = mm(20)
"""What a clamp needs beside the guide."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Supports:
    """What lies under one cut.

    Attributes:
        low: Middles of the battens between the low edge and the kerf, from the low edge, rising.
        high: Middles of those beyond the kerf, from the low edge, rising.
        needs_board: True where a side that is kept is too narrow for two battens: the piece then
            lies whole on a board that may be sawn into. Narrow waste falls free.
        longest_free: The longest distance between two neighbours on one side.
    """

    low: tuple[Length, ...]
    high: tuple[Length, ...]
    needs_board: bool
    longest_free: Length


@dataclass(frozen=True, slots=True, kw_only=True)
class GuideRoom:
    """Where the guide has room on the piece.

    Attributes:
        left: It has room on the near side of the blade.
        right: It has room on the far side.
    """

    left: bool
    right: bool

    @property
    def needs_outrigger(self) -> bool:
        """Whether a board as thick as the piece must lie beside it to carry the guide."""
        return not (self.left or self.right)


def place_supports(
    extent: Length, start: Length, end: Length, *, low_is_waste: bool, high_is_waste: bool
) -> Supports:
    """Return the battens under a cut.

    Args:
        extent: How far the piece reaches across the cut, from its low edge.
        start: Where the kerf begins, from the low edge.
        end: Where it ends.
        low_is_waste: What lies before the kerf is not kept.
        high_is_waste: What lies beyond it is not kept.
    """
    low = tuple(start - distance for distance in reversed(_place_side(start)))
    high = tuple(end + distance for distance in _place_side(extent - end))
    gaps = [b - a for side in (low, high) for a, b in pairwise(side)]
    return Supports(
        low=low,
        high=high,
        needs_board=not (low or low_is_waste) or not (high or high_is_waste),
        longest_free=max(gaps, default=0),
    )


def _place_side(width: Length) -> tuple[Length, ...]:
    """Return the middles of the battens of one side, from the kerf; none where two do not fit."""
    last = width - FROM_EDGE
    if last < FROM_LINE + BATTEN:
        return ()
    spans = max(1, -(-(last - FROM_LINE) // LONGEST_FREE))
    return tuple(FROM_LINE + (last - FROM_LINE) * step // spans for step in range(spans + 1))


def draw_supports(supports: Supports, direction: Direction, piece: Rect) -> tuple[Rect, ...]:
    """Return the battens as rectangles on the sheet, as long as the cut."""
    half = BATTEN // 2
    return tuple(
        Rect(x=piece.x, y=piece.y + middle - half, length=piece.length, width=BATTEN)
        if direction is Direction.RIP
        else Rect(x=piece.x + middle - half, y=piece.y, length=BATTEN, width=piece.width)
        for middle in (*supports.low, *supports.high)
    )


def find_guide_room(saw: Saw, extent: Length, start: Length, end: Length) -> GuideRoom:
    """Return on which sides of a cut the guide, its base plate and a clamp lie on the piece.

    Args:
        saw: The saw and its guide.
        extent: How far the piece reaches across the cut, from its low edge.
        start: Where the kerf begins, from the low edge.
        end: Where it ends.
    """
    needed = saw.guide_width + CLAMP_ROOM
    return GuideRoom(
        left=start >= saw.base_left + needed,
        right=extent - end >= saw.base_right + needed,
    )
