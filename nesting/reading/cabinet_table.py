"""One table [[cabinet]]: what the builder says about a cabinet."""

from enum import Enum
from typing import Final

from nesting.cabinets.boards import Board
from nesting.cabinets.design import (
    Along,
    Battens,
    BoxDesign,
    Braces,
    Closing,
    Corners,
    Covering,
    Design,
    Fit,
    Fitted,
    Grains,
    Through,
)
from nesting.errors import InputError
from nesting.lengths import Length, Unit, inch, mm
from nesting.reading.covering_table import BARE, read_covering
from nesting.reading.stock import Stock, read_material
from nesting.reading.tables import Table

MOST_CABINETS: Final = 500
MOST_BRACES: Final = 50
MOST_ALLOWANCE: Final = mm(50)
SECTION_SIDES: Final = 2


class Family(Enum):
    """Kinds of cabinet that can be worked out."""

    BOX = "box"


def read_cabinet(table: Table, stock: Stock, covering: Covering | None) -> Design | None:
    """Return the design of a table [[cabinet]], or None after recording its faults.

    Args:
        table: The table.
        stock: The sheets of the job.
        covering: The covering of the job; None for none.
    """
    name = table.text("name")
    table.choice("family", Family, Family.BOX)
    count = table.whole("count", 1, least=1, most=MOST_CABINETS)
    height, width, depth = (table.length(key) for key in ("height", "width", "depth"))
    board = _board(*read_material(table, stock))
    through = table.choice("through", Through, Through.SIDES)
    baffle = _read_closing(table, "baffle", stock, board)
    back = _read_closing(table, "back", stock, board)
    battens = _read_battens(table, baffle, back)
    braces = _read_braces(table, stock, board)
    cover = _read_own_covering(table, covering)
    grains = _read_grains(table)
    measure_first = table.flag("measure_first", default=True)
    usual = inch("1/8") if table.unit is Unit.INCH else mm(3)
    allowance = table.length("allowance", usual, may_be_zero=True, most=MOST_ALLOWANCE)
    table.finish()
    if not table.is_sound or not stock.is_complete:
        return None
    try:
        return BoxDesign(
            name=name,
            count=count,
            height=height,
            width=width,
            depth=depth,
            board=board,
            through=through,
            baffle=baffle,
            back=back,
            battens=battens,
            braces=braces,
            covering=cover,
            grains=grains,
            measure_first=measure_first,
            allowance=allowance,
        )
    except InputError as error:
        record_at_keys(error, table)
        return None


def record_at_keys(error: InputError, table: Table) -> None:
    """Record faults of the calculator at the keys that their places end with."""
    for fault in error.faults:
        key = fault.where.rsplit(", ", 1)[-1]
        table.fault(fault.what, fault.remedy, key if table.has(key) else "")


def _read_closing(table: Table, key: str, stock: Stock, carcass: Board) -> Closing | None:
    """Return a baffle or back; a bare word says how it fits, a table says more."""
    if not table.has(key):
        return None
    if isinstance(table.values[key], str):
        return Closing(fit=table.choice(key, Fit))
    inner = table.table(key)
    closing = Closing(
        fit=inner.choice("fit", Fit, Fit.INSET),
        board=_read_board(inner, stock, carcass),
        set_back=inner.length("set_back", 0, may_be_zero=True),
        wrapped=inner.flag("wrapped") if inner.has("wrapped") else None,
        fitted=inner.choice("fitted", Fitted, Fitted.AFTER_COVERING),
        held_by=inner.text("held_by", ""),
    )
    inner.finish()
    return closing


def _read_board(table: Table, stock: Stock, carcass: Board) -> Board | None:
    """Return a board of its own, None where a panel is cut from the carcass's board."""
    has_material = table.has("material")
    if not table.has("thickness") and not has_material:
        return None
    if not has_material and carcass.material:
        # Only the thickness differs: the material is the carcass's, however many there are.
        table.values = {"material": carcass.material, **table.values}
    return _board(*read_material(table, stock))


def _read_battens(table: Table, baffle: Closing | None, back: Closing | None) -> Battens | None:
    """Return the battens; unless the table says otherwise, one frame for each inset panel."""
    inner = table.table("battens")
    if inner.is_absent:
        return None
    sides = sorted(inner.lengths("section"))
    is_square = len(sides) == 1
    if is_square:
        sides *= SECTION_SIDES
    if len(sides) != SECTION_SIDES and inner.is_sound:
        inner.fault(
            "the section of the battens is not two sizes",
            "Write thickness and width, such as section = [20, 30].",
            "section" if inner.has("section") else "",
        )
    front = inner.flag("front", default=_is_inset(baffle))
    rear = inner.flag("rear", default=_is_inset(back))
    corners = inner.choice("corners", Corners, Corners.ACROSS)
    inner.finish()
    if not inner.is_sound:
        return None
    return Battens(section=(sides[0], sides[1]), front=front, rear=rear, corners=corners)


def _is_inset(closing: Closing | None) -> bool:
    return closing is not None and closing.fit is Fit.INSET


def _read_braces(table: Table, stock: Stock, carcass: Board) -> Braces | None:
    inner = table.table("braces")
    if inner.is_absent:
        return None
    braces = Braces(
        depth=inner.length("depth"),
        count=inner.whole("count", 1, least=1, most=MOST_BRACES),
        board=_read_board(inner, stock, carcass),
    )
    inner.finish()
    return braces


def _read_own_covering(table: Table, usual: Covering | None) -> Covering | None:
    if table.has("covering") and isinstance(table.values["covering"], str):
        if table.values["covering"].strip().lower() != BARE:
            table.fault(
                "a covering is a table of its own, or 'none'",
                'Write covering = "none", or give its thickness under [cabinet.covering].',
                "covering",
            )
        return None
    return read_covering(table.table("covering"), usual)


def _read_grains(table: Table) -> Grains:
    inner = table.table("grain")
    usual = Grains()
    grains = Grains(
        sides=inner.choice("sides", Along, usual.sides),
        top_and_bottom=inner.choice("top_and_bottom", Along, usual.top_and_bottom),
        baffle=inner.choice("baffle", Along, usual.baffle),
        back=inner.choice("back", Along, usual.back),
    )
    inner.finish()
    return grains


def _board(material: str, thickness: Length) -> Board:
    return Board(material=material, thickness=thickness)
