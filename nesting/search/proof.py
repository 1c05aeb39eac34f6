"""Proofs that no plan is lighter, by what parts are worth.

Let every part be worth something, and let no sheet of a kind hold parts worth more than a limit of
that kind. Then the sheets bought must have limits that together reach the worth of all parts. The
relaxed covering model says what the parts should be worth; worths and limits are whole numbers, and
that no sheet is worth more is searched exactly, so the bound holds whatever the solver rounds.
Where a sheet worth more turns up, it joins the pool and the parts are valued anew.

References:
    Farley (1990), Operations Research 38, 922-923 (bounds before all columns are there), from
    memory.
"""

from nesting.search.bounds import Bound, cover
from nesting.search.deadline import NO_DEADLINE, Deadline
from nesting.search.knapsack import Table
from nesting.search.pricing import Pricer
from nesting.search.problem import Plan, Problem, SheetPlan, measure_plan
from nesting.search.recombine import Recombiner

FINENESS = 2**26  # what a sheet of the heaviest kind is worth, in whole numbers
SHORTFALL = 0.002  # how far below the relaxed model a bound stays that cannot reach the goal
TRIES = 40
TOLERANCE = 1e-6


class Prover:
    """Raises the bound of one problem.

    Attributes:
        work: Work done so far, in the unit of the searches.
    """

    def __init__(
        self, problem: Problem, recombiner: Recombiner, *, deadline: Deadline = NO_DEADLINE
    ) -> None:
        """Begin with the pool and the worths of a recombiner."""
        self._deadline = deadline
        self._problem = problem
        self._recombiner = recombiner
        self._pricers = [Pricer(problem, sheet) for sheet in range(len(problem.sheets))]
        self._tables = [Table(problem, sheet) for sheet in range(len(problem.sheets))]
        self.work = 0

    def raise_bound(self, plan: Plan, bound: Bound, work: int) -> Bound:
        """Return a bound at least as good as the given one.

        Args:
            plan: The best plan, everything placed.
            bound: What is known already.
            work: Most work.
        """
        end = self.work + work
        goal = measure_plan(self._problem, plan)[1] - 1
        if goal <= 0:
            return bound
        for _ in range(TRIES):
            worths, limits = self._set_limits(goal)
            found: list[SheetPlan] = []
            rooms: list[int] = []
            for sheet, limit in enumerate(limits):
                rich, room = self._search(sheet, worths, limit, end)
                found += rich
                rooms += [room] if room is not None else []
            if len(rooms) == len(limits):
                bound = bound.join(cover(self._problem, self._sum(worths), rooms))
            if not found or self.work >= end or self._deadline.is_over():
                break
            self._recombiner.take_in(found)
        return bound

    def _sum(self, worths: list[int]) -> int:
        """Return what all parts are worth."""
        kinds = self._problem.kinds
        return sum(kind.copies * worth for kind, worth in zip(kinds, worths, strict=True))

    def _set_limits(self, goal: int) -> tuple[list[int], list[int]]:
        """Return worths, and for each sheet kind the limit at which the goal is out of reach.

        Where the relaxed model does not pass the goal, limits are a little above what sheets cost.
        """
        relaxed = self._recombiner.relax()
        sheets = self._problem.sheets
        worths = [int(FINENESS * worth) for worth in relaxed.worths]
        wanted = self._sum(worths)
        heaviest = max(sheet.weight for sheet in sheets)
        fees = [int(fee * heaviest) for fee in relaxed.fees]
        budget = goal + sum(
            fee * sheet.count for fee, sheet in zip(fees, sheets, strict=True) if fee
        )
        if relaxed.weight > goal / heaviest + TOLERANCE:
            return worths, [
                (wanted - 1) * (sheet.weight + fee) // budget
                for sheet, fee in zip(sheets, fees, strict=True)
            ]
        return worths, [
            int(FINENESS * (1 + SHORTFALL) * (sheet.weight + fee) / heaviest)
            for sheet, fee in zip(sheets, fees, strict=True)
        ]

    def _search(
        self, sheet: int, worths: list[int], limit: int, end: int
    ) -> tuple[list[SheetPlan], int | None]:
        """Return sheets worth more than a limit, and what no sheet is worth more than, if known."""
        if self.work >= end or self._deadline.is_over():
            return [], None
        found, is_complete, used = self._pricers[sheet].find(worths, limit, end - self.work)
        self.work += used
        if is_complete:
            return found, max([limit, *(self._measure(rich, worths) for rich in found)])
        table = self._tables[sheet]
        if self.work + table.work >= end or self._deadline.is_over():
            return found, None
        self.work += table.work
        return found, table.measure(worths)

    @staticmethod
    def _measure(sheet: SheetPlan, worths: list[int]) -> int:
        return sum(worths[code // 2] for code in sheet.codes if code >= 0)
