"""Fallbacks: what a spoilt part can still become.

A spoilt piece gets fresh edges: at least one kerf goes in each direction. What is left must hold
the blank of a smaller part, with the grain the way the piece lies.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from nesting.lengths import Length
from nesting.parts import Grain
from nesting.sheets import SheetGrain


@dataclass(frozen=True, slots=True, kw_only=True)
class Blank:
    """A part that is wanted, as it is cut.

    Attributes:
        name: What it is called.
        length: Of its blank, along the part's own length.
        width: Of its blank, across it.
        grain: The side that runs with the face grain.
    """

    name: str
    length: Length
    width: Length
    grain: Grain


@dataclass(frozen=True, slots=True, kw_only=True)
class Fallback:
    """What a piece can still become.

    Attributes:
        name: Name of the part.
        count: How many of it, cut in rows.
    """

    name: str
    count: int


def find_fallbacks(
    length: Length,
    width: Length,
    grain: SheetGrain,
    blanks: Iterable[Blank],
    *,
    kerf: Length,
    is_spoilt: bool = True,
) -> tuple[Fallback, ...]:
    """Return the parts that a piece can still become, the largest first.

    Args:
        length: Extent of the piece along x.
        width: Its extent along y.
        grain: The side of the sheet that its grain runs along.
        blanks: The parts wanted, of the same board.
        kerf: Width that a cut removes.
        is_spoilt: True where a cut in each direction is needed to get rid of the fault; False
            where the sizes given are those of what is sound.
    """
    fresh = kerf if is_spoilt else 0
    found: dict[str, Fallback] = {}
    for blank in sorted(blanks, key=lambda blank: (-blank.length * blank.width, blank.name)):
        count = _count(length - fresh, width - fresh, grain, blank, kerf)
        if count:
            found.setdefault(blank.name, Fallback(name=blank.name, count=count))
    return tuple(found.values())


def _count(length: Length, width: Length, grain: SheetGrain, blank: Blank, kerf: Length) -> int:
    """Return how many blanks a piece holds in rows, all lying the same way."""
    ways = []
    for along, across, is_turned in (
        (blank.length, blank.width, False),
        (blank.width, blank.length, True),
    ):
        is_along_x = (blank.grain is Grain.LENGTH) is not is_turned
        if (
            blank.grain is Grain.ANY
            or grain is SheetGrain.NONE
            or is_along_x is (grain is SheetGrain.LENGTH)
        ):
            ways.append(((length + kerf) // (along + kerf)) * ((width + kerf) // (across + kerf)))
    return max(0, *ways) if min(length, width) > 0 else 0
