"""Plan files as the program itself makes them, read back from their JSON text."""

import json
import tomllib
from functools import cache
from pathlib import Path
from typing import Any

from nesting.job import Job
from nesting.reading.job_toml import read_job_text
from nesting.search.result import Result
from nesting.solve import solve
from plans.plan import make_plan
from plans.plan_file import dump, plan_document
from tests.plans.rehearsal.random_jobs import random_job, toml_text

Json = dict[str, Any]


@cache
def planned(seed: int, *, is_fine: bool = False, effort: int = 0) -> tuple[Json, Job, Result, Json]:
    """Return a random job's file content, the job, what the search found, and the plan file."""
    text = toml_text(random_job(seed, is_fine=is_fine))
    job = read_job_text(text, Path("random.toml"))
    result = solve(job, effort=effort, seed=seed)
    document = json.loads(dump(plan_document(job, result, make_plan(job, result))))
    return tomllib.loads(text), job, result, document
