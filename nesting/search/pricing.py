"""Exact search for a sheet whose parts are worth more than a limit, where few parts fill a sheet.

Depth first over the parts, the largest first. A branch ends where the rest of the area could not
bring the worth above the limit, or where the parts chosen cannot be cut from one sheet. For that,
every set of them has the list of smallest pieces that it can be cut from; a piece is split into
two in every way. Such lists grow by the sets with the new part only.

The functions live in one module, because the cache of compiled code follows a module's own file.
"""

from typing import NamedTuple, cast

import numpy as np
from numpy.typing import NDArray

from nesting.search.compiled import compiled
from nesting.search.problem import Codes, Problem, SheetPlan

Ints = NDArray[np.int64]

MOST_PARTS = 12  # on one sheet
MOST_PIECES = 32  # smallest pieces for one set of parts
MOST_FOUND = 30


def _number(end: int) -> list[int]:
    """Return whole numbers of numpy's; numba would compile a function anew for each plain one."""
    return cast("list[int]", list(np.arange(end, dtype=np.int64)))


# Rows of `pieces`: extents, and how each came about.
LENGTH, WIDTH, LEFT_SET, LEFT_PIECE, RIGHT_PIECE, HOW = _number(6)
# Rows of `sides` and of `stacks`.
LONG, SHORT, AREA, VALUE, COPIES, WAYS = _number(6)
NEXT, CHOSEN, SUM, FREE = _number(4)
# Entries of `control`, and how a search ended.
WORK, LAST_WORK, N_FOUND, STATUS = _number(4)
COMPLETE, STOPPED, TOO_DEEP = _number(3)
NONE, ONE = _number(2)
SIDE, STACK = -ONE, -ONE - ONE  # joins, as in postfix codes


class Bench(NamedTuple):
    """All arrays of a search; kinds are ordered by area, the largest first.

    Attributes:
        sides: Long and short side, area, value, copies and ways of the kinds. Shape (6, kinds).
        dense: The kinds, those of most value for their area first. Shape (kinds,).
        pairs: 1 where two parts of these kinds fit one sheet together. Shape (kinds, kinds).
        allowed: For every depth, 1 where a kind may still join. Shape (depths, kinds).
        pieces: Smallest pieces of every set of chosen parts. Shape (6, sets, MOST_PIECES).
        counts: How many pieces each set has. Shape (sets,).
        stacks: For every depth: next kind, kind chosen, value, free area. Shape (4, depths).
        used: How many parts of each kind are chosen. Shape (kinds,).
        found: Codes of the sheets found, each after its number of codes. Shape (MOST_FOUND, codes).
        waiting: Stack for writing a tree. Shape (3, codes).
        control: Work done and allowed, sheets found, and how the search ended. Shape (4,).
    """

    sides: Ints
    dense: Ints
    pairs: Ints
    allowed: Ints
    pieces: Ints
    counts: Ints
    stacks: Ints
    used: Ints
    found: Ints
    waiting: Ints
    control: Ints


@compiled
def add_piece(  # noqa: PLR0917 - plain numbers are what a kernel takes
    bench: Bench, chosen: int, length: int, width: int, left: int, i: int, j: int, how: int
) -> None:
    """Add a piece to a set's list unless one there is no larger; drop those that are no smaller."""
    pieces, counts = bench.pieces, bench.counts
    for number in range(counts[chosen]):
        if pieces[LENGTH, chosen, number] <= length and pieces[WIDTH, chosen, number] <= width:
            return
    kept = 0
    for number in range(counts[chosen]):
        if pieces[LENGTH, chosen, number] < length or pieces[WIDTH, chosen, number] < width:
            if kept != number:
                for row in range(6):
                    pieces[row, chosen, kept] = pieces[row, chosen, number]
            kept += 1
    counts[chosen] = kept
    if kept == pieces.shape[2]:
        bench.control[STATUS] = TOO_DEEP
        return
    pieces[LENGTH, chosen, kept] = length
    pieces[WIDTH, chosen, kept] = width
    pieces[LEFT_SET, chosen, kept] = left
    pieces[LEFT_PIECE, chosen, kept] = i
    pieces[RIGHT_PIECE, chosen, kept] = j
    pieces[HOW, chosen, kept] = how
    counts[chosen] = kept + 1


@compiled
def join_sets(bench: Bench, left: int, right: int, length: int, width: int) -> None:
    """Add to the union of two sets what comes of joining their pieces."""
    pieces, counts = bench.pieces, bench.counts
    both = left | right
    for i in range(counts[left]):
        for j in range(counts[right]):
            x, y = pieces[LENGTH, left, i], pieces[WIDTH, left, i]
            u, v = pieces[LENGTH, right, j], pieces[WIDTH, right, j]
            if x + u <= length and max(y, v) <= width:
                add_piece(bench, both, x + u, max(y, v), left, i, j, SIDE)
            if y + v <= width and max(x, u) <= length:
                add_piece(bench, both, max(x, u), y + v, left, i, j, STACK)
    bench.control[WORK] += counts[left] * counts[right]


