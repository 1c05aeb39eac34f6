"""No page mixes millimetres and inches, and fractions are those that a tape measure shows."""

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from nesting.first_cuts import solve_with_yard
from nesting.reading.job_toml import read_job
from plans.pages.pages import make_pages
from plans.pages.paper import A4
from plans.pages.shapes import Page, Text
from plans.plan import Plan, make_plan
from tests.plans.full_plan import full_plan

SAMPLES = Path(__file__).parents[3] / "samples"
METRIC = re.compile(r"[0-9] ?(mm|cm|m)\b|\b(milli|centi)?met(re|er)s?\b")
INCHES = re.compile(r"[0-9] ?ft\b|\binch(es)?\b|[0-9][\"″]|\b[0-9]+/[0-9]+ in\b")
# "in" after a whole number may as well be a word: "2 in A".
FRACTION = re.compile(r"\b[0-9]+/([0-9]+)\b")
CENTIMETRES = re.compile(r"\bcm\b|\bcentimet")
TAPE = {"2", "4", "8", "16", "32", "64"}  # the graduations of an inch rule


@cache
def planned(name: str) -> Plan:
    job = read_job(SAMPLES / name)
    return make_plan(job, solve_with_yard(job, effort=0))


def lines(page: Page) -> Iterator[str]:
    return (shape.words for shape in page.shapes if isinstance(shape, Text))


def inch_pages() -> Iterator[Page]:
    yield from make_pages(full_plan()[2], A4)
    yield from make_pages(planned("choir_risers.toml"), A4)


def test_the_pages_of_an_inch_job_speak_of_inches_and_feet_only() -> None:
    for page in inch_pages():
        assert [line for line in lines(page) if METRIC.search(line)] == [], page.title


def test_fractions_of_an_inch_are_those_of_one_tape_measure() -> None:
    for page in inch_pages():
        for line in lines(page):
            assert set(FRACTION.findall(line)) <= TAPE, f"{page.title}: {line}"


@pytest.mark.parametrize("name", ["hall_bass_cabinets.toml", "stage_wedges.toml"])
def test_the_pages_of_a_metric_job_speak_of_no_inches_and_no_centimetres(name: str) -> None:
    for page in make_pages(planned(name), A4):
        found = [line for line in lines(page) if INCHES.search(line) or CENTIMETRES.search(line)]
        assert found == [], page.title
