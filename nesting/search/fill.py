"""Filling one sheet with the most valuable parts: a knapsack with cuts edge to edge."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from nesting.search.knapsack import Table
from nesting.search.pricing import Pricer
from nesting.search.problem import LONG_ALONG_X, LONG_ALONG_Y, Codes, Plan, Problem, count_kinds
from nesting.search.ruin_recreate import RuinRecreate, mix_seed

TABLE_SHARE = 40  # cuts of an exact table that may be tried for every step of a search

LONG_SEARCH = 1_000_000  # steps from which on an exact search is worth its while
PRICING_SHARE = 2  # its work for every step, about the same time


def fill_sheet(
    problem: Problem,
    sheet: int,
    copies: Sequence[int],
    *,
    steps: int,
    seed: int,
    values: Sequence[int] | None = None,
) -> Codes:
    """Return the most valuable tree found for one sheet.

    Args:
        problem: Part and sheet kinds.
        sheet: Index of the sheet kind to fill.
        copies: How many of each part kind there are, in place of the problem's own counts.
        steps: Work.
        seed: Random seed.
        values: What one of each part kind is worth, positive; its area where left out.

    Returns:
        Postfix codes with the problem's part kinds; empty where nothing fits.
    """
    single = single_out(problem, sheet, copies, values)
    if single is None:
        return ()
    table = Table(single.problem, 0)
    if table.work <= TABLE_SHARE * steps and _has_enough(single.problem):
        return single.rename(table.fill(single.values))
    search = RuinRecreate(
        single.problem,
        mix_seed(seed, 0),
        values=None if values is None else single.values,
        target=1,
        sheet_limit=1,
    )
    nothing: Plan = ()
    is_long = steps >= LONG_SEARCH
    plan = search.improve(nothing, steps // 2 if is_long else steps)
    if not is_long:
        return single.rename(plan[0].codes) if plan else ()
    reached = value_of(plan[0].codes, single.values) if plan else 0
    richer, is_complete, _ = Pricer(single.problem, 0).find(
        list(single.values), reached, PRICING_SHARE * steps
    )
    if richer:
        return single.rename(richer[-1].codes)
    if not is_complete:
        plan = search.improve(plan, steps // 2)
    return single.rename(plan[0].codes) if plan else ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Single:
    """The problem of one sheet.

    Attributes:
        problem: One sheet, and the part kinds that fit it and are worth something.
        numbers: The number of each of its part kinds in the whole problem.
        values: What one of each of its part kinds is worth.
    """

    problem: Problem
    numbers: tuple[int, ...]
    values: tuple[int, ...]

    def rename(self, codes: Codes) -> Codes:
        """Return a tree with the part kinds of the whole problem."""
        return tuple(
            2 * self.numbers[code // 2] + code % 2 if code >= 0 else code for code in codes
        )


def single_out(
    problem: Problem, sheet: int, copies: Sequence[int], values: Sequence[int] | None
) -> Single | None:
    """Return the problem of one sheet, None where nothing worth placing fits it.

    The arguments are those of `fill_sheet`.
    """
    kind = problem.sheets[sheet]
    worths = [part.area for part in problem.kinds] if values is None else values
    numbers = tuple(
        number
        for number, part in enumerate(problem.kinds)
        if copies[number] > 0 and part.ways[sheet] and worths[number] > 0
    )
    if not numbers:
        return None
    parts = tuple(
        replace(
            problem.kinds[number],
            ways=(problem.kinds[number].ways[sheet],),
            copies=max(1, min(copies[number], kind.area // problem.kinds[number].area)),
        )
        for number in numbers
    )
    alone = replace(problem, kinds=parts, sheets=(replace(kind, count=1, weight=1),))
    return Single(
        problem=alone, numbers=numbers, values=tuple(worths[number] for number in numbers)
    )


def _has_enough(problem: Problem) -> bool:
    """Return whether there are as many copies of every part as one sheet can hold."""
    sheet = problem.sheets[0]
    return all(
        kind.copies >= (sheet.length // along_x) * (sheet.width // along_y)
        for kind in problem.kinds
        for way, along_x, along_y in (
            (LONG_ALONG_X, kind.long, kind.short),
            (LONG_ALONG_Y, kind.short, kind.long),
        )
        if kind.ways[0] & way
    )


def value_of(codes: Codes, values: Sequence[int]) -> int:
    """Return what the parts of a tree are worth."""
    return sum(values[kind] * count for kind, count in count_kinds(codes).items())
