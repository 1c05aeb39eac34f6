"""Small parts from what holes leave: discs and windows, as advice."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import isqrt

from nesting.cabinets.hole_places import PlacedHole
from nesting.lengths import Length, Unit, format_length, mm
from nesting.parts import Part

WHOLE_MM = mm(1)
WORTH_IT = mm(30)
"""No smaller square is spoken of. Judgement, no source."""
MARGIN = mm(3)
"""What is kept between a part and the rim of a disc or its pivot. Judgement, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DiscAdvice:
    """What one hole leaves.

    Attributes:
        hole: Name of the hole.
        square: The largest square that it offers, clear of the pivot.
        parts: Names of small parts of the same board that it could give.
        text: The advice in a sentence.
    """

    hole: str
    square: Length
    parts: tuple[str, ...]
    text: str


def fits_in_disc(
    sides: tuple[Length, Length], disc: Length, *, kerf: Length, pivot: Length, margin: Length
) -> bool:
    """Return whether a rectangle can be cut from the disc that a hole leaves.

    It lies about the middle where there is no pivot, and beside it where there is one.

    Args:
        sides: Its sides.
        disc: Diameter of the hole.
        kerf: What the circle cutter removes inside it.
        pivot: Diameter of the pivot hole, 0 for none.
        margin: What is kept from the rim and from the pivot.
    """
    radius_twice = disc - 2 * kerf - 2 * margin
    if radius_twice <= 0:
        return False
    for length, width in (sides, sides[::-1]):
        far = pivot + 2 * margin + 2 * width if pivot else width
        if length**2 + far**2 <= radius_twice**2:
            return True
    return False


def find_square(disc: Length, *, kerf: Length, pivot: Length, margin: Length) -> Length:
    """Return the side of the largest square from a disc, in whole millimetres."""
    side = isqrt(disc**2 // 2) // WHOLE_MM * WHOLE_MM
    while side > 0 and not fits_in_disc((side, side), disc, kerf=kerf, pivot=pivot, margin=margin):
        side -= WHOLE_MM
    return side


def advise_on_discs(
    holes: tuple[PlacedHole, ...],
    parts: tuple[Part, ...],
    *,
    kerf: Length,
    pivot: Length,
    unit: Unit,
) -> Iterator[DiscAdvice]:
    """Yield what each round hole leaves, and which small parts of the cabinet it could give.

    Grain is left to the eye: a disc has it marked. Windows are cut with a kerf along their edges
    and counted by the saw's own plan, not here.
    """
    for placed in holes:
        hole = placed.hole
        if not hole.cut_out:
            continue
        square = find_square(hole.cut_out, kerf=kerf, pivot=pivot, margin=MARGIN)
        if square < WORTH_IT:
            continue
        board = placed.panel.board
        names = tuple(
            part.name
            for part in parts
            if (part.material, part.thickness) == (board.material, board.thickness)
            and fits_in_disc(
                (part.blank_length, part.width + part.oversize),
                hole.cut_out,
                kerf=kerf,
                pivot=pivot,
                margin=MARGIN,
            )
        )
        could = f" It could give: {', '.join(names)}." if names else ""
        yield DiscAdvice(
            hole=hole.name,
            square=square,
            parts=names,
            text=f"The disc of the {hole.name} gives a square of {format_length(square, unit)} "
            f"{unit.value} beside its pivot, once the hole is cut.{could}",
        )
