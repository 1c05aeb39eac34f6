"""What must be true of a row of the cut table before the blade turns."""

from collections.abc import Iterator

from nesting.errors import Fault
from plans.rehearsal.pieces import Piece, band_of, planned_band
from plans.rehearsal.printed import PrintedUnit
from plans.rehearsal.records import WRITTEN, PlanFile, Row, Sheet, Yard

DO_NOT_CUT = "Do not cut from this plan; make it again with 'setout plan'."


def check_row(sheet: Sheet, row: Row, piece: Piece, plan: PlanFile) -> Iterator[Fault]:
    """Yield what is wrong with a row, given the piece that it is to cut."""
    where = f"sheet {sheet.number}, cut {row.number}"
    unit = plan.unit
    for what in (
        *_held(row, piece, unit),
        *(
            _measured(sheet, row, piece, plan)
            if row.is_at_home
            else _made_at_yard(sheet, row, plan.yard, unit)
        ),
        *_guided(row, piece, plan),
        *_kept(row, piece, unit),
    ):
        yield Fault(where=where, what=what, remedy=DO_NOT_CUT)


def _held(row: Row, piece: Piece, unit: PrintedUnit) -> Iterator[str]:
    """Yield where the printed size of the held piece is not that of the piece."""
    planned = (piece.planned.length, piece.planned.width)
    for printed, real, axis in zip(row.hold_size, planned, ("x", "y"), strict=True):
        if abs(printed - real) > unit.half_step + WRITTEN:
            yield (
                f"{row.hold} is printed {unit.show(printed)} along {axis}, but is {unit.show(real)}"
            )


def _made_at_yard(sheet: Sheet, row: Row, yard: Yard | None, unit: PrintedUnit) -> Iterator[str]:
    """Yield where a cut cannot be the yard's.

    The yard may measure from a raw edge, as its edges are all cut again at home.
    """
    if yard is None:
        yield "it is left to the yard, but the plan has none"
        return
    if abs(row.kerf - yard.kerf) > WRITTEN:
        yield f"its kerf is {unit.show(row.kerf)}, but the yard's is {unit.show(yard.kerf)}"
    if row.keep.is_trim:
        yield "the yard is asked for a trim"
    if any(before.is_at_home for before in sheet.rows[: row.number - 1]):
        yield "it is left to the yard, but comes after a cut at home"


def _measured(sheet: Sheet, row: Row, piece: Piece, plan: PlanFile) -> Iterator[str]:
    """Yield where the edge measured from cannot be trusted."""
    unit = plan.unit
    if not row.keep.is_trim:
        if row.edge in piece.raw:
            yield f"it is measured from the {row.edge.value}, which is still raw"
        return
    if row.edge not in piece.raw:
        yield f"it trims the {row.edge.value}, which is straight already"
        return
    if row.edge in piece.from_yard:
        rough = plan.yard.rough if plan.yard else 0
        if row.keep.size < rough - unit.half_step - WRITTEN:
            yield (
                f"it trims {unit.show(row.keep.size)} of the yard's edge, which may be off by "
                f"{unit.show(rough)}"
            )
        return
    trim = dict(sheet.trim)[row.edge]
    if abs(row.keep.size - trim) > unit.half_step + WRITTEN:
        yield f"it trims {unit.show(row.keep.size)}, but the sheet's trim is {unit.show(trim)}"


def _guided(row: Row, piece: Piece, plan: PlanFile) -> Iterator[str]:
    """Yield where a guide's place leads the blade elsewhere, or lies off the piece unsaid."""
    saw, unit = plan.saw, plan.unit
    if row.is_at_home and abs(row.kerf - saw.kerf) > WRITTEN:
        yield f"its kerf is {unit.show(row.kerf)}, but the saw's is {unit.show(saw.kerf)}"
    if row.guides is None:
        return
    start, end = band_of(row)
    left, right = row.guides
    for side, printed, needed in (
        ("left", left, start - saw.base_left),
        ("right", right, end + saw.base_right),
    ):
        # The keep size and the guide figure are each rounded, or the mark and the block.
        rounded = 2 if plan.blocks is None else 3
        if abs(printed - needed) > rounded * unit.half_step + WRITTEN:
            yield (
                f"the guide at {unit.show(printed)} {side} of the blade does not lead to its "
                f"keep size, {unit.show(needed)} does"
            )
    if left < 0 and row.unusable not in ("left", "both"):
        yield "the guide left of the blade would lie off the piece, and is not struck out"
    if right > piece.extent_from(row.edge) and row.unusable not in ("right", "both"):
        yield "the guide right of the blade would lie off the piece, and is not struck out"


def _kept(row: Row, piece: Piece, unit: PrintedUnit) -> Iterator[str]:
    """Yield where the band that is drawn and the keep size that is printed are not one cut."""
    band, planned = row.band, piece.planned
    if row.is_rip:
        ends, sides = (band.x, band.x_end), (planned.x, planned.x_end)
    else:
        ends, sides = (band.y, band.y_end), (planned.y, planned.y_end)
    start, end = planned_band(piece, row)
    extent = piece.planned_from(row.edge)
    if any(abs(mine - its) > WRITTEN for mine, its in zip(ends, sides, strict=True)):
        yield f"its band does not run from edge to edge of {piece.code}"
    if start < -WRITTEN or end > extent + WRITTEN:
        yield f"its band leaves {piece.code}"
    runs_off = min(abs(start), abs(end - extent)) <= WRITTEN
    removed = end - start
    if removed > row.kerf + WRITTEN or (removed < row.kerf - WRITTEN and not runs_off):
        yield f"its band is {unit.show(removed)} wide, but the kerf is {unit.show(row.kerf)}"
    fresh = end if row.keep.is_trim else start
    if abs(fresh - row.keep.size) > unit.half_step + WRITTEN:
        yield f"it is printed at {unit.show(row.keep.size)}, but drawn at {unit.show(fresh)}"
