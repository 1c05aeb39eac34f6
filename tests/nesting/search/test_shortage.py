from dataclasses import replace
from itertools import product

from nesting.job import Job
from nesting.lengths import mm
from nesting.saw import Saw
from nesting.search.any_size import search_problem
from nesting.search.bounds import bound_by_functions
from nesting.search.grid import list_groups, make_problem
from nesting.search.problem import Problem, measure_plan
from nesting.search.shortage import bound_missing
from tests.nesting.search.jobs import BIRCH, make_job, make_part, make_random_job, make_sheet


def read_problem(job: Job) -> Problem:
    problem = make_problem(job, BIRCH, mm(18))
    assert problem is not None
    return problem


def test_two_of_three_shelves_are_all_that_one_sheet_can_hold() -> None:
    job = make_job([make_part("shelf", 1900, 560, 3)], [make_sheet(count=1)], saw=Saw(kerf=mm(3)))
    problem = read_problem(job)
    assert bound_missing(problem) == problem.kinds[0].area


def test_a_job_that_lacks_a_sheet_ends_as_soon_as_the_rest_is_proven_too_much() -> None:
    parts = [make_part("shelf", 1900, 560, 3), make_part("rail", 1000, 95, 1)]
    problem = read_problem(make_job(parts, [make_sheet(count=1)], saw=Saw(kerf=mm(3))))
    found = search_problem(
        problem,
        steps=10**12,
        seed=1,
        report=lambda _done, _plan, _bound: None,
    )
    assert measure_plan(problem, found.plan)[0] == bound_missing(problem)


def test_the_bound_is_what_trying_every_choice_of_parts_gives() -> None:
    for number in range(40):
        job = make_random_job(number)
        for sheet in job.sheets:
            alone = replace(job, sheets=(replace(sheet, count=1),))
            problem = make_problem(alone, sheet.material, sheet.thickness)
            if problem is None or problem.copies > 14:
                continue
            room = problem.sheets[0].area
            choices = product(*(range(kind.copies + 1) for kind in problem.kinds))
            sums = (
                sum(count * kind.area for count, kind in zip(choice, problem.kinds, strict=True))
                for choice in choices
            )
            assert bound_missing(problem) == problem.area - max(one for one in sums if one <= room)


def test_nothing_is_missing_where_sheets_are_without_limit() -> None:
    assert (
        bound_missing(read_problem(make_job([make_part("a", 900, 900, 20)], [make_sheet()]))) == 0
    )


def test_parts_of_which_no_sheet_holds_two_are_known_to_be_too_many() -> None:
    job = make_job([make_part("top", 1300, 700, 3)], [make_sheet(count=2)], saw=Saw(kerf=mm(3)))
    problem = read_problem(job)
    assert bound_missing(problem) == 0  # by area there is room
    assert bound_by_functions(problem).is_out_of_reach


def test_a_job_that_can_be_placed_is_never_called_too_much() -> None:
    for number in range(30):
        job = make_random_job(number)
        for group in list_groups(job):
            problem = make_problem(job, *group)
            if problem is None:
                continue
            found = search_problem(
                problem, steps=100_000, seed=1, report=lambda _done, _plan, _bound: None
            )
            if measure_plan(problem, found.plan)[0] == 0:
                assert not bound_by_functions(problem).is_out_of_reach


def test_parts_left_over_for_most_of_the_work_are_given_up() -> None:
    parts = [make_part("panel", 1500, 1000, 2), make_part("shelf", 930, 300, 9)]
    problem = read_problem(make_job(parts, [make_sheet(count=2)], saw=Saw(kerf=mm(3))))
    fractions: list[float] = []
    found = search_problem(
        problem,
        steps=400_000_000,
        seed=1,
        report=lambda done, _plan, _bound: fractions.append(done),
    )
    assert measure_plan(problem, found.plan)[0] > 0
    assert fractions[-1] < 0.6
