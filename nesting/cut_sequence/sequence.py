"""What a sequence is: the cuts of one sheet in the order a person makes them."""

from dataclasses import dataclass
from typing import TypeAlias

from nesting.layout import By, Direction, Rect
from nesting.lengths import Length

Path: TypeAlias = tuple[int, ...]

MOST_OPEN_PIECES = 6
"""How many pieces that still need cutting may lie about at once (judgement)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One cut, at its place in the order.

    Attributes:
        number: Number of the cut on its sheet, from 1.
        path: How the cut is reached in the tree of its sheet, see `nesting.layout.Place`.
        setting: Number of the setting of the guide, from 1. Steps that share it follow each other.
        direction: Rip or crosscut.
        is_trim: True where a raw edge is taken off.
        by: Whose saw.
        keep: From the edge measured from to the fresh edge: the size of the first piece, or for
            a trim cut what comes off, kerf included.
        piece: The piece in hand before the cut.
        band: The wood that the cut removes.
    """

    number: int
    path: Path
    setting: int
    direction: Direction
    is_trim: bool
    by: By
    keep: Length
    piece: Rect
    band: Rect

    @property
    def cut_length(self) -> Length:
        """How far the saw runs."""
        return self.band.length if self.direction is Direction.RIP else self.band.width


@dataclass(frozen=True, slots=True, kw_only=True)
class Sequence:
    """All cuts of one sheet in order.

    Attributes:
        sheet: Index into `Job.sheets`.
        steps: The cuts in the order of doing; empty where the sheet itself is the part.
        settings: Number of settings of the guide.
        turns: How often the direction changes between one cut and the next.
        most_open: The largest number of pieces that lie about and still need cutting.
        too_long: Numbers of the cuts at home that are longer than the guide.
        pause: Number of the cut after which the sheet is put aside, because one whole cabinet is
            made first; 0 where nothing on it is needed for that.
    """

    sheet: int
    steps: tuple[Step, ...]
    settings: int
    turns: int
    most_open: int
    too_long: tuple[int, ...]
    pause: int = 0
