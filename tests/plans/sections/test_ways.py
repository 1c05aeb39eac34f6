"""Ways to buy and near misses as they are worded."""

from dataclasses import replace
from decimal import Decimal

import pytest

from nesting.buying import Left, Lot, Restriction, Way
from nesting.job import Job
from nesting.layout import Layout
from nesting.lengths import Unit, mm
from nesting.near_misses import Change, NearMiss
from nesting.search.result import Result
from nesting.terms import Dimension, Free
from plans.sections.ways import WayLine, make_compromise_lines, make_way_lines, say_near_miss
from tests.nesting.hand_made import part

LITRE = 10**24
"""A cube of 100 mm, in cubic nanometres."""

JOB = Job(name="Boxes", step=mm("0.5"), sheets=(), parts=())
WAY = Way(
    label="B",
    restriction=Restriction(title="without birch 18", sheets=()),
    job=JOB,
    result=Result(
        layout=Layout(sheets=()), cost=Decimal(82), bound=Decimal(41), groups=(), iterations=0
    ),
    lots=(
        Lot(stock="birch 18 half", count=2, each=Decimal(41), owned=False),
        Lot(stock="own piece", count=1, each=Decimal(0), owned=True),
    ),
    sheets_cost=Decimal(82),
    bound=Decimal(41),
    extra_cost=Decimal("4.50"),
    minutes=Decimal("95.5"),
    settings=9,
    layouts=2,
    left=tuple(
        Left(stock="birch 18 half", length=mm(n), width=mm(300)) for n in (600, 500, 400, 300)
    ),
)
DEEP = Change(
    free=Free(of="Bass cabinet", is_cabinet=True, dimension=Dimension.DEPTH, limit=mm(20)),
    before=mm(350),
    after=mm(342),
    room=612 * LITRE // 10,
    room_before=627 * LITRE // 10,
)
WIDE = replace(
    DEEP, free=replace(DEEP.free, dimension=Dimension.WIDTH), before=mm(400), after=mm(396)
)
LONG = Change(
    free=Free(of="Shelf", is_cabinet=False, dimension=Dimension.LENGTH, limit=mm(20)),
    before=mm(350),
    after=mm(342),
)
MISS = NearMiss(
    changes=(DEEP,),
    cost=Decimal(62),
    cost_before=Decimal(124),
    sheets=1,
    sheets_before=2,
)


def test_a_way_is_one_line_with_all_that_is_paid() -> None:
    assert make_way_lines((WAY,)) == (
        WayLine(
            label="B",
            title="without birch 18",
            when="if there is no birch 18",
            sheets="2 × birch 18 half, 1 × own piece (yours)",
            price="82.00",
            besides="4.50 for the yard's cuts",
            total="86.50",
            minutes="96",
            left="600 × 300, 500 × 300, 400 × 300 and 1 more",
            verdict="at most 41.00 above the bound: from this stock no sheets can cost less "
            "than 41.00; 2 layouts, 9 settings",
        ),
    )


def test_a_proven_way_says_so() -> None:
    (line,) = make_way_lines((replace(WAY, bound=Decimal(82), left=()),))
    assert (line.verdict, line.left) == (
        "proven cheapest from this stock; 2 layouts, 9 settings",
        "none",
    )


def test_parts_that_come_rough_from_the_yard_are_named() -> None:
    kinds = tuple((part(f"Panel {number}", 600, 400, 2), 2) for number in range(7))
    (line,) = make_way_lines((replace(WAY, recut=kinds),))
    assert line.verdict.endswith(
        "9 settings; the yard is rough, so cut to size at home: 2 × Panel 0, 2 × Panel 1, "
        "2 × Panel 2, 2 × Panel 3, 2 × Panel 4, 2 × Panel 5 and 1 more"
    )


@pytest.mark.parametrize(
    ("miss", "text"),
    [
        (
            MISS,
            (
                "Bass cabinet: 342 instead of 350 deep needs one sheet fewer and saves 62.00 "
                "(inside volume 61.2 l instead of 62.7 l)."
            ),
        ),
        (
            replace(MISS, sheets_before=1, changes=(replace(DEEP, room=None),)),
            "Bass cabinet: 342 instead of 350 deep saves 62.00.",
        ),
        (
            replace(MISS, sheets_before=3, changes=(LONG,)),
            "Shelf: 342 instead of 350 long needs 2 sheets fewer and saves 62.00.",
        ),
        (
            replace(MISS, changes=(DEEP, WIDE)),
            (
                "Bass cabinet: 342 instead of 350 deep and 396 instead of 400 wide needs one "
                "sheet fewer and saves 62.00 (inside volume 61.2 l instead of 62.7 l)."
            ),
        ),
        (
            replace(MISS, changes=(DEEP, LONG), sheets_before=1),
            (
                "Bass cabinet: 342 instead of 350 deep, and Shelf: 342 instead of 350 long, saves "
                "62.00 (inside volume 61.2 l instead of 62.7 l)."
            ),
        ),
    ],
)
def test_a_near_miss_is_a_sentence(miss: NearMiss, text: str) -> None:
    assert say_near_miss(miss, Unit.MM) == text


def test_fewer_layouts_are_weighed_against_fewer_settings_and_the_price() -> None:
    dear = replace(WAY, label="C", sheets_cost=Decimal(100), settings=4)
    beaten = replace(WAY, label="D", sheets_cost=Decimal(120), settings=5)
    assert make_compromise_lines((WAY, dear, beaten)) == (
        ("B", "3", "86.50", "2", "9", "96"),
        ("C", "3", "104.50", "2", "4", "96"),
    )
    assert make_compromise_lines((WAY,)) == ()
