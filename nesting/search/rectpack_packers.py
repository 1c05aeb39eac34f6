"""The first layout: guillotine packers of the rectpack library, the most promising first.

One variant takes about a millisecond for 25 parts, and its time grows with the square of their
number; so a large job begins with `nesting.search.packers`, which tries all variants.
"""

from collections.abc import Iterator, Sequence
from itertools import islice

import rectpack
from rectpack import guillotine, packer

from nesting.search.deadline import NO_DEADLINE, Deadline
from nesting.search.guillotine import Placed, find_tree
from nesting.search.packers import order_sheets
from nesting.search.problem import (
    LONG_ALONG_X,
    LONG_ALONG_Y,
    Plan,
    Problem,
    SheetPlan,
    measure_plan,
)

# In the order of trust: the first ones alone make a decent first layout.
FITS = ("Bssf", "Baf", "Blsf")
SPLITS = ("Sas", "Maxas", "Slas", "Llas", "Minas", "Las")
SORTS = (
    packer.SORT_AREA,
    packer.SORT_LSIDE,
    packer.SORT_SSIDE,
    packer.SORT_PERI,
    packer.SORT_DIFF,
    packer.SORT_RATIO,
    packer.SORT_NONE,
)
EITHER_WAY = LONG_ALONG_X | LONG_ALONG_Y
BIN_RULES = (rectpack.PackingBin.BFF, rectpack.PackingBin.BBF)


STEPS_PER_PAIR = 8  # work of one variant for every pair of parts, measured


class RectpackPackers:
    """The variants one after the other, as a search method.

    Attributes:
        rounds: How many variants were tried.
    """

    def __init__(self, problem: Problem, *, deadline: Deadline = NO_DEADLINE) -> None:
        """Begin with the first variant."""
        self._problem = problem
        self._deadline = deadline
        self._plans = pack_with_rectpack(problem)
        self.rounds = 0

    def improve(self, best: Plan, steps: int) -> Plan:
        """Try as many further variants as the work allows, at least one where there is one."""
        value = measure_plan(self._problem, best)
        cost = STEPS_PER_PAIR * self._problem.copies**2 + 1000
        for plan in islice(self._plans, max(1, steps // cost)):
            self.rounds += 1
            if measure_plan(self._problem, plan) < value:
                best, value = plan, measure_plan(self._problem, plan)
            if self._deadline.is_over():
                break
        return best


def pack_with_rectpack(problem: Problem) -> Iterator[Plan]:
    """Yield the plan of every variant that packs something.

    A variant is a rule for the place, one for the split, an order of parts, a rule for the sheet,
    an order of sheet kinds and a way to lie for the parts that may lie either way. Where every part
    may lie either way, rectpack turns them itself.
    """
    may_turn = all(
        set(kind.ways) <= {LONG_ALONG_X | LONG_ALONG_Y} or kind.long == kind.short
        for kind in problem.kinds
    )
    for order in order_sheets(problem):
        for sort in SORTS:
            for fit in FITS:
                for split in SPLITS:
                    for rule in BIN_RULES:
                        algorithm = getattr(guillotine, f"Guillotine{fit}{split}")
                        for preferred in (None,) if may_turn else (LONG_ALONG_X, LONG_ALONG_Y):
                            yield _pack(problem, order, algorithm, sort, rule, preferred)


def _pack(
    problem: Problem,
    order: Sequence[int],
    algorithm: type,
    sort: object,
    rule: object,
    preferred: int | None,
) -> Plan:
    """Return what one variant packs; sheets that break a rule of the job are left out."""
    offline = rectpack.newPacker(
        mode=rectpack.PackingMode.Offline,
        bin_algo=rule,
        pack_algo=algorithm,
        sort_algo=sort,
        rotation=preferred is None,
    )
    for number, kind in enumerate(problem.kinds):
        ways = kind.ways[order[0]] or max(kind.ways)
        lies_along_y = (
            preferred is not None and (ways if ways < EITHER_WAY else preferred) == LONG_ALONG_Y
        )
        sides = (kind.short, kind.long) if lies_along_y else (kind.long, kind.short)
        for _ in range(kind.copies):
            offline.add_rect(*sides, number)
    for number in order:
        sheet = problem.sheets[number]
        offline.add_bin(sheet.length, sheet.width, count=sheet.count, bid=number)
    offline.pack()
    plan = [_read_bin(problem, packed) for packed in offline]
    return tuple(sheet for sheet in plan if sheet is not None)


def _read_bin(problem: Problem, packed: rectpack.guillotine.Guillotine) -> SheetPlan | None:
    """Return one packed bin as a tree, or None where a part lies against its grain."""
    placed = []
    for rectangle in packed:
        kind = problem.kinds[rectangle.rid]
        side = 0 if rectangle.width == kind.long else 1
        if not kind.ways[packed.bid] & (side + 1):
            return None
        placed.append(
            Placed(
                code=2 * rectangle.rid + side,
                x=rectangle.x,
                y=rectangle.y,
                length=rectangle.width,
                width=rectangle.height,
            )
        )
    codes = find_tree(placed) if placed else None
    return None if codes is None else SheetPlan(kind=packed.bid, codes=codes)
