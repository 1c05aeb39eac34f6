"""From a layout to one with less work at the same sheets."""

import os
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, replace

from nesting.job import Job
from nesting.layout import Layout
from nesting.search.grid import list_groups, make_problem
from nesting.search.least_work.alike import cut_alike
from nesting.search.least_work.annealing import Annealing
from nesting.search.least_work.cutter import PlannedSheet, cut_sheets
from nesting.search.least_work.groups import split_by_match
from nesting.search.least_work.reading_back import ReadBack, read_back
from nesting.search.least_work.value import Scale, Value, pick_best
from nesting.search.ruin_recreate import mix_seed

RUNS = 4
ROUNDS_PER_EFFORT = 25_000  # of all runs together
FEW_PARTS, SOME_PARTS = 64, 128  # between these there are up to twice the rounds
MANY_PARTS = 200  # beyond these a round takes longer, so that there are fewer
FEW_SHEETS = 8  # so many are put in order more than once


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """What the second search has come to.

    Attributes:
        layout: The best layout.
        rounds: How many changes were tried.
        is_interrupted: True where the user stopped it.
    """

    layout: Layout
    rounds: int
    is_interrupted: bool


def less_work(
    job: Job, layout: Layout, *, effort: int, seed: int, deadline: float | None = None
) -> Layout:
    """Return a layout with no more work, at the same sheets and with the same parts.

    See `find_less_work`.
    """
    return find_less_work(job, layout, effort=effort, seed=seed, deadline=deadline).layout


def find_less_work(
    job: Job,
    layout: Layout,
    *,
    effort: int,
    seed: int,
    deadline: float | None = None,
    report: Callable[[float], None] | None = None,
) -> Worked:
    """Search for a layout with less work, at the same sheets and with the same parts.

    It never has more minutes than the given one, unless that has cuts longer than the guide, which
    cannot be made; at equal minutes the better leftovers win. The same job, layout, effort and seed
    give the same layout. Ends early at the deadline or on KeyboardInterrupt, with the best until
    then; no exception is raised.

    Args:
        job: Parts, sheets, saw and times.
        layout: Where to begin.
        effort: How much work to do at most; 0 keeps the layout.
        seed: Any whole number.
        deadline: Time of `time.monotonic` at which to stop, None for never.
        report: Told the fraction done, now and then.
    """
    groups = [back for back in _read_groups(job, layout) if back.problem.copies > 1]
    copies = sum(back.problem.copies for back in groups)
    search = _Search(job, seed, deadline, report)
    for back in groups:
        if effort <= 0 or search.must_stop:
            break
        size = back.problem.copies / copies
        rounds = effort * ROUNDS_PER_EFFORT * back.problem.copies // copies
        rounds = rounds * min(max(FEW_PARTS, copies), SOME_PARTS) // FEW_PARTS
        rounds = rounds * min(MANY_PARTS, copies) // copies
        plans = search.run(back, rounds, size)
        layout = search.choose(layout, back, plans)
    return Worked(layout=layout, rounds=search.rounds, is_interrupted=search.is_interrupted)


def _read_groups(job: Job, layout: Layout) -> Iterator[ReadBack]:
    """Yield the problems of a layout, one for each material and thickness."""
    for group in list_groups(job):
        problem = make_problem(job, *group)
        back = None if problem is None else read_back(job, split_by_match(job, problem), layout)
        if back is not None:
            yield back


class _Search:
    """The search over all groups of a job."""

    def __init__(
        self,
        job: Job,
        seed: int,
        deadline: float | None,
        report: Callable[[float], None] | None,
    ) -> None:
        self._job = job
        self._seed = seed
        self._deadline = deadline
        self._report = report
        self._scale = Scale(job)
        self._done = 0.0
        self.rounds = 0
        self.is_interrupted = False

    @property
    def must_stop(self) -> bool:
        """Whether the user or the clock says so."""
        is_late = self._deadline is not None and time.monotonic() >= self._deadline
        return self.is_interrupted or is_late

    def run(self, back: ReadBack, rounds: int, size: float) -> list[tuple[PlannedSheet, ...]]:
        """Return the best plans of several runs, the one with the least work first.

        Args:
            back: Where to begin.
            rounds: How many changes to try in all runs together.
            size: Fraction of the whole search that this is.
        """
        runs = [
            Annealing(
                self._job,
                back.problem,
                back.plan,
                rounds=rounds // RUNS,
                seed=mix_seed(self._seed, number),
            )
            for number in range(RUNS)
        ]
        try:
            self._advance(runs, size)
        except KeyboardInterrupt:
            self.is_interrupted = True
        self.rounds += sum(run.rounds for run in runs)
        self._done += size
        order = sorted(range(RUNS), key=lambda number: (runs[number].work, number))
        found = [sheets for number in order for sheets in runs[number].read()]
        return list(dict.fromkeys(found))

    def _advance(self, runs: list[Annealing], size: float) -> None:
        with ThreadPoolExecutor(max_workers=min(RUNS, os.cpu_count() or 1)) as workers:
            while not (runs[0].is_done or self.must_stop):
                for future in [workers.submit(run.advance) for run in runs]:
                    future.result()
                if self._report is not None:
                    self._report(self._done + size * runs[0].done)

    def choose(
        self, layout: Layout, back: ReadBack, plans: list[tuple[PlannedSheet, ...]]
    ) -> Layout:
        """Return the layout with the best of some plans for one group put in, or as it was."""
        tries = RUNS if back.problem.copies > FEW_PARTS else 2 * RUNS
        if len(back.plan) > FEW_SHEETS:
            tries = 1
        layouts = [layout]
        values: list[Value] = []
        try:
            values.append(self._scale.weigh(layout))
            for plan in plans[:tries]:
                alike = cut_alike(plan, lambda sheet: self._weigh_sheet(back, sheet))
                changed = _put_in(self._job, layout, back, alike)
                value = self._scale.weigh(changed)
                if not value.is_worse_work(values[0]):
                    layouts.append(changed)
                    values.append(value)
                if self.must_stop:
                    break
        except KeyboardInterrupt:
            self.is_interrupted = True
        return layouts[pick_best(values)] if values else layout

    def _weigh_sheet(self, back: ReadBack, sheet: PlannedSheet) -> Value:
        return self._scale.weigh(Layout(sheets=cut_sheets(self._job, back.problem, (sheet,))))


def _put_in(job: Job, layout: Layout, back: ReadBack, plan: tuple[PlannedSheet, ...]) -> Layout:
    """Return the layout with the sheets of a group cut in another way, in their places."""
    new = iter(cut_sheets(job, back.problem, plan))
    kinds = {kind.sheet for kind in back.problem.sheets}
    sheets = []
    for sheet in layout.sheets:
        changed = next(new, None) if sheet.sheet in kinds else sheet
        if changed is not None:
            sheets.append(changed)
    return replace(layout, sheets=tuple(sheets))
