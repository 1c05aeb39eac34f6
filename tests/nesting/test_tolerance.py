"""Chances with random errors, against the normal distribution and against themselves."""

from dataclasses import replace
from math import atan, pi
from statistics import NormalDist

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from nesting.garage.planned import PlannedSheet
from nesting.job import Job
from nesting.layout import Layout, PartLeaf
from nesting.lengths import mm
from nesting.tolerance import Errors, rehearse_errors
from tests.nesting.garage.plans_read import planned
from tests.nesting.hand_made import guillotine_jobs, job, part, strips, two_cabinets

ONLY_SETTINGS = Errors(kerf=0, square_per_metre=0)


@pytest.fixture(scope="module")
def cabinets() -> tuple[PlannedSheet, ...]:
    return planned(*two_cabinets()).sheets


def test_without_errors_every_part_comes_out(cabinets: tuple[PlannedSheet, ...]) -> None:
    none = Errors(setting=0, kerf=0, square_per_metre=0, forgiven=0)
    found = rehearse_errors(cabinets, none, trials=10)
    assert found.chance == 1000
    assert {strip.chance for strip in found.strips} == {1000}


def test_two_settings_fail_as_the_normal_distribution_says() -> None:
    """One part has two keep sizes; each is 1 mm short or more with chance Phi(-1 / 0.5)."""
    made = job(part("Panel", 600, 300))
    sheet = strips(made, [(mm(300), [PartLeaf(part=0, copy=0)])])
    sheets = planned(made, Layout(sheets=(sheet,))).sheets
    found = rehearse_errors(sheets, ONLY_SETTINGS, trials=200_000)
    reaches = 1 - NormalDist(0, 0.5).cdf(-1)
    assert abs(found.chance / 1000 - reaches**2) < 0.003


def test_cuts_of_one_setting_fail_together() -> None:
    """Four equal parts off the same settings fail no more often than one of them."""
    made = job(part("Panel", 500, 300, 4))
    sheet = strips(made, [(mm(300), [PartLeaf(part=0, copy=copy) for copy in range(4)])])
    sheets = planned(made, Layout(sheets=(sheet,))).sheets
    found = rehearse_errors(sheets, ONLY_SETTINGS, trials=200_000)
    reaches = 1 - NormalDist(0, 0.5).cdf(-1)
    assert abs(found.chance / 1000 - reaches**2) < 0.003


def test_a_row_without_slack_agrees_with_plane_geometry() -> None:
    """Four parts fill the row exactly, nothing is forgiven.

    The setting e must not be too short, and three of it must not take more than a short trim t
    left over: e >= 0 and t <= -3 e. Two independent errors alike in all directions lie in that
    angle with chance atan(1/3) / 2 pi; the rip before must not be too short either.
    """
    made = job(part("Panel", 500, 300, 4))
    stock = replace(made.sheets[0], length=mm(10) + 4 * mm(500) + 3 * mm("2.4"))
    made = replace(made, sheets=(replace(stock, trim=replace(stock.trim, right=0)),))
    sheet = strips(made, [(mm(300), [PartLeaf(part=0, copy=copy) for copy in range(4)])])
    sheets = planned(made, Layout(sheets=(sheet,))).sheets
    exact = replace(ONLY_SETTINGS, forgiven=0)
    worst = rehearse_errors(sheets, exact, trials=200_000).worst
    assert worst is not None
    assert set(worst.parts) == {"A1", "A2", "A3", "A4"}
    assert abs(worst.chance / 1000 - atan(1 / 3) / (2 * pi) / 2) < 0.002


@settings(max_examples=30, deadline=None)
@given(made=guillotine_jobs(most_cuts=12), more=st.integers(1, 30))
def test_neither_larger_blanks_nor_longer_rows_lower_the_chance(
    made: tuple[Job, Layout], more: int
) -> None:
    (sheet,) = planned(*made).sheets
    slacks = [0, *(mm(slack) for slack in range(1, 6))]
    found = rehearse_errors([sheet], Errors(), trials=300, slacks=slacks)
    chances = [chance for _, chance in found.with_slack]
    assert chances == sorted(chances)
    assert chances[0] == found.chance
    wider = replace(sheet, length=sheet.length + mm(more), width=sheet.width + mm(more))
    assert rehearse_errors([wider], Errors(), trials=300).chance >= found.chance


def test_the_worst_strip_is_one_of_the_strips(cabinets: tuple[PlannedSheet, ...]) -> None:
    found = rehearse_errors(cabinets, Errors())
    assert found.worst in found.strips
    assert found.chance <= min(strip.chance for strip in found.strips)
    parts = [code for strip in found.strips for code in strip.parts]
    assert sorted(parts) == sorted(p.code for s in cabinets for p in s.pieces if p.part)


def test_the_same_seed_gives_the_same_answer(cabinets: tuple[PlannedSheet, ...]) -> None:
    first, second, other = (
        rehearse_errors(cabinets, Errors(), trials=500, seed=seed) for seed in (7, 7, 8)
    )
    assert first == second
    assert first != other
