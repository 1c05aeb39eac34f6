"""Sawing one virtual sheet, row by row, as a person at the saw does."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from shapely import Polygon, box, union_all

from nesting.errors import Fault
from plans.rehearsal.pieces import WASTE, Piece, saw_piece
from plans.rehearsal.printed import Nanometres, PrintedUnit
from plans.rehearsal.records import PlanFile, Row, Sheet
from plans.rehearsal.row_checks import DO_NOT_CUT, check_row


@dataclass(frozen=True, slots=True, kw_only=True)
class Sawn:
    """What became of one sheet.

    Attributes:
        pieces: What lies on the floor in the end.
        cut_up: The pieces that were cut up on the way, in order.
        dust: Wood turned to dust, by cut.
        faults: What went wrong at the saw.
    """

    pieces: tuple[Piece, ...]
    cut_up: tuple[Piece, ...]
    dust: tuple[Polygon, ...]
    faults: tuple[Fault, ...]


MOST_ADDED = 20
"""Each yard cut of a sheet may be off; what they add to is no more than so many times one."""


class StoppedError(Exception):
    """The next row cannot be followed at all."""


def saw_sheet(sheet: Sheet, plan: PlanFile, yard_off: Nanometres = 0) -> Sawn:
    """Saw a virtual sheet by the rows of its page, each only with what lies there by then.

    Args:
        sheet: The sheet.
        plan: The plan that it is of.
        yard_off: By how much every cut of the yard lies too far from the edge measured from.
            Where this is not 0, waste may come out a little larger or not at all.
    """
    whole = _whole_sheet(sheet)
    lying = {whole.code: whole}
    waste: list[Piece] = []
    cut_up: list[Piece] = []
    dust: list[Polygon] = []
    faults: list[Fault] = []
    for row in sheet.rows:
        where = f"sheet {sheet.number}, cut {row.number}"
        try:
            piece = _pick_up(lying, row)
            faults.extend(check_row(sheet, row, piece, plan))
            made = _cut(piece, row, plan.unit, yard_off)
        except StoppedError as stopped:
            remedy = f"The rest of this sheet was not sawn. {DO_NOT_CUT}"
            faults.append(Fault(where=where, what=str(stopped), remedy=remedy))
            break
        cut_up.append(piece)
        dust.append(piece.wood.difference(union_all([one.wood for one in made])))
        for one in made:
            if one.code == WASTE:
                waste.append(one)
                continue
            if one.code in lying or one.code in {old.code for old in cut_up}:
                what = f"{one.code} is the code of another piece already"
                faults.append(Fault(where=where, what=what, remedy=DO_NOT_CUT))
            lying[one.code] = one
    return Sawn(
        pieces=(*lying.values(), *waste),
        cut_up=tuple(cut_up),
        dust=tuple(dust),
        faults=tuple(faults),
    )


def _whole_sheet(sheet: Sheet) -> Piece:
    """Return the sheet before the first cut; uncut it is the part, the offcut or waste itself."""
    codes = [*(part.code for part in sheet.parts), *(offcut.code for offcut in sheet.offcuts)]
    uncut = codes[0] if codes else WASTE
    code = f"S{sheet.number}" if sheet.rows else uncut
    return Piece(
        code=code,
        wood=box(0, 0, *sheet.printed_size),
        planned=sheet.whole,
        raw=frozenset(edge for edge, trim in sheet.trim if trim > 0),
    )


def _pick_up(lying: dict[str, Piece], row: Row) -> Piece:
    """Return the piece to hold, picked up from what lies there."""
    if row.hold not in lying:
        raise StoppedError(f"there is no piece {row.hold} to hold")
    if row.edge.is_across_x == row.is_rip:
        raise StoppedError("it is measured from an edge that it does not run along")
    return lying.pop(row.hold)


def _cut(piece: Piece, row: Row, unit: PrintedUnit, yard_off: Nanometres) -> Iterable[Piece]:
    """Return the pieces that a cut makes: the one kept, then the one that falls free, if any."""
    extent = piece.extent_from(row.edge)
    if not 0 <= row.keep.size <= extent + 2 * unit.half_step:
        raise StoppedError(
            f"its fresh edge at {unit.show(row.keep.size)} is off {piece.code}, which reaches "
            f"to {unit.show(extent)}"
        )
    near, far = saw_piece(piece, row, 0 if row.is_at_home else yard_off)
    kept, free = (far, near) if row.keep.is_trim else (near, far)
    if kept.wood.is_empty:
        raise StoppedError(f"nothing is left of {piece.code}")
    made = [replace(kept, code=row.keep_code)]
    thin = 2 * unit.half_step + MOST_ADDED * abs(yard_off)
    is_thin = max(free.extent_from(row.edge), free.planned_from(row.edge)) <= thin
    if row.free_code and not free.wood.is_empty:
        made.append(replace(free, code=row.free_code))
    elif row.free_code and not (is_thin and row.free_code == WASTE):
        raise StoppedError(f"nothing falls free that could be {row.free_code}")
    elif not row.free_code and not is_thin:
        raise StoppedError("what falls free has no name")
    return made
