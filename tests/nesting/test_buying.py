"""Ways to buy, checked against every count of sheets that could be bought at all."""

import re
from dataclasses import replace
from decimal import Decimal
from functools import partial
from itertools import product

import pytest

from nesting.buying import Sawing, Way, find_ways, list_restrictions, say_hindrance
from nesting.checks import check_layout
from nesting.first_cuts import solve_with_yard
from nesting.job import Job
from nesting.layout import By, Cut, Rect, walk
from nesting.lengths import mm
from nesting.parts import Part
from nesting.sheets import Sheet, Trim
from nesting.solve import solve
from nesting.terms import Terms
from nesting.yard import Yard
from tests.nesting.hand_made import SAW, job, part

EASY = partial(solve, effort=1)
FULL = Sheet(
    name="full",
    material="birch plywood",
    thickness=mm(18),
    length=mm(2440),
    width=mm(1220),
    price=Decimal(70),
)
HALF = replace(FULL, name="half", length=mm(1220), price=Decimal(40))
SQUARE = replace(FULL, name="square", length=mm(1525), width=mm(1525), price=Decimal(48))
OWN = replace(HALF, name="own half", price=Decimal(0), owned=True, count=1)

QUARTER = part("Panel", 600, 600, 5)
"""With a kerf of 2.4 mm four go on a half sheet, eight on a full one and four on a square one."""


def ways_of(*sheets: Sheet, **changes: object) -> tuple[Way, ...]:
    made = replace(job(QUARTER, sheets=sheets), **changes)  # type: ignore[arg-type]
    return find_ways(made, EASY)


def bought(way: Way) -> dict[str, int]:
    return {lot.stock: lot.count for lot in way.lots}


