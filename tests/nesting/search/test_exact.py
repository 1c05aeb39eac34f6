"""Exact methods: one sheet, and bounds, against published optima and constraint programming."""

import random
from collections import Counter

import pytest

from nesting.saw import Saw
from nesting.search.any_size import search_problem
from nesting.search.bounds import bound_by_functions
from nesting.search.fill import fill_sheet, value_of
from nesting.search.grid import make_problem
from nesting.search.knapsack import Table, list_points
from nesting.search.pool import Pool
from nesting.search.pricing import Pricer
from nesting.search.problem import Plan, Problem, SheetPlan, count_kinds
from nesting.search.proof import Prover
from nesting.search.recombine import Recombiner
from tests.instances.published import (
    MATERIAL,
    THICKNESS,
    Knapsack,
    make_published_job,
    read_knapsacks,
    read_set,
)
from tests.nesting.search.jobs import BIRCH, make_job, make_part, make_sheet
from tests.nesting.search.test_methods import check_plan
from tests.nesting.search.test_published import count_sheets_exactly, make_tiny_job

ENOUGH = 10**9


def get_knapsack(name: str, *, may_turn: bool = False) -> Knapsack:
    (found,) = [item for item in read_knapsacks(may_turn=may_turn) if item.name == name]
    return found


def test_pieces_end_where_rows_of_parts_can_end() -> None:
    # Sums of 5 and 7 up to 20 are 0 5 7 10 12 14 15 17 19 20; those in the nearer half, and what
    # is the largest sum beside each sum: 20, 15, 12, 10, 7, 5, 0.
    assert list_points([5, 7], 20).tolist() == [0, 5, 7, 10, 12, 15, 20]


@pytest.mark.parametrize("may_turn", [False, True])
def test_a_table_gives_the_published_optimum_of_every_knapsack_without_limits(
    *, may_turn: bool
) -> None:
    # Values see `tests/instances/knapsacks.json`; gcut13 takes seconds and is benchmarked.
    names = [f"gcut{number}" for number in range(1, 13)]
    tried = 0
    for knapsack in read_knapsacks(may_turn=may_turn):
        if knapsack.name in names:
            table = Table(knapsack.problem, 0)
            assert table.measure(knapsack.values) == knapsack.optimum
            codes = table.fill(knapsack.values)
            assert value_of(codes, knapsack.values) == knapsack.optimum
            check_plan(knapsack.problem, (SheetPlan(kind=0, codes=codes),))
            tried += 1
    assert tried > 5


def test_filling_is_exact_where_copies_do_not_run_out_and_keeps_to_them_where_they_do() -> None:
    knapsack = get_knapsack("gcut1")
    plenty = [kind.copies for kind in knapsack.problem.kinds]
    codes = fill_sheet(knapsack.problem, 0, plenty, steps=1000, seed=1, values=knapsack.values)
    assert value_of(codes, knapsack.values) == knapsack.optimum
    one_each = [1 for _ in plenty]
    codes = fill_sheet(knapsack.problem, 0, one_each, steps=1000, seed=1, values=knapsack.values)
    assert max(count_kinds(codes).values()) == 1


@pytest.mark.parametrize("name", ["cgcut1", "ngcut1", "ngcut3"])
def test_pricing_gives_the_published_optimum_of_small_knapsacks_with_limits(name: str) -> None:
    # 244 (Christofides and Whitlock 1977); 164 and 247 (Beasley 1985): see knapsacks.json.
    knapsack = get_knapsack(name)
    problem = knapsack.problem
    found, is_complete, _ = Pricer(problem, 0).find(list(knapsack.values), 0, ENOUGH)
    assert is_complete
    values = [value_of(sheet.codes, knapsack.values) for sheet in found]
    assert values[-1] == max(values) == knapsack.optimum
    for sheet in found:
        check_plan(problem, (sheet,))
    assert Pricer(problem, 0).find(list(knapsack.values), knapsack.optimum, ENOUGH)[:2] == (
        [],
        True,
    )


def test_pricing_and_the_table_agree_where_copies_do_not_run_out() -> None:
    compared = 0
    for number in range(12):
        dice = random.Random(number)  # noqa: S311 - a test, not a lock
        parts = [
            make_part(f"part {kind}", dice.randint(5, 20), dice.randint(4, 14), 60)
            for kind in range(4)
        ]
        job = make_job(parts, [make_sheet(length=24, width=17)], saw=Saw(kerf=0))
        problem = make_problem(job, BIRCH, job.sheets[0].thickness)
        assert problem is not None
        values = [kind.area + dice.randint(0, 9) for kind in problem.kinds]
        found, is_complete, _ = Pricer(problem, 0).find(values, 0, ENOUGH)
        if is_complete:
            compared += 1
            assert value_of(found[-1].codes, values) == Table(problem, 0).measure(values)
    assert compared >= 6


def prove(problem: Problem, plan: Plan) -> int:
    """Return the least number of sheets that is proven for a problem."""
    recombiner = Recombiner(problem, Pool(problem), seed=1)
    plan = recombiner.improve(plan, 20_000_000)
    bound = Prover(problem, recombiner).raise_bound(plan, bound_by_functions(problem), ENOUGH)
    return bound.sheets


def test_bounds_of_tiny_jobs_are_what_constraint_programming_finds() -> None:
    proven = 0
    for number in range(25):
        job = make_tiny_job(number)
        problem = make_problem(job, BIRCH, job.sheets[0].thickness)
        assert problem is not None
        alone = tuple(
            SheetPlan(kind=0, codes=(2 * kind,))
            for kind, part in enumerate(problem.kinds)
            for _ in range(part.copies)
        )
        bound, least = prove(problem, alone), count_sheets_exactly(job, 12, 10)
        assert bound <= least
        proven += bound == least
    assert proven >= 23


@pytest.mark.parametrize(
    ("cell", "may_turn", "best"),
    [
        # Best published sums over ten instances: Gardeyn and Wauters (2022), tables 1 and 2.
        ("C07-n020", False, 55),
        ("C07-n020", True, 52),
        ("C08-n020", True, 53),
    ],
)
def test_a_cell_whose_best_known_values_are_above_the_simple_bounds_is_proven(
    cell: str, best: int, *, may_turn: bool
) -> None:
    sheets: Counter[str] = Counter()
    for instance in read_set("bin_packing"):
        if instance["id"].startswith(cell):
            job = make_published_job(instance, may_turn=may_turn)
            problem = make_problem(job, MATERIAL, THICKNESS)
            assert problem is not None
            found = search_problem(
                problem,
                steps=60_000_000,
                seed=1,
                report=lambda _done, _plan, _bound: None,
            )
            sheets["bound"] += found.bound.sheets
            sheets["plan"] += len(found.plan)
    assert sheets["bound"] <= best <= sheets["plan"]
    assert sheets["bound"] == sheets["plan"]
