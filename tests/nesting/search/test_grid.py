from decimal import Decimal

import pytest

from nesting.lengths import mm
from nesting.parts import Grain
from nesting.saw import Saw
from nesting.search.grid import make_problem, weigh_sheets
from nesting.search.problem import Problem
from nesting.sheets import SheetGrain
from tests.nesting.search.jobs import BIRCH, make_job, make_part, make_sheet


def make_birch_problem(*args: object, **more: object) -> Problem:
    problem = make_problem(make_job(*args, **more), BIRCH, mm(18))  # type: ignore[arg-type]
    assert problem is not None
    return problem


def test_parts_and_sheet_are_longer_by_one_kerf_on_the_coarsest_grid() -> None:
    problem = make_birch_problem(
        [make_part("a", 597, 297), make_part("b", 447, 147)],
        [make_sheet(length=2440, width=1220)],
        saw=Saw(kerf=mm(3)),
    )
    assert problem.grid == mm(150)
    assert [(kind.long, kind.short) for kind in problem.kinds] == [(4, 2), (3, 1)]
    # 2443 and 1223 hold 16 and 8 whole steps of 150.
    assert (problem.sheets[0].length, problem.sheets[0].width) == (16, 8)


def test_parts_of_equal_size_and_freedom_are_one_kind() -> None:
    parts = [
        make_part("a", 600, 300),
        make_part("b", 300, 600, 2),
        make_part("c", 600, 300, grain=Grain.LENGTH),
        make_part("d", 300, 600, grain=Grain.WIDTH),
    ]
    problem = make_birch_problem(parts, [make_sheet()])
    assert sorted((kind.ways, kind.members) for kind in problem.kinds) == [
        ((1,), ((2, 1), (3, 1))),
        ((3,), ((0, 1), (1, 2))),
    ]


@pytest.mark.parametrize(
    ("sheet_grain", "part_grain", "ways"),
    [
        (SheetGrain.LENGTH, Grain.LENGTH, 1),
        (SheetGrain.LENGTH, Grain.WIDTH, 2),
        (SheetGrain.WIDTH, Grain.LENGTH, 2),
        (SheetGrain.WIDTH, Grain.WIDTH, 1),
        (SheetGrain.NONE, Grain.WIDTH, 3),
        (SheetGrain.LENGTH, Grain.ANY, 3),
    ],
)
def test_grain_settles_how_a_part_may_lie(
    sheet_grain: SheetGrain, part_grain: Grain, ways: int
) -> None:
    problem = make_birch_problem(
        [make_part("a", 600, 300, grain=part_grain)], [make_sheet(grain=sheet_grain)]
    )
    assert problem.kinds[0].ways == (ways,)


def test_a_sheet_of_no_use_is_left_out() -> None:
    sheets = [make_sheet("strip", 2440, 100), make_sheet("none", count=0), make_sheet("full")]
    problem = make_birch_problem([make_part("a", 600, 300)], sheets)
    assert [sheet.sheet for sheet in problem.sheets] == [2]


def test_money_weighs_more_than_any_number_of_sheets() -> None:
    sheets = [
        make_sheet("dear", price=Decimal("62.01")),
        make_sheet("cheap", 2440, 1220, price=Decimal("31.00")),
        make_sheet("own", 800, 600, price=Decimal(0), owned=True),
        make_sheet("free", 800, 600, price=Decimal(0)),
    ]
    dear, cheap, own, free = weigh_sheets(sheets, [6201, 3100, 0, 0], copies=50)
    assert dear > 2 * cheap
    assert cheap > 50 * free
    assert free > 10 * own > 0


def test_one_kind_of_sheet_weighs_one() -> None:
    assert weigh_sheets([make_sheet(price=Decimal(0))], [0], copies=500) == [1]
    assert weigh_sheets([make_sheet()], [1], copies=5000) == [1]


def test_prices_too_fine_for_64_bits_keep_their_order() -> None:
    sheets = [make_sheet(), make_sheet()]
    first, second = weigh_sheets(sheets, [10**12 + 7, 10**12], copies=5000)
    assert 5000 * first < 2**62
    assert first >= second
