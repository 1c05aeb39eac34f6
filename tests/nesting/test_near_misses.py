"""Near misses, each compared with trying every size there is."""

import random
from dataclasses import replace
from decimal import Decimal
from functools import partial

import pytest

from nesting.cabinets.boards import Board
from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import BoxDesign
from nesting.cabinets.expand import expand
from nesting.first_cuts import solve_with_yard
from nesting.job import Job
from nesting.layout import By, Cut, Rect, walk
from nesting.lengths import Length, Unit, mm
from nesting.near_misses import NearMiss, change_size, find_near_misses
from nesting.parts import Grain, Part
from nesting.search.result import Result
from nesting.sheets import Sheet
from nesting.solve import solve_cheapest
from nesting.terms import Dimension, Free, Terms
from nesting.yard import Yard
from tests.nesting.hand_made import SAW, job, part

FIRST_LOOK = partial(solve_cheapest, effort=0)
SEARCH = partial(solve_cheapest, effort=1)
SHEET = Sheet(
    name="birch 18",
    material="birch plywood",
    thickness=mm(18),
    length=mm(2440),
    width=mm(1220),
    price=Decimal(60),
)


def free(of: str, dimension: Dimension, limit: int = 20, *, is_cabinet: bool = False) -> Free:
    return Free(of=of, is_cabinet=is_cabinet, dimension=dimension, limit=mm(limit))


def with_free(made: Job, *sizes: Free) -> Job:
    return replace(made, terms=Terms(free=sizes))


def near_misses(made: Job) -> tuple[NearMiss, ...]:
    return find_near_misses(made, SEARCH(made), first_look=FIRST_LOOK, solve=SEARCH)


def after(miss: NearMiss) -> Length:
    """Return the size of a near miss of one size."""
    (change,) = miss.changes
    return change.after


