"""What has been marked: which cuts are made, what was read, spoilt or is not there."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final

from nesting.garage.events import CutName, SheetRead
from nesting.garage.planned import Piece, PlannedSheet
from nesting.garage.sheet_readings import Size
from nesting.lengths import mm

FIRST_OFF: Final = mm("0.5")
"""A first part that is shorter or narrower by more than this is spoilt (judgement: the step)."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Marks:
    """All marks of a plan taken together.

    Attributes:
        cuts: The cuts made, in the order in which they were marked.
        readings: Sizes of parts by their code.
        first_offs: Sizes as cut of the first parts of their kinds, by their code.
        spoilt: What is left of spoilt pieces by their code.
        missing: Sheets that are not there.
        sheets: Readings of sheets by their number; what was not read is empty.
    """

    cuts: Mapping[CutName, None] = field(default_factory=dict)
    readings: Mapping[str, Size] = field(default_factory=dict)
    first_offs: Mapping[str, Size] = field(default_factory=dict)
    spoilt: Mapping[str, tuple[Size, ...]] = field(default_factory=dict)
    missing: frozenset[int] = frozenset()
    sheets: Mapping[int, SheetRead] = field(default_factory=dict)

    @property
    def last_cut(self) -> CutName | None:
        """The cut that was marked last, None where none is."""
        return list(self.cuts)[-1] if self.cuts else None

    @property
    def is_empty(self) -> bool:
        """Whether nothing is marked."""
        return not (
            self.cuts
            or self.readings
            or self.first_offs
            or self.spoilt
            or self.missing
            or self.sheets
        )


def is_there(planned_sheet: PlannedSheet, piece: Piece, marks: Marks) -> bool:
    """Return whether a piece lies in the garage: freed, not cut up, not spoilt, not missing."""
    number = planned_sheet.number
    return (
        number not in marks.missing
        and (piece.made_by == 0 or (number, piece.made_by) in marks.cuts)
        and (piece.cut_by == 0 or (number, piece.cut_by) not in marks.cuts)
        and piece.code not in marks.spoilt
    )


def find_deviation(piece: Piece, size: Size) -> Size:
    """Return by how much a part as cut is longer and wider than planned; negative where less."""
    along, across = printed_sides(piece)
    return size[0] - along, size[1] - across


def printed_sides(piece: Piece) -> Size:
    """Return the sides of a piece in the order in which they are printed."""
    rect = piece.rect
    if piece.part is not None and piece.part.turned:
        return rect.width, rect.length
    return rect.length, rect.width
