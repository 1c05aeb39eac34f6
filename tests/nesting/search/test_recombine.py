from itertools import combinations_with_replacement

import numpy as np
import pytest

from nesting.lengths import mm
from nesting.saw import Saw
from nesting.search.covering import Covering, choose
from nesting.search.grid import make_problem
from nesting.search.pool import Pool
from nesting.search.problem import (
    SIDE_BY_SIDE,
    STACKED,
    Plan,
    Problem,
    SheetPlan,
    count_kinds,
    measure_plan,
)
from nesting.search.recombine import Recombiner, leave_out_surplus
from nesting.search.ruin_recreate import RuinRecreate, Watched, mix_seed
from tests.nesting.search.jobs import BIRCH, make_job, make_part, make_sheet

# Bars of 110: 20 48 times, 45 35 times, 50 24 times, 55 10 times, 75 8 times. The relaxed model
# needs 46.25 bars, whole ones 47 (cut.dat of the AMPL book, solved again by column generation).
LENGTHS = {20: 48, 45: 35, 50: 24, 55: 10, 75: 8}


@pytest.fixture(name="bars")
def make_bars() -> Problem:
    parts = [make_part(str(length), length, 10, count) for length, count in LENGTHS.items()]
    job = make_job(parts, [make_sheet(length=110, width=10)], saw=Saw(kerf=0))
    problem = make_problem(job, BIRCH, mm(18))
    assert problem is not None
    return problem


def list_bars(problem: Problem) -> list[SheetPlan]:
    """Return every way to fill one bar."""
    sheet = problem.sheets[0]
    bars = []
    for count in range(1, 6):
        for kinds in combinations_with_replacement(range(len(problem.kinds)), count):
            if sum(problem.kinds[kind].long for kind in kinds) <= sheet.length:
                codes = [2 * kinds[0]]
                for kind in kinds[1:]:
                    codes += [2 * kind, SIDE_BY_SIDE]
                bars.append(SheetPlan(kind=0, codes=tuple(codes)))
    return bars


def cut_one_by_one(problem: Problem) -> Plan:
    return tuple(
        SheetPlan(kind=0, codes=(2 * number,))
        for number, kind in enumerate(problem.kinds)
        for _ in range(kind.copies)
    )


def test_the_relaxed_and_the_whole_model_give_the_published_values(bars: Problem) -> None:
    pool = Pool(bars)
    pool.add(list_bars(bars))
    covering = Covering(bars)
    covering.add(pool.counts, pool.list_sheet_kinds())
    relaxed = covering.solve()
    assert relaxed.weight == pytest.approx(46.25)
    wanted = np.array([kind.copies for kind in bars.kinds])
    assert relaxed.worths @ wanted == pytest.approx(46.25)
    chosen = choose(bars, pool.counts, pool.list_sheet_kinds(), below=100, nodes=400)
    assert chosen.uses is not None
    assert sum(chosen.uses) == 47


def test_recombination_takes_whole_plans_from_a_pool(bars: Problem) -> None:
    pool = Pool(bars)
    pool.add(list_bars(bars))
    plan = Recombiner(bars, pool, seed=1).improve(cut_one_by_one(bars), 10_000_000)
    assert measure_plan(bars, plan) == (0, 47 * bars.sheets[0].weight)


def test_recombination_finds_its_own_sheets_where_the_pool_has_none(bars: Problem) -> None:
    plan = Recombiner(bars, Pool(bars), seed=1).improve(cut_one_by_one(bars), 100_000_000)
    assert measure_plan(bars, plan)[0] == 0
    assert 47 <= len(plan) <= 49


def test_a_pool_holds_every_mix_of_parts_once(bars: Problem) -> None:
    pool = Pool(bars)
    first = SheetPlan(kind=0, codes=(0, 2, SIDE_BY_SIDE))
    mirrored = SheetPlan(kind=0, codes=(2, 0, SIDE_BY_SIDE))
    other = SheetPlan(kind=0, codes=(0,))
    assert pool.add([first, other, mirrored]) == [0, 1, 0]
    assert len(pool) == 2
    assert pool.counts.sum(axis=1).tolist() == [2, 1]


def test_a_pool_that_is_too_large_keeps_the_best_half(
    bars: Problem, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("nesting.search.pool.MOST_SHEETS", 10)
    pool = Pool(bars)
    sheets = list_bars(bars)[:12]
    pool.add(sheets)
    staying = pool.compact(np.arange(12.0)[::-1], [0])
    assert staying == {0: 0, 7: 1, 8: 2, 9: 3, 10: 4, 11: 5}
    assert [pool[number] for number in range(len(pool))] == [sheets[old] for old in staying]
    assert pool.counts.sum() == sum(
        len(sheet.codes) // 2 + 1 for sheet in map(pool.__getitem__, range(6))
    )


def test_surplus_parts_are_left_out_and_the_rest_keeps_its_tree(bars: Problem) -> None:
    kinds = {bars.kinds[number].long: number for number in range(len(bars.kinds))}
    large = 2 * next(number for length, number in kinds.items() if bars.kinds[number].copies == 8)
    small = 2 * next(number for length, number in kinds.items() if bars.kinds[number].copies == 48)
    sheet = SheetPlan(kind=0, codes=(large, small, STACKED, small, SIDE_BY_SIDE))
    plan = leave_out_surplus(bars, 10 * [sheet])
    assert plan[:8] == 8 * (sheet,)
    assert plan[8:] == 2 * (SheetPlan(kind=0, codes=(small, small, SIDE_BY_SIDE)),)


def test_a_search_hands_over_good_sheets_once(bars: Problem) -> None:
    search = RuinRecreate(bars, mix_seed(1, 0), is_keeping=True)
    least = 100
    lengths = tuple(kind.long for kind in bars.kinds)
    waste = bars.sheets[0].area
    step = bars.sheets[0].length / 110
    search.watch(Watched(waste=(waste,), worths=lengths, least=(int(least * step),)))
    search.advance(500_000)
    sheets = search.hand_over()
    mixes = [tuple(sorted(count_kinds(sheet.codes).items())) for sheet in sheets]
    assert len(mixes) == len(set(mixes)) > 5
    for mix in mixes:
        assert least * step <= sum(lengths[kind] * count for kind, count in mix)
    assert search.hand_over() == []
