"""A deadline ends every step of the search, and what was found until then is a plan."""

import threading
import time

import pytest

from nesting.lengths import mm
from nesting.saw import Saw
from nesting.search.any_size import search_problem
from nesting.search.deadline import NO_DEADLINE, PASSED, Deadline
from nesting.search.grid import make_problem
from nesting.search.prepare import prepare
from nesting.search.problem import Plan, Problem, measure_plan
from nesting.search.ruin_recreate import RuinRecreate
from tests.nesting.search.jobs import BIRCH, make_job, make_part, make_sheet

ENDLESS = 10**14
PATIENCE_S = 30.0  # for a machine that is busy with other things


def make_large_problem(copies: int) -> Problem:
    parts = [
        make_part(f"p{kind}", 180 + 37 * kind, 120 + 23 * (kind % 7), copies) for kind in range(14)
    ]
    sheets = [make_sheet("large"), make_sheet("square", 1525, 1525)]
    problem = make_problem(make_job(parts, sheets, saw=Saw(kerf=mm(3))), BIRCH, mm(18))
    assert problem is not None
    return problem


def test_what_is_left_never_falls_below_nothing_nor_grows_beyond_a_day() -> None:
    assert PASSED.is_over()
    assert PASSED.count_left() == 0
    assert not NO_DEADLINE.is_over()
    assert NO_DEADLINE.count_left() == 24 * 3600


def test_a_passed_deadline_still_gives_a_plan_for_everything() -> None:
    problem = make_large_problem(5)
    found = search_problem(
        problem, steps=ENDLESS, seed=1, report=lambda _done, _plan, _bound: None, deadline=PASSED
    )
    assert measure_plan(problem, found.plan)[0] == 0


@pytest.mark.slow
@pytest.mark.parametrize("copies", [6, 90, 600])
def test_an_endless_search_ends_at_its_deadline(copies: int) -> None:
    prepare()
    problem = make_large_problem(copies)
    start = time.monotonic()
    found = search_problem(
        problem,
        steps=ENDLESS,
        seed=1,
        report=lambda _done, _plan, _bound: None,
        deadline=Deadline(at=start + 1),
    )
    assert time.monotonic() - start < PATIENCE_S
    assert measure_plan(problem, found.plan)[0] == 0


def test_a_search_is_stopped_from_another_thread() -> None:
    search = RuinRecreate(make_large_problem(3), 1)
    nothing: Plan = ()
    worker = threading.Thread(target=search.improve, args=(nothing, ENDLESS))
    worker.start()
    search.stop()
    worker.join(timeout=PATIENCE_S)
    assert not worker.is_alive()
