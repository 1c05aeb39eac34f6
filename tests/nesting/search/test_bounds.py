from itertools import combinations_with_replacement
from typing import Any

import numpy as np
import pytest

from nesting.search.bounds import bound_by_area, bound_by_functions
from nesting.search.dual_functions import tabulate
from nesting.search.grid import make_problem
from nesting.search.problem import Problem
from tests.instances.published import MATERIAL, THICKNESS, make_published_job, read_set
from tests.nesting.search.jobs import BIRCH, make_job, make_part, make_sheet


def make_published_problem(instance: dict[str, Any], *, may_turn: bool) -> Problem:
    problem = make_problem(make_published_job(instance, may_turn=may_turn), MATERIAL, THICKNESS)
    assert problem is not None
    return problem


@pytest.mark.parametrize("whole", [10, 12, 17])
def test_what_fits_still_fits_after_a_dual_feasible_function(whole: int) -> None:
    sizes = np.arange(1, whole + 1)
    nothing_counted = np.zeros(len(sizes), dtype=np.int64)
    functions = tabulate(sizes, nothing_counted, whole, is_only_whole=False)
    for count in range(2, 6):
        for chosen in combinations_with_replacement(range(1, whole + 1), count):
            if sum(chosen) <= whole:
                together = functions[:, [size - 1 for size in chosen]].sum(axis=1)
                assert (together <= functions[:, sum(chosen) - 1]).all()


def test_the_functions_for_one_whole_hold_for_the_parts_that_they_count() -> None:
    sizes, whole = np.array([2, 3, 4, 5, 7, 9]), 10
    copies = np.array([2, 1, 3, 1, 2, 1])
    functions = tabulate(sizes, copies, whole, is_only_whole=True)
    parts = np.repeat(np.arange(len(sizes)), copies)
    for mask in range(1, 2 ** len(parts)):
        chosen = [part for bit, part in enumerate(parts) if mask >> bit & 1]
        if sizes[chosen].sum() <= whole:
            assert (functions[:, chosen].sum(axis=1) <= functions[:, -1]).all()


def test_parts_larger_than_half_a_sheet_need_one_each() -> None:
    job = make_job([make_part("door", 1300, 700, 7)], [make_sheet()])
    problem = make_problem(job, BIRCH, job.sheets[0].thickness)
    assert problem is not None
    assert bound_by_area(problem).sheets == 3
    assert bound_by_functions(problem).sheets == 7


@pytest.mark.parametrize("may_turn", [False, True])
def test_no_bound_is_above_the_best_known_value(*, may_turn: bool) -> None:
    # Best published sums over ten instances, n = 20, classes 1 to 10: Gardeyn and Wauters (2022),
    # tables 1 (fixed) and 2 (turned).
    fixed = (71, 10, 52, 10, 65, 10, 55, 58, 143, 42)
    turned = (66, 10, 47, 10, 59, 10, 52, 53, 143, 41)
    for number, best in enumerate(turned if may_turn else fixed, start=1):
        bounds = bound_cell(f"C{number:02d}-n020", may_turn=may_turn)
        assert len(bounds) == 10
        assert sum(bounds) <= best


@pytest.mark.parametrize(("parts", "best"), [(20, 143), (40, 275), (60, 435)])
def test_the_bounds_of_class_9_are_its_optima(parts: int, best: int) -> None:
    # Sums over ten instances that every method in Gardeyn and Wauters (2022), table 2, reaches.
    assert sum(bound_cell(f"C09-n{parts:03d}", may_turn=True)) == best


def bound_cell(prefix: str, *, may_turn: bool) -> list[int]:
    return [
        bound_by_functions(make_published_problem(item, may_turn=may_turn)).sheets
        for item in read_set("bin_packing")
        if item["id"].startswith(prefix)
    ]
