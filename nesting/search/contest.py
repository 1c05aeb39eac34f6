"""The search for one problem: methods side by side, compared in rounds of fixed length.

Four searches with seeds of their own share the cores there are. After every round the best plan
becomes the goal of all; ties go to the lower number. How many cores there are, and how fast they
are, changes when a round ends, never what it finds.
"""

import os
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor, wait
from dataclasses import dataclass
from typing import TypeAlias

from nesting.search.bounds import Bound, bound_by_area, bound_by_functions
from nesting.search.deadline import NO_DEADLINE, Deadline
from nesting.search.packers import Packers
from nesting.search.pool import Pool
from nesting.search.problem import Plan, Problem, measure_plan
from nesting.search.proof import Prover
from nesting.search.recombine import Recombiner
from nesting.search.rectpack_packers import RectpackPackers
from nesting.search.repeat import Repeater
from nesting.search.ruin_recreate import RuinRecreate, mix_seed
from nesting.search.shortage import bound_missing

SEARCHES = 4
STEPS_PER_EFFORT = 6_000_000  # of each search
FIRST_ROUND = 200_000
LONGEST_ROUND = 4_000_000
FIRST_PACKING = 40_000  # steps; some milliseconds
MORE_PACKING = 8_000_000  # enough for every variant up to some 500 parts
LAST_PACKING = 100_000_000  # up to some 1,700 parts
SPARE_SHEETS = 100
FEW_PARTS = 65  # a job of so many parts gets half the work of a very large one
MANY_PARTS = 1500  # above this whole sheets are repeated first
MANY_KINDS = 250  # above this recombination costs more than it gives
FIRST_RECOMBINING = 1_000_000  # steps of each search before it
GROWTH = 1.5  # of the distance to the next one
LESS_WHERE_SHORT = 10  # the work is divided by this where it is proven that parts are left over
SURE_AFTER = 4  # the work is divided by this before parts are given up as left over
PATIENCE = 3  # and this many times the work that last placed more
RECOMBINING = 0.15  # most of the work that goes into it


