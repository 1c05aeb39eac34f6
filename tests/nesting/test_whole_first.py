"""One whole cabinet first: every part of it, and no cut that it does not need."""

from collections import Counter
from dataclasses import replace
from decimal import Decimal

import pytest

from nesting.batches import solve_in_kits
from nesting.checks import check_layout
from nesting.cut_sequence import list_work, order_cuts
from nesting.cut_sequence.sequence import Sequence
from nesting.job import Job
from nesting.kits import find_kits
from nesting.layout import By, Cut, Layout, PartLeaf, Rect, walk
from nesting.lengths import mm
from nesting.sessions import plan_sessions
from nesting.solve import solve
from nesting.terms import Terms
from tests.nesting.big_batch import big_batch

LONG = Decimal(10_000)


@pytest.fixture(scope="module")
def boxes() -> Job:
    """Return ten cabinets of one type and ten of another, that no sheet holds alone."""
    batch = big_batch(None)
    return replace(
        batch,
        parts=tuple(part for build in batch.cabinets[:2] for part in build.parts),
        cabinets=batch.cabinets[:2],
    )


def planned(job: Job, letter: str) -> tuple[Job, Layout, tuple[Sequence, ...]]:
    asked = replace(job, terms=Terms(first_whole=letter))
    layout = solve_in_kits(asked, lambda each: solve(each, effort=0)).layout
    return asked, layout, tuple(order_cuts(asked, sheet) for sheet in layout.sheets)


def freed_before_the_stop(
    layout: Layout, sequences: tuple[Sequence, ...]
) -> Counter[tuple[int, int]]:
    """Return the parts that lie there when every sheet has been cut up to its pause."""
    found: Counter[tuple[int, int]] = Counter()
    for sheet, sequence in zip(layout.sheets, sequences, strict=True):
        made = {step.path for step in sequence.steps[: sequence.pause]}
        for place in walk(sheet.root, Rect(x=0, y=0, length=0, width=0)):
            if isinstance(place.node, PartLeaf) and place.path[:-1] in made:
                found[place.node.part, place.node.copy] += 1
    return found


@pytest.mark.parametrize("which", [0, -1])
def test_after_the_stop_all_of_the_cabinet_is_there(boxes: Job, which: int) -> None:
    letter = boxes.cabinets[which].letters[0]
    job, layout, sequences = planned(boxes, letter)
    there = freed_before_the_stop(layout, sequences)
    wanted = {
        (index, copy)
        for index, part in enumerate(job.parts)
        if part.cabinet == letter
        for copy in range(part.count)
    }
    assert wanted
    assert all(there[each] == 1 for each in wanted)
    assert check_layout(job, layout) == ()


def test_no_cut_is_made_before_the_stop_that_the_cabinet_does_not_need(boxes: Job) -> None:
    letter = boxes.cabinets[0].letters[0]
    job, layout, sequences = planned(boxes, letter)
    for sheet, sequence in zip(layout.sheets, sequences, strict=True):
        needed = {
            place.path[:depth]
            for place in walk(sheet.root, Rect(x=0, y=0, length=0, width=0))
            if isinstance(place.node, PartLeaf) and job.parts[place.node.part].cabinet == letter
            for depth in range(len(place.path))
        }
        before = sequence.steps[: sequence.pause]
        assert all(step.path in needed or step.is_trim or step.by is By.YARD for step in before)
        assert bool(before) == bool(needed)


def test_the_cuts_after_the_stop_can_still_be_made_one_by_one(boxes: Job) -> None:
    _, layout, sequences = planned(boxes, boxes.cabinets[0].letters[0])
    for sheet, sequence in zip(layout.sheets, sequences, strict=True):
        made: set[tuple[int, ...]] = set()
        for step in sequence.steps:
            assert not step.path or step.path[:-1] in made
            made.add(step.path)
        anywhere = Rect(x=0, y=0, length=0, width=0)
        cuts = {place.path for place in walk(sheet.root, anywhere) if isinstance(place.node, Cut)}
        assert made == cuts


def test_the_wish_moves_no_cut_and_buys_no_sheet(boxes: Job) -> None:
    plain = solve_in_kits(boxes, lambda each: solve(each, effort=0)).layout
    _, layout, _ = planned(boxes, boxes.cabinets[0].letters[0])
    assert sorted(sheet.sheet for sheet in layout.sheets) == sorted(
        sheet.sheet for sheet in plain.sheets
    )


def test_the_cabinet_closes_first_and_a_session_ends_there(boxes: Job) -> None:
    letter = boxes.cabinets[1].letters[0]
    job, layout, sequences = planned(boxes, letter)
    assert find_kits(job, layout, sequences)[0].cabinet == letter
    sessions = plan_sessions(job, layout, sequences, store=(mm(2500), mm(1250)), most_minutes=LONG)
    work = [(number, step.number) for number, step in list_work(sequences)]
    stop = sum(sequence.pause for sequence in sequences)
    ends = [(session.last.sheet, session.last.cut) for session in sessions]
    assert work[stop - 1] in ends
    assert ends[-1] == work[-1]