def cheapest_by_counting(made: Job, kinds: list[Sheet]) -> Decimal:
    """Try every count of every kind, each sheet holding as many panels as a grid of them."""
    side = mm(600) + SAW.kerf
    holds = [
        ((kind.length + SAW.kerf) // side) * ((kind.width + SAW.kerf) // side) for kind in kinds
    ]
    need = made.parts[0].count
    return min(
        sum((n * kind.price for n, kind in zip(counts, kinds, strict=True)), Decimal(0))
        for counts in product(range(need + 1), repeat=len(kinds))
        if sum(n * held for n, held in zip(counts, holds, strict=True)) >= need
        and all(
            kind.count is None or n <= kind.count for n, kind in zip(counts, kinds, strict=True)
        )
    )


def test_each_way_is_as_cheap_as_counting_finds_and_passes_the_checks() -> None:
    stock = (FULL, HALF, SQUARE)
    made = job(QUARTER, sheets=stock)
    ways = find_ways(made, EASY)
    for way in ways:
        kinds = [stock[index] for index in way.restriction.sheets]
        assert way.cost == cheapest_by_counting(made, kinds), way.restriction.title
        assert not check_layout(way.job, way.result.layout)
        assert not way.result.layout.unplaced
        assert way.bound <= way.sheets_cost
    assert [way.label for way in ways] == ["A", "B", "C"][: len(ways)]
    assert [way.cost for way in ways] == sorted(way.cost for way in ways)
    assert ways[0].restriction.title == "all kinds"


def test_where_the_cheapest_kind_is_out_of_stock_there_is_a_way_without_it() -> None:
    ways = ways_of(FULL, HALF, SQUARE)
    for kind in ("full", "half", "square"):
        assert any(kind not in way.kinds for way in ways), kind


def test_a_way_that_costs_more_and_asks_for_the_same_is_left_out() -> None:
    ways = ways_of(FULL, replace(FULL, name="dear", price=Decimal(90)))
    assert [bought(way) for way in ways] == [{"full": 1}, {"dear": 1}]
    # "all kinds" and "only full" come to the same: it is there once


def test_own_pieces_come_first_and_there_is_a_way_without_them() -> None:
    ways = ways_of(FULL, HALF, OWN)
    assert "own half" in ways[0].kinds
    assert ways[0].cost == Decimal(40)
    assert any("own half" not in way.kinds for way in ways)


def test_pieces_that_nothing_can_replace_stay_in_every_way() -> None:
    made = job(replace(QUARTER, count=2), sheets=[OWN])
    assert [choice.title for choice in list_restrictions(made)] == ["all kinds"]


def test_a_limited_stock_that_does_not_hold_all_is_no_way() -> None:
    ways = ways_of(FULL, replace(HALF, count=1))
    assert all(not way.result.layout.unplaced for way in ways)
    assert all(way.kinds != {"half"} for way in ways)


def test_delivery_is_a_way_of_its_own_without_car_and_yard() -> None:
    yard = Yard(price_per_cut=Decimal("1.50"))
    ways = ways_of(FULL, yard=yard, terms=Terms(delivery=Decimal(25)))
    delivered = [way for way in ways if way.restriction.sawing is Sawing.DELIVERED]
    assert [(way.sheets_cost, way.extra_cost, way.cost) for way in delivered] == [
        (Decimal(70), Decimal(25), Decimal(95))
    ]
    assert delivered[0].job.yard is None
    assert any(way.restriction.sawing is Sawing.AS_ASKED for way in ways)


def test_what_is_left_over_comes_from_the_layout() -> None:
    (way,) = ways_of(FULL)
    area = FULL.length * FULL.width - 5 * mm(600) * mm(600)
    assert way.left
    assert sum(left.length * left.width for left in way.left) < area
    assert way.minutes > 0


SERVICE = Yard(
    kerf=mm("3.2"), max_cuts=20, min_piece=mm(80), price_per_cut=Decimal("0.90"), rough=mm(1)
)
"""A yard that cuts to a list. Its figures are invented."""


def shared_out(yard: Yard, *parts: Part, sheet: Sheet = FULL) -> dict[Sawing, Way]:
    made = replace(job(*parts, sheets=(sheet,)), yard=yard)
    ways = find_ways(made, partial(solve_with_yard, effort=1))
    for way in ways:
        assert check_layout(way.job, way.result.layout) == ()
    return {way.restriction.sawing: way for way in ways}


def cuts_of(way: Way) -> list[Cut]:
    anywhere = Rect(x=0, y=0, length=0, width=0)
    return [
        place.node
        for sheet in way.result.layout.sheets
        for place in walk(sheet.root, anywhere)
        if isinstance(place.node, Cut)
    ]


def test_a_rough_yard_that_cuts_all_leaves_the_exact_parts_to_be_cut_to_size() -> None:
    panel, rail = part("Panel", 700, 400, 4), replace(part("Rail", 560, 100, 4), oversize=mm(10))
    ways = shared_out(SERVICE, panel, rail)
    at_home, at_yard = ways[Sawing.ALL_AT_HOME], ways[Sawing.ALL_AT_YARD]
    assert at_home.extra_cost == 0
    assert at_yard.extra_cost == Decimal("0.90") * len(cuts_of(at_yard))
    assert at_yard.recut == ((panel, 4),)  # 10 mm are more than a rail needs
    # The rail is oversize already; a panel needs a kerf of 2.4 mm off either edge and 1 mm besides.
    grown = {each.name: each for each in at_yard.job.parts}
    assert grown["Panel"].blank_length == mm(700) + 2 * mm("2.4") + mm(1)
    assert grown["Rail"].blank_length == rail.blank_length
    assert at_yard.job.saw.kerf == SERVICE.kerf
    # Four edges each, 2.2 m around; a setting for the rough edges and one for each size.
    times = at_yard.job.times
    assert at_yard.minutes == 3 * times.setting + 16 * times.cut + Decimal("8.8") * times.metre


def test_a_yard_as_exact_as_a_guide_at_home_leaves_nothing_to_do() -> None:
    exact = replace(SERVICE, rough=mm("0.5"))
    way = shared_out(exact, part("Panel", 700, 400, 4))[Sawing.ALL_AT_YARD]
    assert way.recut == ()
    assert way.minutes == 0


@pytest.mark.parametrize(
    ("yard", "why"),
    [
        (replace(SERVICE, max_cuts=3), r"a sheet takes \d+ cuts, and it makes 3"),
        (replace(SERVICE, min_piece=mm(450)), "Panel is 400 mm wide, .* nothing below 450 mm"),
    ],
)
def test_a_yard_that_may_not_cut_all_is_no_way_and_it_is_said_why(yard: Yard, why: str) -> None:
    made = replace(job(part("Panel", 700, 400, 6), sheets=(FULL,)), yard=yard)
    ways = find_ways(made, partial(solve_with_yard, effort=1))
    assert Sawing.ALL_AT_YARD not in {way.restriction.sawing for way in ways}
    assert re.search(why, say_hindrance(made, ways[0].result.layout))


def test_strips_from_the_yard_are_a_way_where_the_parts_come_out_of_strips() -> None:
    thin = replace(FULL, thickness=mm(9), name="thin")  # one person lifts a whole sheet of it
    panel = replace(part("Panel", 700, 380, 6), thickness=mm(9))
    ways = shared_out(SERVICE, panel, sheet=thin)
    strips = ways[Sawing.STRIPS_AT_YARD]
    yard_cuts = [cut for cut in cuts_of(strips) if cut.by is By.YARD]
    assert yard_cuts
    assert strips.extra_cost == Decimal("0.90") * len(yard_cuts)


def test_sheets_cut_alike_are_one_layout() -> None:
    (way,) = ways_of(replace(FULL, trim=Trim()), parts=(part("Panel", 600, 600, 17),))
    assert [len(way.result.layout.sheets), way.layouts] == [3, 2]
