"""Both rulers of every template tile, measured in the PDF itself by another library."""

import io
from functools import cache
from itertools import pairwise
from pathlib import Path

import pdfplumber
import pytest

from nesting.reading.job_toml import read_job
from nesting.solve import solve
from plans.pages.bench_pages import bench_pages
from plans.pages.frame import number_pages
from plans.pages.paper import A4, LETTER, Paper
from plans.plan import Plan, make_plan
from plans.writers.pdf import write_pdf

SAMPLE = Path(__file__).parents[3] / "samples" / "hall_bass_cabinets.toml"
POINTS_PER_MM = 72 / 25.4
TICKS = (2.5, 4.5)  # how long a tick is, in millimetres
LEAST = 12  # ticks of a ruler: more than a hundred millimetres


@cache
def planned() -> Plan:
    job = read_job(SAMPLE)
    return make_plan(job, solve(job, effort=0, seed=1))


def ticks(page: pdfplumber.page.Page, *, upright: bool) -> list[float]:
    """Return where the ticks of one ruler stand along it, in millimetres."""
    found = []
    for line in page.lines:
        wide = (line["x1"] - line["x0"]) / POINTS_PER_MM
        high = (line["bottom"] - line["top"]) / POINTS_PER_MM
        along, across = (high, wide) if upright else (wide, high)
        if across < 0.01 and any(abs(along - tick) < 0.01 for tick in TICKS):
            found.append((line["x0"] if upright else line["top"]) / POINTS_PER_MM)
    return sorted(found)


@pytest.mark.parametrize("paper", [A4, LETTER])
def test_every_tile_has_a_ruler_of_true_centimetres_in_both_directions(paper: Paper) -> None:
    pages = number_pages(bench_pages(planned(), paper), planned())
    tiles = [page for page in pages if page.title.startswith("Template")]
    assert tiles
    with pdfplumber.open(io.BytesIO(write_pdf(tiles))) as file:
        assert len(file.pages) == len(tiles)
        for page in file.pages:
            for upright in (True, False):
                places = ticks(page, upright=upright)
                assert len(places) >= LEAST
                for before, after in pairwise(places):
                    assert after - before == pytest.approx(10.0, abs=0.01)
