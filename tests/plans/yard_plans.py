"""Plans with first cuts, made by hand-picked jobs and a short search."""

import json
from functools import cache
from typing import Any

from nesting.first_cuts import solve_with_yard
from nesting.job import Job
from nesting.search.result import Result
from plans.plan import Plan, make_plan
from plans.plan_file import dump, plan_document
from tests.nesting.first_cuts.samples import SMALL, with_car

Json = dict[str, Any]


@cache
def half_sheets() -> tuple[Job, Result, Plan]:
    """Return a job whose sheet is cut into two pieces that go into an estate car."""
    return _planned(with_car())


@cache
def narrow_pieces() -> tuple[Job, Result, Plan]:
    """Return a job whose sheet is cut across, and one piece of it along."""
    return _planned(with_car(car=SMALL))


def document_of(planned: tuple[Job, Result, Plan]) -> Json:
    """Return the plan file's content, as it reads back; the caller may change it."""
    job, result, plan = planned
    document: Json = json.loads(dump(plan_document(job, result, plan)))
    return document


def _planned(job: Job) -> tuple[Job, Result, Plan]:
    result = solve_with_yard(job, effort=0)
    return job, result, make_plan(job, result)
