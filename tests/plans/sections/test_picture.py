"""Where the holes of a cabinet open, worked out by hand from the figures of its job file."""

from math import dist, hypot
from pathlib import Path

import pytest

from nesting.reading.job_toml import read_job
from plans.sections.picture import Mouth, Picture, make_pictures
from tests.plans.full_plan import FULL_JOB

SAMPLES = Path(__file__).parents[3] / "samples"
INCH = 25_400_000
MM = 1_000_000


def picture_of(path: Path) -> Picture:
    (picture,) = make_pictures(read_job(path))
    return picture


@pytest.fixture(scope="module")
def on_the_slope() -> Mouth:
    return picture_of(FULL_JOB).mouths[0]


def test_a_hole_in_a_sloped_baffle_lies_on_the_line_from_front_to_top(on_the_slope: Mouth) -> None:
    # 16 deep, 15 high, the front 2 3/4 high, the top 5 1/2 deep: the slope runs from
    # (0, 2 3/4) to (10 1/2, 15); the covering and the clearance, 3/32, come off either end.
    top, bottom = (10.5 * INCH, 15.0 * INCH), (0.0, 2.75 * INCH)
    slope = dist(top, bottom)
    assert slope == pytest.approx(hypot(10.5, 12.25) * INCH)
    from_top = (8 + 3 / 16 + 3 / 32) * INCH
    expected = [t + (b - t) * from_top / slope for t, b in zip(top, bottom, strict=True)]
    assert on_the_slope.centre[1:] == pytest.approx(expected, abs=0.01 * MM)
    assert on_the_slope.centre[0] == pytest.approx(11 * INCH, abs=0.01 * MM)  # half of 22


def test_its_rim_lies_in_the_slope_and_is_as_wide_as_the_cut_out(on_the_slope: Mouth) -> None:
    assert on_the_slope.across == (round((11 + 1 / 16) / 2 * INCH), 0, 0)
    assert hypot(*on_the_slope.up) == pytest.approx((11 + 1 / 16) / 2 * INCH, abs=10)
    assert on_the_slope.up[1] / on_the_slope.up[2] == pytest.approx(10.5 / 12.25, rel=1e-6)


def test_holes_in_upright_panels_lie_on_the_outside_faces() -> None:
    # hall_bass_cabinets: 480 wide, 450 deep, 900 high, the baffle set back by 30
    mouths = picture_of(SAMPLES / "hall_bass_cabinets.toml").mouths
    assert [mouth.centre[1] / MM for mouth in mouths[:3]] == [30, 30, 30]
    left, right = mouths[-2:]
    assert (left.centre[0] / MM, right.centre[0] / MM) == (0, 480)
    for handle in (left, right):
        assert handle.centre[2] / MM == 900 - 180
        assert not handle.is_round
        assert (handle.across[1] / MM, handle.up[2] / MM) == (170 / 2, 90 / 2)
