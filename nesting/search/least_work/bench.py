"""From a problem and a plan to the arrays that the kernels work on, and back."""

from fractions import Fraction
from math import log
from typing import TypeAlias

import numpy as np

from nesting.cut_sequence import piece_mass_kg
from nesting.job import Job
from nesting.layout import Rect
from nesting.lengths import NM_PER_MM
from nesting.search.least_work import kernels
from nesting.search.problem import SIDE_BY_SIDE, STACKED, Plan, Problem
from nesting.search.rows import Row

Sheets: TypeAlias = tuple[tuple[int, Row], ...]
"""For every sheet its kind and what is cut from it."""

UNPLACED_SHEET = 1000_000
UNPLACED_PART = 50_000
TOO_LONG = 200_000
NARROW = 300
TIDY = 100
"""Thousandths of a minute: for a sheet's area unplaced, a part unplaced, a cut longer than the
guide, a cut across a piece too narrow to hold, and the most that large leftovers take off a sheet.
The first two as measured by trials; the others are judgement."""

NEVER = 2**60


def make_bench(job: Job, problem: Problem, plan: Plan, seed: int) -> kernels.Bench:
    """Return the arrays for a plan that places every part of a problem.

    Args:
        job: The job, for its saw and its times.
        problem: The parts, and the kinds of sheet.
        plan: Where they are.
        seed: The random state to start from, not 0.
    """
    copies = problem.copies
    columns = 2 * copies + len(plan) + 8
    state = np.zeros((kernels.ROWS, columns), dtype=np.int64)
    state[kernels.SLOT] = kernels.NOTHING
    state[kernels.ROOT] = kernels.NOTHING
    state[kernels.SPARE, :copies] = np.arange(copies, 2 * copies)[::-1]
    state[kernels.TOTAL, kernels.N_SPARE] = copies
    sheets = _list_sheets(job, problem, plan)
    slots = len(plan)
    state[kernels.FREE, :slots] = sheets[kernels.SHEET_AREA]
    counts = np.array([kind.copies for kind in problem.kinds], dtype=np.int64)
    control = np.zeros(kernels.CONTROLS, dtype=np.int64)
    control[kernels.RANDOM] = seed
    control[kernels.BEST_WORK] = kernels.NEVER
    bench = kernels.Bench(
        state=state,
        best=state.copy(),
        log=np.zeros((2, 64 * columns + 4096), dtype=np.int64),
        control=control,
        scratch=np.zeros((8, 2 * columns), dtype=np.int64),
        cuts=np.zeros((kernels.CUT_ROWS, 4 * columns), dtype=np.int64),
        table=np.zeros((3, 1 << (8 * columns).bit_length()), dtype=np.int64),
        fail=np.full((len(problem.kinds), slots), -1, dtype=np.int64),
        kinds=_list_kinds(problem),
        kind_of=np.repeat(np.arange(len(problem.kinds), dtype=np.int64), counts),
        sheets=sheets,
        ways=np.array(
            [[kind.ways[sheet.kind] for kind in problem.kinds] for sheet in plan], dtype=np.int64
        ),
        rates=_list_rates(job, problem),
        luck=np.array(
            [round(-1024 * log((number + 0.5) / kernels.LUCK)) for number in range(kernels.LUCK)],
            dtype=np.int64,
        ),
    )
    _build(bench, plan)
    return bench


def _build(bench: kernels.Bench, plan: Plan) -> None:
    """Put the plan's trees on the slots; the parts of a kind are handed out in order."""
    counts: dict[int, int] = {}
    firsts = np.searchsorted(bench.kind_of, np.arange(bench.kinds.shape[1]))
    for slot, sheet in enumerate(plan):
        parts = []
        for code in sheet.codes:
            if code >= 0:
                kind = code // 2
                parts.append(int(firsts[kind]) + counts.get(kind, 0))
                counts[kind] = counts.get(kind, 0) + 1
        kernels.build(
            bench, slot, np.array(sheet.codes, dtype=np.int64), np.array(parts, dtype=np.int64)
        )
    kernels.keep_best(bench)


def _list_kinds(problem: Problem) -> kernels.Ints:
    """Return the rows of `Bench.kinds`."""
    largest = max(sheet.area for sheet in problem.sheets)
    rows = [
        [kind.long for kind in problem.kinds],
        [kind.short for kind in problem.kinds],
        [kind.area for kind in problem.kinds],
        [UNPLACED_PART + UNPLACED_SHEET * kind.area // largest for kind in problem.kinds],
    ]
    return np.array(rows, dtype=np.int64)


def _list_sheets(job: Job, problem: Problem, plan: Plan) -> kernels.Ints:
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


def _list_rates(job: Job, problem: Problem) -> kernels.Ints:
    """Return `Bench.rates`."""
    times, grid = job.times, problem.grid
    sheet = job.sheets[problem.sheets[0].sheet]
    square = 1000 * NM_PER_MM
    mass = piece_mass_kg(sheet, Rect(x=0, y=0, length=square, width=square))
    heavy = int(Fraction(job.saw.lift_limit_kg) / mass * square * square / (grid * grid))
    rates = np.zeros(kernels.RATES, dtype=np.int64)
    rates[kernels.CUT] = round(1000 * times.cut)
    rates[kernels.STEP] = round(Fraction(times.metre) * grid * (1 << kernels.STEP_BITS) / NM_PER_MM)
    rates[kernels.SETTING] = round(1000 * times.setting)
    rates[kernels.TURN] = round(1000 * times.turn)
    rates[kernels.LIFT] = round(1000 * times.lift)
    rates[kernels.HEAVY] = min(heavy, NEVER)
    rates[kernels.TOO_LONG] = TOO_LONG
    rates[kernels.GUIDE] = min((job.saw.guide_length + job.saw.kerf) // grid, NEVER)
    rates[kernels.NARROW] = NARROW
    rates[kernels.HELD] = -(-(job.saw.smallest_held + job.saw.kerf) // grid)
    rates[kernels.TIDY] = TIDY
    return rates


def read_sheets(bench: kernels.Bench, plan: Plan) -> Sheets:
    """Return the best plan of a bench; sheets left empty are left out."""
    roots = [int(bench.best[kernels.ROOT, slot]) for slot in range(len(plan))]
    return tuple(
        (sheet.kind, _read_row(bench, root))
        for sheet, root in zip(plan, roots, strict=True)
        if root >= 0
    )


def _read_row(bench: kernels.Bench, root: int) -> Row:
    """Return a tree as rows."""
    best = bench.best
    join = int(best[kernels.JOIN, root])
    length, width = int(best[kernels.LENGTH, root]), int(best[kernels.WIDTH, root])
    manner = int(best[kernels.MANNER, root])
    if join == kernels.LEAF:
        kind = int(bench.kind_of[root])
        side = 0 if length == bench.kinds[kernels.LONG, kind] else 1
        return Row(join=2 * kind + side, length=length, width=width, manner=manner)
    pieces = []
    waiting = [root]
    while waiting:
        node = waiting.pop()
        if best[kernels.JOIN, node] == join:
            waiting += [int(best[kernels.RIGHT, node]), int(best[kernels.LEFT, node])]
        else:
            pieces.append(_read_row(bench, node))
    return Row(
        join=SIDE_BY_SIDE if join == kernels.SIDE else STACKED,
        length=length,
        width=width,
        pieces=tuple(pieces),
        manner=manner,
    )
