"""The yard's cuts as far off as they may be: every part must still come out at home."""

from collections.abc import Iterator

from nesting.errors import Fault
from plans.rehearsal.leavings import printed_deviation
from plans.rehearsal.printed import Nanometres
from plans.rehearsal.records import PlanFile, Sheet
from plans.rehearsal.row_checks import DO_NOT_CUT
from plans.rehearsal.sawing import saw_sheet


def check_extremes(sheet: Sheet, plan: PlanFile) -> Iterator[Fault]:
    """Yield what goes wrong where the yard cuts every piece too small, and every one too large.

    Between these two lies all that its cuts may do: a piece that is measured is off by one cut,
    the piece that is left by all cuts before it.
    """
    if plan.yard is None or all(row.is_at_home for row in sheet.rows):
        return
    for off, words in ((-plan.yard.rough, "too small"), (plan.yard.rough, "too large")):
        for where, what in _saw(sheet, plan, off):
            yield Fault(
                where=where,
                what=f"with the yard's pieces {plan.unit.show(abs(off))} {words}, {what}",
                remedy=DO_NOT_CUT,
            )


def _saw(sheet: Sheet, plan: PlanFile, off: Nanometres) -> Iterator[tuple[str, str]]:
    """Yield what goes wrong on one sheet with the yard's cuts off by so much."""
    sawn = saw_sheet(sheet, plan, yard_off=off)
    if len(sawn.cut_up) < len(sheet.rows):
        yield sawn.faults[-1].where, sawn.faults[-1].what
        return
    pieces = {piece.code: piece for piece in sawn.pieces}
    for part in sheet.parts:
        piece = pieces.get(part.code)
        where = f"sheet {sheet.number}, {part.code}"
        if piece is None:
            yield where, "no cut makes it"
        elif printed_deviation(part, piece) > plan.unit.part_tolerance:
            yield where, "it does not come out in its printed size"
