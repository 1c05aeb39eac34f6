"""Compound mitres against a published table and against vectors in space."""

from math import acos, cos, degrees, radians, sin, sqrt

import pytest

from nesting.cabinets.splay import find_compound_mitre


def test_the_published_box_with_sides_that_lean_five_degrees() -> None:
    """howtodothings.com: gauge 85°, blade 44 3/4°, from a table in quarter degrees."""
    tilt, gauge = find_compound_mitre(5)
    assert abs(tilt - 44.75) <= 0.125
    assert abs(gauge - 85) <= 0.125


def test_upright_sides_meet_in_a_plain_mitre() -> None:
    tilt, gauge = find_compound_mitre(0)
    assert (round(tilt, 9), round(gauge, 9)) == (45, 90)


@pytest.mark.parametrize("splay", [5, 10, 20, 30, 45])
def test_the_tilt_is_half_of_what_two_faces_are_short_of_flat(splay: int) -> None:
    """By the normals of two neighbouring faces, without the formula."""
    lean = radians(splay)
    front = (0.0, -cos(lean), -sin(lean))
    side = (-cos(lean), 0.0, -sin(lean))
    between = degrees(acos(sum(a * b for a, b in zip(front, side, strict=True))))
    assert abs(find_compound_mitre(splay)[0] - between / 2) < 1e-9


@pytest.mark.parametrize("splay", [5, 10, 20, 30, 45])
def test_the_gauge_is_the_angle_between_the_corner_and_the_upper_edge(splay: int) -> None:
    """The corner of two faces runs out by tan(splay) both ways for each unit of height."""
    out = sin(radians(splay)) / cos(radians(splay))
    length = sqrt(2 * out * out + 1)
    assert abs(find_compound_mitre(splay)[1] - degrees(acos(out / length))) < 1e-9
