"""One table [[cabinet]]: what the builder says about a cabinet."""

from dataclasses import dataclass
from decimal import Decimal
from enum import Enum
from typing import Final

from nesting.cabinets.boards import Board
from nesting.cabinets.closing_design import Closing, Covering, Fit
from nesting.cabinets.design import Along, BoxDesign, GrainRound, Grains, Through
from nesting.cabinets.families import Design
from nesting.cabinets.splay import find_compound_mitre
from nesting.cabinets.wedge_design import WedgeDesign
from nesting.errors import InputError
from nesting.lengths import Length, Unit, inch, mm, round_to
from nesting.reading.closing_tables import read_closing
from nesting.reading.covering_table import BARE, read_covering
from nesting.reading.filling_tables import (
    read_answers,
    read_battens,
    read_braces,
    read_dividers,
    read_grille,
    read_joint,
    read_shelves,
)
from nesting.reading.fitting_tables import read_fittings
from nesting.reading.stock import Stock, read_material
from nesting.reading.tables import Table

MOST_CABINETS: Final = 500
MOST_ALLOWANCE: Final = mm(50)
TOP_OF_DEPTH: Final = 3
FRONT_OF_HEIGHT: Final = 6
SPLAYED: Final = {"splayed", "tapered", "hopper", "pyramid"}


class Family(Enum):
    """Kinds of cabinet that can be worked out.

    A case is a box that is open at the front unless it is said otherwise: a cupboard or a rack.
    """

    BOX = "box"
    CASE = "case"
    WEDGE = "wedge"


@dataclass(frozen=True, slots=True, kw_only=True)
class _Common:
    """What every family has."""

    name: str
    count: int
    height: Length
    width: Length
    depth: Length
    board: Board


def read_cabinet(table: Table, stock: Stock, covering: Covering | None) -> Design | None:
    """Return the design of a table [[cabinet]], or None after recording its faults.

    Args:
        table: The table.
        stock: The sheets of the job.
        covering: The covering of the job; None for none.
    """
    name = table.text("name")
    if str(table.values.get("family", "")).strip().lower() in SPLAYED:
        _refuse_splayed(table)
        return None
    family = table.choice("family", Family, Family.BOX)
    count = table.whole("count", 1, least=1, most=MOST_CABINETS)
    height, width, depth = (table.length(key) for key in ("height", "width", "depth"))
    material, thickness = read_material(table, stock)
    common = _Common(
        name=name,
        count=count,
        height=height,
        width=width,
        depth=depth,
        board=Board(material=material, thickness=thickness),
    )
    try:
        if family is Family.WEDGE:
            design: Design | None = _read_wedge(table, common, stock, covering)
        else:
            design = _read_box(table, common, stock, covering, is_case=family is Family.CASE)
    except InputError as error:
        record_at_keys(error, table)
        return None
    return design


def _refuse_splayed(table: Table) -> None:
    """Record that a box with four sloping sides is not worked out, with the angles it needs."""
    splay = table.number("splay", Decimal(5), most=Decimal(60))
    tilt, gauge = find_compound_mitre(float(splay))
    table.fault(
        "a box whose four sides slope is not worked out: its corners are compound mitres",
        f"List its sides and bottom as [[part]]s, each as large as its outside face, and cut the "
        f"corners by hand: for sides that lean {splay:f}° out of upright (splay = ...) tilt the "
        f"blade {tilt:.1f}° and set the mitre gauge to {gauge:.1f}°. Try it on four scraps. With "
        'one sloping side it is a "wedge".',
        "family",
    )


