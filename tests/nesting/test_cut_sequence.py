"""The order of cuts, against brute force and against the rules of the work at the saw."""

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings

from nesting.cut_sequence import (
    MOST_OPEN_PIECES,
    Sequence,
    is_over_limit,
    minutes,
    order_cuts,
    piece_mass_kg,
)
from nesting.job import Job
from nesting.layout import (
    Cut,
    Direction,
    Layout,
    PartLeaf,
    Rect,
    SheetLayout,
    split,
    walk,
)
from nesting.lengths import mm
from nesting.sheets import Trim
from tests.nesting.hand_made import (
    BIRCH,
    SAW,
    guillotine_jobs,
    job,
    part,
    strips,
    two_cabinets,
)


def whole(job: Job, sheet: SheetLayout) -> Rect:
    stock = job.sheets[sheet.sheet]
    return Rect(x=0, y=0, length=stock.length, width=stock.width)


def cuts_of(job: Job, sheet: SheetLayout) -> dict[tuple[int, ...], Cut]:
    places = walk(sheet.root, whole(job, sheet))
    return {place.path: place.node for place in places if isinstance(place.node, Cut)}


def assert_replays(job: Job, sheet: SheetLayout, sequence: Sequence) -> None:
    """Saw the sheet by the steps alone: each must cross one piece that exists."""
    cuts = cuts_of(job, sheet)
    pieces = {whole(job, sheet)}
    for number, step in enumerate(sequence.steps, start=1):
        cut = cuts.pop(step.path)
        assert step.number == number
        assert (step.direction, step.is_trim) == (cut.direction, cut.is_trim)
        assert step.piece in pieces
        pieces.remove(step.piece)
        pieces.update(rect for rect in split(cut, step.piece) if rect.length > 0 and rect.width > 0)
    assert not cuts
    numbers = [step.setting for step in sequence.steps]
    assert numbers == sorted(numbers)
    assert set(numbers) == set(range(1, sequence.settings + 1))
    for before, step in pairwise(sequence.steps):
        same = (step.direction, step.is_trim, step.keep) == (
            before.direction,
            before.is_trim,
            before.keep,
        )
        assert (before.setting == step.setting) == same


def test_every_step_of_two_cabinets_crosses_one_piece_that_exists() -> None:
    made, layout = two_cabinets()
    assert_replays(made, layout.sheets[0], order_cuts(made, layout.sheets[0]))


def test_the_trims_come_first_the_long_edge_before_the_square_corner() -> None:
    made, layout = two_cabinets()
    steps = order_cuts(made, layout.sheets[0]).steps
    assert [(step.is_trim, step.direction) for step in steps[:3]] == [
        (True, Direction.RIP),
        (True, Direction.CROSSCUT),
        (False, Direction.RIP),
    ]
    assert [step.keep for step in steps[:3]] == [mm(10), mm(10), mm(300)]


def test_equal_lengths_in_several_strips_come_off_one_setting() -> None:
    made, layout = two_cabinets()
    sequence = order_cuts(made, layout.sheets[0])
    # trim, trim, rip 300, rip 80, crosscut 562, crosscut 400
    assert sequence.settings == 6
    lengths = [step.setting for step in sequence.steps if step.keep == mm(400)]
    assert len(lengths) == 6
    assert len(set(lengths)) == 1


def test_minutes_are_the_sum_of_settings_cuts_metres_lifts_and_turns() -> None:
    made, layout = two_cabinets()
    sequence = order_cuts(made, layout.sheets[0])
    cuts, settings, turns = 15, 6, 3
    assert (len(sequence.steps), sequence.settings) == (cuts, settings)
    # Three rips and one trim along 2440 and 2430, one trim across, ten crosscuts of the strips.
    metres = Decimal("2.44") + Decimal("1.21") + 3 * Decimal("2.43")
    metres += 8 * Decimal("0.3") + 2 * Decimal("0.08")
    # The whole sheet, twice trimmed, and what is left after one strip: 36.7, 36.4, 36.2, 27.1 kg.
    lifts = 4
    expected = Decimal(2) * settings + Decimal("1.5") * cuts + Decimal("0.4") * metres
    assert minutes(made, sequence) == expected + lifts + turns


def test_a_full_sheet_of_18_mm_birch_weighs_what_its_maker_says() -> None:
    # A maker's birch plywood datasheet: 36.7 kg for 18 mm, 1220 x 2440; 24.8 kg for 12 mm.
    sheet = Rect(x=0, y=0, length=mm(2440), width=mm(1220))
    assert float(piece_mass_kg(BIRCH, sheet)) == pytest.approx(36.7, abs=0.1)
    thin = replace(BIRCH, thickness=mm(12))
    assert float(piece_mass_kg(thin, sheet)) == pytest.approx(24.8, abs=0.1)
    assert is_over_limit(job(), BIRCH, sheet)


