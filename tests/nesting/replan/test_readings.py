"""Parts that are measured from the work: the plan holds for any reading that their blank allows."""

from pathlib import Path

import pytest

from nesting.garage.events import PartRead
from nesting.garage.planned import Planned
from nesting.job import Job
from nesting.layout import Layout
from nesting.lengths import Length, mm
from nesting.parts import Part, Status
from nesting.reading.job_toml import read_job_text
from nesting.replan import replan
from nesting.solve import solve
from tests.nesting.garage.plans_read import after_cuts, document_of, planned

JOB = """
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
measured = [17.7]
length = 2440
width = 1220
price = 60
[covering]
thickness = 0.8
ease = 1
[[cabinet]]
name = "Side fill"
family = "box"
height = 600
width = 400
depth = 350
baffle = { fit = "inset", set_back = 30 }
back = { fit = "inset", wrapped = true }
braces = { depth = 100, count = 1 }
"""
WAITING = ("Baffle", "Back", "Brace")


@pytest.fixture(scope="module")
def cabinet() -> tuple[Job, Layout, Planned]:
    job = read_job_text(JOB, Path("job.toml"))
    layout = solve(job, effort=1).layout
    return job, layout, planned(job, layout)


def waiting_parts(job: Job) -> dict[str, Part]:
    return {part.name: part for part in job.parts if part.status is Status.MEASURE_FIRST}


def test_what_goes_inside_waits_and_its_blank_is_on_the_sheet(
    cabinet: tuple[Job, Layout, Planned],
) -> None:
    job, layout, _ = cabinet
    waiting = waiting_parts(job)
    assert set(waiting) == set(WAITING)
    assert {part.status for part in job.parts if part.name not in waiting} == {Status.FINAL}
    document = document_of(job, layout)
    lying = {part["name"]: part for sheet in document["sheets"] for part in sheet["parts"]}
    for name, part in waiting.items():
        found = next(each for full, each in lying.items() if full.startswith(name))
        blank = sorted((found["length"], found["width"]))
        sizes = sorted((part.length, part.width))
        assert all(mm(str(have)) > size for have, size in zip(blank, sizes, strict=True)), name


def code_of(job: Job, layout: Layout, name: str) -> str:
    document = document_of(job, layout)
    (code,) = (
        part["code"]
        for sheet in document["sheets"]
        for part in sheet["parts"]
        if part["name"].startswith(name)
    )
    return str(code)


@pytest.mark.parametrize("is_cut", [False, True])
@pytest.mark.parametrize("share", [-100, -50, -10, 0, 10, 50, 100])
@pytest.mark.parametrize("name", WAITING)
def test_the_plan_rehearses_for_any_reading_within_the_allowance(
    cabinet: tuple[Job, Layout, Planned], name: str, share: int, *, is_cut: bool
) -> None:
    """`share` is how much of the allowance the reading lies above or below, in hundredths."""
    job, layout, plan = cabinet
    part = waiting_parts(job)[name]
    assert part.oversize > 0
    reading = (_off(part.length, part, share), _off(part.width, part, share))
    number = plan.cut_count if is_cut else 0
    marks = after_cuts(plan, number, PartRead(code=code_of(job, layout, name), size=reading))
    again = replan(job, plan, marks, effort=0)
    assert again.layout.unplaced == ()
    assert not again.cost
    document_of(again.remaining.job, again.layout)
    earlier = again.remaining.job.earlier
    assert earlier is not None
    if is_cut:
        code = code_of(job, layout, name)
        (done,) = (each for each in earlier.finished if each.code == code)
        assert (done.length, done.width) == reading


def _off(size: Length, part: Part, share: int) -> Length:
    return size + part.oversize * share // 100
