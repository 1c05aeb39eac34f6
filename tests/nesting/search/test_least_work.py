import time
from collections import Counter
from decimal import Decimal

import pytest

from nesting.checks import check_layout
from nesting.cut_sequence import minutes, missed_matches, order_cuts
from nesting.job import Job
from nesting.layout import Direction, Layout, PartLeaf
from nesting.lengths import mm
from nesting.parts import Grain
from nesting.saw import Saw, Times
from nesting.search.least_work import find_less_work, less_work
from nesting.solve import solve, solve_cheapest
from tests.nesting.hand_made import strips
from tests.nesting.search.all_trees import list_layouts
from tests.nesting.search.jobs import make_job, make_part, make_random_job, make_sheet


def count_minutes(job: Job, layout: Layout) -> Decimal:
    return sum((minutes(job, order_cuts(job, sheet)) for sheet in layout.sheets), Decimal(0))


def count_settings(job: Job, layout: Layout) -> int:
    return sum(order_cuts(job, sheet).settings for sheet in layout.sheets)


def count_misses(job: Job, layout: Layout) -> int:
    sequences = [order_cuts(job, sheet) for sheet in layout.sheets]
    return sum(miss.count for miss in missed_matches(job, layout, sequences))


def count_narrow(job: Job, layout: Layout) -> int:
    steps = [step for sheet in layout.sheets for step in order_cuts(job, sheet).steps]
    return sum(min(step.piece.length, step.piece.width) < job.saw.smallest_held for step in steps)


def count_sheets(layout: Layout) -> Counter[int]:
    return Counter(sheet.sheet for sheet in layout.sheets)


def test_sixteen_equal_parts_need_two_settings() -> None:
    job = make_job([make_part("shelf", 600, 300, 16)], [make_sheet()])
    layout = solve(job, effort=1).layout
    assert len(layout.sheets) == 1
    assert count_settings(job, layout) == 2


def test_a_needlessly_hard_layout_is_replaced_by_one_as_easy_as_plain_strips() -> None:
    parts = [make_part("a", 500, 300, 4), make_part("b", 400, 300, 4), make_part("c", 300, 200, 4)]
    job = make_job(parts, [make_sheet()])
    rows = [
        (mm(height), [PartLeaf(part=part, copy=copy) for copy in range(4)])
        for part, height in enumerate((300, 300, 200))
    ]
    plain = Layout(sheets=(strips(job, rows),))
    cheapest = solve_cheapest(job, effort=1).layout
    layout = less_work(job, cheapest, effort=2, seed=1)
    assert check_layout(job, layout) == ()
    assert count_minutes(job, plain) < count_minutes(job, cheapest)
    assert count_minutes(job, layout) <= count_minutes(job, plain)


PAIRS = [(0, 1), (2, 3)]
FOURS = [range(4), range(4, 8)]

TINY = {
    "three alike": [(400, 300), (400, 300), (400, 300)],
    "a common width": [(500, 300), (400, 300), (350, 300)],
    "no two sizes alike": [(510, 320), (430, 250), (340, 190)],
    "one large": [(600, 400), (400, 300), (400, 300)],
}


@pytest.mark.slow
@pytest.mark.parametrize("name", TINY)
def test_tiny_jobs_get_the_fewest_minutes_of_all_trees_and_orders(name: str) -> None:
    parts = [
        make_part(f"part {n}", *sizes, grain=Grain.LENGTH) for n, sizes in enumerate(TINY[name])
    ]
    saw = Saw(smallest_held=0)  # narrow pieces cost as much as others here
    job = make_job(parts, [make_sheet(length=1000, width=900)], saw=saw)
    least = min(minutes(job, order_cuts(job, layout)) for layout in list_layouts(job))
    assert count_minutes(job, solve(job, effort=2).layout) == least


@pytest.mark.slow
@pytest.mark.parametrize("name", TINY)
def test_tiny_jobs_get_the_fewest_settings_where_only_settings_count(name: str) -> None:
    parts = [
        make_part(f"part {n}", *sizes, grain=Grain.LENGTH) for n, sizes in enumerate(TINY[name])
    ]
    zero = Decimal(0)
    times = Times(setting=Decimal(1), cut=zero, metre=zero, lift=zero, turn=zero)
    job = make_job(parts, [make_sheet(length=1000, width=900)], times=times)
    least = min(order_cuts(job, layout).settings for layout in list_layouts(job))
    assert count_settings(job, solve(job, effort=2).layout) == least