@compiled
def can_be_cut(bench: Bench, depth: int, kind: int, length: int, width: int) -> bool:
    """Return whether a part fits with those chosen, and list the pieces of all sets with it."""
    sides, counts = bench.sides, bench.counts
    new = 1 << depth
    counts[new] = 0
    long, short, ways = sides[LONG, kind], sides[SHORT, kind], sides[WAYS, kind]
    if ways & ONE and long <= length and short <= width:
        add_piece(bench, new, long, short, NONE, NONE, NONE, 2 * kind)
    if ways & (ONE + ONE) and short <= length and long <= width:
        add_piece(bench, new, short, long, NONE, NONE, NONE, 2 * kind + 1)
    if counts[new] == 0:
        return False
    for others in range(1, new):
        both = others | new
        counts[both] = 0
        left = others
        while left > 0:
            join_sets(bench, left, (others & ~left) | new, length, width)
            left = (left - 1) & others
        if counts[both] == 0 or bench.control[STATUS] != COMPLETE:
            return False
    return True


@compiled
def write_tree(bench: Bench, chosen: int) -> None:
    """Append the tree of a set to what was found, its codes backwards."""
    pieces, waiting, found, control = bench.pieces, bench.waiting, bench.found, bench.control
    row = control[N_FOUND]
    count = 0
    waiting[0, 0] = chosen
    waiting[1, 0] = 0
    top = 1
    while top > 0:
        top -= 1
        these, piece = waiting[0, top], waiting[1, top]
        count += 1
        how = pieces[HOW, these, piece]
        found[row, count] = how
        if how < 0:
            left = pieces[LEFT_SET, these, piece]
            i, j = pieces[LEFT_PIECE, these, piece], pieces[RIGHT_PIECE, these, piece]
            waiting[0, top] = left
            waiting[1, top] = i
            waiting[0, top + 1] = these & ~left
            waiting[1, top + 1] = j
            top += 2
    found[row, 0] = count
    control[N_FOUND] += 1


@compiled
def bound_rest(bench: Bench, depth: int, first: int, area: int) -> float:
    """Return what kinds from a first one on can add at most within an area."""
    sides, dense, allowed, used = bench.sides, bench.dense, bench.allowed, bench.used
    rest: float = 0.0
    for kind in dense:
        if kind < first or allowed[depth, kind] == 0 or sides[AREA, kind] > area:
            continue
        copies = sides[COPIES, kind] - used[kind]
        wanted = copies * sides[AREA, kind]
        if wanted >= area:
            return float(rest + sides[VALUE, kind] * (area / sides[AREA, kind]))
        rest += copies * sides[VALUE, kind]
        area -= wanted
    bench.control[WORK] += len(dense) // 8
    return rest


@compiled
def find_rich(  # noqa: C901 - one loop over all depths
    bench: Bench, length: int, width: int, limit: int
) -> None:
    """Find sheets worth more than a limit, each worth more than the one before.

    control[STATUS] is COMPLETE afterwards where none worth more than the last one found exists.
    """
    sides, allowed, stacks, used, control = (
        bench.sides,
        bench.allowed,
        bench.stacks,
        bench.used,
        bench.control,
    )
    kinds = sides.shape[1]
    depth = 0
    stacks[NEXT, 0] = 0
    stacks[SUM, 0] = 0
    stacks[FREE, 0] = length * width
    for kind in range(kinds):
        allowed[0, kind] = 1
        used[kind] = 0
    while depth >= 0:
        control[WORK] += 4
        kind = stacks[NEXT, depth]
        value, area = stacks[SUM, depth], stacks[FREE, depth]
        is_over = kind >= kinds or control[WORK] > control[LAST_WORK] or control[STATUS] != COMPLETE
        if is_over or value + bound_rest(bench, depth, kind, area) < limit + 1:
            depth -= 1
            if depth >= 0:
                used[stacks[CHOSEN, depth]] -= 1
            continue
        stacks[NEXT, depth] += 1
        if (
            allowed[depth, kind] == 0
            or used[kind] >= sides[COPIES, kind]
            or sides[AREA, kind] > area
        ):
            continue
        used[kind] += 1
        stacks[NEXT, depth + 1] = kind
        stacks[CHOSEN, depth] = kind
        stacks[SUM, depth + 1] = value + sides[VALUE, kind]
        stacks[FREE, depth + 1] = area - sides[AREA, kind]
        for other in range(kinds):
            allowed[depth + 1, other] = int(
                other >= kind and allowed[depth, other] == 1 and bench.pairs[kind, other] == 1
            )
        is_good = value + sides[VALUE, kind] > limit
        may_be = is_good or (
            value
            + sides[VALUE, kind]
            + bound_rest(bench, depth + 1, kind, area - sides[AREA, kind])
            >= limit + 1
        )
        if may_be and depth + 1 >= stacks.shape[1] - 1:
            control[STATUS] = TOO_DEEP
        if (
            not may_be
            or control[STATUS] != COMPLETE
            or not can_be_cut(bench, depth, kind, length, width)
        ):
            used[kind] -= 1
            continue
        if is_good:
            limit = value + sides[VALUE, kind]
            write_tree(bench, (1 << (depth + 1)) - 1)
            if control[N_FOUND] == bench.found.shape[0]:
                control[STATUS] = STOPPED
        depth += 1
    if control[WORK] > control[LAST_WORK] and control[STATUS] == COMPLETE:
        control[STATUS] = STOPPED


