"""Whole sheets of the relaxed model, for jobs with many copies of few part kinds.

With many copies the relaxed covering model uses most of its sheets many times over. So these are
cut whole times, and only what the fractions stand for is left to be searched. New sheets are found
by what parts are worth in the model, until none is or the work is done.

References:
    Gilmore and Gomory (1961), Operations Research 9, 849-859 (rounding down and going on with the
    rest), from memory.
"""

from collections import Counter

from nesting.search.bounds import Bound
from nesting.search.deadline import NO_DEADLINE, Deadline
from nesting.search.pool import Pool
from nesting.search.problem import Plan, Problem, count_kinds, measure_plan
from nesting.search.proof import Prover
from nesting.search.recombine import Recombiner, leave_out_surplus
from nesting.search.repeat import Repeater


class Multiples:
    """The relaxed model of one problem, its whole sheets and its bound."""

    def __init__(self, problem: Problem, *, seed: int, deadline: Deadline = NO_DEADLINE) -> None:
        """Take note of the problem; nothing is computed yet."""
        self._problem = problem
        self._deadline = deadline
        self._repeater = Repeater(problem, seed=seed, deadline=deadline)
        self._recombiner = Recombiner(problem, Pool(problem), seed=seed, deadline=deadline)
        self._prover = Prover(problem, self._recombiner, deadline=deadline)

    def cut(self, steps: int) -> tuple[Plan, list[int]]:
        """Return whole sheets, and how many of each part kind are left over.

        Args:
            steps: Most work.
        """
        first, _ = self._repeater.cut_down(leave=0)
        self._recombiner.take_in(first)
        plan = leave_out_surplus(self._problem, self._recombiner.round_down(steps))
        cut: Counter[int] = Counter()
        for sheet in plan:
            cut.update(count_kinds(sheet.codes))
        left = [kind.copies - cut[number] for number, kind in enumerate(self._problem.kinds)]
        return plan, left

    def raise_bound(self, plan: Plan, bound: Bound, work: int) -> Bound:
        """Return a bound at least as good as the given one; of use where the plan is complete."""
        if measure_plan(self._problem, plan)[0] > 0:
            return bound
        return self._prover.raise_bound(plan, bound, work)
