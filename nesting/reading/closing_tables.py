"""Baffle and back of a cabinet, as the job file describes them."""

from typing import Final

from nesting.cabinets.boards import Board
from nesting.cabinets.design import Closing, Fit, Fitted, Margins
from nesting.lengths import mm
from nesting.reading.stock import Stock, read_material
from nesting.reading.tables import Table

MOST_MARGIN: Final = mm(50)


def read_closing(
    table: Table, key: str, stock: Stock, carcass: Board, usual: Closing | None = None
) -> Closing | None:
    """Return a baffle or back; a bare word says how it fits, a table says more.

    Args:
        table: The table of the cabinet.
        key: "baffle" or "back".
        stock: The sheets of the job.
        carcass: What the carcass is cut from.
        usual: What it is where nothing is said; None to ask.
    """
    if not table.has(key):
        return usual
    if isinstance(table.values[key], str):
        return Closing(fit=table.choice(key, Fit))
    inner = table.table(key)
    closing = Closing(
        fit=inner.choice("fit", Fit, Fit.INSET),
        board=read_own_board(inner, stock, carcass),
        set_back=inner.length("set_back", 0, may_be_zero=True),
        wrapped=inner.flag("wrapped") if inner.has("wrapped") else None,
        fitted=inner.choice("fitted", Fitted, Fitted.AFTER_COVERING),
        held_by=inner.text("held_by", ""),
        extra=_read_margins(inner),
        gap=inner.length("gap", 0, may_be_zero=True),
        upper=inner.length("upper") if inner.has("upper") else None,
    )
    inner.finish()
    return closing


def _read_margins(table: Table) -> Margins:
    inner = table.table("extra")
    left, right, bottom, top = (
        inner.length(key, 0, may_be_zero=True, most=MOST_MARGIN)
        for key in ("left", "right", "bottom", "top")
    )
    inner.finish()
    return Margins(left=left, right=right, bottom=bottom, top=top)


def read_own_board(table: Table, stock: Stock, carcass: Board) -> Board | None:
    """Return a board of its own, None where a panel is cut from the carcass's board."""
    has_material = table.has("material")
    if not table.has("thickness") and not has_material:
        return None
    if not has_material and carcass.material:
        # Only the thickness differs: the material is the carcass's, however many there are.
        table.values = {"material": carcass.material, **table.values}
    material, thickness = read_material(table, stock)
    return Board(material=material, thickness=thickness)
