"""Filling one sheet with the most valuable parts: a knapsack with cuts edge to edge."""

from collections.abc import Sequence
from dataclasses import replace

from nesting.search.problem import Codes, Plan, Problem, count_kinds
from nesting.search.ruin_recreate import RuinRecreate, mix_seed


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
    kind = problem.sheets[sheet]
    wanted = [
        number
        for number, part in enumerate(problem.kinds)
        if copies[number] > 0 and part.ways[sheet] and (values is None or values[number] > 0)
    ]
    if not wanted:
        return ()
    parts = tuple(
        replace(
            problem.kinds[number],
            ways=(problem.kinds[number].ways[sheet],),
            copies=min(copies[number], kind.area // problem.kinds[number].area),
        )
        for number in wanted
    )
    alone = replace(problem, kinds=parts, sheets=(replace(kind, count=1, weight=1),))
    search = RuinRecreate(
        alone,
        mix_seed(seed, 0),
        values=None if values is None else [values[number] for number in wanted],
        target=1,
        sheet_limit=1,
    )
    nothing: Plan = ()
    plan = search.improve(nothing, steps)
    if not plan:
        return ()
    return tuple(2 * wanted[code // 2] + code % 2 if code >= 0 else code for code in plan[0].codes)


def value_of(codes: Codes, values: Sequence[int]) -> int:
    """Return what the parts of a tree are worth."""
    return sum(values[kind] * count for kind, count in count_kinds(codes).items())
