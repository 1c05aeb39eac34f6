"""From the search's trees to the layout: whole nanometres, kerf and trims put in.

The search works with parts and sheets lengthened by one kerf, where k pieces in a row need no wood
between them. Here every piece gets its real size: a row of pieces is freed one by one from the low
edge, and what is left over, if anything, lies at the high end in one piece.
"""

from collections import deque
from collections.abc import Generator
from dataclasses import dataclass, replace
from typing import TypeAlias

from nesting.job import Job
from nesting.layout import Cut, Direction, Node, PartLeaf, RestLeaf, SheetLayout
from nesting.lengths import Length
from nesting.search.grid import list_ways
from nesting.search.problem import SIDE_BY_SIDE, Plan, Problem
from nesting.search.rows import Row, describe, read_rows
from nesting.sheets import Sheet

Fitting: TypeAlias = Generator["Fitting", Node, Node]
"""A call of `Cutter.fit` that is under way: it yields what it must know first, see `finish`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """A piece of a sheet that is still to be cut.

    Attributes:
        length: Extent along x.
        width: Extent along y.
        raw_right: How much at its high end along x is trim, which no part may use.
        raw_top: The same along y.
    """

    length: Length
    width: Length
    raw_right: Length = 0
    raw_top: Length = 0


def realise(job: Job, problem: Problem, plan: Plan) -> tuple[SheetLayout, ...]:
    """Return the sheets of a plan, kind by kind, the fullest first and equal ones together.

    Copies of a part are numbered in the order in which they come off the sheets.
    """
    cutter = Cutter(job, problem)
    sheets = [(sheet.kind, read_rows(problem, sheet.codes)) for sheet in plan]
    filled = {id(row): _measure(problem, row) for _, row in sheets}
    ordered = sorted(
        sheets, key=lambda sheet: (sheet[0], -filled[id(sheet[1])], describe(sheet[1]))
    )
    return tuple(
        SheetLayout(sheet=problem.sheets[kind].sheet, root=cutter.cut_sheet(kind, row))
        for kind, row in ordered
    )


def _measure(problem: Problem, row: Row) -> int:
    """Return the area of the parts in a row."""
    waiting, area = [row], 0
    while waiting:
        row = waiting.pop()
        waiting += row.pieces
        if not row.pieces:
            area += problem.kinds[row.join // 2].area
    return area


def finish(fitting: Fitting) -> Node:
    """Return what a fitting comes to, and every fitting that it asks for.

    Rows lie in rows as deep as parts are cut one behind the other, a thousand deep where they are
    many, which a function that calls itself must not be.
    """
    waiting = [fitting]
    node: Node | None = None
    while waiting:
        try:
            waiting.append(next(waiting[-1]) if node is None else waiting[-1].send(node))
            node = None
        except StopIteration as end:
            waiting.pop()
            node = end.value
    assert node is not None, "every fitting comes to a node"
    return node


class Cutter:
    """Makes the nodes of one problem's sheets, handing out copies as it goes.

    Attributes:
        job: The job.
        problem: The problem that the rows belong to.
    """

    def __init__(self, job: Job, problem: Problem) -> None:
        """Begin with the first copy of every part."""
        self.job = job
        self.problem = problem
        self._kerf = job.saw.kerf
        self._waiting = [deque(kind.members) for kind in problem.kinds]
        self._handed = [0 for _ in problem.kinds]

    def cut_sheet(self, kind: int, row: Row) -> Node:
        """Return the tree of one sheet."""
        sheet = self.job.sheets[self.problem.sheets[kind].sheet]
        piece = Piece(
            length=sheet.length - sheet.trim.left,
            width=sheet.width - sheet.trim.bottom,
            raw_right=sheet.trim.right,
            raw_top=sheet.trim.top,
        )
        return trim_home_edges(sheet, self.fit(row, piece, kind), self._kerf)

    def fit(self, row: Row, piece: Piece, kind: int) -> Node:
        """Return the tree that cuts a row out of a piece at least as large."""
        return finish(self._fit(row, piece, kind))

    def _fit(self, row: Row, piece: Piece, kind: int) -> Fitting:
        length = row.length * self.problem.grid - self._kerf
        width = row.width * self.problem.grid - self._kerf
        over_x, over_y = piece.length - length, piece.width - width
        if over_x == 0 and over_y == 0:
            return (yield self._free(row, piece, kind))
        if over_x == 0 or over_y == 0:
            is_crosscut = over_x > 0
            if row.pieces and is_crosscut is (row.join == SIDE_BY_SIDE):
                return (yield self._free(row, piece, kind))
        else:
            guide = self.job.saw.guide_length
            is_crosscut = over_x * piece.width >= over_y * piece.length
            if piece.width <= guide < piece.length:
                is_crosscut = True
        if is_crosscut:
            inner, rest = split_x(piece, length, self._kerf)
            node = yield self._fit(row, inner, kind)
            return self.cut(Direction.CROSSCUT, length, over_x, node, rest)
        inner, rest = split_y(piece, width, self._kerf)
        node = yield self._fit(row, inner, kind)
        return self.cut(Direction.RIP, width, over_y, node, rest)

    def _free(self, row: Row, piece: Piece, kind: int) -> Fitting:
        """Make the tree that frees a row's pieces one by one, the rest at the high end."""
        if not row.pieces:
            return self.hand_out(row.join, piece, kind)
        is_side = row.join == SIDE_BY_SIDE
        direction = Direction.CROSSCUT if is_side else Direction.RIP
        split = split_x if is_side else split_y
        cuts: list[tuple[Length, Length, Node]] = []
        left: Piece | None = piece
        for part in row.pieces:
            assert left is not None, "a row's pieces are shorter than the row"
            size = (part.length if is_side else part.width) * self.problem.grid - self._kerf
            over = (left.length if is_side else left.width) - size
            inner, left = split(left, size, self._kerf)
            freed = yield self._fit(part, inner, kind)
            cuts.append((size, over, freed))
        node: Node | None = None
        for size, over, freed in reversed(cuts):
            if node is None:  # the last piece
                node = freed if over == 0 else self.cut(direction, size, over, freed, left)
            else:
                node = Cut(
                    direction=direction, at=size, removed=self._kerf, first=freed, second=node
                )
        assert node is not None, "a row has pieces"
        return node

    def cut(
        self, direction: Direction, at: Length, over: Length, first: Node, rest: Piece | None
    ) -> Cut:
        """Return the cut behind which only a rest is left, or nothing."""
        return Cut(
            direction=direction,
            at=at,
            removed=min(over, self._kerf),
            first=first,
            second=None if rest is None else self.make_rest(rest),
        )

    def make_rest(self, piece: Piece) -> RestLeaf:
        """Return a leftover, an offcut where what can be used of it is worth keeping."""
        sides = sorted((piece.length - piece.raw_right, piece.width - piece.raw_top))
        keep = self.job.keep
        return RestLeaf(is_offcut=sides[0] >= keep.width and sides[1] >= keep.length)

    def hand_out(self, code: int, piece: Piece, kind: int) -> PartLeaf:
        """Return the next part of a part kind, and how it lies."""
        members = self._waiting[code // 2]
        index, count = members[0]
        copy = self._handed[code // 2]
        self._handed[code // 2] = copy + 1
        if copy + 1 == count:
            members.popleft()
            self._handed[code // 2] = 0
        part = self.job.parts[index]
        sheet = self.job.sheets[self.problem.sheets[kind].sheet]
        sides = (part.blank_length, part.blank_width)
        for turned in list_ways(part, sheet):
            if (sides[::-1] if turned else sides) == (piece.length, piece.width):
                return PartLeaf(part=index, copy=copy, turned=turned)
        raise AssertionError("the search laid a part in a way that it must not lie")


def split_x(piece: Piece, at: Length, kerf: Length) -> tuple[Piece, Piece | None]:
    """Return what a crosscut leaves on its low and on its high side."""
    first = replace(piece, length=at, raw_right=0)
    beyond = piece.length - at - kerf
    return first, replace(piece, length=beyond) if beyond > 0 else None


def split_y(piece: Piece, at: Length, kerf: Length) -> tuple[Piece, Piece | None]:
    """Return what a rip leaves on its low and on its high side."""
    first = replace(piece, width=at, raw_top=0)
    beyond = piece.width - at - kerf
    return first, replace(piece, width=beyond) if beyond > 0 else None


def trim_home_edges(sheet: Sheet, node: Node, kerf: Length) -> Node:
    """Return a tree that first trims the long home edge of a sheet, then the other.

    Args:
        sheet: The sheet.
        node: What is done to what is left of it.
        kerf: Width that a cut removes.
    """
    trims = [(Direction.RIP, sheet.trim.bottom), (Direction.CROSSCUT, sheet.trim.left)]
    if sheet.width > sheet.length:
        trims.reverse()
    for direction, trim in reversed(trims):
        if trim > 0:
            node = Cut(
                direction=direction,
                at=max(trim - kerf, 0),
                removed=min(trim, kerf),
                first=RestLeaf() if trim > kerf else None,
                second=node,
                is_trim=True,
            )
    return node
