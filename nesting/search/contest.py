"""The search for one problem: methods side by side, compared in rounds of fixed length.

Four searches with seeds of their own share the cores there are. After every round the best plan
becomes the goal of all; ties go to the lower number. How many cores there are, and how fast they
are, changes when a round ends, never what it finds.
"""

import os
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

from nesting.search.bounds import Bound, bound_by_area, bound_by_functions
from nesting.search.packers import Packers
from nesting.search.problem import Plan, Problem, measure_plan
from nesting.search.ruin_recreate import RuinRecreate, mix_seed

SEARCHES = 4
STEPS_PER_EFFORT = 6_000_000  # of each search
FIRST_ROUND = 200_000
LONGEST_ROUND = 4_000_000
FIRST_PACKING = 200_000  # steps; some milliseconds
LAST_PACKING = 30_000_000
SPARE_SHEETS = 100


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

    def __init__(self, problem: Problem, *, steps: int, seed: int) -> None:
        """Take note of the problem; nothing is computed yet."""
        self._problem = problem
        self._steps = steps
        self._seed = seed
        self._packers = Packers(problem)
        self._searches: list[RuinRecreate] = []
        self._is_interrupted = False
        self.plan: Plan = ()
        self.bound = bound_by_area(problem)

    def run(
        self, *, must_stop: Callable[[], bool], report: Callable[[float, Plan, Bound], None]
    ) -> Found:
        """Search.

        Args:
            must_stop: Asked between rounds.
            report: Told the fraction done, the best plan and the bound after every round.
        """
        try:
            self._run(must_stop, report)
        except KeyboardInterrupt:
            self._is_interrupted = True
        return Found(
            plan=self.plan,
            bound=self.bound,
            rounds=self._packers.rounds + sum(search.rounds for search in self._searches),
            is_interrupted=self._is_interrupted,
        )

    def is_done(self) -> bool:
        """Return whether no plan can be better."""
        return measure_plan(self._problem, self.plan) <= (0, self.bound.weight)

    def _run(
        self, must_stop: Callable[[], bool], report: Callable[[float, Plan, Bound], None]
    ) -> None:
        self.plan = self._packers.improve(self.plan, FIRST_PACKING)
        report(0.0, self.plan, self.bound)
        if not self.is_done():
            self.bound = bound_by_functions(self._problem)
        self._searches = self._make_searches()
        done, length = 0, FIRST_ROUND
        with ThreadPoolExecutor(max_workers=min(SEARCHES, os.cpu_count() or 1)) as workers:
            while done < self._steps and not self.is_done() and not must_stop():
                length = min(length, self._steps - done)
                self._play(workers, length)
                done += length
                length = min(2 * length, LONGEST_ROUND)
                report(done / self._steps, self.plan, self.bound)
        if not self.is_done() and not must_stop():
            self.plan = self._packers.improve(self.plan, LAST_PACKING)

    def _make_searches(self) -> list[RuinRecreate]:
        sheet_limit = 2 * len(self.plan) + SPARE_SHEETS
        return [
            RuinRecreate(
                self._problem,
                mix_seed(self._seed, number),
                target=self.bound.weight,
                sheet_limit=sheet_limit,
            )
            for number in range(SEARCHES)
        ]

    def _play(self, workers: ThreadPoolExecutor, steps: int) -> None:
        """Let every search work for a round, and keep the best plan.

        Where one reaches the bound, those behind it that have not begun need not begin.
        """
        start = self.plan
        running = [workers.submit(search.improve, start, steps) for search in self._searches]
        for number, future in enumerate(running):
            plan = future.result()
            if measure_plan(self._problem, plan) < measure_plan(self._problem, self.plan):
                self.plan = plan
            if self.is_done():
                for later in running[number + 1 :]:
                    later.cancel()
                return
