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
from nesting.job import Job
from nesting.lengths import Length, Unit, mm
from nesting.near_misses import NearMiss, change_size, find_near_misses
from nesting.parts import Grain, Part
from nesting.sheets import Sheet
from nesting.solve import solve_cheapest
from nesting.terms import Dimension, Free, Terms
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
            assert [(miss.after, miss.cost) for miss in found] == expected, (item, dimension)
            hits += len(expected)
    assert hits > 20, "a test in which nothing is near shows nothing"


def test_the_smallest_change_of_all_sizes_comes_first() -> None:
    made = job(
        replace(part("Panel", 612, 409, 22), grain=Grain.LENGTH),
        sheets=[SHEET],
    )
    both = with_free(made, free("Panel", Dimension.LENGTH), free("Panel", Dimension.WIDTH))
    changes = [abs(miss.change) for miss in near_misses(both)]
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
    assert [mm(430) - miss.after for miss in found] == [mm(by) for by in expected]
    assert expected, "a test in which nothing is near shows nothing"
    first = found[0]
    assert first.sheets < first.sheets_before
    inside = (mm(600) - 2 * mm(18)) * (mm(400) - 2 * mm(18))
    assert first.room is not None
    assert first.room_before is not None
    assert first.room_before - first.room == inside * -first.change


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
