"""What every search method must keep, whichever it is."""

import random
from collections import Counter
from collections.abc import Callable, Iterator
from functools import cache

import pytest

from nesting.job import Job
from nesting.lengths import mm
from nesting.search import any_size
from nesting.search.any_size import search_problem
from nesting.search.bounds import bound_by_functions
from nesting.search.contest import Found
from nesting.search.grid import list_groups, make_problem
from nesting.search.method import Method
from nesting.search.packers import Packers
from nesting.search.pool import Pool
from nesting.search.problem import (
    SIDE_BY_SIDE,
    Plan,
    Problem,
    SheetPlan,
    count_kinds,
    measure_plan,
)
from nesting.search.recombine import Recombiner
from nesting.search.rectpack_packers import pack_with_rectpack
from nesting.search.repeat import Repeater
from nesting.search.ruin_recreate import RuinRecreate, mix_seed
from tests.nesting.search.jobs import BIRCH, make_job, make_part, make_random_job, make_sheet


class SeenAndRecombined:
    """Recombination of the sheets that one ruin and recreate sees."""

    def __init__(self, problem: Problem) -> None:
        self._pool = Pool(problem)
        self._search = RuinRecreate(problem, mix_seed(1, 0), is_keeping=True)
        self._recombiner = Recombiner(problem, self._pool, seed=1)

    @property
    def rounds(self) -> int:
        return self._recombiner.rounds

    def improve(self, best: Plan, steps: int) -> Plan:
        self._search.watch(self._recombiner.choose_watched(best))
        self._search.improve(best, steps)
        self._pool.add(self._search.hand_over())
        return self._recombiner.improve(best, steps)


METHODS: dict[str, Callable[[Problem], Method]] = {
    "packers": Packers,
    "repeater": lambda problem: Repeater(problem, seed=1),
    "ruin and recreate": lambda problem: RuinRecreate(problem, mix_seed(1, 0)),
    "recombination": SeenAndRecombined,
}
STEPS = 200_000


def list_random_problems(count: int) -> Iterator[Problem]:
    for number in range(count):
        job = make_random_job(number)
        for group in list_groups(job):
            problem = make_problem(job, *group)
            if problem is not None:
                yield problem


def check_plan(problem: Problem, plan: Plan) -> None:
    """Check that every tree fits its sheet, lies as it may, and that nothing is used twice."""
    used = Counter(sheet.kind for sheet in plan)
    assert all(count <= problem.sheets[kind].count for kind, count in used.items())
    placed: Counter[int] = Counter()
    for sheet in plan:
        placed.update(count_kinds(sheet.codes))
        length, width = measure(problem, sheet)
        assert length <= problem.sheets[sheet.kind].length
        assert width <= problem.sheets[sheet.kind].width
    assert all(count <= problem.kinds[kind].copies for kind, count in placed.items())


