"""First layouts: the guillotine heuristics on free rectangles, all of their variants.

They take milliseconds, and what the search returns is never worse than the best of them.
"""

from collections.abc import Callable, Iterator, Sequence
from itertools import product

import numpy as np

from nesting.search import free_rectangles
from nesting.search.deadline import NO_DEADLINE, Deadline
from nesting.search.free_rectangles import Floor, Ints
from nesting.search.guillotine import Placed, find_tree
from nesting.search.problem import Plan, Problem, SheetPlan, measure_plan

# In the order of trust: the first ones alone make a decent first layout.
SORTS: tuple[Callable[[int, int], object], ...] = (
    lambda x, y: x * y,
    lambda x, y: (max(x, y), min(x, y)),
    lambda x, y: (min(x, y), max(x, y)),
    lambda x, y: x + y,
    lambda x, y: abs(x - y),
    lambda x, y: x / y,
    lambda x, y: 0,  # noqa: ARG005 - in the order of the problem
)
FITS, SPLITS, RULES, SIDES = range(3), range(6), range(2), range(2)
LOOKS_PER_STEP = 8  # looks at a free rectangle that take as long as a step of the search


class Packers:
    """The variants one after the other, as a search method.

    Attributes:
        rounds: How many variants were tried.
    """

    def __init__(self, problem: Problem, *, deadline: Deadline = NO_DEADLINE) -> None:
        """Begin with the first variant."""
        self._problem = problem
        self._deadline = deadline
        self._variants = pack_variants(problem)
        self._work = 0
        self.rounds = 0

    def improve(self, best: Plan, steps: int) -> Plan:
        """Try as many further variants as the work allows, at least one where there is one."""
        value = measure_plan(self._problem, best)
        end = self._work + steps
        for floor in self._variants:
            self.rounds += 1
            self._work += int(floor.counts[free_rectangles.LOOKS]) // LOOKS_PER_STEP + 1
            if _measure(self._problem, floor) < value:
                plan = read_plan(self._problem, floor)
                if measure_plan(self._problem, plan) < value:
                    best, value = plan, measure_plan(self._problem, plan)
            if self._work >= end or self._deadline.is_over():
                break
        return best


def pack_variants(problem: Problem) -> Iterator[Floor]:
    """Yield what every variant packs, the most promising variants first.

    A variant is an order of sheet kinds, an order of parts, a rule for the place, one for the cut,
    one for the sheet, and the side that parts lie on where both are as good. Use what is yielded
    before the next: the arrays are the same.
    """
    for order in order_sheets(problem):
        seen = set()
        for sort, lying in product(SORTS, SIDES):
            floor = _make_floor(problem, order, sort, lying)
            if (floor.parts[2].tobytes(), lying) in seen:  # another measure, the same order
                continue
            seen.add((floor.parts[2].tobytes(), lying))
            stock = floor.stock.copy()
            for fit, split, rule in product(FITS, SPLITS, RULES):
                floor.stock[:] = stock
                free_rectangles.pack(floor, fit, split, rule, lying)
                yield floor


def order_sheets(problem: Problem) -> list[Sequence[int]]:
    """Return orders of sheet kinds worth trying: by price per area, and each kind first."""
    numbers = range(len(problem.sheets))
    cheapest = sorted(
        numbers, key=lambda number: problem.sheets[number].weight / problem.sheets[number].area
    )
    orders: list[Sequence[int]] = [cheapest]
    orders += [
        [first, *(number for number in cheapest if number != first)] for first in cheapest[1:]
    ]
    return orders


def _make_floor(
    problem: Problem, order: Sequence[int], sort: Callable[[int, int], object], lying: int
) -> Floor:
    """Return the arrays for packing with the parts in an order."""
    kinds = problem.kinds
    sides = [(kind.short, kind.long) if lying else (kind.long, kind.short) for kind in kinds]
    numbers = sorted(range(len(kinds)), key=lambda kind: sort(*sides[kind]), reverse=True)  # type: ignore[arg-type,return-value]
    rows = [
        (kinds[number].long, kinds[number].short, number)
        for number in numbers
        for _ in range(kinds[number].copies)
    ]
    return free_rectangles.make_floor(
        parts=_list([list(row) for row in zip(*rows, strict=True)]),
        sheets=_list([[s.length for s in problem.sheets], [s.width for s in problem.sheets]]),
        ways=_list(
            [[kind.ways[number] for kind in kinds] for number in range(len(problem.sheets))]
        ),
        order=_list(list(order)),
        stock=_list([sheet.count for sheet in problem.sheets]),
    )


def _list(numbers: Sequence[int] | Sequence[Sequence[int]]) -> Ints:
    return np.array(numbers, dtype=np.int64)


def _measure(problem: Problem, floor: Floor) -> tuple[int, int]:
    """Return the area that a packing leaves unplaced and its weight."""
    places, parts = floor.places, floor.parts
    missing = sum(
        problem.kinds[kind].area for kind in parts[2, places[free_rectangles.SHEET] < 0].tolist()
    )
    count = int(floor.counts[free_rectangles.N_BEGUN])
    used = floor.begun[free_rectangles.KIND, :count].tolist()
    return missing, sum(problem.sheets[sheet].weight for sheet in used)


def read_plan(problem: Problem, floor: Floor) -> Plan:
    """Return a packing as trees; a sheet that edge to edge cuts cannot part is left out."""
    count = int(floor.counts[free_rectangles.N_BEGUN])
    sheets: list[list[Placed]] = [[] for _ in range(count)]
    for (sheet, side, x, y), kind in zip(
        floor.places.T.tolist(), floor.parts[2].tolist(), strict=True
    ):
        if sheet >= 0:
            part = problem.kinds[kind]
            length, width = (part.short, part.long) if side else (part.long, part.short)
            sheets[sheet].append(Placed(code=2 * kind + side, x=x, y=y, length=length, width=width))
    trees = [find_tree(placed) for placed in sheets]
    kinds = floor.begun[free_rectangles.KIND, :count].tolist()
    return tuple(
        SheetPlan(kind=kind, codes=codes)
        for kind, codes in zip(kinds, trees, strict=True)
        if codes is not None
    )
