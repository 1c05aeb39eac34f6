"""The compiled second search: least work at fixed sheets.

There is one way in, `work`, because each would be compiled together with all that it calls.

References:
    Kirkpatrick, Gelatt and Vecchi (1983), Science 220, 671-680 (annealing); from memory.
"""

from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import TypeAlias

from nesting.search import kernels
from nesting.search.compiled import compiled, inner
from nesting.search.least_work.arrays import (
    BEST_WORK,
    CLOCK,
    CODE,
    COST,
    DEEPEST,
    HEAT,
    HUNDRED,
    LUCK,
    MISSING,
    N_SETTINGS,
    N_UNPLACED,
    NOTHING,
    ORDERED,
    REST,
    ROOT,
    ROUND,
    SETTING,
    SUM,
    TIDY,
    TOTAL,
    TREE_MOVES,
    TURN,
    VERSION,
    WEIGHED,
    WORK,
    Bench,
)
from nesting.search.least_work.cutting import list_cuts
from nesting.search.least_work.matching import weigh_matches
from nesting.search.least_work.moves import move_tree
from nesting.search.least_work.ordering import (
    OPENED,
    STEADY_OPENED,
    STEADY_TURNED,
    TURNED,
    weigh_order,
)
from nesting.search.least_work.placing import recreate, ruin
from nesting.search.least_work.trees import draw, put, take_back

Work: TypeAlias = Callable[[Bench, int, int], None]
"""Takes all arrays, how many rounds to make, and the slot whose cuts are listed then (NOTHING for
none). Sheets with a version above WEIGHED are weighed first."""


LARGEST_CODE = 2**31


@inner
def weigh_changed(bench: Bench, before: int) -> None:
    """Find the minutes of the sheets changed since a time of the clock.

    They are in thousandths, less something for large leftovers.
    """
    state, log, control, rates = bench.state, bench.log, bench.control, bench.rates
    for slot in range(bench.sheets.shape[1]):
        if state[VERSION, slot] <= before:
            continue
        cost = -rates[TIDY]
        if state[ROOT, slot] != NOTHING:
            list_cuts(bench, slot)
            cost = control[SUM] - control[REST] * rates[TIDY] // 1000000
            if control[ORDERED] == 1:
                plain = weigh_order(bench, OPENED, TURNED)
                cost += min(plain, weigh_order(bench, STEADY_OPENED, STEADY_TURNED))
            else:
                cost += rates[SETTING] * control[N_SETTINGS] + rates[TURN] * control[DEEPEST]
        weigh_matches(bench, slot)
        put(state, log, TOTAL, WORK, state[TOTAL, WORK] + cost - state[COST, slot])
        put(state, log, COST, slot, cost)


@inner
def keep_best(bench: Bench) -> None:
    """Copy the state where everything is placed with less work than ever before."""
    state, control, best = bench.state, bench.control, bench.best
    if state[TOTAL, N_UNPLACED] > 0 or state[TOTAL, WORK] >= control[BEST_WORK]:
        return
    control[BEST_WORK] = state[TOTAL, WORK]
    for row in range(best.shape[0]):
        for column in range(best.shape[1]):
            best[row, column] = state[row, column]


@cache
def load() -> Work:
    """Return `work`, whose compiled code is kept for this state of its modules only.

    The cache looks at the module of the function itself and at what it encloses, not at what it
    calls; so it encloses a number that changes with any file of this folder, and with that of the
    first search, whose score it shares.
    """
    files = (*Path(__file__).parent.glob("*.py"), Path(kernels.__file__))
    code = sum(file.stat().st_mtime_ns for file in files) % LARGEST_CODE

    @compiled
    def work(bench: Bench, rounds: int, slot: int) -> None:
        """Weigh what was changed from outside, make rounds, list the cuts of a slot."""
        state, log, control = bench.state, bench.log, bench.control
        control[CODE] = code
        weigh_changed(bench, control[WEIGHED])
        keep_best(bench)
        for _ in range(rounds):
            control[ROUND] += 1
            log[0, 0] = 0
            log[1, 0] = 0
            clock = control[CLOCK]
            before = state[TOTAL, WORK] + state[TOTAL, MISSING]
            if draw(control, HUNDRED) >= control[TREE_MOVES]:
                ruin(bench)
            elif not move_tree(bench):
                take_back(state, log)
                continue
            if state[TOTAL, N_UNPLACED] > 0:
                recreate(bench)
            weigh_changed(bench, clock)
            after = state[TOTAL, WORK] + state[TOTAL, MISSING]
            threshold = control[HEAT] * bench.luck[draw(control, LUCK)] >> 10
            if after - before > threshold and log[1, 0] == 0:
                take_back(state, log)
            else:
                keep_best(bench)
        log[0, 0] = 0
        control[WEIGHED] = control[CLOCK]
        if slot != NOTHING:
            list_cuts(bench, slot)

    return work
