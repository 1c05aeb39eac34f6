import random

import pytest
from ortools.sat.python import cp_model

from nesting.search import whole_cover
from nesting.search.whole_cover import cover_cheaply


def cover_exactly(wanted: int, rooms: list[int], costs: list[int], counts: list[int]) -> int:
    """Return the least cost by constraint programming."""
    model = cp_model.CpModel()
    uses = [model.new_int_var(0, count, f"kind {kind}") for kind, count in enumerate(counts)]
    held = sum(room * use for room, use in zip(rooms, uses, strict=True))
    model.add(held >= wanted)
    model.minimize(sum(cost * use for cost, use in zip(costs, uses, strict=True)))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    assert solver.solve(model) == cp_model.OPTIMAL
    return round(solver.objective_value)


def make_cover(number: int) -> tuple[int, list[int], list[int], list[int]]:
    dice = random.Random(number)  # noqa: S311 - a test, not a lock
    kinds = dice.randint(1, 5)
    rooms = [dice.randint(0, 40) for _ in range(kinds)]
    costs = [dice.choice([0, 5, dice.randint(1, 60)]) for _ in range(kinds)]
    counts = [dice.randint(1, 9) for _ in range(kinds)]
    most = sum(room * count for room, count in zip(rooms, counts, strict=True))
    return dice.randint(0, most), rooms, costs, counts


def test_the_cheapest_whole_sheets_are_those_of_constraint_programming() -> None:
    for number in range(120):
        cover = make_cover(number)
        assert cover_cheaply(*cover) == cover_exactly(*cover)


def test_a_cover_that_is_cut_short_is_never_above_the_least_cost(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(whole_cover, "MOST_NODES", 2)
    for number in range(60):
        assert cover_cheaply(*make_cover(number)) <= cover_exactly(*make_cover(number))


def test_two_halves_are_dearer_than_the_sheet_that_one_half_cannot_replace() -> None:
    # 1.2 halves of room are wanted: one half at 26 is too little, two cost 52, a whole sheet 43.
    assert cover_cheaply(12, [10, 20], [26, 43], [2, 9]) == 43


def test_where_all_sheets_hold_too_little_the_answer_is_all_of_them() -> None:
    assert cover_cheaply(100, [10, 20], [3, 4], [2, 1]) == 10