def measure(problem: Problem, sheet: SheetPlan) -> tuple[int, int]:
    stack: list[tuple[int, int]] = []
    for code in sheet.codes:
        if code >= 0:
            kind, side = problem.kinds[code // 2], code % 2
            assert kind.ways[sheet.kind] & (side + 1)
            stack.append((kind.short, kind.long) if side else (kind.long, kind.short))
            continue
        second, first = stack.pop(), stack.pop()
        if code == SIDE_BY_SIDE:
            stack.append((first[0] + second[0], max(first[1], second[1])))
        else:
            stack.append((max(first[0], second[0]), first[1] + second[1]))
    (size,) = stack
    return size


@pytest.mark.parametrize("name", METHODS)
def test_a_method_keeps_the_rules_and_never_gives_a_worse_plan(name: str) -> None:
    for problem in list_random_problems(8):
        method = METHODS[name](problem)
        best: Plan = ()
        for _ in range(2):
            plan = method.improve(best, STEPS)
            check_plan(problem, plan)
            assert measure_plan(problem, plan) <= measure_plan(problem, best)
            missing, weight = measure_plan(problem, plan)
            if missing == 0:
                bound = bound_by_functions(problem)
                assert weight >= bound.weight
                assert len(plan) >= bound.sheets
            best = plan


@pytest.mark.parametrize("name", METHODS)
def test_a_method_does_the_same_work_the_same_way(name: str) -> None:
    for problem in list_random_problems(6):
        nothing: Plan = ()
        first = METHODS[name](problem).improve(nothing, STEPS)
        assert METHODS[name](problem).improve(nothing, STEPS) == first


def run_contest(problem: Problem, *, seed: int = 1) -> Found:
    return search_problem(
        problem,
        steps=500_000,
        seed=seed,
        report=lambda _done, _plan, _bound: None,
    )


@pytest.mark.slow
@pytest.mark.parametrize("cores", [1, 3])
def test_the_number_of_cores_does_not_change_the_plan(
    cores: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    problems = list(list_random_problems(8))
    expected = [run_contest(problem).plan for problem in problems]
    monkeypatch.setattr("os.cpu_count", lambda: cores)
    assert [run_contest(problem).plan for problem in problems] == expected


def test_the_packers_are_never_worse_than_the_best_rectpack_variant() -> None:
    for problem in list_random_problems(8):
        nothing: Plan = ()
        packed = measure_plan(problem, Packers(problem).improve(nothing, 10**9))
        assert packed <= min(measure_plan(problem, plan) for plan in pack_with_rectpack(problem))


@pytest.mark.slow
def test_the_packers_are_never_worse_than_rectpack_on_hundreds_of_parts() -> None:
    for number in range(4):
        problem = make_mixed_problem(number, copies=160)
        nothing: Plan = ()
        packed = measure_plan(problem, Packers(problem).improve(nothing, 10**9))
        assert packed <= min(measure_plan(problem, plan) for plan in pack_with_rectpack(problem))


@pytest.mark.slow
def test_the_contest_is_never_worse_than_the_best_rectpack_variant() -> None:
    for problem in list_random_problems(12):
        found = measure_plan(problem, run_contest(problem).plan)
        assert found <= min(measure_plan(problem, plan) for plan in pack_with_rectpack(problem))


@pytest.mark.parametrize("many_kinds", [0, 250])
def test_a_very_large_job_is_laid_out_by_repeating_sheets(
    monkeypatch: pytest.MonkeyPatch, many_kinds: int
) -> None:
    monkeypatch.setattr(any_size, "MANY_KINDS", many_kinds)
    monkeypatch.setattr(any_size, "MANY_PARTS", 300)
    monkeypatch.setattr(any_size, "TOO_MANY_PARTS", 300)
    monkeypatch.setattr(any_size, "LEFT_OVER", 30)
    problem = make_large_problem()
    found = run_contest(problem)
    check_plan(problem, found.plan)
    assert measure_plan(problem, found.plan)[0] == 0
    assert len(found.plan) <= 1.1 * found.bound.sheets
    repeated = Counter(sheet.codes for sheet in found.plan)
    assert max(repeated.values()) > 5


def test_many_equal_parts_are_proven_to_need_every_sheet() -> None:
    problem = make_problem(
        make_job([make_part("panel", 700, 430, 4003)], [make_sheet()]), BIRCH, mm(18)
    )
    assert problem is not None
    found = run_contest(problem)
    check_plan(problem, found.plan)
    assert measure_plan(problem, found.plan)[0] == 0
    most = count_panels(2440, 1220)  # without kerf, so never too few
    assert len(found.plan) == found.bound.sheets == -(-4003 // most) == 501


@cache
def count_panels(length: int, width: int) -> int:
    """Return how many panels of 700 x 430 can be cut edge to edge, by trying every cut."""
    if min(length, width) < 430 or max(length, width) < 700:
        return 0
    sums = {700 * a + 430 * b for a in range(4) for b in range(6)} - {0}
    counts = [1]
    counts += [
        count_panels(at, width) + count_panels(length - at, width) for at in sums if at < length
    ]
    counts += [
        count_panels(length, at) + count_panels(length, width - at) for at in sums if at < width
    ]
    return max(counts)


def make_mixed_problem(number: int, *, copies: int) -> Problem:
    """Return a random problem of one sheet kind, every part different."""
    dice = random.Random(number)  # noqa: S311 - a test, not a lock
    parts = [
        make_part(f"part {part}", dice.randint(150, 900), dice.randint(80, 600))
        for part in range(copies)
    ]
    problem = make_problem(make_job(parts, [make_sheet()]), BIRCH, mm(18))
    assert problem is not None
    return problem


def make_large_problem() -> Problem:
    job: Job = make_job(
        [
            make_part("a", 562, 300, 150),
            make_part("b", 710, 290, 150),
            make_part("c", 330, 210, 200),
        ],
        [make_sheet()],
    )
    problem = make_problem(job, BIRCH, mm(18))
    assert problem is not None
    return problem
