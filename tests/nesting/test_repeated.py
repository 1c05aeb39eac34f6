"""The same sheets over and over: every part once, never dearer, and less work where it is taken."""

from collections import Counter
from dataclasses import replace
from decimal import Decimal
from functools import partial

import pytest

from nesting.batches import solve_in_kits
from nesting.buying import (
    Way,
    count_layouts,
    count_repeats,
    find_ways,
    list_compromises,
    solve_repeated,
)
from nesting.checks import check_layout
from nesting.cut_sequence import minutes, order_cuts
from nesting.job import Job
from nesting.layout import Layout, PartLeaf, Rect, walk
from nesting.parts import Grain
from nesting.solve import solve
from tests.nesting.hand_made import BIRCH, job, part

TROLLEYS = job(
    replace(part("Side", 720, 400, 24), grain=Grain.LENGTH),
    replace(part("Shelf", 562, 380, 30), grain=Grain.LENGTH),
    part("Rail", 562, 100, 36),
    part("Foot", 300, 90, 48),
)
EASY = partial(solve, effort=1)


def placed(layout: Layout) -> Counter[tuple[int, int]]:
    anywhere = Rect(x=0, y=0, length=0, width=0)
    return Counter(
        (place.node.part, place.node.copy)
        for sheet in layout.sheets
        for place in walk(sheet.root, anywhere)
        if isinstance(place.node, PartLeaf)
    )


def sawing(made: Job, layout: Layout) -> Decimal:
    return sum((minutes(made, order_cuts(made, sheet)) for sheet in layout.sheets), Decimal(0))


def test_parts_of_several_cabinets_stand_in_for_each_other() -> None:
    assert count_repeats(TROLLEYS, 6) == 6
    letters = [replace(part("Side", 720, 400, 2), cabinet=letter) for letter in "ABC"]
    assert count_repeats(job(*letters), 9) == 6
    assert count_repeats(job(*letters, part("Shelf", 562, 380, 4)), 9) == 2
    assert count_repeats(job(part("Side", 720, 400, 3), part("Shelf", 562, 380, 4)), 9) == 1


def test_no_batch_takes_less_than_a_sheet() -> None:
    assert count_repeats(job(part("Panel", 600, 600, 17)), 3) == 1
    assert count_repeats(TROLLEYS, 5) == 3


def test_every_part_is_cut_once_from_sheets_that_are_cut_alike() -> None:
    result = solve_repeated(TROLLEYS, 6, partial(solve, effort=0))
    assert result is not None
    assert check_layout(TROLLEYS, result.layout) == ()
    wanted = {(n, copy) for n, each in enumerate(TROLLEYS.parts) for copy in range(each.count)}
    assert placed(result.layout) == Counter(wanted)
    assert len(result.layout.sheets) == 6 * count_layouts(TROLLEYS, result.layout)
    assert result.cost == sum(TROLLEYS.sheets[s.sheet].price for s in result.layout.sheets)


def test_a_stock_that_does_not_go_round_is_no_way() -> None:
    scarce = replace(TROLLEYS, sheets=(replace(BIRCH, count=5),))
    assert solve_repeated(scarce, 6, EASY) is None


@pytest.mark.slow
def test_a_batch_is_cut_alike_where_that_costs_no_more_and_is_quicker() -> None:
    single, kits = EASY(TROLLEYS), solve_in_kits(TROLLEYS, EASY)
    assert check_layout(TROLLEYS, kits.layout) == ()
    assert kits.cost <= single.cost
    first_offs = [5 * count_layouts(TROLLEYS, each.layout) for each in (kits, single)]
    assert first_offs[0] < first_offs[1]
    assert sawing(TROLLEYS, kits.layout) + first_offs[0] <= (
        sawing(TROLLEYS, single.layout) + first_offs[1]
    )
    assert sum(group.sheets for group in kits.groups) == len(kits.layout.sheets)


def test_where_it_costs_more_it_is_a_way_of_its_own() -> None:
    """Two frames of three panels: six fill one sheet, but three alone take a sheet as well."""
    frames = job(part("Panel", 800, 590, 6), part("Lath", 2400, 10, 2))
    ways = find_ways(frames, EASY)
    repeated = [way for way in ways if way.restriction.times > 1]
    assert all(way.layouts < ways[0].layouts for way in repeated)
    assert all(way.cost >= ways[0].cost for way in repeated)
    assert ways[0].restriction.times == 1


def test_only_ways_that_none_beats_in_cost_layouts_and_settings_are_weighed_up() -> None:
    ways = find_ways(TROLLEYS, EASY)
    assert len({way.restriction.times for way in ways}) > 1, "there is nothing to weigh up"
    listed = list_compromises(ways)

    def figures(way: Way) -> tuple[Decimal, Decimal, Decimal]:
        return way.cost, Decimal(way.layouts), Decimal(way.settings)

    assert len({figures(way) for way in listed}) == len(listed)
    for way in ways:
        beaten = [
            other
            for other in ways
            if figures(other) != figures(way)
            and all(its <= mine for mine, its in zip(figures(way), figures(other), strict=True))
        ]
        assert (figures(way) in map(figures, listed)) == (not beaten)
