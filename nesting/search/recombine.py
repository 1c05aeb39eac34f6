"""Recombination: whole plans from sheets that any search has seen.

A pool holds every good sheet. The relaxed covering model over the pool says what a part is worth;
where it is at most the goal, an integer model over the sheets that can still matter looks for
whole ones. Where it is above the goal, the pool lacks sheets, and new ones are searched for with
what the parts are worth as their value.

References:
    Gilmore and Gomory (1961), Operations Research 9, 849-859 (columns by value); Monaci and Toth
    (2006), INFORMS J. Computing 18, 71-85 (set covering over heuristic sheets); from memory.
"""

from collections import Counter
from collections.abc import Sequence

import numpy as np

from nesting.search.covering import Covering, Relaxed, choose, scale_weights
from nesting.search.deadline import NO_DEADLINE, Deadline
from nesting.search.fill import single_out
from nesting.search.pool import Floats, Pool
from nesting.search.problem import Codes, Plan, Problem, SheetPlan, measure_plan
from nesting.search.ruin_recreate import RuinRecreate, Watched, mix_seed

STEPS_PER_ENTRY = 40  # work of one iteration of the solver for every row, measured
STEPS_PER_COLUMN = 12_000  # work of the integer model for every column, beside its iterations
COLUMNS_AT_ONCE = 150
MOST_COLUMNS = 1000  # of the integer model
MOST_COPIES = 150  # of several sheet kinds; above this the integer model costs too much
NODES = 100
FILL_STEPS = 400_000
WORTH_ONE = 2**30  # a sheet of the heaviest kind, in whole numbers
ALMOST = 0.97
MISSES = 6  # tries that find no sheet worth its cost before there is none
TOLERANCE = 1e-6


