"""The tables [[cabinet]]: from a table to a design, from designs to what is cut."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum
from typing import Final

from nesting.cabinets.boards import Board, measure_boards
from nesting.cabinets.build import CabinetBuild
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
from nesting.cabinets.expand import expand
from nesting.cabinets.letters import name_cabinets
from nesting.errors import InputError
from nesting.job import Assumption
from nesting.lengths import Length, Unit, inch, mm
from nesting.reading.covering_table import BARE, read_covering
from nesting.reading.stock import Stock, read_material
from nesting.reading.tables import Table
from nesting.reading.values import with_unit

MOST_CABINETS: Final = 500
MOST_BRACES: Final = 50
MOST_ALLOWANCE: Final = mm(50)
SECTION_SIDES: Final = 2


class Family(Enum):
    """Kinds of cabinet that can be worked out."""

    BOX = "box"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadCabinet:
    """A design and the table that it was read from.

    Attributes:
        design: The design.
        table: Its table, for faults that show only when the sums are made.
    """

    design: Design
    table: Table


def read_cabinets(
    tables: tuple[Table, ...], stock: Stock, covering: Covering | None
) -> list[ReadCabinet]:
    """Return the designs that could be read, after recording the faults of the others.

    Args:
        tables: The tables [[cabinet]].
        stock: The sheets of the job.
        covering: The covering of the job; None for none.
    """
    first: dict[str, Table] = {}
    found = []
    for table in tables:
        design = _read_box(table, stock, covering)
        name = table.values.get("name")
        if isinstance(name, str) and name.strip():
            earlier = first.setdefault(name.strip(), table)
            if earlier is not table:
                table.fault(
                    f"the name {name.strip()!r} is taken already ({earlier.place})",
                    "Give every design its own name; more of the same is a higher count.",
                    "name",
                )
        if design is not None and table.is_sound:
            found.append(ReadCabinet(design=design, table=table))
    return found


def expand_cabinets(
    cabinets: list[ReadCabinet], stock: Stock, *, step: Length, unit: Unit
) -> tuple[CabinetBuild, ...]:
    """Return what is cut for the cabinets; letters run on from design to design.

    Where a cabinet cannot be built as designed, the fault is recorded at its table.
    """
    measured = measure_boards(stock.sheets)
    builds: list[CabinetBuild] = []
    already = 0
    for read in cabinets:
        letters = name_cabinets(read.design.count, already=already)
        already += read.design.count
        try:
            builds.append(
                expand(read.design, letters=letters, measured=measured, step=step, unit=unit)
            )
        except InputError as error:
            _record(error, read.table)
    return tuple(builds)


def assume_cabinet(read: ReadCabinet) -> Iterator[Assumption]:
    """Yield what is taken for granted about the cabinets of one design."""
    design, table = read.design, read.table
    yield Assumption(
        name=f"panels of {design.name} that run through",
        value=design.through.value,
        is_default=not table.has("through"),
        check="Look at the corners of the drawing: which end grain is to be seen?",
    )
    yield Assumption(
        name=f"outside of {design.name}",
        value="bare wood, without covering, feet and handles",
        is_default=True,
        check="Add them to see whether the cabinet goes through the door and into the car.",
    )
    if design.measure_first:
        yield Assumption(
            name=f"what goes into {design.name} is cut larger at first by",
            value=with_unit(design.allowance, table.unit),
            is_default=not table.has("allowance"),
            check="Trim it to what the standing carcass measures.",
        )


def _read_box(table: Table, stock: Stock, covering: Covering | None) -> Design | None:
    """Return the design of a table, or None after recording its faults."""
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
        _record(error, table)
        return None


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


def _record(error: InputError, table: Table) -> None:
    """Record faults of the calculator at the keys that their place ends with."""
    for fault in error.faults:
        key = fault.where.rsplit(", ", 1)[-1]
        table.fault(fault.what, fault.remedy, key if table.has(key) else "")
