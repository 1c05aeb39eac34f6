"""What goes into a cabinet, and how its corners are joined, as the job file describes them."""

from typing import Final

from nesting.cabinets.boards import Board
from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import Battens, Braces, Corners
from nesting.cabinets.hidden_parts import HiddenPart
from nesting.cabinets.joints import Joint, JointKind
from nesting.cabinets.shelving import Dividers, Grille, Shelves
from nesting.errors import InputError
from nesting.lengths import Length, Unit, inch, mm
from nesting.reading.closing_tables import read_own_board
from nesting.reading.stock import Stock
from nesting.reading.tables import Table

MOST_BRACES: Final = 50
MOST_FINGERS: Final = 999
MOST_CLOTH: Final = mm(20)
MOST_FIT: Final = mm(1)
SECTION_SIDES: Final = 2


def read_joint(table: Table) -> Joint:
    """Return the joint of a carcass; a bare word names its kind, a table says more."""
    if not table.has("joint"):
        return Joint()
    if isinstance(table.values["joint"], str):
        return Joint(kind=table.choice("joint", JointKind))
    inner = table.table("joint")
    kind = inner.choice("kind", JointKind, JointKind.BUTT)
    depth, tongue, finger_width = (
        inner.length(key) if inner.has(key) else None for key in ("depth", "tongue", "finger_width")
    )
    fingers = inner.whole("fingers", most=MOST_FINGERS) if inner.has("fingers") else None
    usual = inch("0.004") if table.unit is Unit.INCH else mm("0.1")
    fit = inner.length("fit", usual, may_be_zero=True, most=MOST_FIT)
    inner.finish()
    try:
        return Joint(
            kind=kind,
            depth=depth,
            tongue=tongue,
            fingers=fingers,
            finger_width=finger_width,
            fit=fit,
        )
    except InputError as error:
        _record(error, inner)
        return Joint()


def read_battens(table: Table, baffle: Closing | None, back: Closing | None) -> Battens | None:
    """Return the battens; unless the table says otherwise, one frame for each inset panel."""
    inner = table.table("battens")
    if inner.is_absent:
        return None
    section = _read_section(inner, "battens", "[20, 30]")
    front = inner.flag("front", default=_is_inset(baffle))
    rear = inner.flag("rear", default=_is_inset(back))
    corners = inner.choice("corners", Corners, Corners.ACROSS)
    inner.finish()
    are_both_said = baffle is not None and back is not None
    if inner.is_sound and are_both_said and not (front or rear):
        inner.fault(
            "a frame stands behind an inset baffle or back, and there is none",
            "Make one of them inset, or leave the battens out.",
        )
    if not inner.is_sound:
        return None
    return Battens(section=section, front=front, rear=rear, corners=corners)


def _read_section(table: Table, of: str, example: str) -> tuple[Length, Length]:
    sides = sorted(table.lengths("section"))
    if len(sides) == 1:
        sides *= SECTION_SIDES
    if len(sides) != SECTION_SIDES:
        if table.is_sound:
            table.fault(
                f"the section of the {of} is not two sizes",
                f"Write thickness and width, such as section = {example}.",
                "section" if table.has("section") else "",
            )
        return (mm(10), mm(10))
    return (sides[0], sides[1])


def _is_inset(closing: Closing | None) -> bool:
    return closing is not None and closing.fit is Fit.INSET


def read_braces(table: Table, stock: Stock, carcass: Board) -> Braces | None:
    """Return the braces, None where there are none."""
    inner = table.table("braces")
    if inner.is_absent:
        return None
    braces = Braces(
        depth=inner.length("depth"),
        count=inner.whole("count", 1, least=1, most=MOST_BRACES),
        board=read_own_board(inner, stock, carcass),
    )
    inner.finish()
    return braces


def read_shelves(table: Table, stock: Stock, carcass: Board) -> Shelves | None:
    """Return the shelves, None where there are none; a bare number says how many."""
    inner = _counted(table, "shelves")
    if inner is None:
        return None
    clear = inner.lengths("clear")
    count = inner.whole("count", len(clear) or 1, least=1, most=MOST_BRACES)
    board = read_own_board(inner, stock, carcass)
    set_back, groove = (inner.length(key, 0, may_be_zero=True) for key in ("set_back", "groove"))
    inner.finish()
    try:
        return Shelves(count=count, clear=clear, board=board, set_back=set_back, groove=groove)
    except InputError as error:
        _record(error, inner)
        return None


def read_dividers(table: Table, stock: Stock, carcass: Board) -> Dividers | None:
    """Return the dividers, None where there are none; a bare number says how many."""
    inner = _counted(table, "dividers")
    if inner is None:
        return None
    dividers = Dividers(
        count=inner.whole("count", 1, least=1, most=MOST_BRACES),
        board=read_own_board(inner, stock, carcass),
        set_back=inner.length("set_back", 0, may_be_zero=True),
        groove=inner.length("groove", 0, may_be_zero=True),
    )
    inner.finish()
    return dividers


def _counted(table: Table, key: str) -> Table | None:
    """Return the table under a key, made up where the file has a bare number, None without one."""
    value = table.values.get(key)
    if isinstance(value, int) and not isinstance(value, bool):
        count = table.whole(key, least=1, most=MOST_BRACES)
        return Table(
            source=table.source,
            path=(*table.path, key),
            label=f"{table.label}, {key}" if table.label else f"[{key}]",
            values={"count": count},
            unit=table.unit,
            faults=table.faults,
            parent=table,
        )
    inner = table.table(key)
    return None if inner.is_absent else inner


def read_grille(table: Table) -> Grille | None:
    """Return the grille, None where there is none."""
    inner = table.table("grille")
    if inner.is_absent:
        return None
    section = _read_section(inner, "grille", "[12, 20]")
    usual = inch("1/32") if table.unit is Unit.INCH else mm(1)
    cloth = inner.length("cloth", usual, may_be_zero=True, most=MOST_CLOTH)
    piping = inner.length("piping", 0, may_be_zero=True, most=MOST_CLOTH)
    inner.finish()
    return Grille(section=section, cloth=cloth, piping=piping) if inner.is_sound else None


def read_answers(table: Table) -> tuple[tuple[str, str], ...]:
    """Return what is said about parts that are easily forgotten, by name."""
    inner = table.table("answers")
    answers = tuple(
        (part.value, inner.text(part.value)) for part in HiddenPart if inner.has(part.value)
    )
    inner.finish()
    return answers


def _record(error: InputError, table: Table) -> None:
    for fault in error.faults:
        table.fault(fault.what, fault.remedy)
