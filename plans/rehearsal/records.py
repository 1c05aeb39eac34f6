"""A plan file as records: what the page prints, and the numbers it is drawn from.

Lengths are nanometres. x runs along the sheet's length and y along its width, from one corner.
"""

from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from plans.rehearsal.printed import KeepSize, Nanometres, PrintedUnit, Sum

# A number of the plan file is written to 0.001 mm; two that mean the same differ by no more.
WRITTEN = 2_000


class Edge(Enum):
    """An edge of a piece: the axis that it lies across, and whether at the low or high end."""

    X_LOW = "left edge"
    X_HIGH = "right edge"
    Y_LOW = "edge of least y"
    Y_HIGH = "edge of greatest y"

    @property
    def is_low(self) -> bool:
        """Whether distances from this edge grow with the co-ordinate."""
        return self in (Edge.X_LOW, Edge.Y_LOW)

    @property
    def is_across_x(self) -> bool:
        """Whether distances from this edge run along x, as a crosscut's do."""
        return self in (Edge.X_LOW, Edge.X_HIGH)


@dataclass(frozen=True, slots=True, kw_only=True)
class Rect:
    """A rectangle by its extent along x and along y."""

    x: Nanometres
    y: Nanometres
    length: Nanometres
    width: Nanometres

    @property
    def x_end(self) -> Nanometres:
        """Greatest x."""
        return self.x + self.length

    @property
    def y_end(self) -> Nanometres:
        """Greatest y."""
        return self.y + self.width

    def is_at(self, other: "Rect") -> bool:
        """Return whether both are the same rectangle, as far as a plan file is written."""
        return all(
            abs(mine - theirs) <= WRITTEN
            for mine, theirs in zip(
                (self.x, self.y, self.x_end, self.y_end),
                (other.x, other.y, other.x_end, other.y_end),
                strict=True,
            )
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Saw:
    """The saw at home."""

    kerf: Nanometres
    base_left: Nanometres
    base_right: Nanometres


@dataclass(frozen=True, slots=True, kw_only=True)
class Blocks:
    """Two blocks that set the guide, by their printed sizes: A before the mark, B beyond it."""

    before: Nanometres
    beyond: Nanometres


@dataclass(frozen=True, slots=True, kw_only=True)
class Yard:
    """The yard's saw: its kerf, and how far a cut of it may be off either way."""

    kerf: Nanometres
    rough: Nanometres


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A part: its number in the plan and its line on the page.

    Attributes:
        code: Its code.
        name: Its name with its cabinet.
        rect: Where it lies.
        is_turned: Its own length lies along y.
        grain: "length", "width" or "any".
        finished: Its own finished length and width.
        printed_finished: The same as printed.
        printed_blank: Size as cut as printed, its own length first.
        printed_thickness: Thickness as printed.
        status: "final", "oversize" or "measure first".
        is_hidden: No face of it shows when the work is done.
    """

    code: str
    name: str
    rect: Rect
    is_turned: bool
    grain: str
    finished: tuple[Nanometres, Nanometres]
    printed_finished: tuple[Nanometres, Nanometres]
    printed_blank: tuple[Nanometres, Nanometres]
    printed_thickness: Nanometres
    status: str
    is_hidden: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class HolePart:
    """A part that comes out of a hole.

    Attributes:
        code: Its code.
        panel: Code of the panel with the hole.
        opening: Diameter of the hole twice, or the sides of a window.
        is_round: False for a window.
        kerf: What the cutter removes inside the hole.
        pivot: Diameter of the pivot hole in a disc.
        blank: Its own length and width as cut.
        printed_finished: Its finished size as printed.
        printed_blank: Its size as cut as printed.
        printed_thickness: Its thickness as printed.
    """

    code: str
    panel: str
    opening: tuple[Nanometres, Nanometres]
    is_round: bool
    kerf: Nanometres
    pivot: Nanometres
    blank: tuple[Nanometres, Nanometres]
    printed_finished: tuple[Nanometres, Nanometres]
    printed_blank: tuple[Nanometres, Nanometres]
    printed_thickness: Nanometres


@dataclass(frozen=True, slots=True, kw_only=True)
class Offcut:
    """A leftover that is kept; its printed size is along x first."""

    code: str
    rect: Rect
    printed_size: tuple[Nanometres, Nanometres]


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One cut: a row of the printed table, and the band that the plan says it removes.

    Attributes:
        number: Its number on the sheet.
        hold: Code of the piece in hand.
        hold_size: Its printed size, along x first.
        is_rip: Whether it runs along x.
        edge: The edge measured from.
        keep: The keep size.
        keep_code: Code of what lies between the edge and the blade; of what is left, for a trim.
        guides: The near and the far place of the guide, as printed or by the blocks; None on a row
            of the yard's that has none, and where the blocks' mark would lie off the piece.
        unusable: Which of them is struck out: "left", "right", "both" or "".
        free_code: Code of what falls free, "" where nothing does.
        setting: Number of the setting.
        band: The wood that the cut removes.
        kerf: Kerf of the saw that makes it.
        is_at_home: False for the yard's saw.
    """

    number: int
    hold: str
    hold_size: tuple[Nanometres, Nanometres]
    is_rip: bool
    edge: Edge
    keep: KeepSize
    keep_code: str
    guides: tuple[Nanometres, Nanometres] | None
    unusable: str
    free_code: str
    setting: int
    band: Rect
    kerf: Nanometres
    is_at_home: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Defect:
    """A place of a sheet that is not sound.

    Attributes:
        rect: Where it lies.
        is_for_hidden: Hidden parts may lie on it; otherwise nothing that is wanted may.
        printed: Where it lies by its printed readings and size.
        printed_for_hidden: What the page says of its use.
        printed_parts: Codes of the parts on it that the page names.
    """

    rect: Rect
    is_for_hidden: bool
    printed: Rect
    printed_for_hidden: bool
    printed_parts: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One sheet with all that is cut from it.

    Attributes:
        number: Its number in the plan.
        stock: Name of the stock.
        thickness: Nominal thickness.
        real_thickness: Measured thickness, the nominal one where it was not measured.
        length: Extent along x.
        width: Extent along y.
        grain: "length", "width" or "none".
        price: What it costs.
        trim: What is not used along each edge.
        printed_size: Size as printed, along x first.
        printed_trim: The trims as printed.
        parts: Its parts.
        rows: Its cuts in order.
        offcuts: Its offcuts.
        sums: Printed sums with the code of the piece that each is of.
        defects: Its places that are not sound.
    """

    number: int
    stock: str
    thickness: Nanometres
    real_thickness: Nanometres
    length: Nanometres
    width: Nanometres
    grain: str
    price: Fraction
    trim: tuple[tuple[Edge, Nanometres], ...]
    printed_size: tuple[Nanometres, Nanometres]
    printed_trim: tuple[tuple[Edge, Nanometres], ...]
    parts: tuple[Part, ...]
    rows: tuple[Row, ...]
    offcuts: tuple[Offcut, ...]
    sums: tuple[tuple[str, Sum], ...]
    defects: tuple[Defect, ...] = ()

    @property
    def whole(self) -> Rect:
        """The sheet itself."""
        return Rect(x=0, y=0, length=self.length, width=self.width)


@dataclass(frozen=True, slots=True, kw_only=True)
class WholeFirst:
    """The cabinet that is cut whole before anything else is.

    Attributes:
        cabinet: Its letter.
        cuts: The cuts it takes, as printed.
        pauses: Number of a sheet and of the cut after which it is put aside.
    """

    cabinet: str
    cuts: str
    pauses: tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanFile:
    """A whole plan file.

    Attributes:
        unit: The unit of its pages.
        saw: The saw at home.
        cost: What its sheets cost.
        bound: What any plan must cost.
        is_complete: Nothing stayed unplaced.
        sheets: Its sheets in order.
        yard: The yard that makes the first cuts, None where all is cut at home.
        blocks: The blocks that set the guide, None where a tape does.
        hole_parts: The parts that come out of holes.
        finished: Codes of the parts that earlier plans cut.
        whole_first: The cabinet that is cut whole first, None where none is.
    """

    unit: PrintedUnit
    saw: Saw
    cost: Fraction
    bound: Fraction
    is_complete: bool
    sheets: tuple[Sheet, ...]
    yard: Yard | None = None
    blocks: Blocks | None = None
    hole_parts: tuple[HolePart, ...] = ()
    finished: frozenset[str] = frozenset()
    whole_first: WholeFirst | None = None
