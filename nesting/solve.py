"""The front door: from a job to the best layout found, and what is known about it.

It reads and writes no files and prints nothing.
"""

import time
from collections.abc import Callable, Iterable
from dataclasses import replace
from decimal import Decimal

from nesting.job import Job
from nesting.layout import Layout, Unplaced
from nesting.search.contest import STEPS_PER_EFFORT
from nesting.search.grid import list_groups
from nesting.search.groups import GroupLayout, Share, lay_out_group
from nesting.search.least_work import find_less_work
from nesting.search.misfits import find_misfits
from nesting.search.prepare import prepare
from nesting.search.result import GroupResult, Progress, Result
from nesting.strips import bind_strips, loosen

__all__ = [
    "DEFAULT_EFFORT",
    "GroupResult",
    "Progress",
    "Result",
    "count_again",
    "measure_gaps",
    "solve",
    "solve_cheapest",
]

DEFAULT_EFFORT = 10
CHEAPEST = 0.7
"""Fraction of the time and of the progress for the cheapest sheets; the rest for the least work."""


def solve(
    job: Job,
    *,
    effort: int = DEFAULT_EFFORT,
    seed: int = 1,
    seconds: float | None = None,
    progress: Callable[[Progress], None] | None = None,
) -> Result:
    """Return the best layout found within an effort: the cheapest, then the one with least work.

    The same job, effort and seed give the same layout on every machine. The search ends early where
    the layout is proven best, where the seconds are up, or on KeyboardInterrupt; then the best
    layout so far is returned and no exception is raised.

    Args:
        job: Parts, sheets and saw.
        effort: How much work to do at most; twice the effort takes twice the time. At least 0,
            which gives a first layout only.
        seed: Any whole number.
        seconds: Cap on the time; None for none.
        progress: Told how far the search is, some times a second.
    """
    if bound := bind_strips(job):
        found = solve(bound.job, effort=effort, seed=seed, seconds=seconds, progress=progress)
        return replace(found, layout=loosen(bound, found.layout))
    start = time.monotonic()

    def tell(news: Progress) -> None:
        if progress is not None:
            progress(replace(news, done=CHEAPEST * news.done))

    result = solve_cheapest(
        job,
        effort=effort,
        seed=seed,
        seconds=None if seconds is None else CHEAPEST * seconds,
        progress=tell,
    )
    if result.interrupted:
        return result

    def report(done: float) -> None:
        if progress is not None:
            share = CHEAPEST + (1 - CHEAPEST) * done
            progress(Progress(done=share, cost=result.cost, bound=result.bound))

    worked = find_less_work(
        job,
        result.layout,
        effort=effort,
        seed=seed,
        deadline=None if seconds is None else start + seconds,
        report=report,
    )
    groups = count_again(job, worked.layout, result.groups)
    return replace(
        result,
        layout=worked.layout,
        cost=sum((group.cost for group in groups), Decimal(0)),
        groups=groups,
        iterations=result.iterations + worked.rounds,
        interrupted=worked.is_interrupted,
    )


def solve_cheapest(
    job: Job,
    *,
    effort: int = DEFAULT_EFFORT,
    seed: int = 1,
    seconds: float | None = None,
    progress: Callable[[Progress], None] | None = None,
) -> Result:
    """Return the cheapest layout found within an effort, however much work it makes.

    The arguments are those of `solve`.
    """
    if bound := bind_strips(job):
        found = solve_cheapest(
            bound.job, effort=effort, seed=seed, seconds=seconds, progress=progress
        )
        return replace(found, layout=loosen(bound, found.layout))
    groups = list_groups(job)
    copies = {group: _count_copies(job, *group) for group in groups}
    start = time.monotonic()
    is_stopped = _prepare(progress)
    done = 0
    layouts: list[GroupLayout] = []
    for group in groups:
        until = (done + copies[group]) / sum(copies.values())
        share = Share(
            steps=effort * STEPS_PER_EFFORT * copies[group] // sum(copies.values()),
            seed=seed,
            deadline=None if seconds is None else start + seconds * until,
            is_stopped=is_stopped,
            start=done / sum(copies.values()),
            size=copies[group] / sum(copies.values()),
            cost=_sum_costs(layouts),
            bound=_sum_bounds(layouts),
        )
        layouts.append(lay_out_group(job, *group, share, progress))
        is_stopped = layouts[-1].is_interrupted
        done += copies[group]
    unplaced = sorted(
        [*find_misfits(job), *(item for layout in layouts for item in layout.unplaced)],
        key=lambda item: item.part,
    )
    return Result(
        layout=Layout(
            sheets=tuple(sheet for layout in layouts for sheet in layout.sheets),
            unplaced=tuple(unplaced),
        ),
        cost=_sum_costs(layouts),
        bound=_sum_bounds(layouts),
        groups=tuple(layout.result for layout in layouts if layout.result is not None),
        iterations=sum(layout.rounds for layout in layouts),
        interrupted=is_stopped,
    )


def count_again(
    job: Job, layout: Layout, results: tuple[GroupResult, ...]
) -> tuple[GroupResult, ...]:
    """Return the results of a search with the sheets of another layout of the same parts."""
    again = []
    for result in results:
        group = (result.material, result.thickness)
        kinds = [job.sheets[used.sheet] for used in layout.sheets]
        used = [kind for kind in kinds if (kind.material, kind.thickness) == group]
        cost = sum((kind.price for kind in used), Decimal(0))
        is_proven = cost <= result.cost_bound
        again.append(replace(result, sheets=len(used), cost=cost, is_proven=is_proven))
    return tuple(again)


def measure_gaps(job: Job, gaps: Iterable[Unplaced]) -> int:
    """Return the area of the blanks that have no place, in square nanometres."""
    return sum(
        job.parts[gap.part].blank_length * job.parts[gap.part].blank_width * gap.count
        for gap in gaps
    )


def _count_copies(job: Job, material: str, thickness: int) -> int:
    return sum(
        part.count for part in job.parts if (part.material, part.thickness) == (material, thickness)
    )


def _sum_costs(layouts: list[GroupLayout]) -> Decimal:
    return sum((layout.result.cost for layout in layouts if layout.result), Decimal(0))


def _sum_bounds(layouts: list[GroupLayout]) -> Decimal:
    return sum((layout.result.cost_bound for layout in layouts if layout.result), Decimal(0))


def _prepare(progress: Callable[[Progress], None] | None) -> bool:
    """Load the kernels; return whether the user stopped that."""

    def say() -> None:
        if progress is not None:
            progress(Progress(done=0, cost=Decimal(0), bound=Decimal(0), is_preparing=True))

    try:
        prepare(say)
    except KeyboardInterrupt:
        return True
    return False
