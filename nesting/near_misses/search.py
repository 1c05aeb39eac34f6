"""The search for near misses: every size that may change alone, then two of them at once.

Each step of the job within the limit is a candidate, up and down, for all copies together. Where
every step makes no part larger, parts that fit go on fitting, so that the price can only fall from
step to step, and the smallest change is found by bisection. Otherwise every step is looked at. The
lower bound and a first layout spare most of the searches.

Two sizes at once are tried where both become smaller in this sense, and the smallest sum of their
changes is looked for corner by corner: a least change of the one, then the least of the other that
goes with it. What one of them pays alone is not listed again for two.
"""

from collections.abc import Callable, Iterator
from decimal import Decimal
from itertools import combinations, islice, pairwise
from typing import Final

from nesting.buying import Solve
from nesting.job import Job
from nesting.near_misses.sizes import fits_in
from nesting.near_misses.trials import NearMiss, Steps, Trials, price
from nesting.search.result import Result
from nesting.terms import Free

MOST_PAIRS: Final = 15
"""Of so many pairs of sizes both are changed at once: all pairs of six sizes."""
MOST_SEARCHES: Final = 12
"""After so many thorough searches for one pair no other corner is begun."""


def find_near_misses(
    job: Job,
    base: Result,
    *,
    first_look: Solve,
    solve: Solve,
    progress: Callable[[float], None] | None = None,
) -> tuple[NearMiss, ...]:
    """Return the changes of free sizes that lower the price, the smallest change first.

    Where a larger change lowers it further, it is listed too. Of one size every change within the
    limit is considered; of two at once those of the first `MOST_PAIRS` pairs that make parts no
    larger. What is missed besides depends on the searches alone.

    Args:
        job: The job as it is.
        base: Its plan.
        first_look: Plans a job quickly: a search without effort.
        solve: Plans a job like `base` was planned.
        progress: Told which fraction of the sizes and pairs is done.

    Raises:
        KeyboardInterrupt: The user stopped a search; what is near is not known then.
    """
    directions = [(free, sign) for free in job.terms.free for sign in (-1, 1)]
    alone = [
        Trials(job=job, base=base, sizes=[each], first_look=first_look, solve=solve)
        for each in directions
    ]
    found: list[NearMiss] = []
    best: dict[Free, Decimal] = {}
    smaller = [trials for trials in alone if _makes_smaller(trials)]
    pairs = list(islice(_list_pairs(smaller), MOST_PAIRS))
    for number, trials in enumerate(alone, start=1):
        misses = list(_search(trials))
        found += misses
        least = min((miss.cost for miss in misses), default=price(job, base))
        free = trials.sizes[0][0]
        best[free] = min(least, best.get(free, least))
        if progress is not None:
            progress(number / (len(alone) + len(pairs)))
    for number, pair in enumerate(pairs, start=len(alone) + 1):
        found += _search_pair(pair, min(best[free] for free, _ in pair.sizes))
        if progress is not None:
            progress(number / (len(alone) + len(pairs)))
    return tuple(sorted(found, key=lambda miss: (miss.change, miss.cost)))


def _list_pairs(smaller: list[Trials]) -> Iterator[Trials]:
    """Yield the trials of two sizes at once."""
    for one, other in combinations(smaller, 2):
        if one.sizes[0][0] != other.sizes[0][0]:
            yield Trials(
                job=one.job,
                base=one.base,
                sizes=[*one.sizes, *other.sizes],
                first_look=one.first_look,
                solve=one.solve,
            )


def _search(trials: Trials) -> Iterator[NearMiss]:
    """Yield the changes of one size, the smallest first, each cheaper than the one before."""
    most = trials.most(0)
    if _never_smaller(_walk(trials)):
        return
    find = _bisect if _never_larger(_walk(trials)) else _try_each
    cost, steps = price(trials.job, trials.base), 0
    while steps < most:
        cheaper = find(lambda count: trials.costs_less((count,), cost), steps, most)  # noqa: B023
        if cheaper is None:
            return
        steps = cheaper
        cost = trials.cost((steps,))
        yield trials.describe((steps,))


def _search_pair(trials: Trials, than: Decimal) -> Iterator[NearMiss]:
    """Yield changes of two sizes at once, each cheaper than a price and than the one before."""
    while (steps := _find_least_pair(trials, than)) is not None:
        than = trials.cost(steps)
        yield trials.describe(steps)


def _find_least_pair(trials: Trials, than: Decimal) -> Steps | None:
    """Return the changes with the least sum that cost less, as far as searches are left.

    Neither change alone costs less. From the largest first change downwards, every corner of what
    costs less is visited: none of its changes can be made smaller without the other growing.
    """
    first, second = trials.most(0), trials.most(1)
    best: Steps | None = None
    beyond = 0
    while first > 0 and trials.searches < MOST_SEARCHES:
        reach = min(second, sum(best) - 2) if best else second

        def with_first(count: int, *, first: int = first) -> bool:
            return trials.costs_less((first, count), than)

        other = _bisect(with_first, beyond, reach) if reach > beyond else None
        if other is None:
            break

        def with_second(count: int, *, other: int = other) -> bool:
            return trials.costs_less((count, other), than)

        one = _bisect(with_second, 0, first)
        assert one is not None, "the larger change costs less"
        if best is None or one + other < sum(best):
            best = (one, other)
        first, beyond = one - 1, other
    return best


def _bisect(costs_less: Callable[[int], bool], begin: int, most: int) -> int | None:
    """Return the least number of steps beyond a beginning with a lower price.

    The price at the beginning is known not to be lower. What costs less somewhere does so at all
    larger changes.
    """
    if not costs_less(most):
        return None
    low, high = begin, most
    while high - low > 1:
        middle = (low + high) // 2
        if costs_less(middle):
            high = middle
        else:
            low = middle
    return high


def _try_each(costs_less: Callable[[int], bool], begin: int, most: int) -> int | None:
    return next((steps for steps in range(begin + 1, most + 1) if costs_less(steps)), None)


def _walk(trials: Trials) -> list[Job | None]:
    """Return the job with one size changed by no step, by one, and so on."""
    return [trials.changed((steps,)) for steps in range(trials.most(0) + 1)]


def _makes_smaller(trials: Trials) -> bool:
    jobs = _walk(trials)
    return _never_larger(jobs) and not _never_smaller(jobs)


def _never_larger(jobs: list[Job | None]) -> bool:
    """Return whether no part grows from one step to the next, and every step can be built."""
    return all(
        before is not None and after is not None and fits_in(after.parts, before.parts)
        for before, after in pairwise(jobs)
    )


def _never_smaller(jobs: list[Job | None]) -> bool:
    """Return whether every part is at every step at least as large as it is now."""
    now = jobs[0]
    assert now is not None, "the job as it is can be built"
    return all(job is None or fits_in(now.parts, job.parts) for job in jobs)
