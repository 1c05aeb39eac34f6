"""From the cuts that the kernels list to the layout: whole nanometres, kerf and trims put in."""

from dataclasses import dataclass
from typing import TypeAlias

from nesting.job import Job
from nesting.layout import Cut, Direction, Node, SheetLayout
from nesting.lengths import Length
from nesting.search.problem import Problem
from nesting.search.realise import Cutter, Piece, split_x, split_y, trim_home_edges

REST = -1
FIRST_PART = -2


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class PlannedCut:
    """One cut of a sheet, on the grid.

    Attributes:
        is_rip: Whether it runs along x.
        keep: Extent of the first piece across the cut, grid steps with kerf.
        first: What becomes of the first piece: the number of its next cut, REST for what is left
            over, or FIRST_PART - code for a part, its code as in a problem's trees.
        second: What becomes of the piece beyond, the same way; REST where there is none.
    """

    is_rip: bool
    keep: int
    first: int
    second: int


PlannedSheet: TypeAlias = tuple[int, tuple[PlannedCut, ...], int]
"""The kind of a sheet, its cuts, every one after the one that makes its piece, and what becomes of
the whole sheet, as with the pieces of a cut."""

_Place: TypeAlias = tuple[int, int]
"""A piece: the number of the cut that makes it, and 0 for its first, 1 for its second piece."""
_WHOLE = (-1, 0)


def cut_sheets(
    job: Job, problem: Problem, sheets: tuple[PlannedSheet, ...]
) -> tuple[SheetLayout, ...]:
    """Return the sheets kind by kind, the fullest first and equal ones together.

    Copies of a part are numbered in the order in which they come off the sheets.
    """
    cutter = Cutter(job, problem)
    ordered = sorted(sheets, key=lambda sheet: (sheet[0], -_measure(problem, sheet), sheet[1]))
    return tuple(
        SheetLayout(sheet=problem.sheets[sheet[0]].sheet, root=_cut_sheet(cutter, sheet))
        for sheet in ordered
    )


def _measure(problem: Problem, sheet: PlannedSheet) -> int:
    """Return the area of the parts on a sheet."""
    _, cuts, whole = sheet
    ends = [whole, *(end for cut in cuts for end in (cut.first, cut.second))]
    return sum(problem.kinds[(FIRST_PART - end) // 2].area for end in ends if end <= FIRST_PART)


def _cut_sheet(cutter: Cutter, planned: PlannedSheet) -> Node:
    """Return the tree of one sheet, its home edges trimmed first."""
    sheet = cutter.job.sheets[cutter.problem.sheets[planned[0]].sheet]
    piece = Piece(
        length=sheet.length - sheet.trim.left,
        width=sheet.width - sheet.trim.bottom,
        raw_right=sheet.trim.right,
        raw_top=sheet.trim.top,
    )
    return trim_home_edges(sheet, _cut_piece(cutter, planned, piece), cutter.job.saw.kerf)


def _cut_piece(cutter: Cutter, planned: PlannedSheet, whole: Piece) -> Node:
    """Return the tree of cuts of a trimmed sheet.

    The pieces are followed down the cuts first, the parts handed out as they come off, and the
    tree is put together on the way back.
    """
    kind, cuts, whole_end = planned
    grid, kerf = cutter.problem.grid, cutter.job.saw.kerf
    ends: dict[_Place, Node | None] = {}
    made: list[tuple[_Place, int, Length, Length]] = []
    waiting: list[tuple[_Place, int, Piece | None]] = [(_WHOLE, whole_end, whole)]
    while waiting:
        place, end, piece = waiting.pop()
        if piece is None:
            ends[place] = None
        elif end == REST:
            ends[place] = cutter.make_rest(piece)
        elif end <= FIRST_PART:
            ends[place] = cutter.hand_out(FIRST_PART - end, piece, kind)
        else:
            cut = cuts[end]
            split, reach = (split_y, piece.width) if cut.is_rip else (split_x, piece.length)
            at = cut.keep * grid - kerf
            first, second = split(piece, at, kerf)
            made.append((place, end, at, min(reach - at, kerf)))
            waiting += [((end, 1), cut.second, second), ((end, 0), cut.first, first)]
    for place, number, at, removed in reversed(made):
        ends[place] = Cut(
            direction=Direction.RIP if cuts[number].is_rip else Direction.CROSSCUT,
            at=at,
            removed=removed,
            first=ends[number, 0],
            second=ends[number, 1],
        )
    root = ends[_WHOLE]
    assert root is not None, "a sheet is not nothing"
    return root
