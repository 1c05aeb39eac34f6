"""The piece in hand at every cut, and the two that the cut makes of it, as drawn."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from nesting.layout import Direction, Rect
from plans.sections.codes import WASTE
from plans.sections.cut_table import CutRow
from plans.sections.sheet_view import CutView, SheetView

LOW_EDGES = ("left edge", "top edge")
"""Edges that distances grow from as the drawing's co-ordinates do, y downwards."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """One cut of a sheet.

    Attributes:
        row: Its row of the cut table.
        cut: Where it lies.
        piece: The piece in hand, before the cut.
        kept: What is kept of it.
        freed: What falls free; of no extent where nothing does.
    """

    row: CutRow
    cut: CutView
    piece: Rect
    kept: Rect
    freed: Rect


def held_pieces(view: SheetView) -> Iterator[Held]:
    """Yield every cut of a sheet with the piece in hand, by sawing the drawing row by row."""
    lying = {f"S{view.number}": Rect(x=0, y=0, length=view.length, width=view.width)}
    for row, cut in zip(view.rows, view.cuts, strict=True):
        piece = lying.pop(row.hold)
        low, high = _split(piece, cut)
        near, far = (low, high) if row.measure_from in LOW_EDGES else (high, low)
        kept, freed = (far, near) if cut.is_trim else (near, far)
        made = ((row.keep_code, kept), (row.free_code, freed))
        lying |= {code: rect for code, rect in made if code not in ("", WASTE)}
        yield Held(row=row, cut=cut, piece=piece, kept=kept, freed=freed)


def _split(piece: Rect, cut: CutView) -> tuple[Rect, Rect]:
    """Return what lies on either side of a cut, low co-ordinates first."""
    band = cut.band
    if cut.direction is Direction.RIP:
        end = band.y + band.width
        return (
            replace(piece, width=band.y - piece.y),
            replace(piece, y=end, width=piece.y + piece.width - end),
        )
    end = band.x + band.length
    return (
        replace(piece, length=band.x - piece.x),
        replace(piece, x=end, length=piece.x + piece.length - end),
    )
