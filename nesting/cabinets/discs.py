"""Small parts from what holes leave: discs and the pieces of windows."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import isqrt

from nesting.cabinets.bodies import cross_axes
from nesting.cabinets.hole_places import PlacedHole
from nesting.cabinets.holes import Hole
from nesting.cabinets.panels import Panel
from nesting.lengths import Length, Unit, format_length, mm
from nesting.parts import Grain, Part

WHOLE_MM = mm(1)
WORTH_IT = mm(30)
"""No smaller square is spoken of. Judgement, no source."""
MARGIN = mm(3)
"""What is kept between a part and the rim of a disc or its pivot. Judgement, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DiscAdvice:
    """What one round hole leaves.

    Attributes:
        hole: Name of the hole.
        square: The largest square that it offers, clear of the pivot.
        text: The same in a sentence.
    """

    hole: str
    square: Length
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FromHole:
    """A part that comes out of a hole.

    Attributes:
        part: The part; its count is 1.
        cabinet: Letter of the cabinet that the hole is cut in.
        hole: Name of the hole.
        panel: Name of the part that the hole is cut in.
        cut_out: Diameter of the hole, 0 for a window.
        window: The hole where it is a rectangle.
        kerf: What the cutter removes inside it.
        pivot: Diameter of the pivot hole, 0 for none.
    """

    part: Part
    cabinet: str
    hole: str
    panel: str
    cut_out: Length
    window: tuple[Length, Length] | None
    kerf: Length
    pivot: Length

    @property
    def leaves(self) -> str:
        """What it is cut from: a disc, or the piece of a window."""
        return "disc" if self.cut_out else "piece"


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


def fits_in_hole(part: Part, hole: Hole, panel: Panel, *, kerf: Length, pivot: Length) -> bool:
    """Return whether a part's blank comes out of what a hole leaves.

    A disc may be turned until its grain suits; the piece of a window may not.

    Args:
        part: The part.
        hole: The hole.
        panel: The panel that it is cut in.
        kerf: What the cutter removes inside the hole.
        pivot: Diameter of the pivot hole of a disc, 0 for none.
    """
    sides = (part.blank_length, part.blank_width)
    if hole.window is None:
        return fits_in_disc(sides, hole.cut_out, kerf=kerf, pivot=pivot, margin=MARGIN)
    room = [side - 2 * (kerf + MARGIN) for side in hole.window]
    along = cross_axes(panel.normal).index(panel.length.axis)
    return any(
        lying[0] <= room[0] and lying[1] <= room[1]
        for lying, length_along in ((sides, 0), (sides[::-1], 1))
        if Grain.ANY in (part.grain, panel.grain)
        or (part.grain is panel.grain) is (length_along == along)
    )


def measure_discs(
    holes: tuple[PlacedHole, ...], *, kerf: Length, pivot: Length, unit: Unit
) -> Iterator[DiscAdvice]:
    """Yield what each round hole leaves, where that is worth a word."""
    for hole in (placed.hole for placed in holes):
        square = find_square(hole.cut_out, kerf=kerf, pivot=pivot, margin=MARGIN)
        if hole.cut_out and square >= WORTH_IT:
            beside = " beside its pivot" if pivot else ""
            yield DiscAdvice(
                hole=hole.name,
                square=square,
                text=f"The disc of the {hole.name} gives a square of "
                f"{format_length(square, unit)} {unit.value}{beside}, once the hole is cut.",
            )
