"""Baffle and back of a cabinet, as the job file describes them."""

from typing import Final

from nesting.cabinets.boards import Board
from nesting.cabinets.closing_design import Closing, Fit, Fitted, Margins
from nesting.lengths import Length, Unit, inch, mm
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
        fit = table.choice(key, Fit)
        set_back, play = _usual_seat(fit, table.unit)
        return Closing(fit=fit, set_back=set_back, play=play)
    inner = table.table(key)
    fit = inner.choice("fit", Fit, Fit.INSET)
    usual_set_back, usual_play = _usual_seat(fit, table.unit)
    closing = Closing(
        fit=fit,
        board=read_own_board(inner, stock, carcass),
        set_back=inner.length("set_back", usual_set_back, may_be_zero=True),
        depth=inner.length("depth") if inner.has("depth") else None,
        play=inner.length("play", usual_play, may_be_zero=True, most=MOST_MARGIN),
        wrapped=inner.flag("wrapped") if inner.has("wrapped") else None,
        fitted=inner.choice("fitted", Fitted, Fitted.AFTER_COVERING),
        held_by=inner.text("held_by", ""),
        extra=_read_margins(inner),
        gap=inner.length("gap", 0, may_be_zero=True),
        upper=inner.length("upper") if inner.has("upper") else None,
    )
    inner.finish()
    return closing


def _usual_seat(fit: Fit, unit: Unit) -> tuple[Length, Length]:
    """Return set-back and play where nothing is said of them: a groove needs both.

    Judgement, no source.
    """
    if fit is not Fit.GROOVE:
        return (0, 0)
    return (inch("3/8"), inch("1/64")) if unit is Unit.INCH else (mm(10), mm("0.5"))


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
