"""Which parts must match, as the second search is told."""

from nesting.job import Job
from nesting.parts import Part
from nesting.search.grid import list_groups, make_problem
from nesting.search.least_work.arrays import NOTHING
from nesting.search.least_work.groups import Matches, list_matches, split_by_match
from nesting.search.problem import Problem
from tests.nesting.search.jobs import make_job, make_part, make_sheet


def read(parts: list[Part]) -> tuple[Job, Problem, Matches]:
    job = make_job(parts, [make_sheet()])
    problem = make_problem(job, *list_groups(job)[0])
    assert problem is not None
    split = split_by_match(job, problem)
    return job, split, list_matches(job, split)


def test_equal_parts_of_two_groups_are_two_kinds() -> None:
    _, problem, _ = read(
        [
            make_part("side", 600, 300, 2, match="A: depth"),
            make_part("other side", 600, 300, 4, match="B: depth"),
            make_part("shelf", 600, 300, 3),
        ]
    )
    assert [kind.copies for kind in problem.kinds] == [2, 4, 3]
    assert problem.copies == 9


def test_a_group_matches_in_the_size_that_its_parts_have_in_common() -> None:
    _, problem, matches = read(
        [
            make_part("side", 600, 300, 2, match="depth"),
            make_part("top", 300, 250, 2, match="depth"),
            make_part("shelf", 250, 200),
        ]
    )
    assert [(kind.long > kind.short) for kind in problem.kinds] == [True] * 3
    assert matches.rows == ([NOTHING, 0, NOTHING], [0, NOTHING, NOTHING])
    assert matches.partners == [0]
    assert matches.members == 4


def test_equal_parts_may_match_in_either_size() -> None:
    _, _, matches = read([make_part("side", 600, 300, 2, match="sides")])
    assert matches.partners == [1, 0]
    assert matches.rows == ([1], [0])


def test_single_parts_and_groups_without_a_common_size_match_nothing() -> None:
    _, _, matches = read(
        [
            make_part("lone", 600, 300, 1, match="lone"),
            make_part("a", 500, 400, 2, match="odd"),
            make_part("b", 450, 350, 2, match="odd"),
        ]
    )
    assert matches.partners == []
    assert matches.members == 0
