"""What can be marked of a plan: cuts made, readings, what is spoilt or missing."""

from dataclasses import dataclass
from typing import TypeAlias

from nesting.garage.sheet_readings import Size
from nesting.lengths import Length
from nesting.sheets import Defect

CutName: TypeAlias = tuple[int, int]
"""Number of the sheet and of the cut on it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CutMade:
    """A cut has been made."""

    sheet: int
    cut: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PartRead:
    """A part that had to be measured from the work: its size, own length first."""

    code: str
    size: Size


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstOff:
    """The first part of its kind, measured before the others are cut: its size as cut."""

    code: str
    size: Size


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceSpoilt:
    """A piece or a part has gone wrong.

    Attributes:
        code: Its code.
        left: Rectangles that can still be used, each measured the way the piece's own size is
            printed; none where nothing is left.
    """

    code: str
    left: tuple[Size, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetMissing:
    """A sheet is not there: not bought, or not usable at all."""

    sheet: int


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetRead:
    """Readings of one sheet.

    Attributes:
        sheet: Its number.
        size: Length and width as the plan gives them, None where they were not read.
        diagonals: Both diagonals, None where they were not read.
        thickness: Readings of the thickness.
        defects: Places that are not sound.
    """

    sheet: int
    size: Size | None = None
    diagonals: Size | None = None
    thickness: tuple[Length, ...] = ()
    defects: tuple[Defect, ...] = ()


Mark: TypeAlias = CutMade | PartRead | FirstOff | PieceSpoilt | SheetMissing | SheetRead
