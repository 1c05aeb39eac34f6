"""Sums, parts list and yard's pages of the finished PDF: read back, sawn, and broken on purpose."""

import copy
import random
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from functools import cache
from typing import Any

import pytest

from nesting.job import Job
from plans.pages.pages import make_pages
from plans.pages.paper import A4, LETTER, Paper
from plans.pages.shapes import Page, Text
from plans.plan import Plan, Solved, make_plan
from plans.plan_file import plan_document
from plans.rehearsal import rehearse
from plans.sections.repeats import find_repeats, matching_codes
from plans.writers.pdf import write_pdf
from tests.plans.full_plan import full_plan
from tests.plans.pdf_lists import read_parts, read_sums, read_yard
from tests.plans.rehearsal.real_plans import planned
from tests.plans.yard_plans import half_sheets, narrow_pieces

Json = dict[str, Any]
RANDOM = range(3)
MORE = range(3, 12)
READ = ("Sheet", "Parts", "For the yard")
MM_PER_INCH = Fraction("25.4")
YARDS = {"half": half_sheets, "narrow": narrow_pieces, "full": full_plan}


def pdf_of(pages: tuple[Page, ...]) -> bytes:
    """Return a PDF of the pages that are read back."""
    return write_pdf(tuple(page for page in pages if any(word in page.title for word in READ)))


def as_read(job: Job, solved: Solved, plan: Plan, pages: tuple[Page, ...]) -> Json:
    """Return the plan file with the sums, the finished sizes and the yard's cuts of the PDF."""
    pdf = pdf_of(pages)
    document = copy.deepcopy(plan_document(job, solved, plan))
    sheets = {sheet["number"]: sheet["printed"] for sheet in document["sheets"]}
    sums, parts = read_sums(pdf), read_parts(pdf)
    for repeat in find_repeats(plan.sheets):
        first = repeat.view
        for number in repeat.numbers:
            codes = matching_codes(first, plan.sheets[number - 1])
            read = sums.get(first.number, {})
            texts = {codes.get(code, code): text for code, text in read.items()}
            # pieces that add up alike share a line: the order is that of the plan file
            listed = [line["piece"] for line in sheets[number]["sums"]]
            pieces = [*(code for code in listed if code in texts), *(texts.keys() - set(listed))]
            sheets[number]["sums"] = [{"piece": code, "text": texts[code]} for code in pieces]
    for printed in sheets.values():
        for part in printed["parts"]:
            part["finished"] = parts[part["code"]].finished
    for pattern in read_yard(pdf):
        for number in pattern.sheets:
            put_yard_cuts(sheets[number]["rows"], pattern.cuts, pattern.unit, document["unit"])
    return document


def put_yard_cuts(rows: list[Json], cuts: tuple[tuple[str, str], ...], unit: str, own: str) -> None:
    """Put the yard's sizes into the rows of its cuts, where both pages share a unit."""
    mine = [row for row in rows if not row["guide_left"]]
    for row, (size, edge) in zip(mine, cuts, strict=True):
        assert row["measure_from"] == f"{edge} edge"
        if unit == own:
            row["keep"] = size
        else:
            assert abs(in_mm(size, unit) - in_mm(row["keep"], own)) <= Fraction("0.06")


def in_mm(text: str, unit: str) -> Fraction:
    value = sum(map(Fraction, text.split(" ")), Fraction(0))
    return value * (MM_PER_INCH if unit == "in" else 1)


def faults_of(document: Json) -> list[str]:
    return [str(fault) for fault in rehearse(document).faults]


def check(job: Job, solved: Solved, plan: Plan, paper: Paper) -> Json:
    document = plan_document(job, solved, plan)
    read = as_read(job, solved, plan, make_pages(plan, paper))
    assert read == document
    assert faults_of(read) == []
    return read


@cache
def random_plan(seed: int) -> tuple[Job, Solved, Plan]:
    _, job, result, _ = planned(seed)
    return job, result, make_plan(job, result)


