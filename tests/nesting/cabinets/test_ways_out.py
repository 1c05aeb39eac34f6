"""Through openings and round corners, against published values and brute force."""

from math import cos, pi, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from nesting.cabinets.fittings import Way, WayKind
from nesting.cabinets.ways_out import check_ways, fits_flat, gets_through, longest_round_corner
from nesting.lengths import Unit, mm


@pytest.mark.parametrize(
    ("sides", "opening", "fits"),
    [
        ((900, 400), (800, 600), False),
        ((900, 100), (800, 600), True),
        ((900, 130), (800, 600), False),
        ((1200, 200), (1000, 1000), True),
        ((1200, 220), (1000, 1000), False),
        ((1000, 1000), (800, 800), False),
        ((12876, 180), (11000, 7000), True),
        ((12877, 180), (11000, 7000), False),
    ],
)
def test_rectangles_fit_into_rectangles_as_published(
    sides: tuple[int, int], opening: tuple[int, int], *, fits: bool
) -> None:
    """Wetzel, Mathematics Magazine 73 (2000), 204-211, and examples recomputed by rotation.

    9 x 4 does not go into 8 x 6 although its area, diagonal and thickness all do; 10 x 10 into
    8 x 8 is where the condition divides by nothing; 18 mm board at 1100 x 700: 1287.6 at most.
    """
    assert fits_flat(sides, opening) is fits


@pytest.mark.property
@settings(max_examples=300, deadline=None)
@given(*[st.integers(1, 60) for _ in range(4)])
def test_the_condition_agrees_with_turning_step_by_step(p: int, q: int, a: int, b: int) -> None:
    tightest = min(
        max(p * cos(t) + q * sin(t) - a, p * sin(t) + q * cos(t) - b)
        for t in (pi / 2 * step / 4000 for step in range(4001))
    )
    if abs(tightest) > 0.05:
        assert fits_flat((p, q), (a, b)) is (tightest < 0)


@pytest.mark.parametrize(
    ("first", "second", "length"),
    [(1, 1, 2.8284), (2, 3, 7.0234824), (3, 4, 9.87), (5, 3, 11.1941)],
)
def test_the_longest_rod_round_a_corner_is_as_published(
    first: int, second: int, length: float
) -> None:
    """MathWorld, Moving Ladder Problem, and three puzzle pages: (a^(2/3) + b^(2/3))^1.5."""
    scale = mm(1000)
    found = longest_round_corner(first * scale, second * scale) / scale
    assert found == pytest.approx(length, abs=0.005)
    assert found == pytest.approx((first ** (2 / 3) + second ** (2 / 3)) ** 1.5, rel=1e-5)


def test_a_broad_thing_is_shorter_round_a_corner_by_twice_its_breadth_at_45_degrees() -> None:
    """Plain arithmetic: in equal passages the tightest turn is at 45 degrees."""
    found = longest_round_corner(mm(1000), mm(1000), mm(300)) / mm(1)
    assert found == pytest.approx(2 * 2**0.5 * 1000 - 2 * 300, rel=1e-5)
    assert longest_round_corner(mm(1000), mm(1000), mm(1001)) == 0


CABINET = (mm(600), mm(450), mm(900))


def test_a_door_is_passed_with_what_is_to_spare() -> None:
    """600 x 450 through 700 x 1900, straight: 100 mm less would do in width; turning the 450 side
    level leaves 250."""
    (result,) = check_ways(CABINET, (Way(name="Cellar door", width=mm(700), height=mm(1900)),), U)
    assert result.spare == mm(250)
    assert result.text == "Cellar door: passes, with 250 mm to spare in every direction."


U = Unit.MM


def test_a_hatch_that_is_too_small_says_by_how_much() -> None:
    hatch = Way(name="Loft hatch", width=mm(430), height=mm(580))
    (result,) = check_ways(CABINET, (hatch,), U)
    assert not result.passes
    assert result.spare == -mm(20)
    assert result.text == (
        "Loft hatch: does NOT pass. It is 20 mm too small, whichever way the cabinet is turned."
    )


def test_a_car_needs_floor_as_well() -> None:
    car = Way(name="Car", kind=WayKind.CAR, width=mm(1000), height=mm(620), length=mm(880))
    assert gets_through(CABINET, car)  # lying across: 900 wide, 450 high, 600 deep
    low = Way(name="Car", kind=WayKind.CAR, width=mm(800), height=mm(620), length=mm(880))
    assert not gets_through(CABINET, low)


def test_a_corner_is_passed_by_turning_or_by_pushing_on_sideways() -> None:
    stair = Way(name="Stair", kind=WayKind.CORNER, width=mm(620), length=mm(620))
    assert gets_through(CABINET, stair)
    assert not gets_through((mm(650), mm(650), mm(900)), stair)
    low = Way(name="Stair", kind=WayKind.CORNER, width=mm(620), length=mm(620), height=mm(500))
    assert not gets_through(CABINET, low)
