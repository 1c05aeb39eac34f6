"""Checks at the bench: diagonals, sums and stacks, and what to do before the box is closed."""

from dataclasses import dataclass

from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.checks_by_hand import CheckLine
from nesting.job import Job
from nesting.lengths import Unit
from plans.sections.numbers import show


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckText:
    """One check.

    Attributes:
        text: What is checked and what must come out.
        readings: How many readings there are for each cabinet; 0 for a check by feel.
    """

    text: str
    readings: int


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchChecks:
    """The checks of one design.

    Attributes:
        name: Name of the design.
        letters: Its cabinets.
        diagonals: Diagonals, each read in every cabinet.
        tolerance: How far a reading may be off, as a sentence; "" without diagonals.
        sums: Sums that close the box, each read in every cabinet.
        stacks: Checks by feel.
        closing: What to do before the box is closed, and until when it can be done.
    """

    name: str
    letters: tuple[str, ...]
    diagonals: tuple[CheckText, ...]
    tolerance: str
    sums: tuple[CheckText, ...]
    stacks: tuple[CheckText, ...]
    closing: tuple[str, ...]


def make_bench_checks(job: Job) -> tuple[BenchChecks, ...]:
    """Return the checks of every design."""
    return tuple(_checks(build, job.unit) for build in job.cabinets if build.fit_out)


def _checks(build: CabinetBuild, unit: Unit) -> BenchChecks:
    assert build.fit_out is not None
    lines = build.fit_out.checks
    measured = [line for line in lines if line.wanted]
    widest = max((line.tolerance for line in measured), default=0)
    return BenchChecks(
        name=build.name,
        letters=build.letters,
        diagonals=tuple(
            CheckText(text=_say(line, unit), readings=len(line.wanted)) for line in measured
        ),
        tolerance=f"Both diagonals of a rectangle are alike: each within {show(widest, unit)} "
        f"{unit.value} of its figure, and of the other."
        if measured
        else "",
        sums=tuple(CheckText(text=line, readings=1) for line in build.sums),
        stacks=tuple(
            CheckText(text=_capital(line.text), readings=0) for line in lines if not line.wanted
        ),
        closing=tuple(_capital(limit.text) for limit in build.fit_out.limits),
    )


def _say(line: CheckLine, unit: Unit) -> str:
    """Return a check of two diagonals in a few words; any other in its own."""
    if len(line.wanted) == 1:
        return line.text
    first, second = (show(length, unit) for length in line.wanted)
    name = line.name.removesuffix(": diagonals")
    return f"{name}: {first} both" if first == second else f"{name}: {first} and {second}"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