def grid_cost(item: Part, length: Length, width: Length) -> Decimal:
    """Return what copies that may not be turned cost: a grid is then the best there is."""
    kerf = SAW.kerf
    on_one = (SHEET.length + kerf) // (length + kerf) * ((SHEET.width + kerf) // (width + kerf))
    return SHEET.price * -(-item.count // on_one)


def by_trying_all(
    item: Part, dimension: Dimension, step: Length, limit: Length
) -> list[tuple[Length, Decimal]]:
    """Return every smaller size at which the price falls below all that larger ones cost."""
    found = []
    best = grid_cost(item, item.length, item.width)
    for by in range(step, limit + 1, step):
        length = item.length - by * (dimension is Dimension.LENGTH)
        width = item.width - by * (dimension is Dimension.WIDTH)
        cost = grid_cost(item, length, width)
        if cost < best:
            best = cost
            found.append((length if dimension is Dimension.LENGTH else width, cost))
    return found


@pytest.mark.slow
def test_none_is_missed_that_trying_every_size_finds() -> None:
    chance = random.Random(3)  # noqa: S311 - the same jobs every time
    hits = 0
    for _ in range(60):
        item = replace(
            part(
                "Panel", chance.randint(250, 1230), chance.randint(120, 620), chance.randint(2, 40)
            ),
            grain=Grain.LENGTH,
        )
        for dimension in (Dimension.LENGTH, Dimension.WIDTH):
            made = with_free(job(item, sheets=[SHEET]), free("Panel", dimension, 40))
            found = near_misses(made)
            expected = by_trying_all(item, dimension, made.step, mm(40))
            assert [(after(miss), miss.cost) for miss in found] == expected, (item, dimension)
            hits += len(expected)
    assert hits > 20, "a test in which nothing is near shows nothing"


def by_trying_pairs(item: Part, step: Length, most: int) -> list[tuple[int, int, Decimal]]:
    """Return the steps of both sizes, with the least sum each, that pay where none alone does."""

    def cost(one: int, other: int) -> Decimal:
        return grid_cost(item, item.length - one * step, item.width - other * step)

    than = min(cost(most, 0), cost(0, most))
    found = []
    pairs = sorted(
        ((one, other) for one in range(1, most + 1) for other in range(1, most + 1)),
        key=lambda pair: (sum(pair), -pair[0]),
    )
    for one, other in pairs:
        if cost(one, other) < than:
            than = cost(one, other)
            found.append((one, other, than))
    return found


@pytest.mark.slow
def test_two_sizes_at_once_are_those_that_trying_every_pair_finds() -> None:
    chance = random.Random(8)  # noqa: S311 - the same jobs every time
    hits = 0
    for _ in range(60):
        # a little more than goes so many times into the sheet, both ways
        along, across = chance.randint(2, 7), chance.randint(2, 6)
        item = replace(
            part(
                "Panel",
                2440 // along + chance.randint(-2, 12),
                1220 // across + chance.randint(-2, 12),
                chance.randint(2, 60),
            ),
            grain=Grain.LENGTH,
        )
        sizes = free("Panel", Dimension.LENGTH, 16), free("Panel", Dimension.WIDTH, 16)
        made = replace(with_free(job(item, sheets=[SHEET]), *sizes), step=mm(1))
        found = [
            (*((each.before - each.after) // mm(1) for each in miss.changes), miss.cost)
            for miss in near_misses(made)
            if len(miss.changes) > 1
        ]
        assert found == by_trying_pairs(item, mm(1), 16), item
        hits += len(found)
    assert hits > 5, "a test in which nothing is near shows nothing"


def test_two_parts_side_by_side_share_what_is_too_much() -> None:
    # 1215 + 2.4 + 1230 is 7.4 mm more than the sheet: neither part alone may shrink so far
    pair = [replace(part(name, size, 1220), grain=Grain.LENGTH) for name, size in SIDE_BY_SIDE]
    sizes = [free(name, Dimension.LENGTH, 5) for name, _ in SIDE_BY_SIDE]
    made = replace(with_free(job(*pair, sheets=[SHEET]), *sizes), step=mm("0.5"))
    (miss,) = near_misses(made)
    assert miss.change == mm("7.5")
    assert (miss.sheets, miss.sheets_before) == (1, 2)


SIDE_BY_SIDE = (("Left", 1215), ("Right", 1230))


def test_a_change_is_priced_with_the_cuts_of_the_yard() -> None:
    """What is bought must get home, whatever its parts measure."""
    yard = Yard(price_per_cut=Decimal(2))
    made = replace(
        with_free(
            job(replace(part("Panel", 1225, 600, 4), grain=Grain.LENGTH), sheets=[SHEET]),
            free("Panel", Dimension.LENGTH, 10),
        ),
        yard=yard,
        saw=replace(SAW, lift_limit_kg=Decimal(20)),
    )
    solve = partial(solve_with_yard, effort=1)
    base = solve(made)
    (miss,) = find_near_misses(
        made, base, first_look=partial(solve_with_yard, effort=0), solve=solve
    )
    changed = change_size(made, made.terms.free[0], after(miss) - mm(1225))
    assert changed is not None
    again = solve(changed)
    assert miss.cost == again.cost + 2 * count_cuts_by(again, By.YARD)
    assert miss.cost_before == base.cost + 2 * count_cuts_by(base, By.YARD)
    assert after(miss) == mm("1218.5"), "two lengths and a kerf of 2.4 mm in 2440 mm"
    assert count_cuts_by(again, By.YARD) > 0, "a full sheet is too heavy for one person"


def count_cuts_by(result: Result, by: By) -> int:
    anywhere = Rect(x=0, y=0, length=0, width=0)
    return sum(
        isinstance(place.node, Cut) and place.node.by is by
        for sheet in result.layout.sheets
        for place in walk(sheet.root, anywhere)
    )


def test_the_smallest_change_of_all_sizes_comes_first() -> None:
    made = job(
        replace(part("Panel", 612, 409, 22), grain=Grain.LENGTH),
        sheets=[SHEET],
    )
    both = with_free(made, free("Panel", Dimension.LENGTH), free("Panel", Dimension.WIDTH))
    changes = [miss.change for miss in near_misses(both)]
    assert len(changes) > 1
    assert changes == sorted(changes)


def test_a_larger_part_saves_nothing_and_is_not_tried() -> None:
    made = with_free(
        job(part("Panel", 600, 300, 4), sheets=[SHEET]), free("Panel", Dimension.WIDTH)
    )
    assert near_misses(made) == ()


BOARD = Board(material=SHEET.material, thickness=SHEET.thickness)


def boxes(depth: int, count: int) -> Job:
    design = BoxDesign(
        name="Box",
        count=count,
        height=mm(600),
        width=mm(400),
        depth=mm(depth),
        board=BOARD,
        baffle=Closing(fit=Fit.INSET),
        back=Closing(fit=Fit.INSET),
    )
    letters = tuple("ABCDEFGH"[:count])
    build = expand(
        design, letters=letters, measured={}, step=mm("0.5"), unit=Unit.MM, kerf=SAW.kerf
    )
    made = job(*build.parts, sheets=[SHEET])
    return replace(made, cabinets=(build,), step=mm(1))


def test_a_cabinet_a_little_less_deep_is_compared_with_solving_every_depth() -> None:
    size = free("Box", Dimension.DEPTH, 12, is_cabinet=True)
    made = with_free(boxes(430, 4), size)
    now = SEARCH(made).cost
    costs = {}
    for by in range(1, 13):
        changed = change_size(made, size, -mm(by))
        assert changed is not None
        costs[by] = SEARCH(changed).cost
    expected = [
        by for by in costs if costs[by] < min([now, *(costs[less] for less in range(1, by))])
    ]
    found = near_misses(made)
    assert [mm(430) - after(miss) for miss in found] == [mm(by) for by in expected]
    assert expected, "a test in which nothing is near shows nothing"
    first = found[0]
    assert first.sheets < first.sheets_before
    inside = (mm(600) - 2 * mm(18)) * (mm(400) - 2 * mm(18))
    (change,) = first.changes
    assert change.room is not None
    assert change.room_before is not None
    assert change.room_before - change.room == inside * first.change


def test_a_changed_cabinet_is_the_one_that_a_design_of_that_size_gives() -> None:
    size = free("Box", Dimension.DEPTH, is_cabinet=True)
    changed = change_size(boxes(350, 2), size, -mm(8))
    assert changed is not None
    assert changed.parts == boxes(342, 2).parts


def test_a_size_that_cannot_be_built_is_passed_over() -> None:
    size = free("Box", Dimension.DEPTH, is_cabinet=True)
    assert change_size(boxes(350, 1), size, -mm(340)) is None
    thin = free("Panel", Dimension.WIDTH)
    assert change_size(job(part("Panel", 600, 30)), thin, -mm(30)) is None
