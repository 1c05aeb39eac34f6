"""Grain stands in words wherever a piece has a size; the order of figures says nothing."""

from functools import cache
from pathlib import Path

import pytest

from nesting.first_cuts import solve_with_yard
from nesting.reading.job_toml import read_job_text
from plans.pages.pages import make_pages
from plans.pages.paper import A4
from plans.pages.shapes import Text
from plans.plan import Plan, make_plan

SHEETS = {
    "grain dimension first": 'length = 2440\nwidth = 1220\ngrain = "length"',
    "grain dimension last": 'length = 1220\nwidth = 2440\ngrain = "width"',
}
# The sheet is the same; makers of plywood write its sizes in either order.
JOB = """
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
{sheet}
price = 60
[yard]
max_cuts = 3
[[cabinet]]
name = "Side fill"
family = "box"
count = 2
height = 600
width = 400
depth = 350
baffle = "inset"
back = {{ fit = "inset", held_by = "screws" }}
"""


@cache
def planned(name: str) -> Plan:
    job = read_job_text(JOB.format(sheet=SHEETS[name]), Path("job.toml"))
    return make_plan(job, solve_with_yard(job, effort=0))


def said(plan: Plan, title: str) -> str:
    pages = [page for page in make_pages(plan, A4) if title in page.title.split("; ")]
    return " ".join(s.words for page in pages for s in page.shapes if isinstance(s, Text))


@pytest.mark.parametrize("name", SHEETS)
def test_every_page_with_a_sheet_says_along_which_figure_its_grain_runs(name: str) -> None:
    plan = planned(name)
    for title in ("Shopping list", "For the yard", "Sheet 1"):
        assert "GRAIN RUNS ALONG THE 2440" in said(plan, title).upper(), title


@pytest.mark.parametrize("name", SHEETS)
def test_every_part_offcut_and_label_names_the_figure_along_its_grain(name: str) -> None:
    plan = planned(name)
    sizes = [(part.finished, part.grain) for part in plan.parts]
    sizes += [(offcut.size, offcut.grain) for offcut in plan.offcuts]
    assert sizes
    for size, grain in sizes:
        first, second = size.split(" × ")
        assert grain in {f"grain along the {first}", f"grain along the {second}"}, (size, grain)
        assert first != second
    assert len(plan.labels) == len(sizes)
    assert all(label.grain.startswith("grain a") for label in plan.labels)


def test_the_order_in_which_a_sheet_is_written_moves_no_grain() -> None:
    first, last = (planned(name) for name in SHEETS)
    assert [(part.name, part.finished, part.grain) for part in first.parts] == [
        (part.name, part.finished, part.grain) for part in last.parts
    ]


@pytest.mark.parametrize("order", [("562", "300"), ("300", "562")])
def test_a_list_that_leaves_the_grain_open_is_asked_which_way_it_runs(
    tmp_path: Path, order: tuple[str, str]
) -> None:
    """A list says length and width in either order; where both fit, the plan asks."""
    (tmp_path / "parts.csv").write_text(
        f"name,length,width,count\nShelf,{order[0]},{order[1]},2\n", "utf-8"
    )
    sheet = JOB.split("[yard]", maxsplit=1)[0].format(sheet=SHEETS["grain dimension first"])
    text = f'{sheet}[[part_list]]\nfile = "parts.csv"\n'
    job = read_job_text(text, tmp_path / "job.toml")
    plan = make_plan(job, solve_with_yard(job, effort=0))
    (asked,) = (each for each in plan.overview.assumed if each.name == "grain of Shelf")
    assert asked.check == "Write grain for each part whose look or strength depends on it."
    assert "grain of Shelf" in said(plan, "Numbers to check")
    assert {part.grain for part in plan.parts} == {"any"}