class Pricer:
    """Exact search on one sheet kind, for one set of worths after the other."""

    def __init__(self, problem: Problem, sheet: int) -> None:
        """Order the kinds and find which pairs fit together."""
        self._problem = problem
        self._sheet = sheet
        self._numbers = sorted(
            (number for number, kind in enumerate(problem.kinds) if kind.ways[sheet]),
            key=lambda number: -problem.kinds[number].area,
        )

    def find(self, values: list[int], limit: int, work: int) -> tuple[list[SheetPlan], bool, int]:
        """Search for sheets worth more than a limit.

        Args:
            values: What a part of each kind is worth, 0 or more.
            limit: What a sheet must be worth more than.
            work: Most work, about a nanosecond's worth each.

        Returns:
            Sheets found, whether no others worth more than the last of them (or than the limit)
            exist, and the work done.
        """
        numbers = [number for number in self._numbers if values[number] > 0]
        sheet = self._problem.sheets[self._sheet]
        if not numbers:
            return [], True, 0
        bench = _lay_out(self._problem, self._sheet, numbers, values)
        bench.control[LAST_WORK] = work
        _find_pairs(bench, sheet.length, sheet.width)
        find_rich(bench, sheet.length, sheet.width, limit)
        found = [
            SheetPlan(kind=self._sheet, codes=_rename(row[row[0] : 0 : -1].tolist(), numbers))
            for row in bench.found[: int(bench.control[N_FOUND])]
        ]
        return found, bool(bench.control[STATUS] == COMPLETE), int(bench.control[WORK])


def _rename(codes: list[int], numbers: list[int]) -> Codes:
    return tuple(2 * numbers[code // 2] + code % 2 if code >= 0 else code for code in codes)


def _lay_out(problem: Problem, sheet: int, numbers: list[int], values: list[int]) -> Bench:
    kinds = [problem.kinds[number] for number in numbers]
    worths = [values[number] for number in numbers]
    sides = [
        [kind.long for kind in kinds],
        [kind.short for kind in kinds],
        [kind.area for kind in kinds],
        worths,
        [kind.copies for kind in kinds],
        [kind.ways[sheet] for kind in kinds],
    ]
    dense = sorted(range(len(kinds)), key=lambda at: -worths[at] / kinds[at].area)
    depths, sets = MOST_PARTS + 2, 1 << MOST_PARTS
    return Bench(
        sides=np.array(sides, dtype=np.int64),
        dense=np.array(dense, dtype=np.int64),
        pairs=np.ones((len(kinds), len(kinds)), dtype=np.int64),
        allowed=np.zeros((depths, len(kinds)), dtype=np.int64),
        pieces=np.zeros((6, sets, MOST_PIECES), dtype=np.int64),
        counts=np.zeros(sets, dtype=np.int64),
        stacks=np.zeros((4, MOST_PARTS + 1), dtype=np.int64),
        used=np.zeros(len(kinds), dtype=np.int64),
        found=np.zeros((MOST_FOUND, 2 * MOST_PARTS + 2), dtype=np.int64),
        waiting=np.zeros((2, 2 * MOST_PARTS + 2), dtype=np.int64),
        control=np.zeros(4, dtype=np.int64),
    )


@compiled
def _find_pairs(bench: Bench, length: int, width: int) -> None:
    """Note which two parts fit one sheet together."""
    for first in range(bench.sides.shape[1]):
        for second in range(first + 1):
            fits = can_be_cut(bench, 0, first, length, width) and can_be_cut(
                bench, 1, second, length, width
            )
            bench.pairs[first, second] = int(fits)
            bench.pairs[second, first] = int(fits)
