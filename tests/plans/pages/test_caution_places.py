"""Every note in full on the safety page, and in short on each page where its hazard is met.

What must be warned of follows handbooks, makers and public guidance; that a page carries it once,
in one line, is judgement.
"""

import re
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

SAMPLE = Path(__file__).parents[3] / "samples" / "hall_bass_cabinets.toml"
PLANS = ("bass cabinets", "wedges")
PLACES = {
    ("Support", "Sheet 1"),
    ("Holding", "Sheet 1"),
    ("Guards", "Sheet 1"),
    ("Blade depth", "Sheet 1"),
    ("Mass", "Sheet 1"),
    ("Mass", "Shopping list"),
    ("Dust, eyes, ears", "Sheet 1"),
    ("Dust, eyes, ears", "Holes"),
    ("Tiredness", "Sheet 1"),
    ("Tiredness", "Order of work"),
    ("Noise", "Order of work"),
    ("Mains", "Overview"),
    ("Hanging", "Overview"),
    ("Hanging", "Holes"),
    ("Strength", "Overview"),
    ("Circles", "Holes"),
    ("Router", "Holes"),
    ("Router", "Frame and joints"),
    ("Solvents", "Covering"),
    ("Connector", "Holes"),
}
TITLES = {
    "sheet": "Sheet 1",
    "shopping": "Shopping list",
    "work": "Order of work",
    "overview": "Overview",
    "holes": "Holes",
    "frame": "Frame and joints",
    "covering": "Covering",
}


@cache
def planned(name: str) -> tuple[Plan, tuple[Page, ...]]:
    if name == "wedges":
        _, _, plan = full_plan()
    else:
        job = read_job(SAMPLE)
        plan = make_plan(job, solve_with_yard(job, effort=0))
    return plan, make_pages(plan, A4)


def squeezed(words: str) -> str:
    """Return words without spaces: lines break anywhere."""
    return re.sub(r"\s", "", words)


def said(pages: tuple[Page, ...], title: str = "") -> str:
    found = [page for page in pages if not title or title in re.split("[;,] ", page.title)]
    return squeezed("".join(s.words for page in found for s in page.shapes if isinstance(s, Text)))


@pytest.mark.parametrize(("topic", "title"), sorted(PLACES))
def test_a_note_stands_in_short_once_on_the_page_of_its_hazard(topic: str, title: str) -> None:
    plan, pages = planned("wedges" if title == "Order of work" else "bass cabinets")
    (caution,) = [caution for caution in plan.cautions if caution.topic == topic]
    assert said(pages, title).count(squeezed(caution.short)) == 1


@pytest.mark.parametrize("name", PLANS)
def test_every_note_stands_in_full_once_on_the_safety_page_and_says_whom_to_ask(name: str) -> None:
    plan, pages = planned(name)
    for caution in plan.cautions:
        assert said(pages, "Safety").count(squeezed(caution.full)) == 1, caution.topic
        assert said(pages).count(squeezed(caution.full)) == 1, caution.topic
        assert squeezed(f"Ask: {caution.defer_to}.") in said(pages, "Safety")


@pytest.mark.parametrize("name", PLANS)
def test_no_page_that_a_note_names_goes_without_a_test(name: str) -> None:
    plan, _ = planned(name)
    assert {(one.topic, TITLES[where]) for one in plan.cautions for where in one.where} <= PLACES


def test_noise_is_spoken_of_where_the_work_is_planned_by_the_hour() -> None:
    with_sessions, without = planned("wedges")[0], planned("bass cabinets")[0]
    assert with_sessions.workshop.sessions
    assert not without.workshop.sessions
    assert "Noise" in {caution.topic for caution in with_sessions.cautions}
    assert "Noise" not in {caution.topic for caution in without.cautions}


def test_the_left_hand_is_spoken_of_where_the_saw_is_set_up() -> None:
    plan, pages = planned("wedges")
    assert said(pages, "Setting up").count(squeezed(plan.handed.note)) == 1


@pytest.mark.parametrize("name", PLANS)
def test_the_safety_page_comes_before_any_cut_at_home(name: str) -> None:
    titles = [page.title for page in planned(name)[1]]
    assert titles.index("Safety") < next(
        place for place, title in enumerate(titles) if title.startswith("Sheet")
    )
