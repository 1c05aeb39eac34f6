"""From a problem and a plan to the arrays that the kernels work on."""

from fractions import Fraction
from math import log

import numpy as np

from nesting.cut_sequence import piece_mass_kg
from nesting.job import Job
from nesting.layout import Rect
from nesting.lengths import NM_PER_MM
from nesting.search.least_work import arrays
from nesting.search.least_work.groups import list_matches
from nesting.search.least_work.prices import MISS, NARROW, SLIVER, TIDY, TOO_LONG
from nesting.search.problem import SIDE_BY_SIDE, Codes, Plan, Problem

UNPLACED_SHEET = 1000_000
UNPLACED_PART = 50_000
"""Thousandths of a minute for a sheet's area unplaced and for a part; measured by trials."""

NEVER = 2**60


def make_bench(job: Job, problem: Problem, plan: Plan, seed: int) -> arrays.Bench:
    """Return the arrays for a plan that places every part of a problem; nothing is weighed yet.

    Args:
        job: The job, for its saw and its times.
        problem: The parts, and the kinds of sheet.
        plan: Where they are.
        seed: The random state to start from, not 0.
    """
    copies, slots = problem.copies, len(plan)
    matches = list_matches(job, problem)
    columns = 2 * copies + slots + 8
    state = np.zeros((arrays.MATCHED + len(matches.partners), columns), dtype=np.int64)
    state[arrays.SLOT] = arrays.NOTHING
    state[arrays.ROOT] = arrays.NOTHING
    state[arrays.SPARE, :copies] = np.arange(copies, 2 * copies)[::-1]
    state[arrays.TOTAL, arrays.N_SPARE] = copies
    state[arrays.TOTAL, arrays.WORK] = MISS * matches.members
    sheets = _list_sheets(job, problem, plan)
    state[arrays.FREE, :slots] = sheets[arrays.SHEET_AREA]
    control = np.zeros(arrays.CONTROLS, dtype=np.int64)
    control[arrays.RANDOM] = seed
    bench = arrays.Bench(
        state=state,
        best=state.copy(),
        log=np.zeros((2, 64 * columns + 4096), dtype=np.int64),
        control=control,
        scratch=np.zeros((8, 2 * columns), dtype=np.int64),
        cuts=np.zeros((arrays.CUT_ROWS, 4 * columns), dtype=np.int64),
        table=np.zeros((3, 1 << (8 * columns).bit_length()), dtype=np.int64),
        fail=np.full((len(problem.kinds), slots), -1, dtype=np.int64),
        kinds=np.array([*_list_kinds(problem), *matches.rows], dtype=np.int64),
        kind_of=np.repeat(
            np.arange(len(problem.kinds)), [kind.copies for kind in problem.kinds]
        ).astype(np.int64),
        sheets=sheets,
        ways=np.array(
            [[kind.ways[sheet.kind] for kind in problem.kinds] for sheet in plan], dtype=np.int64
        ),
        rates=_list_rates(job, problem),
        luck=np.array(
            [round(-1024 * log((number + 0.5) / arrays.LUCK)) for number in range(arrays.LUCK)],
            dtype=np.int64,
        ),
        partners=np.array(matches.partners, dtype=np.int64),
    )
    _build(bench, plan)
    return bench


def _build(bench: arrays.Bench, plan: Plan) -> None:
    """Put the plan's trees on the slots; the parts of a kind are handed out in order."""
    following = np.searchsorted(bench.kind_of, np.arange(bench.kinds.shape[1])).tolist()
    for slot, sheet in enumerate(plan):
        _build_tree(bench, slot, sheet.codes, following)


