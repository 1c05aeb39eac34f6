"""Profiles against a general-purpose geometry library."""

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from nesting.cabinets.profiles import ROUNDED, Profile, box_of, do_overlap, profile_of
from nesting.cabinets.space import Axis, Box

POINTS = st.lists(
    st.tuples(st.integers(-1000, 1000), st.integers(-1000, 1000)), min_size=3, max_size=7
)


def convex(points: list[tuple[int, int]]) -> Profile | None:
    hull = shapely.MultiPoint(points).convex_hull
    if not isinstance(hull, shapely.Polygon):
        return None
    corners = shapely.orient_polygons(hull).exterior.coords[:-1]
    return Profile(axis=Axis.WIDTH, corners=tuple((int(x), int(y)) for x, y in corners))


@pytest.mark.property
@settings(max_examples=500, deadline=None)
@given(POINTS, POINTS)
def test_area_and_overlap_agree_with_the_library(
    first: list[tuple[int, int]], second: list[tuple[int, int]]
) -> None:
    one, other = convex(first), convex(second)
    if one is None or other is None:
        return
    shapes = [shapely.Polygon(profile.corners) for profile in (one, other)]
    assert one.area_twice == round(2 * shapes[0].area)
    deep = shapes[0].buffer(-ROUNDED - 1).intersects(shapes[1].buffer(-ROUNDED - 1))
    if deep:
        assert do_overlap(one, other)
    if shapes[0].distance(shapes[1]) > 0:
        assert not do_overlap(one, other)


def test_outlines_that_touch_do_not_overlap() -> None:
    left = Profile(axis=Axis.WIDTH, corners=((0, 0), (100, 0), (100, 100)))
    right = Profile(axis=Axis.WIDTH, corners=((100, 0), (200, 0), (100, 100)))
    assert not do_overlap(left, right)
    into = Profile(axis=Axis.WIDTH, corners=((100 - ROUNDED - 1, 0), (200, 0), (100, 100)))
    assert do_overlap(left, into)


def test_a_box_is_a_rectangle_across_every_axis() -> None:
    box = Box(low=(1, 2, 3), high=(11, 22, 33))
    for axis in Axis:
        profile = profile_of(box, axis)
        assert profile.area_twice * box.size(axis) == 2 * box.volume
        assert box_of(profile, (box.low[axis.index], box.high[axis.index])) == box


def test_a_profile_turned_round_in_its_middle_is_anticlockwise_still() -> None:
    slope = Profile(axis=Axis.WIDTH, corners=((0, 0), (10, 0), (10, 5), (4, 5)))
    turned = slope.mirrored(Axis.DEPTH)
    assert turned.area_twice == slope.area_twice
    assert set(turned.corners) == {(10, 0), (0, 0), (0, 5), (6, 5)}
    assert not slope.is_same(turned)
    assert slope.is_same(slope.mirrored(Axis.DEPTH).mirrored(Axis.DEPTH))
