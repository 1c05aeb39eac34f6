"""Sheet after sheet: fill one well, cut as many like it as there are parts for, and go on.

Strong where there are many copies, or several kinds of sheet to choose from: every sheet is chosen
by what its parts cost on it.

References:
    Haessler (1971), Management Science 17, B793-B802 (the sequential heuristic), from memory.
"""

from collections.abc import Sequence

from nesting.search.deadline import NO_DEADLINE, Deadline
from nesting.search.fill import fill_sheet
from nesting.search.problem import Plan, Problem, SheetPlan, count_kinds, measure_plan
from nesting.search.ruin_recreate import mix_seed

STEPS_PER_FILL = 100_000
TASTES = (100, 110, 103, 120)  # exponents of the area in hundredths: more takes large parts first


class Repeater:
    """One plan after the other, as a search method; each prefers large parts by another measure.

    Attributes:
        rounds: How many sheets were filled.
    """

    def __init__(self, problem: Problem, *, seed: int, deadline: Deadline = NO_DEADLINE) -> None:
        """Begin with the first measure."""
        self._deadline = deadline
        self._problem = problem
        self._seed = seed
        self._plans = 0
        self.rounds = 0

    def improve(self, best: Plan, steps: int) -> Plan:
        """Make as many plans as the work allows, at least one.

        Where the deadline comes first, a plan may end half made, and then counts as such.
        """
        value = measure_plan(self._problem, best)
        end = self.rounds * STEPS_PER_FILL + steps
        is_first = True
        while is_first or self.rounds * STEPS_PER_FILL < end:
            if self._deadline.is_over():
                break
            is_first = False
            plan, _ = self.cut_down(leave=0)
            if measure_plan(self._problem, plan) < value:
                best, value = plan, measure_plan(self._problem, plan)
        return best

    def cut_down(self, *, leave: int) -> tuple[Plan, list[int]]:
        """Return full sheets, and how many of each part kind are left over.

        Args:
            leave: Stop when no more parts than this are left, or at the deadline.
        """
        problem = self._problem
        values = _value_kinds(problem, TASTES[self._plans % len(TASTES)])
        seed = mix_seed(self._seed, self._plans)
        self._plans += 1
        left = [kind.copies for kind in problem.kinds]
        stock = [sheet.count for sheet in problem.sheets]
        plan: list[SheetPlan] = []
        while sum(left) > leave and not self._deadline.is_over():
            filled = []
            for number in range(len(problem.sheets)):
                if stock[number] > 0:
                    self.rounds += 1
                    codes = fill_sheet(
                        problem,
                        number,
                        left,
                        steps=STEPS_PER_FILL,
                        seed=seed + self.rounds,
                        values=values,
                    )
                    if codes:
                        filled.append(SheetPlan(kind=number, codes=codes))
            if not filled:
                break
            best = min(filled, key=lambda sheet: _price_value(problem, sheet, values))
            counts = count_kinds(best.codes)
            times = min(left[kind] // count for kind, count in counts.items())
            times = min(times, stock[best.kind])
            plan += times * [best]
            stock[best.kind] -= times
            for kind, count in counts.items():
                left[kind] -= times * count
        return tuple(plan), left


def _value_kinds(problem: Problem, taste: int) -> list[int]:
    """Return what a part of each kind is worth: its area to a power, the largest about 2**40."""
    largest = max(kind.area for kind in problem.kinds)
    return [max(1, int(2**40 * (kind.area / largest) ** (taste / 100))) for kind in problem.kinds]


def _price_value(problem: Problem, sheet: SheetPlan, values: Sequence[int]) -> float:
    """Return the weight that a sheet costs for what its parts are worth."""
    worth = sum(values[kind] * count for kind, count in count_kinds(sheet.codes).items())
    return problem.sheets[sheet.kind].weight / worth
