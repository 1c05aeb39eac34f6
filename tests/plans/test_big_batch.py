"""The acceptance of the batch mode, on an invented job of 504 parts and eight types of cabinet."""

import time
from collections import Counter
from functools import cache, partial
from pathlib import Path
from typing import Any

import pytest

from nesting.batches import solve_in_kits
from nesting.checks import check_layout
from nesting.cut_sequence import order_cuts
from nesting.garage.events import CutMade, SheetMissing
from nesting.garage.marking import add_marks
from nesting.garage.marks import Marks
from nesting.job import Job
from nesting.kits import find_kits, find_most_open
from nesting.replan import replan
from nesting.search.result import Result
from nesting.solve import solve, solve_cheapest
from plans.plan import Figures, Plan, make_plan
from plans.plan_file import dump, plan_document
from plans.plan_reading import read_planned
from plans.rehearsal import rehearse
from tests.nesting.big_batch import big_batch
from tests.plans.plan_rules import faults_of

LIMIT = 120
EFFORT = 1

pytestmark = pytest.mark.slow


@cache
def planned_batch() -> tuple[Job, Result, Plan, dict[str, Any]]:
    job = big_batch(LIMIT)
    result = solve_in_kits(job, partial(solve, effort=EFFORT))
    made = make_plan(job, result)
    return job, result, made, plan_document(job, result, made)


def test_the_rehearsal_and_the_rules_accept_the_batch() -> None:
    job, result, _, document = planned_batch()
    assert sum(part.count for part in job.parts) >= 500
    assert len(job.cabinets) == 8
    assert rehearse(document).faults == ()
    assert faults_of(document) == []
    assert check_layout(job, result.layout) == ()
    assert not result.layout.unplaced


def test_every_kit_closes_and_no_more_parts_wait_than_the_limit() -> None:
    job, result, made, _ = planned_batch()
    kits = find_kits(job, result.layout, made.sequences)
    assert len(kits) == sum(len(build.letters) for build in job.cabinets)
    assert all(kit.closes for kit in kits)
    assert all(len(kit.stack) == kit.parts for kit in kits)
    assert find_most_open(job, result.layout, made.sequences) <= LIMIT
    assert any("lie about whose cabinet" in line for line in made.overview.figures)


def test_the_printed_rows_never_leave_more_parts_about_than_the_limit() -> None:
    """Counted again from the plan file alone, row by row."""
    _, _, made, document = planned_batch()
    cabinets = {row.code: row.cabinet for row in made.parts}
    sizes = Counter(cabinets.values())
    about: Counter[str] = Counter()
    most = 0
    for sheet in document["sheets"]:
        for row in sheet["printed"]["rows"]:
            for code in {row["keep_code"], row["free_code"]} & {*cabinets}:
                about[cabinets[code]] += 1
            waiting = sum(count for letter, count in about.items() if count < sizes[letter])
            most = max(most, waiting)
    assert about == sizes
    assert 0 < most <= LIMIT


def test_the_settings_are_reported_and_no_more_than_those_of_the_cheapest_plan() -> None:
    job, result, made, _ = planned_batch()
    cheapest = solve_cheapest(job, effort=EFFORT)
    theirs = sum(order_cuts(job, sheet).settings for sheet in cheapest.layout.sheets)
    ours = sum(sequence.settings for sequence in made.sequences)
    assert result.cost <= cheapest.cost
    assert ours <= theirs
    assert any(f"{ours} settings" in line for line in made.overview.figures)


@pytest.mark.parametrize("tenth", [0, 2, 5, 7, 9])
def test_any_sheet_that_is_missing_midway_is_planned_round_within_a_minute(
    tenth: int, tmp_path: Path
) -> None:
    """Sheets from the first to the last are taken away, each while those before it are cut."""
    job, _, _, document = planned_batch()
    path = tmp_path / "batch.plan.json"
    path.write_text(dump(document), "utf-8")
    planned = read_planned(path)
    gone = 1 + tenth * (len(planned.sheets) - 1) // 9
    cut = tuple(
        CutMade(sheet=each.number, cut=made.number)
        for each in planned.sheets[: gone - 1]
        for made in each.cuts
    )
    marks = add_marks(planned, Marks(), (*cut, SheetMissing(sheet=gone)))
    begin = time.monotonic()
    again = replan(job, planned, marks, effort=EFFORT)
    assert time.monotonic() - begin < 60
    rest = again.remaining.job
    assert not again.layout.unplaced
    assert check_layout(rest, again.layout) == ()
    assert again.cost <= max(sheet.price for sheet in job.sheets)  # one sheet, at most
    figures = Figures(layout=again.layout, bound=again.bound, groups=again.groups)
    made_again = make_plan(rest, figures)
    assert rehearse(plan_document(rest, figures, made_again)).faults == ()
    kits = find_kits(rest, again.layout, made_again.sequences)
    assert all(kit.closes for kit in kits)