@pytest.mark.parametrize("seed", RANDOM)
def test_sums_and_parts_of_random_jobs_are_read_back_and_sawn(seed: int) -> None:
    read = check(*random_plan(seed), A4 if seed % 2 else LETTER)
    assert any(sheet["printed"]["sums"] for sheet in read["sheets"])


@pytest.mark.slow
@pytest.mark.parametrize("seed", MORE)
def test_more_random_jobs_are_read_back_and_sawn(seed: int) -> None:
    check(*random_plan(seed), A4 if seed % 2 else LETTER)


@pytest.mark.parametrize(("name", "paper"), [("half", A4), ("narrow", LETTER), ("full", LETTER)])
def test_the_yards_pages_are_read_back_and_sawn(name: str, paper: Paper) -> None:
    job, solved, plan = YARDS[name]()
    read = check(job, solved, plan, paper)
    patterns = read_yard(pdf_of(make_pages(plan, paper)))
    assert (
        sum(len(pattern.cuts) * len(pattern.sheets) for pattern in patterns)
        == (read["yard"]["cuts"])
    )
    for pattern in patterns:
        for number in pattern.sheets:
            rows = read["sheets"][number - 1]["printed"]["rows"]
            cuts = [row for row in rows if not row["guide_left"]]
            made = {row[key] for row in cuts for key in ("keep_code", "free_code")}
            held = {row["hold"] for row in cuts}
            assert made - held - {"WASTE"} <= pattern.codes


def test_every_part_comes_free_with_the_cut_that_the_parts_list_names() -> None:
    for job, solved, plan in (full_plan(), *map(random_plan, RANDOM)):
        document = plan_document(job, solved, plan)
        for code, part in read_parts(pdf_of(make_pages(plan, A4))).items():
            if part.cut == "-":
                continue
            rows = document["sheets"][int(part.sheet) - 1]["printed"]["rows"]
            (row,) = [row for row in rows if row["number"] == part.cut]
            assert code in (row["keep_code"], row["free_code"])


def is_sum(page: Page, text: Text) -> bool:
    return page.title.startswith("Sheet") and " = " in text.words and " left" in text.words


def is_finished_size(page: Page, text: Text) -> bool:
    return "Parts" in page.title and text.height > 4 and "×" in text.words and not text.bold


def is_yard_cut(page: Page, text: Text) -> bool:
    return page.title == "For the yard" and text.words.startswith("CUT ")


@pytest.mark.parametrize("wanted", [is_sum, is_finished_size, is_yard_cut])
def test_a_figure_that_is_printed_wrong_is_caught(wanted: Callable[[Page, Text], bool]) -> None:
    job, solved, plan = half_sheets()
    pages = make_pages(plan, A4)
    places = [
        (page, place)
        for page in pages
        for place, shape in enumerate(page.shapes)
        if isinstance(shape, Text) and wanted(page, shape)
    ]
    assert places
    chance = random.Random(1)  # noqa: S311 - repeatable, no secrets
    for page, place in chance.sample(places, k=min(3, len(places))):
        wrong = tuple(with_another_figure(one, place) if one is page else one for one in pages)
        assert faults_of(as_read(job, solved, plan, wrong)), page.shapes[place]


def with_another_figure(page: Page, place: int) -> Page:
    """Return a page with the first figure of one size changed, not the number of a cut."""
    shape = page.shapes[place]
    assert isinstance(shape, Text)
    start = shape.words.find(": ") + 1
    at = next(at for at in range(start, len(shape.words)) if shape.words[at].isdigit())
    figure = str(int(shape.words[at]) % 9 + 1)
    words = shape.words[:at] + figure + shape.words[at + 1 :]
    shapes = (*page.shapes[:place], replace(shape, words=words), *page.shapes[place + 1 :])
    return replace(page, shapes=shapes)