def test_a_part_that_fills_the_sheet_needs_no_cut() -> None:
    stock = replace(BIRCH, trim=Trim())
    made = job(part("Table top", 2440, 1220), sheets=[stock])
    sequence = order_cuts(made, SheetLayout(sheet=0, root=PartLeaf(part=0, copy=0)))
    assert (sequence.steps, sequence.settings, sequence.too_long) == ((), 0, ())
    assert minutes(made, sequence) == 0


def test_cuts_longer_than_the_guide_are_named() -> None:
    made, layout = two_cabinets()
    short = replace(made, saw=replace(SAW, guide_length=mm(1400)))
    sequence = order_cuts(short, layout.sheets[0])
    long_ones = {step.number for step in sequence.steps if step.cut_length > mm(1400)}
    assert set(sequence.too_long) == long_ones
    assert len(long_ones) == 4


def test_a_trim_narrower_than_the_kerf_is_a_cut_that_runs_off() -> None:
    stock = replace(BIRCH, trim=Trim(left=mm(2), bottom=mm(2)))
    made = job(part("Side", 562, 300), sheets=[stock])
    sheet = strips(made, [(mm(300), [PartLeaf(part=0, copy=0)])])
    sequence = order_cuts(made, sheet)
    assert sequence.steps[0].band == Rect(x=0, y=0, length=mm(2440), width=mm(2))
    assert_replays(made, sheet, sequence)


def test_five_hundred_parts_in_strips_are_ordered_in_seconds() -> None:
    sizes = [60 + 5 * index for index in range(10)]
    made = job(*(part(f"Slat {size}", size, 40, 50) for size in sizes))
    row_of = [PartLeaf(part=index, copy=0) for index in range(10)] * 2
    sheet = strips(made, [(mm(40), row_of)] * 25)
    sequence = order_cuts(made, sheet)
    assert len(sequence.steps) == 2 + 25 + 25 * 20
    assert sequence.most_open <= MOST_OPEN_PIECES
    assert_replays(made, sheet, sequence)


def test_the_same_layout_gives_the_same_order() -> None:
    made, layout = two_cabinets()
    assert order_cuts(made, layout.sheets[0]) == order_cuts(made, layout.sheets[0])


@settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(guillotine_jobs(most_cuts=25))
def test_any_tree_of_cuts_can_be_sawn_in_the_order_given(made: tuple[Job, Layout]) -> None:
    made_job, layout = made
    sheet = layout.sheets[0]
    sequence = order_cuts(made_job, sheet)
    assert_replays(made_job, sheet, sequence)
    if len(sequence.steps) <= 2 * MOST_OPEN_PIECES:
        # So few cuts cannot make more than six pieces that all need cutting.
        assert sequence.most_open <= MOST_OPEN_PIECES


def every_order(job: Job, sheet: SheetLayout) -> Iterator[list[tuple[int, ...]]]:
    """Yield every order in which a tree can be sawn, trims of the whole sheet first."""
    cuts = cuts_of(job, sheet)
    start: tuple[int, ...] = ()
    first = []
    while start in cuts and cuts[start].is_trim:
        first.append(start)
        start = (*start, 1)

    def extend(
        order: list[tuple[int, ...]], open_now: list[tuple[int, ...]]
    ) -> Iterator[list[tuple[int, ...]]]:
        if not open_now:
            yield order
        for path in open_now:
            after = [other for other in open_now if other != path]
            after += [child for side in (0, 1) if (child := (*path, side)) in cuts]
            if len(after) <= MOST_OPEN_PIECES:
                yield from extend([*order, path], after)

    yield from extend(first, [start] if start in cuts else [])


def cost(job: Job, sheet: SheetLayout, order: list[tuple[int, ...]]) -> Decimal:
    """Return the minutes that depend on the order."""
    cuts = cuts_of(job, sheet)
    kinds = [(cuts[path].direction, cuts[path].is_trim, cuts[path].at) for path in order]
    new = sum(before != after for before, after in pairwise(kinds))
    turns = sum(before[0] != after[0] for before, after in pairwise(kinds))
    return job.times.setting * new + job.times.turn * turns


@settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(guillotine_jobs(most_cuts=7))
def test_small_trees_are_ordered_as_well_as_trying_every_order_can(
    made: tuple[Job, Layout],
) -> None:
    made_job, layout = made
    sheet = layout.sheets[0]
    sequence = order_cuts(made_job, sheet)
    found = cost(made_job, sheet, [step.path for step in sequence.steps])
    least = min(cost(made_job, sheet, order) for order in every_order(made_job, sheet))
    assert found == least
