"""Boards drawn in the car's opening lie inside it, at an angle at which they really go through."""

from dataclasses import replace
from math import cos, hypot, pi, sin

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from nesting.car import Lie, fits_turned
from plans.pages.car_picture import MOST, car_pictures, find_angle
from plans.pages.shapes import Line, LineKind, Rectangle, Text
from plans.sections.car import CarPage
from tests.plans.full_plan import full_plan
from tests.plans.yard_plans import half_sheets, narrow_pieces

WIDTH = 186.0


def cars() -> list[CarPage]:
    pages = [plan.car for _, _, plan in (full_plan(), half_sheets(), narrow_pieces())]
    return [page for page in pages if page is not None]


def boards(page: CarPage) -> list[Line]:
    shapes = car_pictures(page, WIDTH).shapes
    return [one for one in shapes if isinstance(one, Line) and one.kind is LineKind.CUT]


def openings(page: CarPage) -> list[Rectangle]:
    return [one for one in car_pictures(page, WIDTH).shapes if isinstance(one, Rectangle)]


def test_there_is_an_opening_for_every_trip_and_a_board_for_every_piece() -> None:
    for page in cars():
        assert len(openings(page)) == page.loads <= MOST
        assert len(boards(page)) == len(page.pieces)


def test_openings_and_boards_are_drawn_to_one_scale() -> None:
    for page in cars():
        wide, high = page.sides
        opening = openings(page)[0]
        scale = opening.width / wide
        assert opening.height / high == pytest.approx(scale)
        drawn = sorted(hypot(one.x2 - one.x1, one.y2 - one.y1) / scale for one in boards(page))
        assert drawn == pytest.approx(sorted(piece.width for piece in page.pieces))


def test_every_board_lies_inside_an_opening() -> None:
    for page in cars():
        for board in boards(page):
            inside = [
                opening
                for opening in openings(page)
                if opening.x <= min(board.x1, board.x2)
                and max(board.x1, board.x2) <= opening.x + opening.width
                and opening.y <= min(board.y1, board.y2)
                and max(board.y1, board.y2) <= opening.y + opening.height
            ]
            assert len(inside) == 1


def test_flat_boards_are_level_and_tilted_ones_are_not() -> None:
    for page in cars():
        for board, piece in zip(boards(page), page.pieces, strict=True):
            is_level = board.y1 == pytest.approx(board.y2)
            assert is_level == (piece.way is Lie.FLAT)


SIDES = st.integers(20, 1500)


@given(long=SIDES, thick=st.integers(3, 60), across=SIDES, up=SIDES)
def test_a_board_that_fits_in_theory_is_drawn_at_an_angle_at_which_it_fits(
    long: int, thick: int, across: int, up: int
) -> None:
    assume(long > thick and fits_turned((long, thick), (across - 4, up - 4)))
    for stands in (False, True):
        angle = find_angle(long, thick, across, up, stands=stands)
        assert 0 <= angle <= pi / 2
        assert long * cos(angle) + thick * sin(angle) <= across + 1.0
        assert long * sin(angle) + thick * cos(angle) <= up + 1.0


def test_a_board_that_stands_is_drawn_upright() -> None:
    assert find_angle(700, 18, 1000, 740, stands=True) == pytest.approx(pi / 2)
    assert find_angle(700, 18, 1000, 740, stands=False) == 0.0


def test_the_sizes_of_the_opening_stand_beside_it() -> None:
    page = cars()[0]
    words = [one.words for one in car_pictures(page, WIDTH).shapes if isinstance(one, Text)]
    assert words.count("42") == words.count("30") == page.loads
    one_trip = replace(page, loads=1)
    texts = [one.words for one in car_pictures(one_trip, WIDTH).shapes if isinstance(one, Text)]
    assert "from behind" in texts
