"""What was planned, as it is read back from a plan file: the tree of every sheet.

Geometry only. The pieces of a sheet stand in one row, the whole sheet first and every piece after
the one it is cut from, so that no walk needs to climb.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.earlier import FinishedPart, Leftover
from nesting.layout import By, Direction, Rect
from nesting.lengths import Length, Unit
from nesting.parts import Grain
from nesting.sheets import Defect, SheetGrain, Trim


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedPart:
    """A part where the plan puts it.

    Attributes:
        name: Its name with its cabinet.
        turned: True where its own length lies along y.
        grain: The side that runs with the face grain.
        finished: Finished size, its own length first.
    """

    name: str
    turned: bool
    grain: Grain
    finished: tuple[Length, Length]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedCut:
    """A cut of the plan.

    Attributes:
        number: Its number on its sheet, from 1, in the order of doing.
        direction: Rip or crosscut.
        at: Size of the piece at the low edge, 0 where there is none.
        removed: Wood turned to dust.
        is_trim: True where a raw edge is taken off.
        setting: Number of the setting of the guide on this sheet.
        by: Whose saw.
        remark: What is done before it; empty for nothing.
    """

    number: int
    direction: Direction
    at: Length
    removed: Length
    is_trim: bool
    setting: int
    by: By = By.HOME
    remark: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A piece of a sheet, from the whole sheet down to the parts.

    Attributes:
        code: What the plan calls it: "S1", "P5", "A3", "L2" or "WASTE".
        rect: Where it lies on the sheet.
        made_by: Number of the cut that makes it, 0 for the whole sheet.
        cut_by: Number of the cut across it, 0 where it stays whole.
        low: Index of the piece at the low edge of that cut, None where there is none.
        high: Index of the piece beyond that cut, None where there is none.
        part: The part that it is, or None.
        is_offcut: True where it is a leftover to keep.
    """

    code: str
    rect: Rect
    made_by: int
    cut_by: int = 0
    low: int | None = None
    high: int | None = None
    part: PlannedPart | None = None
    is_offcut: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedSheet:
    """One sheet of the plan.

    Attributes:
        number: Its number in the plan, from 1.
        stock: Name of the stock.
        material: What it is made of.
        thickness: Nominal thickness.
        measured: Measured thickness, None where it was not measured.
        length: Extent along x.
        width: Extent along y.
        grain: The side that the face grain runs along.
        trim: What is not used along each edge.
        cuts: In the order of doing; cut n stands at n - 1.
        pieces: The whole sheet first, every piece after the one it is cut from.
        defects: Its places that are not sound.
        yard_trims: What is not used along an edge that the yard cut, where it is the low and
            where it is the high end of a piece.
        pause: Number of the cut after which it is put aside for the first whole cabinet, 0 for
            never.
    """

    number: int
    stock: str
    material: str
    thickness: Length
    measured: Length | None
    length: Length
    width: Length
    grain: SheetGrain
    trim: Trim
    cuts: tuple[PlannedCut, ...]
    pieces: tuple[Piece, ...]
    defects: tuple[Defect, ...] = ()
    yard_trims: tuple[Length, Length] = (0, 0)
    pause: int = 0

    def piece_cut_by(self, number: int) -> Piece:
        """Return the piece that a cut goes across."""
        return next(piece for piece in self.pieces if piece.cut_by == number)


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """A plan as its file tells it.

    Attributes:
        fingerprint: Its code.
        unit: The unit of its pages.
        sheets: Its sheets; sheet n stands at n - 1.
        kerf: Of the saw.
        finished: Parts that were finished under earlier plans.
        kept: Pieces in the garage that this plan does not need.
        used: Stocks of the job file used up under earlier plans, with their number.
        figures: The highest figures of pieces and of offcuts under earlier plans.
        unsound: Names of the sheets that were told apart from others for their defects, whether it
            uses them or not.
        first_whole: Letter of the cabinet that is cut whole first, "" for none.
    """

    fingerprint: str
    unit: Unit
    sheets: tuple[PlannedSheet, ...]
    kerf: Length
    finished: tuple[FinishedPart, ...] = ()
    kept: tuple[Leftover, ...] = ()
    used: tuple[tuple[str, int], ...] = ()
    figures: tuple[int, int] = (0, 0)
    unsound: tuple[str, ...] = ()
    first_whole: str = ""

    @property
    def cut_count(self) -> int:
        """How many cuts it has."""
        return sum(len(sheet.cuts) for sheet in self.sheets)

    def pieces(self) -> Iterator[tuple[PlannedSheet, Piece]]:
        """Yield every piece with its sheet."""
        for sheet in self.sheets:
            for piece in sheet.pieces:
                yield sheet, piece
