"""The smallest pieces of board that some parts can be cut from."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from nesting.lengths import Length
from nesting.parts import Grain, Part

MOST_PARTS: Final = 8
"""Beyond this the sets of parts are too many to try them all."""


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Box:
    """A piece between straight edges, with the grain along its length where there is any."""

    length: Length
    width: Length


def find_smallest_pieces(
    parts: Sequence[Part], kerf: Length, *, has_grain: bool
) -> tuple[Box, ...]:
    """Return every smallest piece that all parts can be cut from, the least area first.

    None of them can lose anything of either side. Cuts run from edge to edge, as everywhere here:
    the first cut parts the set in two, each half has its own smallest pieces, and two of those
    side by side with a kerf between make one for the set (Stockmeyer, Information and Control 57,
    1983, 91-101, combines shapes in this way; from memory).

    Args:
        parts: Kinds of parts of one material; their counts are respected.
        kerf: What a cut removes.
        has_grain: False for material without grain, where every part may be turned.

    Returns:
        Nothing where there are no parts or more than `MOST_PARTS`.
    """
    pieces = [part for part in parts for _ in range(part.count)]
    if not 0 < len(pieces) <= MOST_PARTS:
        return ()
    best: list[tuple[Box, ...]] = [()] * (1 << len(pieces))
    for index, part in enumerate(pieces):
        best[1 << index] = _smallest(_ways(part, has_grain=has_grain))
    for chosen in range(1, 1 << len(pieces)):
        if chosen & (chosen - 1):
            best[chosen] = _smallest(_joined(best, chosen, kerf))
    return tuple(sorted(best[-1], key=lambda box: (box.length * box.width, box)))


def _ways(part: Part, *, has_grain: bool) -> Iterator[Box]:
    if not has_grain or part.grain is not Grain.WIDTH:
        yield Box(length=part.blank_length, width=part.blank_width)
    if not has_grain or part.grain is not Grain.LENGTH:
        yield Box(length=part.blank_width, width=part.blank_length)


def _joined(best: Sequence[tuple[Box, ...]], chosen: int, kerf: Length) -> Iterator[Box]:
    """Yield every piece that a set needs when the first cut parts it in two."""
    some = (chosen - 1) & chosen
    while some:
        others = chosen ^ some
        if some > others:  # the two halves are alike, each pair once is enough
            for one in best[some]:
                for other in best[others]:
                    yield Box(
                        length=one.length + kerf + other.length,
                        width=max(one.width, other.width),
                    )
                    yield Box(
                        length=max(one.length, other.length),
                        width=one.width + kerf + other.width,
                    )
        some = (some - 1) & chosen


def _smallest(boxes: Iterator[Box]) -> tuple[Box, ...]:
    """Return the boxes that hold no other one, by length."""
    kept: list[Box] = []
    for box in sorted(set(boxes)):
        if not kept or box.width < kept[-1].width:
            kept.append(box)
    return tuple(kept)
