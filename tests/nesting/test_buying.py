"""Ways to buy, checked against every count of sheets that could be bought at all."""

from dataclasses import replace
from decimal import Decimal
from functools import partial
from itertools import product

from nesting.buying import Way, find_ways, list_restrictions
from nesting.checks import check_layout
from nesting.job import Job
from nesting.lengths import mm
from nesting.sheets import Sheet
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
    delivered = [way for way in ways if way.restriction.is_delivered]
    assert [(way.sheets_cost, way.extra_cost, way.cost) for way in delivered] == [
        (Decimal(70), Decimal(25), Decimal(95))
    ]
    assert delivered[0].job.yard is None
    assert any(not way.restriction.is_delivered for way in ways)


def test_what_is_left_over_comes_from_the_layout() -> None:
    (way,) = ways_of(FULL)
    area = FULL.length * FULL.width - 5 * mm(600) * mm(600)
    assert way.left
    assert sum(left.length * left.width for left in way.left) < area
    assert way.minutes > 0
