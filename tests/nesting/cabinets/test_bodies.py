"""Bodies that meet: compared with points tried one by one."""

from itertools import product
from typing import TypeAlias

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from nesting.cabinets.bodies import Rod, cross_axes, meet, rod
from nesting.cabinets.space import Axis, Box, Interval

Upright: TypeAlias = Box | Rod
SMALL = st.integers(-9, 9)


@st.composite
def intervals(draw: st.DrawFn) -> Interval:
    low = draw(SMALL)
    return low, low + draw(st.integers(1, 9))


@st.composite
def solids(draw: st.DrawFn) -> Upright:
    if draw(st.booleans()):
        ends = [draw(intervals()) for _ in Axis]
        return Box(
            low=(ends[0][0], ends[1][0], ends[2][0]), high=(ends[0][1], ends[1][1], ends[2][1])
        )
    return Rod(
        axis=draw(st.sampled_from(Axis)),
        centre=(draw(SMALL), draw(SMALL)),
        radius=draw(st.integers(1, 6)),
        interval=draw(intervals()),
    )


def holds(solid: Upright, point: tuple[float, ...], shy: float) -> bool:
    """Whether a point lies in a body, by more than a bit."""
    if isinstance(solid, Box):
        return all(
            low + shy < at < high - shy
            for low, at, high in zip(solid.low, point, solid.high, strict=True)
        )
    low, high = solid.interval
    away = [
        point[axis.index] - at
        for axis, at in zip(cross_axes(solid.axis), solid.centre, strict=True)
    ]
    return (
        low + shy < point[solid.axis.index] < high - shy
        and away[0] ** 2 + away[1] ** 2 < (solid.radius - shy) ** 2
    )


@pytest.mark.property
@settings(max_examples=30, deadline=None)
@given(solids(), solids())
def test_bodies_meet_where_a_point_lies_in_both(first: Upright, second: Upright) -> None:
    """Crossing rods are asked in whole numbers, rounded down: slivers are left to either answer."""
    grid = [place + 0.25 for place in range(-17, 19)]
    points = [point for point in product(grid, repeat=3) if holds(first, point, 0)]
    if any(holds(second, point, 0) for point in points):
        assert meet(grow(first, 1000), grow(second, 1000))
    if not meet(grow(first, 1000), grow(second, 1000)):
        assert not any(holds(second, point, 0.01) for point in points)


def grow(solid: Upright, by: int) -> Upright:
    """The same body on a finer grid."""
    if isinstance(solid, Box):
        low, high = (tuple(value * by for value in corner) for corner in (solid.low, solid.high))
        return Box(low=(low[0], low[1], low[2]), high=(high[0], high[1], high[2]))
    return Rod(
        axis=solid.axis,
        centre=(solid.centre[0] * by, solid.centre[1] * by),
        radius=solid.radius * by,
        interval=(solid.interval[0] * by, solid.interval[1] * by),
    )


def test_touching_is_no_meeting_and_a_clearance_makes_it_one() -> None:
    upright = rod(Axis.HEIGHT, (0, 0), 20, (0, 100))
    wall = Box(low=(10, -50, 0), high=(20, 50, 100))
    across = rod(Axis.WIDTH, (20, 50), 20, (-50, 50))
    beside = rod(Axis.HEIGHT, (20, 0), 20, (0, 100))
    for other in (wall, across, beside):
        assert not meet(upright, other)
        assert meet(upright, other, 1)
        assert meet(other, upright, 1)


def test_rods_that_pass_each_others_ends_do_not_meet() -> None:
    upright = rod(Axis.HEIGHT, (0, 0), 20, (0, 100))
    short = rod(Axis.WIDTH, (0, 50), 20, (9, 50))
    assert meet(upright, short)
    assert not meet(upright, rod(Axis.WIDTH, (0, 50), 20, (10, 50)))
    # The corner of the end is nearest: 8 along and 7 across is more than 10 from the middle.
    assert not meet(upright, rod(Axis.WIDTH, (17, 50), 20, (8, 50)))
    assert meet(upright, rod(Axis.WIDTH, (15, 50), 20, (8, 50)))
