"""A job with some of its cabinets built otherwise."""

from collections.abc import Iterable
from dataclasses import replace

from nesting.cabinets.boards import find_spreads, measure_boards
from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.expand import expand
from nesting.cabinets.families import Design
from nesting.errors import InputError
from nesting.job import Job


def rebuild(job: Job, build: CabinetBuild, design: Design) -> CabinetBuild | None:
    """Return the cabinets of a build made to another design; None where that cannot be built."""
    try:
        return expand(
            design,
            letters=build.letters,
            measured=measure_boards(job.sheets),
            step=job.step,
            unit=job.unit,
            kerf=job.saw.kerf,
            spreads=find_spreads(job.sheets),
        )
    except InputError:
        return None


def with_builds(job: Job, builds: Iterable[CabinetBuild | None]) -> Job | None:
    """Return a job with other cabinets in place of its own; None where one cannot be built."""
    there = []
    for build in builds:
        if build is None:
            return None
        there.append(build)
    plain = tuple(part for part in job.parts if not part.cabinet)
    return replace(
        job,
        cabinets=tuple(there),
        parts=(*plain, *(part for build in there for part in build.parts)),
    )
