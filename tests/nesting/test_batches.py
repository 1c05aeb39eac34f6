"""A limit for the parts that lie about, kept by cutting cabinets in groups."""

from dataclasses import replace
from functools import partial

from nesting.batches import solve_in_kits
from nesting.checks import check_layout
from nesting.cut_sequence import order_cuts
from nesting.job import Job
from nesting.kits import find_kits, find_most_open
from nesting.search.result import Result
from nesting.solve import solve
from nesting.terms import Terms
from tests.nesting.hand_made import job, part

EASY = partial(solve, effort=0)


def six_cabinets(limit: int | None) -> Job:
    parts = tuple(
        replace(kind, cabinet=letter)
        for letter in "ABCDEF"
        for kind in (part("Side", 600, 380, 2), part("Top", 400, 380, 2), part("Rail", 400, 60, 3))
    )
    return replace(job(*parts), terms=Terms(most_open=limit))


def most_open(made: Job, result: Result) -> int:
    return find_most_open(
        made, result.layout, [order_cuts(made, sheet) for sheet in result.layout.sheets]
    )


def test_without_a_limit_it_is_the_plan_of_the_search_in_another_order() -> None:
    made = six_cabinets(None)
    assert solve_in_kits(made, EASY).cost == EASY(made).cost


def test_the_limit_is_kept_and_what_it_costs_is_said() -> None:
    free = six_cabinets(None)
    without = solve_in_kits(free, EASY)
    loose = most_open(free, without)
    for limit in (loose, 14, 7):
        made = six_cabinets(limit)
        result = solve_in_kits(made, EASY)
        assert check_layout(made, result.layout) == ()
        assert most_open(made, result) <= limit
        order = [order_cuts(made, sheet) for sheet in result.layout.sheets]
        assert all(kit.closes for kit in find_kits(made, result.layout, order))
        dearer = result.cost - without.cost
        assert any(f"cost {dearer:.2f} more" in note for note in result.layout.notes) == (
            dearer > 0
        )


def test_a_limit_below_one_cabinet_cannot_be_kept_and_the_plan_says_so() -> None:
    result = solve_in_kits(six_cabinets(5), EASY)
    assert any("more than the limit of 5" in note for note in result.layout.notes)