Report: TypeAlias = Callable[[float, Plan, Bound], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """What the search for one problem has come to.

    Attributes:
        plan: The best plan.
        bound: What no plan can do with less.
        rounds: How many plans or changes of plans were tried.
        is_interrupted: True where the user stopped it.
    """

    plan: Plan
    bound: Bound
    rounds: int
    is_interrupted: bool = False


class Contest:
    """The search for one problem, until it is proven best or its work is done."""

    def __init__(
        self, problem: Problem, *, steps: int, seed: int, deadline: Deadline = NO_DEADLINE
    ) -> None:
        """Take note of the problem; nothing is computed yet."""
        self._problem = problem
        self._steps = steps * problem.copies**2 // (problem.copies**2 + FEW_PARTS**2)
        self._deadline = deadline
        self._first = RectpackPackers(problem, deadline=deadline)
        self._packers = Packers(problem, deadline=deadline)
        self._repeater = Repeater(problem, seed=seed, deadline=deadline)
        self._seed = seed
        self._searches: list[RuinRecreate] = []
        self._recombiner: Recombiner | None = None
        self._prover: Prover | None = None
        self._is_interrupted = False
        self.plan: Plan = ()
        self.bound = bound_by_area(problem)
        self._least_missing = bound_missing(problem)

    def run(self, *, report: Report) -> Found:
        """Search.

        Args:
            report: Told the fraction done, the best plan and the bound after every round.
        """
        try:
            self._run(report)
        except KeyboardInterrupt:
            self._is_interrupted = True
        return Found(
            plan=self.plan,
            bound=self.bound,
            rounds=self._first.rounds
            + self._packers.rounds
            + self._repeater.rounds
            + (self._recombiner.rounds if self._recombiner else 0)
            + sum(search.rounds for search in self._searches),
            is_interrupted=self._is_interrupted,
        )

    def is_done(self) -> bool:
        """Return whether no plan can be better."""
        bound = self.bound
        if self._least_missing > 0:
            bound = bound_by_area(self._problem, missing=self._least_missing)
        return measure_plan(self._problem, self.plan) <= (self._least_missing, bound.weight)

    def _run(self, report: Report) -> None:
        first = self._first if self._problem.copies <= MANY_PARTS else self._packers
        self.plan = first.improve(self.plan, FIRST_PACKING)
        report(0.0, self.plan, self.bound)
        if not self.is_done():
            self.bound = bound_by_functions(self._problem)
        if not self.is_done():
            self.plan = self._packers.improve(self.plan, MORE_PACKING)
        if self._must_end() or self._steps == 0:
            return
        self.plan = self._packers.improve(self.plan, LAST_PACKING)
        if self._must_end():
            return
        if self._is_short():
            self._steps //= LESS_WHERE_SHORT
        if self._problem.copies > MANY_PARTS or len(self._problem.sheets) > 1:
            self.plan = self._repeater.improve(self.plan, self._steps // SEARCHES)
        self._play_rounds(report)

    def _must_end(self) -> bool:
        return self.is_done() or self._deadline.is_over()

    def _is_short(self) -> bool:
        """Return whether no plan places everything: one sheet more is the answer, not work."""
        return self._least_missing > 0 or self.bound.is_out_of_reach

    def _is_hopeless(self, done: int, last_gain: int) -> bool:
        """Return whether parts are left over and have been for most of the work."""
        missing, _ = measure_plan(self._problem, self.plan)
        return missing > 0 and done >= max(self._steps // SURE_AFTER, PATIENCE * last_gain)

    def _play_rounds(self, report: Report) -> None:
        pool = Pool(self._problem)
        if self._may_recombine():
            self._recombiner = Recombiner(
                self._problem, pool, seed=self._seed, deadline=self._deadline
            )
            self._prover = Prover(self._problem, self._recombiner, deadline=self._deadline)
        self._searches = self._make_searches()
        done, length, next_time, last_gain = 0, FIRST_ROUND, FIRST_RECOMBINING, 0
        with ThreadPoolExecutor(max_workers=min(SEARCHES, os.cpu_count() or 1)) as workers:
            while done < self._steps and not self._must_end():
                missing, _ = measure_plan(self._problem, self.plan)
                length = min(length, self._steps - done)
                self._play(workers, length)
                done += length
                length = min(2 * length, LONGEST_ROUND)
                for search in self._searches if self._recombiner else ():
                    pool.add(search.hand_over())
                if done >= next_time and not self._must_end():
                    next_time = int(GROWTH * done)
                    self._recombine(done)
                if measure_plan(self._problem, self.plan)[0] < missing:
                    last_gain = done
                report(done / self._steps, self.plan, self.bound)
                if self._is_hopeless(done, last_gain):
                    break

    def _recombine(self, done: int) -> None:
        """Recombine what was seen, and try to prove that nothing is better."""
        recombiner, prover = self._recombiner, self._prover
        if recombiner is None or prover is None:
            return
        allowance = int(RECOMBINING * SEARCHES * done)
        self.plan = recombiner.improve(self.plan, allowance - recombiner.work)
        if measure_plan(self._problem, self.plan)[0] == 0 and not self.is_done():
            self.bound = prover.raise_bound(self.plan, self.bound, allowance - prover.work)

    def _may_recombine(self) -> bool:
        return len(self._problem.kinds) <= MANY_KINDS and self._problem.copies <= MANY_PARTS

    def _make_searches(self) -> list[RuinRecreate]:
        sheet_limit = 2 * len(self.plan) + SPARE_SHEETS
        return [
            RuinRecreate(
                self._problem,
                mix_seed(self._seed, number),
                target=self.bound.weight,
                sheet_limit=sheet_limit,
                is_keeping=self._recombiner is not None,
                number=number,
            )
            for number in range(SEARCHES)
        ]

    def _play(self, workers: ThreadPoolExecutor, steps: int) -> None:
        """Let every search work for a round, and keep the best plan.

        Where one reaches the bound, those behind it need not go on; at the deadline none need.
        """
        start = self.plan
        if self._recombiner:
            watched = self._recombiner.choose_watched(start)
            for search in self._searches:
                search.watch(watched)
        running = [workers.submit(search.improve, start, steps) for search in self._searches]
        try:
            for future in running:
                wait([future], timeout=self._deadline.count_left())
                if not future.done():
                    self._stop(running)
                if future.cancelled():
                    continue
                plan = future.result()
                if measure_plan(self._problem, plan) < measure_plan(self._problem, self.plan):
                    self.plan = plan
                if self.is_done():
                    break
        finally:
            if self._must_end() or not all(future.done() for future in running):
                self._stop(running)

    def _stop(self, running: list[Future[Plan]]) -> None:
        """End the searches: those that have not begun need not, the others need not go on."""
        for future in running:
            future.cancel()
        for search in self._searches:
            search.stop()
