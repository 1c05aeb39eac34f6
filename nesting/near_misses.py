"""Near misses: a size changed a little, and the job costs less.

For every size that may change, each step of the job within the limit is a candidate, up and down,
for all copies together. Where every step makes no part larger, parts that fit go on fitting, so
that the price can only fall from step to step, and the smallest change is found by bisection.
Otherwise every step is looked at. The lower bound and a first layout spare most of the searches.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from decimal import Decimal
from itertools import pairwise

from nesting.buying import Solve
from nesting.cabinets.build import CabinetBuild
from nesting.errors import InputError
from nesting.job import Job
from nesting.lengths import Length
from nesting.parts import Part
from nesting.rebuilding import rebuild, with_builds
from nesting.search.result import Result
from nesting.terms import Dimension, Free


@dataclass(frozen=True, slots=True, kw_only=True)
class NearMiss:
    """A change of one size that lowers the price.

    Attributes:
        free: The size.
        before: What it is.
        after: What it would be: the nearest at which the price falls so far.
        cost: Price of the sheets then.
        cost_before: Price of the sheets now.
        sheets: Number of sheets bought then.
        sheets_before: Number of sheets bought now.
        room: Inside of one cabinet then, free of what stands in it, in cubic nanometres; None for
            a plain part.
        room_before: The same now.
    """

    free: Free
    before: Length
    after: Length
    cost: Decimal
    cost_before: Decimal
    sheets: int
    sheets_before: int
    room: int | None = None
    room_before: int | None = None

    @property
    def change(self) -> Length:
        """By how much the size changes, negative where it becomes smaller."""
        return self.after - self.before


@dataclass(slots=True, kw_only=True)
class _Trials:
    """What is known of one size, changed step by step in one direction.

    Attributes:
        job: The job as it is.
        free: The size.
        sign: 1 for larger, -1 for smaller.
        first_look: Plans quickly, for a first layout and a bound.
        solve: Plans thoroughly.
        results: What was found for each number of steps.
        jobs: The changed job for each number of steps, None where it cannot be built.
    """

    job: Job
    free: Free
    sign: int
    first_look: Solve
    solve: Solve
    results: dict[int, Result] = field(default_factory=dict)
    jobs: dict[int, Job | None] = field(default_factory=dict)

    def changed(self, steps: int) -> Job | None:
        """Return the job with the size changed by some steps; None where it cannot be built."""
        if steps not in self.jobs:
            self.jobs[steps] = change_size(self.job, self.free, self.sign * steps * self.job.step)
        return self.jobs[steps]

    def costs_less(self, steps: int, than: Decimal, missing: int) -> bool:
        """Return whether a plan was found that costs less and leaves out no more."""
        job = self.changed(steps)
        if job is None:
            return False
        known = self.results.get(steps)
        for look in (self.first_look, self.solve):
            if known is None or known.bound < known.cost:
                found = look(job)
                if found.interrupted:
                    raise KeyboardInterrupt
                if known is None or _worth(found) < _worth(known):
                    known = found
            if (known.cost < than and _count_missing(known) <= missing) or known.bound >= than:
                break
        assert known is not None
        self.results[steps] = known
        return known.cost < than and _count_missing(known) <= missing


def find_near_misses(
    job: Job,
    base: Result,
    *,
    first_look: Solve,
    solve: Solve,
    progress: Callable[[float], None] | None = None,
) -> tuple[NearMiss, ...]:
    """Return every change of a free size that lowers the price, the smallest change first.

    Where a larger change lowers it further, it is listed too. Only one size changes at a time.
    What is missed depends on the searches alone: a change that they find no cheaper plan for.

    Args:
        job: The job as it is.
        base: Its plan.
        first_look: Plans a job quickly: a search without effort.
        solve: Plans a job like `base` was planned.
        progress: Told which fraction of the sizes is done.

    Raises:
        KeyboardInterrupt: The user stopped a search; what is near is not known then.
    """
    found: list[NearMiss] = []
    for number, free in enumerate(job.terms.free):
        for sign in (-1, 1):
            trials = _Trials(job=job, free=free, sign=sign, first_look=first_look, solve=solve)
            found += _search(trials, base)
        if progress is not None:
            progress((number + 1) / len(job.terms.free))
    return tuple(sorted(found, key=lambda miss: (abs(miss.change), miss.cost)))


def change_size(job: Job, free: Free, by: Length) -> Job | None:
    """Return the job with one size changed for all copies, or None where it cannot be built."""
    if not free.is_cabinet:
        parts = tuple(
            _resize(part, free.dimension, by) if _is_meant(part, free) else part
            for part in job.parts
        )
        if any(part is None for part in parts):
            return None
        return replace(job, parts=tuple(part for part in parts if part is not None))
    return with_builds(
        job,
        (
            _resize_cabinets(job, build, free.dimension, by) if build.name == free.of else build
            for build in job.cabinets
        ),
    )


def _is_meant(part: Part, free: Free) -> bool:
    return not part.cabinet and part.name == free.of


def _resize(part: Part, dimension: Dimension, by: Length) -> Part | None:
    length = part.length + (by if dimension is Dimension.LENGTH else 0)
    width = part.width + (by if dimension is Dimension.WIDTH else 0)
    return replace(part, length=length, width=width) if min(length, width) > 0 else None


def _resize_cabinets(
    job: Job, build: CabinetBuild, dimension: Dimension, by: Length
) -> CabinetBuild | None:
    assert build.design is not None, f"{build.name}: its design is not known"
    design = build.design
    try:
        match dimension:
            case Dimension.HEIGHT:
                design = replace(design, height=design.height + by)
            case Dimension.WIDTH:
                design = replace(design, width=design.width + by)
            case Dimension.DEPTH | Dimension.LENGTH:
                design = replace(design, depth=design.depth + by)
    except InputError:
        return None
    return rebuild(job, build, design)


def _search(trials: _Trials, base: Result) -> Iterator[NearMiss]:
    """Yield the changes in one direction, the smallest first, each cheaper than the one before."""
    most = trials.free.limit // trials.job.step
    jobs = [trials.job, *(trials.changed(steps) for steps in range(1, most + 1))]
    if _never_smaller(jobs):
        return
    find = _bisect if _never_larger(jobs) else _try_each
    cost, steps, missing = base.cost, 0, _count_missing(base)
    while steps < most:
        cheaper = find(trials, steps, most, cost, missing)
        if cheaper is None:
            return
        steps = cheaper
        cost = trials.results[steps].cost
        yield _describe(trials, steps, base)


def _bisect(trials: _Trials, begin: int, most: int, than: Decimal, missing: int) -> int | None:
    """Return the least number of steps beyond a beginning with a lower price.

    The price at the beginning is known not to be lower. What costs less somewhere does so at all
    larger changes.
    """
    if not trials.costs_less(most, than, missing):
        return None
    low, high = begin, most
    while high - low > 1:
        middle = (low + high) // 2
        if trials.costs_less(middle, than, missing):
            high = middle
        else:
            low = middle
    return high


def _try_each(trials: _Trials, begin: int, most: int, than: Decimal, missing: int) -> int | None:
    for steps in range(begin + 1, most + 1):
        if trials.costs_less(steps, than, missing):
            return steps
    return None


def _never_larger(jobs: list[Job | None]) -> bool:
    """Return whether no part grows from one step to the next, and every step can be built."""
    return all(
        before is not None and after is not None and _fits_in(after.parts, before.parts)
        for before, after in pairwise(jobs)
    )


def _never_smaller(jobs: list[Job | None]) -> bool:
    """Return whether every part is at every step at least as large as it is now."""
    now = jobs[0]
    assert now is not None
    return all(job is None or _fits_in(now.parts, job.parts) for job in jobs)


def _fits_in(parts: tuple[Part, ...], others: tuple[Part, ...]) -> bool:
    """Return whether each part fits in the one that has its place in another list."""
    return len(parts) == len(others) and all(
        part.blank_length <= other.blank_length
        and part.blank_width <= other.blank_width
        and part.count <= other.count
        and (part.grain, part.material, part.thickness)
        == (other.grain, other.material, other.thickness)
        for part, other in zip(parts, others, strict=True)
    )


def _describe(trials: _Trials, steps: int, base: Result) -> NearMiss:
    job, free = trials.job, trials.free
    changed, result = trials.jobs[steps], trials.results[steps]
    assert changed is not None
    before, room_before = _size_and_room(job, free)
    after, room = _size_and_room(changed, free)
    return NearMiss(
        free=free,
        before=before,
        after=after,
        cost=result.cost,
        cost_before=base.cost,
        sheets=_count_bought(job, result),
        sheets_before=_count_bought(job, base),
        room=room,
        room_before=room_before,
    )


def _size_and_room(job: Job, free: Free) -> tuple[Length, int | None]:
    if not free.is_cabinet:
        part = next(part for part in job.parts if _is_meant(part, free))
        return part.length if free.dimension is Dimension.LENGTH else part.width, None
    build = next(build for build in job.cabinets if build.name == free.of)
    assert build.design is not None
    sizes = {
        Dimension.HEIGHT: build.design.height,
        Dimension.WIDTH: build.design.width,
        Dimension.DEPTH: build.design.depth,
    }
    return sizes[free.dimension], build.fit_out.room.net if build.fit_out else None


def _count_bought(job: Job, result: Result) -> int:
    return sum(not job.sheets[sheet.sheet].owned for sheet in result.layout.sheets)


def _count_missing(result: Result) -> int:
    return sum(gap.count for gap in result.layout.unplaced)


def _worth(result: Result) -> tuple[int, Decimal]:
    return _count_missing(result), result.cost
