"""Every page of every sample, and of a hundred random jobs with yard, car and cabinets."""

from pathlib import Path

import pytest

from nesting.first_cuts import solve_with_yard
from nesting.reading.job_toml import read_job
from plans.pages.clashes import find_clashes
from plans.pages.pages import make_pages
from plans.pages.paper import PAPERS, Paper
from plans.plan import Plan, make_plan
from tests.plans.full_plan import full_plan
from tests.plans.pages.whole_jobs import whole_plan

SAMPLES = sorted((Path(__file__).parents[3] / "samples").glob("*.toml"))
SEEDS = range(110)


def clashes_of(plan: Plan, paper: Paper) -> list[str]:
    return [
        f"page {number}, {page.title}: {clash}"
        for number, page in enumerate(make_pages(plan, paper, read_aloud=True), start=1)
        for clash in find_clashes(page)
    ]


@pytest.mark.parametrize("paper", PAPERS.values(), ids=list(PAPERS))
def test_nothing_stands_in_the_way_on_the_pages_of_a_whole_job(paper: Paper) -> None:
    _, _, plan = full_plan()
    assert clashes_of(plan, paper) == []


@pytest.mark.slow
@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_nothing_stands_in_the_way_on_any_page_of_a_sample(sample: Path) -> None:
    job = read_job(sample)
    plan = make_plan(job, solve_with_yard(job, effort=0))
    for paper in PAPERS.values():
        assert clashes_of(plan, paper) == []


@pytest.mark.property
@pytest.mark.parametrize("seed", SEEDS)
def test_nothing_stands_in_the_way_on_any_page_of_a_random_job(seed: int) -> None:
    plan = whole_plan(seed)
    if plan is None:
        pytest.skip("no job: it is refused")
    for paper in PAPERS.values():
        assert clashes_of(plan, paper) == []


@pytest.mark.property
def test_a_hundred_of_the_random_jobs_are_planned_and_show_every_kind_of_page() -> None:
    plans = [plan for plan in map(whole_plan, SEEDS) if plan is not None]
    assert len(plans) >= 100
    titles = {page.title for plan in plans for page in make_pages(plan, PAPERS["Letter"])}
    wanted = "yard,car,Safety,Setting,Sheet,Parts,Measure,Frame,Assembly,Holes,Template,Checks"
    for word in (*wanted.split(","), "Covering", "Labels", "Offcuts"):
        assert any(word in title for title in titles), word
