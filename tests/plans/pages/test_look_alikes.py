"""Parts that look alike are told apart on every page where one of them is handled."""

import re
from functools import cache
from itertools import combinations
from pathlib import Path

import pytest

from nesting.first_cuts import solve_with_yard
from nesting.reading.job_toml import read_job_text
from plans.pages.pages import make_pages
from plans.pages.paper import A4
from plans.pages.shapes import Page, Role, Text
from plans.plan import Plan, make_plan

# Invented sizes: rail and slat differ by 12 mm, the lid is about as large as the baffle.
JOB = """
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = 2440
width = 1220
[[part]]
name = "Rail"
length = 600
width = 80
count = 3
[[part]]
name = "Slat"
length = 588
width = 80
count = 2
free = ["length"]
[[part]]
name = "Plinth"
length = 600
width = 96
[[part]]
name = "Upright"
length = 80
width = 612
[[part]]
name = "Lid"
length = 362
width = 260
[[cabinet]]
name = "Chest"
height = 300
width = 400
depth = 250
baffle = { fit = "inset", held_by = "glue" }
back = { fit = "planted" }
"""
MERGE = '[[merge]]\npart = "Slat"\nlike = "Rail"\n'
HANDLED = ("Sheet", "Parts", "Measure first", "Labels")


@cache
def planned(text: str = JOB) -> tuple[Plan, tuple[Page, ...]]:
    job = read_job_text(text, Path("alike.toml"))
    plan = make_plan(job, solve_with_yard(job, effort=0))
    return plan, make_pages(plan, A4)


def sides(size: str) -> list[float]:
    return sorted(map(float, size.split(" × ")))


def test_every_pair_within_15_mm_in_both_sizes_is_found_and_no_other() -> None:
    """Counted again from the printed sizes; the 15 mm are judgement."""
    plan, _ = planned()
    kinds = {(row.name, row.cabinet): row for row in plan.parts}
    near = {
        frozenset((one[0], other[0]))
        for one, other in combinations(kinds, 2)
        if all(
            abs(mine - its) <= 15
            for mine, its in zip(
                sides(kinds[one].finished), sides(kinds[other].finished), strict=True
            )
        )
    }
    names = {row.code: row.name for row in plan.parts}
    told = {frozenset((row.name, names[other])) for row in plan.parts for other in row.look_alikes}
    assert told == near
    assert frozenset(("Rail", "Upright")) in near
    assert frozenset(("Rail", "Plinth")) not in near


@pytest.mark.parametrize("title", HANDLED)
def test_a_page_that_shows_one_of_a_pair_shows_what_it_must_not_be_taken_for(title: str) -> None:
    plan, pages = planned()
    alike = {row.code: row.look_alikes for row in plan.parts if row.look_alikes}
    shown = 0
    for page in pages:
        if not re.search(rf"(^|; ){title}", page.title):
            continue
        texts = [shape for shape in page.shapes if isinstance(shape, Text)]
        signs = " ".join(shape.words for shape in texts if "≠" in shape.words)
        for code in {shape.words for shape in texts if shape.role is Role.CODE} & {*alike}:
            shown += 1
            assert any(re.search(rf"\b{other}\b", signs) for other in alike[code]), code
    assert shown


def test_a_merge_that_is_accepted_leaves_no_pair_to_take_for_each_other() -> None:
    plan, _ = planned(JOB + MERGE)
    sizes = {row.name: row.finished for row in plan.parts}
    assert sizes["Slat"] == sizes["Rail"] == "600 × 80"
    names = {row.code: row.name for row in plan.parts}
    told = {frozenset((row.name, names[other])) for row in plan.parts for other in row.look_alikes}
    assert frozenset(("Rail", "Slat")) not in told
