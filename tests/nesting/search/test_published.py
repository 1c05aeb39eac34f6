"""Published instances with known optima, and tiny jobs solved exactly by other means."""

import random

import pytest
from ortools.sat.python import cp_model

from nesting.checks import check_layout
from nesting.job import Job
from nesting.parts import Grain
from nesting.saw import Saw
from nesting.search.fill import fill_sheet, value_of
from nesting.solve import solve
from tests.instances.published import make_published_job, read_knapsacks, read_set
from tests.nesting.search.jobs import make_job, make_part, make_sheet


def test_the_bars_of_the_cutting_stock_sample_need_four() -> None:
    # MiniZinc's cutstock sample: bars of 10; 7 twice, 5 twice, 3 four times need four bars.
    parts = [
        make_part(f"{length}", length, 1, count, grain=Grain.LENGTH)
        for length, count in ((7, 2), (5, 2), (3, 4))
    ]
    job = make_job(parts, [make_sheet(length=10, width=1)], saw=Saw(kerf=0))
    result = solve(job, effort=1)
    assert check_layout(job, result.layout) == ()
    assert [(group.sheets, group.is_proven) for group in result.groups] == [(4, True)]


@pytest.mark.parametrize(
    ("name", "sheets"),
    [
        # All pieces once each. ngcut1 and ngcut2: 3 and 4; cgcut1: 2; gcut1: 5 fixed. Exact counts
        # by enumerating every guillotine pattern and covering with them.
        ("ngcut1", 3),
        ("cgcut1", 2),
        ("gcut1", 5),
    ],
)
def test_all_pieces_of_a_published_knapsack_need_the_known_number_of_sheets(
    name: str, sheets: int
) -> None:
    (instance,) = [item for item in read_set("knapsacks") if item["id"] == name]
    parts = [[length, width, most or 1] for length, width, most, _ in instance["parts"]]
    job = make_published_job(
        {"id": name, "sheet": instance["sheet"], "parts": parts}, may_turn=False
    )
    result = solve(job, effort=1)
    assert check_layout(job, result.layout) == ()
    assert len(result.layout.sheets) == sheets


@pytest.mark.parametrize(
    "name", ["cgcut1", "cgcut3", "ngcut1", "ngcut3", "ngcut5", "ngcut7", "ngcut9"]
)
def test_a_small_knapsack_reaches_its_published_optimum(name: str) -> None:
    (knapsack,) = [item for item in read_knapsacks(may_turn=False) if item.name == name]
    codes = fill_sheet(
        knapsack.problem,
        0,
        [kind.copies for kind in knapsack.problem.kinds],
        steps=3_000_000,
        seed=1,
        values=knapsack.values,
    )
    assert value_of(codes, knapsack.values) == knapsack.optimum


@pytest.mark.parametrize("may_turn", [False, True])
def test_no_knapsack_passes_its_published_optimum(*, may_turn: bool) -> None:
    for knapsack in read_knapsacks(may_turn=may_turn):
        codes = fill_sheet(
            knapsack.problem,
            0,
            [kind.copies for kind in knapsack.problem.kinds],
            steps=200_000,
            seed=1,
            values=knapsack.values,
        )
        assert value_of(codes, knapsack.values) <= knapsack.optimum


@pytest.mark.parametrize(
    ("cell", "may_turn", "best"),
    [
        # Best published sums over ten instances, all equal to the lower bound: Gardeyn and Wauters
        # (2022), tables 1 and 2.
        ("C01-n020", False, 71),
        ("C01-n020", True, 66),
        ("C02-n020", False, 10),
        ("C03-n020", True, 47),
        ("C05-n020", True, 59),
        ("C09-n020", False, 143),
    ],
)
def test_a_cell_of_the_bin_packing_classes_reaches_its_optimum(
    cell: str, best: int, *, may_turn: bool
) -> None:
    instances = [item for item in read_set("bin_packing") if item["id"].startswith(cell)]
    assert len(instances) == 10
    total = 0
    for instance in instances:
        job = make_published_job(instance, may_turn=may_turn)
        result = solve(job, effort=1)
        assert check_layout(job, result.layout) == ()
        total += len(result.layout.sheets)
    assert total == best


def make_tiny_job(number: int) -> Job:
    dice = random.Random(number)  # noqa: S311 - a test, not a lock
    parts = [
        make_part(f"part {kind}", dice.randint(2, 11), dice.randint(2, 9), grain=Grain.LENGTH)
        for kind in range(4)
    ]
    return make_job(parts, [make_sheet(length=12, width=10)], saw=Saw(kerf=0))


def count_sheets_exactly(job: Job, length: int, width: int) -> int:
    """Return the least number of sheets by constraint programming.

    Up to four rectangles can always be parted edge to edge, so plain packing is the same problem.
    """
    model = cp_model.CpModel()
    step = job.parts[0].length // int(job.parts[0].length / 10**6)
    count = len(job.parts)
    x_intervals, y_intervals, numbers = [], [], []
    for index, part in enumerate(job.parts):
        sides = (part.length // step, part.width // step)
        number = model.new_int_var(0, count - 1, f"sheet {index}")
        x = model.new_int_var(0, count * length, f"x {index}")
        y = model.new_int_var(0, width - sides[1], f"y {index}")
        model.add(x >= number * length)
        model.add(x + sides[0] <= (number + 1) * length)
        x_intervals.append(model.new_fixed_size_interval_var(x, sides[0], f"along {index}"))
        y_intervals.append(model.new_fixed_size_interval_var(y, sides[1], f"across {index}"))
        numbers.append(number)
    model.add_no_overlap_2d(x_intervals, y_intervals)
    last = model.new_int_var(0, count - 1, "last sheet")
    model.add_max_equality(last, numbers)
    model.minimize(last)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    assert solver.solve(model) == cp_model.OPTIMAL
    return solver.value(last) + 1


def test_tiny_jobs_get_as_few_sheets_as_constraint_programming_finds() -> None:
    for number in range(40):
        job = make_tiny_job(number)
        result = solve(job, effort=1, seconds=0.3)
        assert check_layout(job, result.layout) == ()
        assert len(result.layout.sheets) == count_sheets_exactly(job, 12, 10)
