"""One sheet as it is drawn: seen from the marked face, lengths in nanometres, y downwards.

The home corner, from which everything is measured, is at the top left where the good face lies
down (the sheet is turned over about its long side) and at the bottom left where it lies up.
"""

from dataclasses import dataclass

from nesting.layout import Direction, Rect
from plans.sections.cut_table import CutRow, StripSum


@dataclass(frozen=True, slots=True, kw_only=True)
class PartView:
    """A part where it lies.

    Attributes:
        code: Its code, "A3".
        name: Its name.
        rect: Where it lies, as drawn.
        grain: "length" where the face grain runs left to right as drawn, "width" where up and
            down, "none" on a sheet without grain.
        finished: Finished size as text, its own length first.
        blank: Size as cut, as text; equal to finished where nothing is added.
        status: "final", "oversize" or "measure first".
    """

    code: str
    name: str
    rect: Rect
    grain: str
    finished: str
    blank: str
    status: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RestView:
    """An offcut (code "L1") or waste (code "WASTE") where it lies, with its size as text."""

    code: str
    rect: Rect
    size: str
    is_offcut: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CutView:
    """A cut's number and the band that it removes, as drawn."""

    number: str
    band: Rect
    direction: Direction
    is_trim: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetView:
    """Everything on the page of one sheet.

    Attributes:
        number: Number of the sheet in the plan, from 1.
        stock: Name of the stock.
        material: Material and nominal thickness, "birch plywood 18".
        measured: Measured thickness as text, "" where it was not measured.
        length: Extent left to right.
        width: Extent top to bottom.
        size: Size as text, "2440 × 1220".
        mass: Mass in kilograms as text.
        grain: "length", "width" or "none", as drawn.
        grain_text: "GRAIN RUNS ALONG THE 2440", or "NO GRAIN".
        face_text: "Drawn as seen from the BACK: the good face lies down."
        home_text: "HOME CORNER: top left as you stand".
        home: "top left" or "bottom left".
        trims: The trims along each edge, as drawn; without those of no width.
        parts: In the order of their codes.
        rests: Offcuts and waste.
        cuts: In the order of doing.
        rows: The cut table, in the same order.
        sums: One per piece that is cut into a row.
        why: One sentence on why this order.
        settings: Number of settings of the guide.
        minutes: Estimated minutes of work.
    """

    number: int
    stock: str
    material: str
    measured: str
    length: int
    width: int
    size: str
    mass: str
    grain: str
    grain_text: str
    face_text: str
    home_text: str
    home: str
    trims: tuple[Rect, ...]
    parts: tuple[PartView, ...]
    rests: tuple[RestView, ...]
    cuts: tuple[CutView, ...]
    rows: tuple[CutRow, ...]
    sums: tuple[StripSum, ...]
    why: str
    settings: int
    minutes: int
