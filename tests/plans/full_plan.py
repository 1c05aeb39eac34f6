"""A plan with every page that there is, in inches, made from a job file by a short search."""

from functools import cache
from pathlib import Path

from nesting.first_cuts import solve_with_yard
from nesting.job import Job
from nesting.reading.job_toml import read_job
from nesting.search.result import Result
from plans.plan import Plan, make_plan

FULL_JOB = Path(__file__).parent / "full_job.toml"


@cache
def full_plan() -> tuple[Job, Result, Plan]:
    """Return the job of three wedges with yard, car, sessions and holes, its layout, its plan."""
    job = read_job(FULL_JOB)
    result = solve_with_yard(job, effort=0)
    return job, result, make_plan(job, result)
