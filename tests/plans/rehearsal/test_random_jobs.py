"""Random jobs, planned by the program: every plan rehearses, keeps the rules and loses no wood."""

import pytest

from nesting.job import Job
from nesting.layout import Cut, Layout, Rect, band, walk
from plans.rehearsal import rehearse
from tests.plans.plan_rules import faults_of
from tests.plans.rehearsal.real_plans import planned

FEW = range(12)
MANY = range(12, 312)


@pytest.mark.parametrize("seed", FEW)
def test_the_plan_of_a_random_job_holds(seed: int) -> None:
    holds(seed)


@pytest.mark.property
@pytest.mark.parametrize("seed", MANY)
def test_the_plans_of_300_random_jobs_hold(seed: int) -> None:
    holds(seed, effort=seed % 2)


@pytest.mark.property
@pytest.mark.parametrize("seed", MANY)
def test_plans_hold_for_sizes_finer_than_their_page_prints(seed: int) -> None:
    holds(seed, is_fine=True)


def holds(seed: int, *, is_fine: bool = False, effort: int = 0) -> None:
    job_document, job, result, document = planned(seed, is_fine=is_fine, effort=effort)
    assert [str(fault) for fault in rehearse(document).faults] == []
    assert faults_of(document, job_document) == []
    for sheet_number, (wood, sheet) in enumerate(areas(job, result.layout), start=1):
        assert wood == sheet, f"sheet {sheet_number}"


def areas(job: Job, layout: Layout) -> list[tuple[int, int]]:
    """Return for every sheet the area of its leaves and bands, and its own, exactly."""
    found = []
    for one in layout.sheets:
        sheet = job.sheets[one.sheet]
        whole = Rect(x=0, y=0, length=sheet.length, width=sheet.width)
        pieces = [
            band(place.node, place.rect) if isinstance(place.node, Cut) else place.rect
            for place in walk(one.root, whole)
        ]
        wood = sum(piece.length * piece.width for piece in pieces)
        found.append((wood, whole.length * whole.width))
    return found
