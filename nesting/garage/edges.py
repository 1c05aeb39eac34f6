"""Edges of pieces that no cut at home has made: how much along them is not used."""

from collections.abc import Iterator
from typing import Final

from nesting.garage.planned import PlannedSheet
from nesting.garage.sheet_readings import Size
from nesting.layout import By, Direction, Rect
from nesting.lengths import Length, mm
from nesting.sheets import Trim

TENTH: Final = mm("0.1")


def raw_edges(sheet: PlannedSheet, rect: Rect) -> Trim:
    """Return the trims of a piece along edges that no cut at home has made.

    They are those of its sheet, and what is kept along edges that the yard cut.
    """
    trim = sheet.trim
    right, top = rect.x + rect.length, rect.y + rect.width
    low, high = sheet.yard_trims
    from_yard = set(_yard_edges(sheet))
    return Trim(
        left=trim.left if rect.x == 0 else low * ((Direction.CROSSCUT, 1, rect.x) in from_yard),
        right=trim.right
        if right == sheet.length
        else high * ((Direction.CROSSCUT, 0, right) in from_yard),
        bottom=trim.bottom if rect.y == 0 else low * ((Direction.RIP, 1, rect.y) in from_yard),
        top=trim.top if top == sheet.width else high * ((Direction.RIP, 0, top) in from_yard),
    )


def _yard_edges(sheet: PlannedSheet) -> Iterator[tuple[Direction, int, Length]]:
    """Yield where the yard's cuts leave an edge: below the kerf (0) and above it (1)."""
    for cut in sheet.cuts:
        if cut.by is By.YARD:
            rect = sheet.piece_cut_by(cut.number).rect
            start = (rect.x if cut.direction is Direction.CROSSCUT else rect.y) + cut.at
            yield cut.direction, 0, start
            yield cut.direction, 1, start + cut.removed


def find_skew(rect: Rect, diagonals: Size | None) -> Length:
    """Return how far a sheet's ends lean over its width, rounded up to 0.1 mm.

    In a parallelogram of sides a and b the squares of the diagonals differ by 4 a b cos(angle),
    and b cos(angle) is how far the end leans: (d1^2 - d2^2) / 4 a.
    """
    if diagonals is None:
        return 0
    difference = abs(diagonals[0] ** 2 - diagonals[1] ** 2)
    return -(-difference // (4 * rect.length * TENTH)) * TENTH


def widen_for_skew(trim: Trim, skew: Length) -> Trim:
    """Return trims in which a leaning end is cut off square at either end."""
    return Trim(
        left=max(trim.left, skew),
        right=max(trim.right, skew),
        top=trim.top,
        bottom=trim.bottom,
    )