def _read_box(
    table: Table, common: _Common, stock: Stock, covering: Covering | None, *, is_case: bool
) -> BoxDesign | None:
    through = table.choice("through", Through, Through.SIDES)
    joint = read_joint(table)
    usual = Closing(fit=Fit.NONE) if is_case else None
    baffle = read_closing(table, "baffle", stock, common.board, usual)
    back = read_closing(table, "back", stock, common.board)
    battens = read_battens(table, baffle, back)
    braces = read_braces(table, stock, common.board)
    shelves = read_shelves(table, stock, common.board)
    dividers = read_dividers(table, stock, common.board)
    grille = read_grille(table)
    cover = _read_own_covering(table, covering)
    grains = _read_grains(table)
    grain_round = _read_grain_round(table)
    joint_first = table.flag("joint_first")
    measure_first, allowance, bevel_allowance = _read_allowances(table)
    flush = table.length("flush", 0, may_be_zero=True, most=MOST_ALLOWANCE)
    answers = read_answers(table)
    fittings = read_fittings(table)
    table.finish()
    if not table.is_sound or not stock.is_complete:
        return None
    return BoxDesign(
        name=common.name,
        count=common.count,
        height=common.height,
        width=common.width,
        depth=common.depth,
        board=common.board,
        through=through,
        joint=joint,
        flush=flush,
        bevel_allowance=bevel_allowance,
        baffle=baffle,
        back=back,
        battens=battens,
        braces=braces,
        shelves=shelves,
        dividers=dividers,
        grille=grille,
        covering=cover,
        grains=grains,
        measure_first=measure_first,
        allowance=allowance,
        grain_round=grain_round,
        joint_first=joint_first,
        answers=answers,
        fittings=fittings,
    )


def _read_wedge(
    table: Table, common: _Common, stock: Stock, covering: Covering | None
) -> WedgeDesign | None:
    step = inch("1/4") if table.unit is Unit.INCH else mm(5)
    usual_top = round_to(common.depth // TOP_OF_DEPTH, step)
    usual_front = round_to(common.height // FRONT_OF_HEIGHT, step)
    top = table.length("top", usual_top, may_be_zero=True)
    front = table.length("front", usual_front, may_be_zero=True)
    joint = read_joint(table)
    baffle = read_closing(table, "baffle", stock, common.board, Closing(fit=Fit.INSET))
    back = read_closing(table, "back", stock, common.board)
    battens = read_battens(table, baffle, back)
    braces = read_braces(table, stock, common.board)
    cover = _read_own_covering(table, covering)
    measure_first, allowance, bevel_allowance = _read_allowances(table)
    answers = read_answers(table)
    fittings = read_fittings(table)
    table.finish()
    if not table.is_sound or not stock.is_complete:
        return None
    return WedgeDesign(
        name=common.name,
        count=common.count,
        height=common.height,
        width=common.width,
        depth=common.depth,
        top=top,
        front=front,
        board=common.board,
        joint=joint,
        baffle=baffle,
        back=back,
        battens=battens,
        braces=braces,
        covering=cover,
        measure_first=measure_first,
        allowance=allowance,
        bevel_allowance=bevel_allowance,
        answers=answers,
        fittings=fittings,
    )


def _read_allowances(table: Table) -> tuple[bool, Length, Length]:
    """Return whether inner parts wait for a measurement, and what blanks have beyond their size."""
    measure_first = table.flag("measure_first", default=True)
    usual = inch("1/8") if table.unit is Unit.INCH else mm(3)
    allowance, bevel_allowance = (
        table.length(key, usual, may_be_zero=True, most=MOST_ALLOWANCE)
        for key in ("allowance", "bevel_allowance")
    )
    return measure_first, allowance, bevel_allowance


def record_at_keys(error: InputError, table: Table) -> None:
    """Record faults of the calculator at the keys that their places end with."""
    for fault in error.faults:
        key = fault.where.rsplit(", ", 1)[-1]
        table.fault(fault.what, fault.remedy, key if table.has(key) else "")


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


def _read_grain_round(table: Table) -> GrainRound:
    """Return round which panels the grain runs on; true and false stand for all and none."""
    if table.has("grain_round") and isinstance(table.values["grain_round"], bool):
        return GrainRound.ALL if table.flag("grain_round") else GrainRound.NO
    return table.choice("grain_round", GrainRound, GrainRound.NO)


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
