"""Strip sums: the printed figures of a row of cuts must be those that the cuts make."""

from collections.abc import Iterator

from nesting.errors import Fault
from plans.rehearsal.pieces import Piece, planned_band
from plans.rehearsal.printed import Nanometres, PrintedUnit, Sum
from plans.rehearsal.records import WRITTEN, Row, Sheet
from plans.rehearsal.row_checks import DO_NOT_CUT
from plans.rehearsal.sawing import Sawn


def check_sums(sheet: Sheet, sawn: Sawn, unit: PrintedUnit) -> Iterator[Fault]:
    """Yield where a printed sum is not what its piece is cut into.

    Every figure is held to its own cut, not only their total: rounded figures may add up to a
    little more or less than the piece, and two mistakes may cancel out.
    """
    held = {piece.code: (piece, row) for piece, row in zip(sawn.cut_up, sheet.rows, strict=True)}
    for code, printed in sheet.sums:
        where = f"sheet {sheet.number}, sum of {code}"
        if code not in held:
            yield _fault(where, "no such piece is cut")
            continue
        piece, row = held[code]
        whole = piece.planned_from(row.edge)
        if not _agree(printed.total, whole, unit):
            yield _fault(
                where, f"it is of {unit.show(printed.total)}, the piece is {unit.show(whole)}"
            )
        if not _match(printed, list(_makings(piece, row, held)), unit):
            yield _fault(where, "its figures are not those that its cuts make")


def _makings(piece: Piece, row: Row, held: dict[str, tuple[Piece, Row]]) -> Iterator[Nanometres]:
    """Yield what a piece is cut into along one direction: trim, keep sizes, kerfs, what is left.

    The row goes on with what falls free, after a trim with what is left, for as long as that is
    cut in the same direction by the same saw.
    """
    left = piece.planned_from(row.edge)
    following: tuple[Piece, Row] | None = (piece, row)
    done = 0
    # A piece is only cut after the cut that makes it; codes that stand twice may say otherwise.
    while (
        following
        and (following[1].is_rip, following[1].is_at_home) == (row.is_rip, row.is_at_home)
        and following[1].number > done
    ):
        piece, cut = following
        done = cut.number
        start, end = planned_band(piece, cut)
        if cut.keep.is_trim:
            yield end
        else:
            yield start
            yield end - start
        left -= end
        following = held.get(cut.keep_code if cut.keep.is_trim else cut.free_code)
    yield left


def _match(printed: Sum, makings: list[Nanometres], unit: PrintedUnit) -> bool:
    """Return whether the figures are the makings in order; one that rounds to 0 may be left out."""
    figures = [term.size for term in printed.terms if term.size != 0]
    for making in makings:
        if figures and _agree(figures[0], making, unit):
            figures.pop(0)
        elif making > unit.half_step + WRITTEN:
            return False
    return not figures


def _agree(printed: Nanometres, real: Nanometres, unit: PrintedUnit) -> bool:
    return abs(printed - real) <= unit.half_step + WRITTEN


def _fault(where: str, what: str) -> Fault:
    return Fault(where=where, what=what, remedy=DO_NOT_CUT)
