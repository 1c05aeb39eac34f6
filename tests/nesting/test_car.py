from math import cos, pi, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from nesting.car import Car, Lie, find_way_in, fits_turned
from nesting.lengths import mm

ESTATE = Car(
    opening_width=mm(1000),
    opening_height=mm(700),
    floor_length=mm(1700),
    arch_width=mm(960),
    clearance=0,
)


@pytest.mark.parametrize(
    ("inner", "outer", "fits"),
    [
        # Wetzel, Rectangles in Rectangles, Math. Mag. 73 (2000), and cases quoted with it: area,
        # diagonal, perimeter and thickness all pass for 9 x 4 into 8 x 6, and yet it does not fit.
        ((90, 40), (80, 60), False),
        ((90, 10), (80, 60), True),
        ((90, 13), (80, 60), False),
        ((120, 20), (100, 100), True),
        ((120, 22), (100, 100), False),
        ((100, 100), (80, 80), False),  # a known slip of formulas that divide by p - q
    ],
)
def test_published_rectangles_in_rectangles(
    inner: tuple[int, int], outer: tuple[int, int], *, fits: bool
) -> None:
    assert fits_turned(inner, outer) is fits
    assert fits_turned(inner[::-1], outer) is fits
    assert fits_turned(inner, outer[::-1]) is fits


def test_the_longest_18_mm_board_in_an_opening_of_1100_by_700() -> None:
    # Found by a search over all angles: 1287.60, where the plain diagonal is 1303.84.
    assert fits_turned((mm("1287.59"), mm(18)), (mm(1100), mm(700)))
    assert not fits_turned((mm("1287.61"), mm(18)), (mm(1100), mm(700)))


@given(
    across=st.integers(1, 2000),
    thickness=st.integers(1, 60),
    width=st.integers(1, 1500),
    height=st.integers(1, 1500),
)
def test_turning_step_by_step_finds_nothing_that_the_formula_refuses(
    across: int, thickness: int, width: int, height: int
) -> None:
    fits = fits_turned((across, thickness), (width, height))
    angles = [step * pi / 2 / 2000 for step in range(2001)]
    slack = max(
        min(
            width - across * cos(angle) - thickness * sin(angle),
            height - across * sin(angle) - thickness * cos(angle),
        )
        for angle in angles
    )
    # The steps miss the best angle by at most 1/2 of a step, so by less than this.
    missed = (across + thickness) * pi / 8000
    if slack > 1e-6:
        assert fits
    if slack < -missed - 1e-6:
        assert not fits


def test_a_half_sheet_goes_in_tilted_and_a_whole_one_does_not() -> None:
    way = find_way_in(ESTATE, mm(1218), mm(1220), mm(18))
    assert way is None  # the diagonal of 960 x 700 is 1188
    way = find_way_in(ESTATE, mm(1218), mm(1100), mm(18))
    assert way is not None
    assert way.lie is Lie.TILTED
    assert (way.along, way.across) == (mm(1218), mm(1100))
    assert find_way_in(ESTATE, mm(2440), mm(1220), mm(18)) is None


def test_a_piece_50_mm_too_large_for_the_opening_is_found_before_it_is_bought() -> None:
    # After an account of a piece of 787 x 2083 mm that was 50 mm too big for its car.
    car = Car(
        opening_width=mm(737),
        opening_height=mm(300),
        floor_length=mm(2100),
        arch_width=mm(737),
        clearance=0,
    )
    assert find_way_in(car, mm(787), mm(2083), mm(18)) is None
    assert find_way_in(car, mm(737), mm(2083), mm(18)) is not None


def test_a_piece_lies_flat_where_it_can_and_the_arches_count() -> None:
    way = find_way_in(ESTATE, mm(960), mm(1700), mm(18))
    assert way is not None
    assert way.lie is Lie.FLAT
    way = find_way_in(ESTATE, mm(961), mm(1700), mm(18))
    assert way is not None
    assert way.lie is Lie.TILTED
    way = find_way_in(ESTATE, mm(690), mm(1700), mm(970))
    assert way is None


def test_a_wide_short_piece_goes_in_by_its_long_edge() -> None:
    car = Car(
        opening_width=mm(1400),
        opening_height=mm(300),
        floor_length=mm(800),
        arch_width=mm(1400),
        clearance=0,
    )
    way = find_way_in(car, mm(1300), mm(700), mm(18))
    assert way is not None
    assert (way.lie, way.along, way.across) == (Lie.FLAT, mm(700), mm(1300))


def test_clearance_is_free_on_every_side() -> None:
    car = Car(
        opening_width=mm(1000),
        opening_height=mm(300),
        floor_length=mm(1700),
        arch_width=mm(1000),
        clearance=mm(20),
    )
    assert find_way_in(car, mm(1660), mm(960), mm(18)) is not None
    assert find_way_in(car, mm(1661), mm(960), mm(18)) is None
    assert find_way_in(car, mm(1660), mm(1015), mm(18)) is None
