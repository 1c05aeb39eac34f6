"""Trials: a job with some sizes changed by steps, planned, and what was found remembered."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import TypeAlias

from nesting.buying import Solve, price_yard_cuts
from nesting.first_cuts import count_left_outside, is_handled_whole
from nesting.job import Job
from nesting.near_misses.sizes import Change, change_size, describe_change
from nesting.search.result import Result
from nesting.terms import Free

Steps: TypeAlias = tuple[int, ...]
"""By how many steps each size changes."""

Gaps: TypeAlias = tuple[int, int]
"""How many parts have no place, and how many sheets do not get home."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NearMiss:
    """A change of one size, or of two at once, that lowers the price.

    Attributes:
        changes: The sizes, each with the nearest value at which the price falls so far.
        cost: Price of the sheets and of the yard's cuts then.
        cost_before: The same now.
        sheets: Number of sheets bought then.
        sheets_before: Number of sheets bought now.
    """

    changes: tuple[Change, ...]
    cost: Decimal
    cost_before: Decimal
    sheets: int
    sheets_before: int

    @property
    def change(self) -> int:
        """By how much sizes change in all."""
        return sum(abs(each.after - each.before) for each in self.changes)


@dataclass(slots=True, kw_only=True)
class Trials:
    """What is known of some sizes, each changed step by step in one direction.

    Attributes:
        job: The job as it is.
        base: Its plan.
        sizes: The sizes, each with 1 for larger or -1 for smaller.
        first_look: Plans quickly, for a first layout and a bound.
        solve: Plans thoroughly.
        results: What was found for every change that was planned.
        searches: How many searches were thorough.
    """

    job: Job
    base: Result
    sizes: Sequence[tuple[Free, int]]
    first_look: Solve
    solve: Solve
    results: dict[Steps, Result] = field(default_factory=dict)
    searches: int = 0
    _jobs: dict[Steps, Job | None] = field(default_factory=dict)

    def most(self, index: int) -> int:
        """Return by how many steps a size may change."""
        return self.sizes[index][0].limit // self.job.step

    def changed(self, steps: Steps) -> Job | None:
        """Return the job with the sizes changed; None where it cannot be built."""
        if steps not in self._jobs:
            job: Job | None = self.job
            for (free, sign), count in zip(self.sizes, steps, strict=True):
                if job is not None and count:
                    job = change_size(job, free, sign * count * self.job.step)
            self._jobs[steps] = job
        return self._jobs[steps]

    def cost(self, steps: Steps) -> Decimal:
        """Return what is paid for a change that was planned."""
        job = self.changed(steps)
        assert job is not None, "what cannot be built is not planned"
        return price(job, self.results[steps])

    def costs_less(self, steps: Steps, than: Decimal) -> bool:
        """Return whether a plan was found that costs less and leaves out no more.

        Raises:
            KeyboardInterrupt: The user stopped a search.
        """
        job = self.changed(steps)
        if job is None:
            return False
        known = self.results.get(steps)
        for look in (self.first_look, self.solve):
            if known is None or self._bound(job, known) < price(job, known):
                found = look(job)
                self.searches += look is self.solve
                if found.interrupted:
                    raise KeyboardInterrupt
                if known is None or _worth(job, found) < _worth(job, known):
                    known = found
            if self._bound(job, known) >= than or self._is_less(job, known, than):
                break
        assert known is not None
        self.results[steps] = known
        return self._is_less(job, known, than)

    def describe(self, steps: Steps) -> NearMiss:
        """Return a change that was found to cost less."""
        changed = self.changed(steps)
        assert changed is not None, "what cannot be built is not planned"
        return NearMiss(
            changes=tuple(describe_change(self.job, changed, free) for free, _ in self.sizes),
            cost=self.cost(steps),
            cost_before=price(self.job, self.base),
            sheets=_count_bought(changed, self.results[steps]),
            sheets_before=_count_bought(self.job, self.base),
        )

    def _bound(self, job: Job, found: Result) -> Decimal:
        """Return what any plan that gets as much home must cost: its sheets, and a cut in each."""
        if job.yard is None:
            return found.bound
        must_be_cut = sum(
            known.sheet_bound
            for known in found.groups
            if not any(
                is_handled_whole(job, sheet)
                for sheet in job.sheets
                if (sheet.material, sheet.thickness) == (known.material, known.thickness)
            )
        )
        _, outside = _gaps(self.job, self.base)
        return found.bound + job.yard.price_per_cut * max(0, must_be_cut - outside)

    def _is_less(self, job: Job, found: Result, than: Decimal) -> bool:
        allowed = zip(_gaps(job, found), _gaps(self.job, self.base), strict=True)
        return price(job, found) < than and all(now <= before for now, before in allowed)


def price(job: Job, result: Result) -> Decimal:
    """Return what a plan costs: its sheets, and the yard's cuts."""
    return result.cost + price_yard_cuts(job, result.layout)


def _gaps(job: Job, result: Result) -> Gaps:
    missing = sum(gap.count for gap in result.layout.unplaced)
    return missing, count_left_outside(job, result.layout)


def _worth(job: Job, result: Result) -> tuple[Gaps, Decimal]:
    return _gaps(job, result), price(job, result)


def _count_bought(job: Job, result: Result) -> int:
    return sum(not job.sheets[sheet.sheet].owned for sheet in result.layout.sheets)
