"""The rehearsal of the PDF itself: the numbers read back from its pages are sawn."""

import copy
import random
from collections.abc import Iterator
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from nesting.defects import solve_clear
from nesting.job import Job
from nesting.reading.job_toml import read_job
from plans.pages.pages import make_pages
from plans.pages.paper import A4, LETTER, Paper
from plans.pages.shapes import Page, Role, Text
from plans.plan import Plan, Solved, make_plan
from plans.plan_file import plan_document
from plans.rehearsal import rehearse
from plans.writers.pdf import write_pdf
from tests.plans.pdf_reading import PrintedSheet, read_sheets
from tests.plans.rehearsal.real_plans import planned

Json = dict[str, Any]
SAMPLES = sorted((Path(__file__).parents[2] / "samples").glob("*.toml"))
RANDOM = range(12)
NO_TRIMS = "left 0, right 0, top 0, bottom 0"
MANY = (4, 5, 9, 10)
LEAST_FIGURE = 3.2  # mm; codes in sums and at the foot are smaller
ROLES = (Role.KEEP, Role.FIGURE, Role.CODE)


@cache
def sample(path: Path) -> tuple[Job, Solved]:
    job = read_job(path)
    return job, solve_clear(job, effort=0, seed=1)


def pages_of(plan: Plan, paper: Paper = A4) -> tuple[Page, ...]:
    return make_pages(plan, paper)


def with_rows_of(document: Json, sheets: list[PrintedSheet]) -> Json:
    """Return a plan file whose printed tables are those of the PDF."""
    read = copy.deepcopy(document)
    for sheet in sheets:
        printed = read["sheets"][sheet.number - 1]["printed"]
        printed.update(rows=list(sheet.rows), size=sheet.size, trims=sheet.trims or NO_TRIMS)
    return read


def check(job: Job, solved: Solved, paper: Paper = A4) -> int:
    """Read a plan back from its PDF, hold it to the plan file and saw it; return its cuts."""
    plan = make_plan(job, solved)
    document = plan_document(job, solved, plan)
    sheets = read_sheets(write_pdf(pages_of(plan, paper)))
    assert [sheet.number for sheet in sheets] == [one["number"] for one in document["sheets"]]
    for sheet in sheets:
        printed = document["sheets"][sheet.number - 1]["printed"]
        assert list(sheet.rows) == printed["rows"], f"sheet {sheet.number}"
        assert sheet.size == printed["size"]
        assert (sheet.trims or NO_TRIMS) == printed["trims"]
    rehearsal = rehearse(with_rows_of(document, sheets))
    assert [str(fault) for fault in rehearsal.faults] == []
    return rehearsal.cuts


def test_the_hall_bass_cabinets_can_be_sawn_from_their_pdf() -> None:
    (path,) = [path for path in SAMPLES if path.stem == "hall_bass_cabinets"]
    assert check(*sample(path)) > 0


@pytest.mark.slow
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_sample_can_be_sawn_from_its_pdf(path: Path) -> None:
    assert check(*sample(path), LETTER) > 0


@pytest.mark.parametrize("seed", RANDOM)
def test_random_jobs_also_those_with_sheets_cut_alike_can_be_sawn_from_their_pdf(seed: int) -> None:
    _, job, result, _ = planned(seed)
    check(job, result, A4 if seed % 2 else LETTER)


def test_a_number_that_is_printed_wrong_is_caught() -> None:
    wrong_numbers_are_caught(seed=5, most=10)


@pytest.mark.slow
@pytest.mark.parametrize("seed", MANY)
def test_many_numbers_that_are_printed_wrong_are_caught(seed: int) -> None:
    wrong_numbers_are_caught(seed, most=60)


def wrong_numbers_are_caught(seed: int, most: int) -> None:
    """Change one figure or code of a table at a time, on the page only, and read the PDF."""
    _, job, result, document = planned(seed)
    pages = pages_of(make_plan(job, result))
    places = list(_figures_of_tables(pages))
    chance = random.Random(seed)  # noqa: S311 - chance, not secrecy
    for page, place in chance.sample(places, k=min(most, len(places))):
        wrong = read_sheets(write_pdf(mutated(pages, page, place)))
        faults = rehearse(with_rows_of(document, wrong)).faults
        assert faults, f"{page.title}: {page.shapes[place]}"


def _figures_of_tables(pages: tuple[Page, ...]) -> Iterator[tuple[Page, int]]:
    """Yield every figure and code of the cut tables: a page and the place on it."""
    for page in pages:
        heads = [
            shape.y for shape in page.shapes if isinstance(shape, Text) and shape.words == "KEEP"
        ]
        for place, shape in enumerate(page.shapes):
            if (
                page.title.startswith("Sheet ")
                and isinstance(shape, Text)
                and shape.role in ROLES
                and shape.height >= LEAST_FIGURE
                and any(sign.isdigit() for sign in shape.words)
                and any(shape.y > head for head in heads)
            ):
                yield page, place


def mutated(pages: tuple[Page, ...], page: Page, place: int) -> tuple[Page, ...]:
    """Return the pages of one sheet, the first figure of one text changed."""
    shape = page.shapes[place]
    assert isinstance(shape, Text)
    at = next(index for index, sign in enumerate(shape.words) if sign.isdigit())
    figure = str(int(shape.words[at]) % 9 + 1)
    words = shape.words[:at] + figure + shape.words[at + 1 :]
    shapes = (*page.shapes[:place], replace(shape, words=words), *page.shapes[place + 1 :])
    sheet = page.title.partition(",")[0]
    return tuple(
        replace(page, shapes=shapes) if one is page else one
        for one in pages
        if one.title.partition(",")[0] == sheet
    )