def test_a_short_guide_leads_to_crosscuts_first() -> None:
    parts = [make_part("side", 600, 400, 6), make_part("top", 500, 350, 6)]
    job = make_job(parts, [make_sheet()], saw=Saw(guide_length=mm(1370)))
    layout = solve(job, effort=1).layout
    sequences = [order_cuts(job, sheet) for sheet in layout.sheets]
    assert len(layout.sheets) == 1
    assert sequences[0].steps[0].direction is Direction.CROSSCUT
    assert all(step.cut_length <= mm(1370) for one in sequences for step in one.steps)


def test_no_cut_is_longer_than_the_guide_where_the_given_layout_had_some() -> None:
    parts = [make_part("side", 900, 560, 4), make_part("shelf", 850, 300, 4)]
    job = make_job(parts, [make_sheet()], saw=Saw(guide_length=mm(1300)))
    rows = [
        (mm(560), [PartLeaf(part=0, copy=0), PartLeaf(part=0, copy=1)]),
        (mm(560), [PartLeaf(part=0, copy=2), PartLeaf(part=0, copy=3)]),
    ]
    shelves = [(mm(300), [PartLeaf(part=1, copy=copy) for copy in pair]) for pair in PAIRS]
    given = Layout(sheets=(strips(job, rows), strips(job, shelves)))
    assert check_layout(job, given) == ()
    assert any(order_cuts(job, sheet).too_long for sheet in given.sheets)
    layout = less_work(job, given, effort=1, seed=1)
    assert not any(order_cuts(job, sheet).too_long for sheet in layout.sheets)


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_parts_that_must_match_come_off_one_setting_of_a_sheet_that_holds_them(seed: int) -> None:
    parts = [
        make_part("side", 600, 300, 4, match="depth"),
        make_part("top", 500, 300, 4, match="depth"),
        make_part("shelf", 480, 290, 4),
        make_part("back", 580, 480, 2, match="backs"),
    ]
    job = make_job(parts, [make_sheet()])
    cheapest = solve_cheapest(job, effort=1, seed=seed).layout
    layout = less_work(job, cheapest, effort=2, seed=seed)
    assert len(layout.sheets) == 1
    assert count_misses(job, layout) == 0


def test_no_cut_crosses_a_piece_too_narrow_to_hold_where_it_need_not() -> None:
    parts = [make_part("side", 500, 300, 4), make_part("lath", 300, 40, 8)]
    job = make_job(parts, [make_sheet(length=1300, width=900)])
    sides = [(mm(300), [PartLeaf(part=0, copy=copy) for copy in pair]) for pair in PAIRS]
    laths = [(mm(40), [PartLeaf(part=1, copy=copy) for copy in four]) for four in FOURS]
    given = Layout(sheets=(strips(job, sides + laths),))
    assert count_narrow(job, given) == 8
    layout = less_work(job, given, effort=2, seed=1)
    assert check_layout(job, layout) == ()
    assert count_narrow(job, layout) == 0


def test_no_effort_changes_nothing() -> None:
    job = make_random_job(3)
    layout = solve_cheapest(job, effort=0).layout
    assert less_work(job, layout, effort=0, seed=1) is layout


def test_a_deadline_that_is_over_changes_nothing() -> None:
    job = make_random_job(3)
    layout = solve_cheapest(job, effort=0).layout
    assert less_work(job, layout, effort=1, seed=1, deadline=time.monotonic() - 1) is layout


def test_an_interrupt_leaves_a_whole_layout() -> None:
    job = make_random_job(5)
    layout = solve_cheapest(job, effort=0).layout
    told: list[float] = []

    def interrupt(done: float) -> None:
        told.append(done)
        raise KeyboardInterrupt

    worked = find_less_work(job, layout, effort=1, seed=1, report=interrupt)
    assert worked.is_interrupted
    assert len(told) == 1
    assert check_layout(job, worked.layout) == ()


def test_the_same_seed_gives_the_same_layout() -> None:
    job = make_random_job(12)
    layout = solve_cheapest(job, effort=0).layout
    first = less_work(job, layout, effort=1, seed=4)
    assert less_work(job, layout, effort=1, seed=4) == first


@pytest.mark.property
@pytest.mark.parametrize("number", range(120))
def test_random_jobs_keep_every_rule_at_no_more_minutes_and_no_more_sheets(number: int) -> None:
    job = make_random_job(number)
    layout = solve_cheapest(job, effort=0).layout
    worked = less_work(job, layout, effort=1, seed=number)
    assert check_layout(job, worked) == ()
    assert count_sheets(worked) <= count_sheets(layout)
    assert worked.unplaced == layout.unplaced
    sequences = [order_cuts(job, sheet) for sheet in layout.sheets]
    is_harder = any(sequence.too_long for sequence in sequences)
    if not is_harder and count_narrow(job, worked) >= count_narrow(job, layout):
        assert count_minutes(job, worked) <= count_minutes(job, layout)
