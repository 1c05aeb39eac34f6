"""Lower bounds: what no plan can do with less.

With a dual feasible function f for lengths and g for widths, no sheet holds more changed area than
f(length) g(width), and the sheets bought must hold the changed area of all parts. Every pair of
functions gives a bound; the unchanged sizes give the bound by area. What a part counts is the least
over the ways in which it may lie. Where sheets are square and parts may turn, the mean of (f, g)
and (g, f) is a bound as well, and it is the same whichever way a part lies.

References:
    Fekete and Schepers (2001), Math. Programming 91, 11-31, from memory.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from nesting.search.dual_functions import Ints, tabulate
from nesting.search.problem import LONG_ALONG_X, LONG_ALONG_Y, Problem
from nesting.search.whole_cover import cover_cheaply

Floats = NDArray[np.float64]

TINY = 1e-12  # keeps a sheet that a function counts as nothing from dividing by 0
MANY_KINDS = 400  # above this only the bound by area is computed


@dataclass(frozen=True, slots=True, kw_only=True)
class Bound:
    """What no plan that places everything can do with less.

    Attributes:
        weight: Least weight, in the units of `SheetKind.weight`.
        sheets: Least number of sheets.
        price: Least money, in steps of the price that all prices are multiples of.
        is_out_of_reach: True where even all sheets together cannot hold everything.
    """

    weight: int
    sheets: int
    price: int
    is_out_of_reach: bool = False

    def join(self, other: "Bound") -> "Bound":
        """Return the better of two bounds in every respect."""
        return Bound(
            weight=max(self.weight, other.weight),
            sheets=max(self.sheets, other.sheets),
            price=max(self.price, other.price),
            is_out_of_reach=self.is_out_of_reach or other.is_out_of_reach,
        )


def bound_by_area(problem: Problem, *, missing: int = 0) -> Bound:
    """Return the bound that the unchanged sizes give, with an area left unplaced."""
    rooms = [sheet.area for sheet in problem.sheets]
    return cover(problem, problem.area - missing, rooms)


def bound_by_functions(problem: Problem) -> Bound:
    """Return the best bound of all pairs of functions."""
    best = bound_by_area(problem)
    if len(problem.kinds) > MANY_KINDS:
        return best
    lengths = _tabulate_along(problem, LONG_ALONG_X, [sheet.length for sheet in problem.sheets])
    widths = _tabulate_along(problem, LONG_ALONG_Y, [sheet.width for sheet in problem.sheets])
    for f, g, is_mean in _choose_pairs(problem, lengths, widths):
        exact = _evaluate(problem, lengths[f].tolist(), widths[g].tolist(), is_mean=is_mean)
        best = best.join(exact)
    return best


def _tabulate_along(problem: Problem, long_along: int, wholes: list[int]) -> Ints:
    """Return the functions for one side of the sheets; `long_along` lies long sides along it.

    The columns are the long sides of the part kinds, their short sides, the sheets, and the longest
    sheet again. A side longer than that never lies along it; there it stands in as the longest.
    """
    sides = [kind.long for kind in problem.kinds] + [kind.short for kind in problem.kinds]
    sizes = [min(size, max(wholes)) for size in sides + wholes]
    counts = [
        kind.copies if _join_ways(kind.ways) & way else 0
        for way in (long_along, LONG_ALONG_X + LONG_ALONG_Y - long_along)
        for kind in problem.kinds
    ]
    counts += [0 for _ in wholes]
    return tabulate(
        np.array(sizes, dtype=np.int64),
        np.array(counts, dtype=np.int64),
        max(wholes),
        is_only_whole=len(set(wholes)) == 1,
    )


def _choose_pairs(problem: Problem, lengths: Ints, widths: Ints) -> list[tuple[int, int, bool]]:
    """Return the pairs that promise the best bounds on weight and on sheets, by floats.

    The flag says that what a part counts is the mean over both orientations.
    """
    f = lengths / lengths[:, -1:].astype(np.float64)
    g = widths / widths[:, -1:].astype(np.float64)
    count = len(problem.kinds)
    least = np.zeros((len(f), len(g)))
    mean = np.zeros((len(f), len(g)))
    is_square = _may_exchange(problem)
    for number, kind in enumerate(problem.kinds):
        upright = np.outer(f[:, number], g[:, count + number])
        turned = np.outer(f[:, count + number], g[:, number])
        least += kind.copies * _pick(_join_ways(kind.ways), upright, turned)
        if is_square:
            mean += kind.copies * (upright + turned) / 2
    per_weight = np.full_like(least, np.inf)
    per_sheet = np.full_like(least, np.inf)
    for number, sheet in enumerate(problem.sheets):
        room = np.outer(f[:, 2 * count + number], g[:, 2 * count + number]) + TINY
        per_weight = np.minimum(per_weight, sheet.weight / room)
        per_sheet = np.minimum(per_sheet, 1 / room)
    chosen = []
    for wanted, is_mean in ((least, False), (mean, True))[: 2 if is_square else 1]:
        for scale in (per_weight, per_sheet):
            place = int(np.argmax(wanted * scale))
            chosen.append((place // len(g), place % len(g), is_mean))
    return chosen


def _may_exchange(problem: Problem) -> bool:
    """Return whether x and y are alike: square sheets, and parts that may lie either way."""
    return all(sheet.length == sheet.width for sheet in problem.sheets) and all(
        kind.long == kind.short or _join_ways(kind.ways) == LONG_ALONG_X | LONG_ALONG_Y
        for kind in problem.kinds
    )


def _pick(ways: int, upright: Floats, turned: Floats) -> Floats:
    """Return the least that a part counts over the ways in which it may lie."""
    if ways == LONG_ALONG_X:
        return upright
    return turned if ways == LONG_ALONG_Y else np.minimum(upright, turned)


def _join_ways(ways: tuple[int, ...]) -> int:
    joined = 0
    for way in ways:
        joined |= way
    return joined


def _evaluate(problem: Problem, lengths: list[int], widths: list[int], *, is_mean: bool) -> Bound:
    """Return the bound of one pair of functions, exactly."""
    count = len(problem.kinds)
    wanted = 0
    for number, kind in enumerate(problem.kinds):
        upright = lengths[number] * widths[count + number]
        turned = lengths[count + number] * widths[number]
        ways = _join_ways(kind.ways)
        if is_mean:
            twice = upright + turned
        elif ways == LONG_ALONG_X | LONG_ALONG_Y:
            twice = 2 * min(upright, turned)
        else:
            twice = 2 * (upright if ways == LONG_ALONG_X else turned)
        wanted += kind.copies * twice
    sheets = range(2 * count, 2 * count + len(problem.sheets))
    return cover(problem, wanted, [2 * lengths[sheet] * widths[sheet] for sheet in sheets])


def cover(problem: Problem, wanted: int, rooms: list[int]) -> Bound:
    """Return the least weight, sheets and money whose rooms hold what is wanted.

    Where even all sheets hold too little, the answer is all of them: no plan places everything.
    """
    counts = [sheet.count for sheet in problem.sheets]
    return Bound(
        weight=cover_cheaply(wanted, rooms, [sheet.weight for sheet in problem.sheets], counts),
        sheets=cover_cheaply(wanted, rooms, [1 for _ in problem.sheets], counts),
        price=cover_cheaply(wanted, rooms, [sheet.price for sheet in problem.sheets], counts),
        is_out_of_reach=sum(r * n for r, n in zip(rooms, counts, strict=True)) < wanted,
    )
