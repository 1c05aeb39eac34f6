"""The search for one problem of any size.

Of a very large one most is cut as repeated sheets, and only what these leave over is searched.
"""

from collections.abc import Callable
from dataclasses import replace

from nesting.search.bounds import bound_by_functions
from nesting.search.contest import (
    FIRST_PACKING,
    MANY_KINDS,
    MANY_PARTS,
    MORE_PACKING,
    Contest,
    Found,
    Report,
)
from nesting.search.deadline import NO_DEADLINE, Deadline
from nesting.search.multiples import Multiples
from nesting.search.packers import Packers
from nesting.search.problem import Plan, Problem, measure_plan
from nesting.search.repeat import Repeater

TOO_MANY_PARTS = 6000  # of many kinds; above this most of them are cut as repeated sheets too
LEFT_OVER = 1000  # of these
SHARE = 2  # the work is divided by this for what may go into the sheets that are repeated


def search_problem(
    problem: Problem,
    *,
    steps: int,
    seed: int,
    report: Report,
    deadline: Deadline = NO_DEADLINE,
) -> Found:
    """Search for the best plan of one problem.

    Args:
        problem: Parts and sheets.
        steps: Work of each search; a step is one look at a place for a part.
        seed: Any whole number.
        report: Told the fraction done, the best plan and the bound after every round.
        deadline: When to end at the latest.
    """
    most = MANY_PARTS if len(problem.kinds) <= MANY_KINDS else TOO_MANY_PARTS
    if problem.copies <= most:
        return Contest(problem, steps=steps, seed=seed, deadline=deadline).run(report=report)
    packers = Packers(problem, deadline=deadline)
    best = packers.improve((), FIRST_PACKING)
    found = Found(plan=best, bound=bound_by_functions(problem), rounds=packers.rounds)
    report(0.0, found.plan, found.bound)
    try:
        if steps > 0 and not deadline.is_over():
            found = _search_large(problem, steps, seed, report, deadline, found)
            best = found.plan
            if not found.is_interrupted and measure_plan(problem, best) > (0, found.bound.weight):
                best = packers.improve(best, MORE_PACKING)
    except KeyboardInterrupt:
        return replace(found, is_interrupted=True)
    return replace(found, plan=best)


def _search_large(
    problem: Problem, steps: int, seed: int, report: Report, deadline: Deadline, known: Found
) -> Found:
    """Return what whole sheets and a search of the rest come to, or what is known already."""
    multiples: Multiples | None = None
    if len(problem.kinds) <= MANY_KINDS:
        multiples = Multiples(problem, seed=seed, deadline=deadline)
        fixed, left = multiples.cut(steps // SHARE)
    else:
        fixed, left = Repeater(problem, seed=seed, deadline=deadline).cut_down(leave=LEFT_OVER)
    found = replace(known, plan=fixed)
    rest = _keep_left(problem, fixed, left)
    if rest is not None:

        def report_all(done: float, plan: Plan, _: object) -> None:
            whole = fixed + _rename(plan, left)
            report(done, min(whole, known.plan, key=_measure(problem)), known.bound)

        contest = Contest(rest, steps=steps, seed=seed, deadline=deadline)
        found = contest.run(report=report_all)
        found = replace(found, plan=fixed + _rename(found.plan, left), bound=known.bound)
    if multiples is not None and not (found.is_interrupted or deadline.is_over()):
        found = replace(found, bound=multiples.raise_bound(found.plan, known.bound, steps // SHARE))
    better = min(found.plan, known.plan, key=_measure(problem))
    return replace(found, plan=better)


def _measure(problem: Problem) -> Callable[[Plan], tuple[int, int]]:
    return lambda plan: measure_plan(problem, plan)


def _keep_left(problem: Problem, fixed: Plan, left: list[int]) -> Problem | None:
    """Return the problem of what is left over, None where nothing is or no sheets are."""
    used = [sum(sheet.kind == number for sheet in fixed) for number in range(len(problem.sheets))]
    kinds = tuple(
        replace(kind, copies=count)
        for kind, count in zip(problem.kinds, left, strict=True)
        if count
    )
    copies = sum(left)
    sheets = tuple(
        replace(sheet, count=min(sheet.count - count, copies))
        for sheet, count in zip(problem.sheets, used, strict=True)
    )
    if not kinds or not any(sheet.count for sheet in sheets):
        return None
    return replace(problem, kinds=kinds, sheets=sheets)


def _rename(plan: Plan, left: list[int]) -> Plan:
    """Return a plan of what is left over with the part kinds of the whole problem."""
    numbers = [number for number, count in enumerate(left) if count]
    return tuple(
        replace(
            sheet,
            codes=tuple(
                2 * numbers[code // 2] + code % 2 if code >= 0 else code for code in sheet.codes
            ),
        )
        for sheet in plan
    )