def _build_tree(bench: arrays.Bench, slot: int, codes: Codes, following: list[int]) -> None:
    """Build the tree that postfix codes describe; `following` is each kind's next part."""
    state, kinds = bench.state, bench.kinds
    stack: list[int] = []
    for code in codes:
        if code >= 0:
            kind = code // 2
            node = following[kind]
            following[kind] += 1
            state[arrays.LENGTH, node] = kinds[code % 2, kind]
            state[arrays.WIDTH, node] = kinds[1 - code % 2, kind]
            state[arrays.SLOT, node] = slot
            state[arrays.FREE, slot] -= kinds[arrays.AREA, kind]
        else:
            right, left = stack.pop(), stack.pop()
            state[arrays.TOTAL, arrays.N_SPARE] -= 1
            node = int(state[arrays.SPARE, state[arrays.TOTAL, arrays.N_SPARE]])
            state[arrays.LEFT, node], state[arrays.RIGHT, node] = left, right
            state[arrays.PARENT, [left, right]] = node
            state[arrays.JOIN, node] = arrays.SIDE if code == SIDE_BY_SIDE else arrays.STACK
            for row, joined in ((arrays.LENGTH, SIDE_BY_SIDE), (arrays.WIDTH, SIDE_BY_SIDE - 1)):
                sizes = (int(state[row, left]), int(state[row, right]))
                state[row, node] = sum(sizes) if code == joined else max(sizes)
        state[arrays.PARENT, node] = arrays.NOTHING
        stack.append(node)
    state[arrays.ROOT, slot] = stack[0]


def _list_kinds(problem: Problem) -> list[list[int]]:
    """Return the first rows of `Bench.kinds`."""
    largest = max(sheet.area for sheet in problem.sheets)
    return [
        [kind.long for kind in problem.kinds],
        [kind.short for kind in problem.kinds],
        [kind.area for kind in problem.kinds],
        [UNPLACED_PART + UNPLACED_SHEET * kind.area // largest for kind in problem.kinds],
    ]


def _list_sheets(job: Job, problem: Problem, plan: Plan) -> arrays.Ints:
    """Return the rows of `Bench.sheets`.

    A piece is a step larger than what can be used where something must be cut off beyond it.
    """
    columns = []
    for used in plan:
        kind = problem.sheets[used.kind]
        sheet = job.sheets[kind.sheet]
        real_x = sheet.length - sheet.trim.left + job.saw.kerf
        real_y = sheet.width - sheet.trim.bottom + job.saw.kerf
        columns.append(
            [
                kind.length,
                kind.width,
                -(-real_x // problem.grid),
                -(-real_y // problem.grid),
                kind.area,
                used.kind,
            ]
        )
    return np.array(columns, dtype=np.int64).T.copy()


def _list_rates(job: Job, problem: Problem) -> arrays.Ints:
    """Return `Bench.rates`."""
    times, grid = job.times, problem.grid
    sheet = job.sheets[problem.sheets[0].sheet]
    square = 1000 * NM_PER_MM
    mass = piece_mass_kg(sheet, Rect(x=0, y=0, length=square, width=square))
    heavy = int(Fraction(job.saw.lift_limit_kg) / mass * square * square / (grid * grid))
    rates = np.zeros(arrays.RATES, dtype=np.int64)
    rates[arrays.CUT] = round(1000 * times.cut)
    rates[arrays.STEP] = round(Fraction(times.metre) * grid * (1 << arrays.STEP_BITS) / NM_PER_MM)
    rates[arrays.SETTING] = round(1000 * times.setting)
    rates[arrays.TURN] = round(1000 * times.turn)
    rates[arrays.LIFT] = round(1000 * times.lift)
    rates[arrays.HEAVY] = min(heavy, NEVER)
    rates[arrays.TOO_LONG] = TOO_LONG
    rates[arrays.GUIDE] = min((job.saw.guide_length + job.saw.kerf) // grid, NEVER)
    rates[arrays.NARROW] = NARROW
    rates[arrays.HELD] = -(-(job.saw.smallest_held + job.saw.kerf) // grid)
    rates[arrays.SLIVER] = SLIVER
    rates[arrays.GONE] = job.saw.kerf // grid
    rates[arrays.TIDY] = TIDY
    rates[arrays.MISS] = MISS
    return rates