class Recombiner:
    """Plans from the sheets of a pool, as a search method.

    Attributes:
        rounds: How many models were solved.
        work: Steps used so far.
        relaxed: The last solution of the relaxed model, None before the first.
    """

    def __init__(
        self, problem: Problem, pool: Pool, *, seed: int, deadline: Deadline = NO_DEADLINE
    ) -> None:
        """Begin with a pool, to which others may add."""
        self._deadline = deadline
        self._problem = problem
        self._pool = pool
        self._seed = seed
        self._weights = scale_weights(problem)
        self._columns: list[int] = []
        self._covering = Covering(problem)
        self.rounds = 0
        self.work = 0
        self.relaxed: Relaxed | None = None

    def improve(self, best: Plan, steps: int) -> Plan:
        """Recombine the sheets of the pool, and make new ones where they are too few."""
        end = self.work + steps
        self._use(self._pool.add(best))
        relaxed = self.relax()
        missing, weight = measure_plan(self._problem, best)
        goal = self._set_goal(weight)
        while relaxed.weight > goal + TOLERANCE and missing == 0 and self.work < end:
            if self._deadline.is_over() or not self._make_sheets(relaxed):
                return best
            relaxed = self.relax()
        if (
            (self._problem.copies > MOST_COPIES and len(self._problem.sheets) > 1)
            or self.work >= end
            or self._deadline.is_over()
            or (missing == 0 and relaxed.weight > goal + TOLERANCE)
        ):
            return best
        return self._choose(best, relaxed, goal if missing == 0 else np.inf)

    def choose_watched(self, best: Plan) -> Watched:
        """Return which sheets a plan that is lighter than the best could use."""
        problem, relaxed = self._problem, self.relaxed
        missing, weight = measure_plan(problem, best)
        nothing = tuple(0 for _ in problem.sheets)
        waste = tuple(sheet.area for sheet in problem.sheets)
        if missing == 0:
            slack = _buy_area(problem, weight - 1) - problem.area
            waste = tuple(min(area, slack) for area in waste)
        if relaxed is None or missing > 0:
            return Watched(waste=waste, worths=tuple(0 for _ in problem.kinds), least=nothing)
        room = max(1 - ALMOST, self._set_goal(weight) - relaxed.weight)
        return Watched(
            waste=waste,
            worths=tuple(int(WORTH_ONE * worth) for worth in relaxed.worths),
            least=tuple(int(WORTH_ONE * (cost - room)) for cost in self._weights + relaxed.fees),
        )

    def _set_goal(self, weight: int) -> float:
        """Return what a plan must not weigh to be lighter than a weight; unit as in `Relaxed`."""
        return (weight - 0.5) / max(sheet.weight for sheet in self._problem.sheets)

    def round_down(self, steps: int) -> list[SheetPlan]:
        """Return the sheets of the relaxed model as often as they are used whole.

        Args:
            steps: Most work for new sheets, which are made until some tries in a row find none.
        """
        end = self.work + steps
        relaxed, misses = self.relax(), 0
        while misses < MISSES and self.work < end and not self._deadline.is_over():
            misses = 0 if self._make_sheets(relaxed) else misses + 1
            relaxed = self.relax()
        return [
            self._pool[number]
            for number, use in zip(self._columns, relaxed.uses.tolist(), strict=True)
            for _ in range(int(use + TOLERANCE))
        ]

    def take_in(self, sheets: Sequence[SheetPlan]) -> None:
        """Add sheets to the pool and to the relaxed model."""
        self._use(self._pool.add(sheets))

    def _use(self, numbers: Sequence[int]) -> None:
        """Give sheets of the pool to the relaxed model."""
        new = sorted(set(numbers) - set(self._columns))
        if new:
            kinds = self._pool.list_sheet_kinds()[new]
            self._covering.add(self._pool.counts[new], kinds)
            self._columns += new

    def relax(self) -> Relaxed:
        """Solve the relaxed model over the whole pool: solve, add the best sheets, repeat."""
        while True:
            relaxed = self._covering.solve()
            self.rounds += 1
            self.work += STEPS_PER_ENTRY * len(self._problem.kinds) * (relaxed.iterations + 10)
            burdens = self._price(relaxed)
            order = np.argsort(burdens, kind="stable")[:COLUMNS_AT_ONCE]
            better = [int(number) for number in order if burdens[number] < -TOLERANCE]
            if not set(better) - set(self._columns) or self._deadline.is_over():
                self.relaxed = relaxed
                staying = self._pool.compact(burdens, self._columns)
                self._columns = [staying[number] for number in self._columns]
                return relaxed
            self._use(better)

    def _price(self, relaxed: Relaxed) -> Floats:
        """Return what each sheet of the pool costs above what its parts are worth."""
        costs = self._weights + relaxed.fees
        self.work += len(self._pool)
        priced: Floats = costs[self._pool.list_sheet_kinds()] - self._pool.counts @ relaxed.worths
        return priced

    def _make_sheets(self, relaxed: Relaxed) -> bool:
        """Search for sheets whose parts are worth more than they cost; tell whether one was new."""
        before = len(self._pool)
        copies = [kind.copies for kind in self._problem.kinds]
        values = [int(WORTH_ONE * worth) for worth in relaxed.worths]
        costs = self._weights + relaxed.fees
        for number in range(len(self._problem.sheets)):
            single = single_out(self._problem, number, copies, values)
            if single is None:
                continue
            self.rounds += 1
            search = RuinRecreate(
                single.problem,
                mix_seed(self._seed, self.rounds),
                values=single.values,
                target=1,
                sheet_limit=1,
                is_keeping=True,
            )
            least = int(WORTH_ONE * (costs[number] + TOLERANCE)) + 1
            area = single.problem.sheets[0].area
            search.watch(Watched(waste=(area,), worths=single.values, least=(least,)))
            search.advance(FILL_STEPS)
            self.work += search.work
            self._pool.add(
                SheetPlan(kind=number, codes=single.rename(sheet.codes))
                for sheet in search.hand_over()
            )
        return len(self._pool) > before

    def _choose(self, best: Plan, relaxed: Relaxed, goal: float) -> Plan:
        """Return the best plan of whole sheets, over those that a plan within the goal may use."""
        burdens = self._price(relaxed)
        room = goal - relaxed.weight + TOLERANCE
        order = np.argsort(burdens, kind="stable")[:MOST_COLUMNS]
        numbers = [int(number) for number in order if burdens[number] <= room]
        kinds = self._pool.list_sheet_kinds()[numbers]
        chosen = choose(
            self._problem,
            self._pool.counts[numbers],
            kinds,
            below=goal,
            nodes=NODES,
            seconds=self._deadline.count_left(),
        )
        self.rounds += 1
        self.work += STEPS_PER_ENTRY * len(self._problem.kinds) * chosen.iterations
        self.work += STEPS_PER_COLUMN * len(numbers)
        if chosen.uses is None:
            return best
        plan = leave_out_surplus(
            self._problem,
            [
                self._pool[number]
                for number, use in zip(numbers, chosen.uses, strict=True)
                for _ in range(use)
            ],
        )
        better = measure_plan(self._problem, plan) < measure_plan(self._problem, best)
        return plan if better else best


def _buy_area(problem: Problem, weight: int) -> int:
    """Return an upper bound on the area of sheets that together weigh no more than a weight."""
    area = 0
    for sheet in sorted(problem.sheets, key=lambda sheet: sheet.weight / sheet.area):
        used = min(sheet.count * sheet.weight, weight)
        area += -(-used * sheet.area // sheet.weight)
        weight -= used
    return area


def leave_out_surplus(problem: Problem, sheets: Sequence[SheetPlan]) -> Plan:
    """Return the sheets without the parts of which they hold more than are needed."""
    left = Counter({number: kind.copies for number, kind in enumerate(problem.kinds)})
    plan = []
    for sheet in sheets:
        codes = _keep(sheet.codes, left)
        if codes:
            plan.append(SheetPlan(kind=sheet.kind, codes=codes))
    return tuple(plan)


def _keep(codes: Codes, left: Counter[int]) -> Codes:
    """Return a tree with only those parts that are left to cut, and count these off."""
    stack: list[list[int]] = []
    for code in codes:
        if code >= 0:
            is_wanted = left[code // 2] > 0
            left[code // 2] -= int(is_wanted)
            stack.append([code] if is_wanted else [])
            continue
        second, first = stack.pop(), stack.pop()
        stack.append([*first, *second, code] if first and second else first or second)
    return tuple(stack[0])
