"""A note comes with the hazard in the job file, and not without it."""

import re
from pathlib import Path

import pytest

from nesting.first_cuts import solve_with_yard
from nesting.reading.job_toml import read_job_text
from plans.pages.pages import make_pages
from plans.pages.paper import A4
from plans.pages.shapes import Text
from plans.plan import Plan, make_plan
from tests.plans.full_plan import full_plan

PLAIN = """
[saw]
lift_limit_kg = 80
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = 2440
width = 1220
[[part]]
name = "Shelf"
length = 800
width = 300
count = 6
"""
BOX = """
[[cabinet]]
name = "Chest"
height = 500
width = 400
depth = 300
baffle = { fit = "inset", held_by = "glue" }
back = { fit = "inset", held_by = "glue" }
"""
CIRCLE = '[[cabinet.hole]]\nname = "driver"\ncut_out = 230\nflange = 260\n'
RECESS = f"{CIRCLE}recess = 5\n"
CONNECTOR = '[[cabinet.hole]]\nkind = "connector"\npanel = "back"\nwindow = [40, 60]\n'
HANDLE = '[[cabinet.hole]]\nkind = "handle"\npanel = "left side"\nwindow = [120, 80]\n'
OF_HOLES = {"Circles", "Router", "Connector"}


def planned(text: str) -> Plan:
    job = read_job_text(text, Path("job.toml"))
    return make_plan(job, solve_with_yard(job, effort=0))


def topics(text: str) -> set[str]:
    return {caution.topic for caution in planned(text).cautions}


def said(plan: Plan, title: str) -> str:
    """Return what stands on the pages of a title as one line."""
    pages = [page for page in make_pages(plan, A4) if title in re.split("[;,] ", page.title)]
    return " ".join(s.words for page in pages for s in page.shapes if isinstance(s, Text))


@pytest.mark.parametrize(
    ("hole", "brought"),
    [
        ("", set[str]()),
        (CIRCLE, {"Circles"}),
        (RECESS, {"Circles", "Router"}),
        (CONNECTOR, {"Connector"}),
        (HANDLE, set[str]()),
    ],
)
def test_a_hole_brings_its_own_notes_and_no_others(hole: str, brought: set[str]) -> None:
    assert topics(PLAIN + BOX + hole) & OF_HOLES == brought


def test_covering_brings_the_note_on_solvents() -> None:
    covered = f"{PLAIN}[covering]\nthickness = 1\n{BOX}"
    assert topics(covered) - topics(PLAIN + BOX) == {"Solvents"}


def test_a_box_must_not_be_hung_and_one_with_handles_says_so_at_their_holes() -> None:
    words = "Never hang it from its handles."
    assert words in said(planned(PLAIN + BOX + HANDLE), "Holes")
    assert words not in said(planned(PLAIN + BOX + CIRCLE), "Holes")
    assert words in said(planned(PLAIN + BOX + CIRCLE), "Overview")
    assert words not in said(planned(PLAIN), "Overview")


def test_two_people_are_called_for_above_the_limit_and_only_there() -> None:
    """18 mm birch at a maker's 685 kg/m3: 36.7 kg for the sheet."""
    for limit, calls in ((80, False), (37, False), (36, True)):
        plan = planned(PLAIN.replace("= 80", f"= {limit}"))
        assert "36.7 kg" in said(plan, "Sheet 1")
        assert ("TWO PEOPLE" in said(plan, "Sheet 1")) == calls


def test_a_piece_too_narrow_to_clamp_is_told_at_its_cut() -> None:
    assert "by hand" not in said(planned(PLAIN), "Sheet 1")
    assert "by hand" in said(planned(PLAIN.replace("= 300", "= 40")), "Sheet 1")


def test_every_piece_in_the_car_has_its_mass_and_what_sticks_out_is_left_to_the_law() -> None:
    _, _, plan = full_plan()
    assert plan.car is not None
    page = said(plan, "Into the car")
    assert all(f"{piece.mass} kg" in page for piece in plan.car.pieces)
    for words in ("tailgate is shut", "past the driver", "local traffic law"):
        assert words in page


def test_the_depth_of_the_blade_is_a_figure_nowhere() -> None:
    _, _, plan = full_plan()
    for page in make_pages(plan, A4):
        words = " ".join(shape.words for shape in page.shapes if isinstance(shape, Text))
        assert not re.search(r"[Bb]lade depth \S* ?\d|depth of the blade\D{0,20}\d", words)
