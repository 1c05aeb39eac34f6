"""Round outlines against pi, cut-off lines against a library for plane geometry."""

from math import hypot, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString
from shapely import box as shapely_box

from plans.pages.boxes import Box
from plans.pages.rounds import SAGITTA, circle, circle_points, inside, path
from plans.pages.shapes import Line, LineKind

BOX = Box(10.0, 20.0, 90.0, 60.0)
EVERYWHERE = Box(-1e4, -1e4, 1e4, 1e4)
PLACES = st.floats(-50.0, 150.0).map(lambda value: round(value, 3))


@pytest.mark.parametrize("radius", [0.5, 2.5, 51.0, 137.0])
def test_a_circle_is_nowhere_farther_inside_than_can_be_seen(radius: float) -> None:
    lines = circle(5.0, -3.0, radius, LineKind.CUT, EVERYWHERE)
    for line in lines:
        middle = hypot((line.x1 + line.x2) / 2 - 5.0, (line.y1 + line.y2) / 2 + 3.0)
        assert radius - SAGITTA - 1e-9 <= middle <= radius
    around = sum(hypot(line.x2 - line.x1, line.y2 - line.y1) for line in lines)
    assert around == pytest.approx(2 * pi * radius, rel=0.01)


def test_a_circle_ends_where_it_began() -> None:
    first, *_, last = circle_points(0.0, 0.0, 10.0)
    assert last == pytest.approx(first)


@given(x1=PLACES, y1=PLACES, x2=PLACES, y2=PLACES)
def test_what_is_left_of_a_line_in_a_box_is_what_geometry_says(
    x1: float, y1: float, x2: float, y2: float
) -> None:
    line = Line(x1=x1, y1=y1, x2=x2, y2=y2, kind=LineKind.CUT)
    expected = LineString([(x1, y1), (x2, y2)]).intersection(
        shapely_box(BOX.left, BOX.top, BOX.right, BOX.bottom)
    )
    left = list(inside([line], BOX))
    length = sum(hypot(one.x2 - one.x1, one.y2 - one.y1) for one in left)
    assert length == pytest.approx(expected.length, abs=1e-6)
    assert all(BOX.grown(1e-6).holds(Box(*_sorted(one))) for one in left)


def _sorted(line: Line) -> tuple[float, float, float, float]:
    (left, right), (top, bottom) = sorted((line.x1, line.x2)), sorted((line.y1, line.y2))
    return left, top, right, bottom


def test_a_path_keeps_its_kind_and_what_lies_outside_is_gone() -> None:
    points = [(0.0, 40.0), (50.0, 40.0), (50.0, 100.0)]
    lines = path(points, LineKind.DIMENSION, BOX)
    assert [(one.x1, one.y1, one.x2, one.y2) for one in lines] == [
        (10.0, 40.0, 50.0, 40.0),
        (50.0, 40.0, 50.0, 60.0),
    ]
    assert {one.kind for one in lines} == {LineKind.DIMENSION}
