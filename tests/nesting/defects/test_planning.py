from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from nesting.checks import check_layout
from nesting.defects import pieces_search, solve_clear
from nesting.job import Job
from nesting.layout import PartLeaf, Rect, walk
from nesting.lengths import mm
from nesting.search.result import Result
from nesting.sheets import Defect
from nesting.solve import solve
from tests.nesting.defects.defect_jobs import KNOT, STAIN, chance_job, unsound
from tests.nesting.hand_made import BIRCH, job, part


def test_without_defects_the_layout_is_that_of_the_search() -> None:
    plain = job(part("Side", 900, 400, count=4))
    assert solve_clear(plain, effort=1).layout == solve(plain, effort=1).layout


@pytest.mark.parametrize("seed", range(5))
def test_no_part_lies_where_it_must_not(seed: int) -> None:
    made = chance_job(seed)
    result = solve_clear(made, effort=1)
    assert check_layout(made, result.layout) == ()
    assert result.cost >= result.bound
    assert result.cost == sum(made.sheets[tree.sheet].price for tree in result.layout.sheets)


def test_the_same_job_and_seed_give_the_same_layout() -> None:
    assert (
        solve_clear(chance_job(3), effort=1).layout == solve_clear(chance_job(3), effort=1).layout
    )


def test_a_row_moves_apart_round_a_defect() -> None:
    """Two parts of 1100 leave 215 of a row of 2420; the defect goes between them."""
    made = job(part("Side", 1100, 1190, count=2), sheets=[unsound(replace(KNOT, x=mm(1150)))])
    result = solve_clear(made, effort=1)
    assert check_layout(made, result.layout) == ()
    assert not result.layout.unplaced


def test_a_part_that_every_place_of_the_sheet_would_put_on_a_defect_is_reported() -> None:
    made = job(part("Top", 2000, 1000), sheets=[unsound(replace(KNOT, x=mm(1200), y=mm(600)))])
    (gap,) = solve_clear(made, effort=1).layout.unplaced
    assert gap.reason == (
        "no room of 2000 x 1000 mm was found clear of the defects of 'birch 18, no. 1'; one sound "
        "sheet more would do, or another use of a defect where this part is hidden"
    )


def test_a_hidden_part_lies_on_a_stain_and_one_that_shows_does_not() -> None:
    stain = replace(STAIN, x=mm(1200), y=mm(600))
    shown = job(part("Top", 2000, 1000), sheets=[unsound(stain)])
    hidden = replace(shown, parts=tuple(replace(one, is_hidden=True) for one in shown.parts))
    assert solve_clear(shown, effort=1).layout.unplaced
    assert not solve_clear(hidden, effort=1).layout.unplaced


def test_a_sound_sheet_is_bought_where_the_one_in_hand_will_not_do_and_the_plan_says_so() -> None:
    middle = Defect(x=mm(1000), y=mm(500), length=mm(300), width=mm(200))
    made = job(part("Top", 2000, 1000), sheets=[unsound(middle), BIRCH])
    result = solve_clear(made, effort=1)
    assert [made.sheets[tree.sheet].name for tree in result.layout.sheets] == ["birch 18"]
    assert result.cost == BIRCH.price
    assert result.bound == Decimal(0)
    (note,) = result.layout.notes
    assert note == (
        "The defects of birch plywood cost more, 62.00 in all. Parts that may lie on a defect save "
        "room: see 'face' and 'use' in the job file."
    )


def test_of_two_sheets_alike_the_unsound_one_is_used_up_where_that_takes_no_change() -> None:
    corner = Defect(x=mm(2400), y=mm(1200), length=mm(40), width=mm(20))
    sound = replace(unsound(), name="birch 18")
    made = job(part("Side", 900, 400, count=2), sheets=[sound, unsound(corner)])
    result = solve_clear(made, effort=1)
    assert [made.sheets[tree.sheet].name for tree in result.layout.sheets] == ["birch 18, no. 1"]


def test_copies_are_numbered_once_each() -> None:
    made = chance_job(5)
    result = solve_clear(made, effort=1)
    anywhere = Rect(x=0, y=0, length=0, width=0)
    leaves = [
        (place.node.part, place.node.copy)
        for tree in result.layout.sheets
        for place in walk(tree.root, anywhere)
        if isinstance(place.node, PartLeaf)
    ]
    assert len(leaves) == len(set(leaves))


def test_no_more_ways_than_the_first_are_looked_at_when_the_time_is_up(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    asked = []

    def counted(made: Job, **how: Any) -> Result:  # noqa: ANN401
        asked.append(made)
        return solve(made, **how)

    monkeypatch.setattr(pieces_search, "solve", counted)
    # a knot in the middle of either sheet, and no part that fits beside it as the sheets lie
    knot = replace(KNOT, x=mm(1200), y=mm(600))
    sheets = [unsound(knot, name=f"birch 18, no. {number}") for number in (1, 2)]
    made = job(part("Top", 1150, 590, count=7), sheets=sheets)
    late = solve_clear(made, effort=1, seconds=0)
    assert 0 < len(asked) <= pieces_search.FIRST_LOOKS
    assert check_layout(made, late.layout) == ()
    asked.clear()
    solve_clear(made, effort=1)
    assert len(asked) > pieces_search.FIRST_LOOKS, "a job that is done by then shows nothing"
