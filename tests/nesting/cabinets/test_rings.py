"""Bevels against published values and against a general-purpose geometry library."""

from math import atan2, degrees, pi, tan

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from nesting.cabinets.ring_lines import RingBoard
from nesting.cabinets.rings import fit_ring
from nesting.lengths import Length, mm

AREA_MM2 = 0.001


def ring(*boards: tuple[str, int, int, Length]) -> tuple[RingBoard, ...]:
    ranks = {"baffle": 0, "bottom": 1, "top": 1, "back": 2, "front": 2}
    return tuple(
        RingBoard(name=name, start=(mm(x), mm(y)), thickness=thickness, rank=ranks[name])
        for name, x, y, thickness in boards
    )


def test_a_blunt_corner_of_two_boards_alike_is_mitred_at_half_the_turn() -> None:
    """A slope of 3-4-5: the top turns by atan(4/3) into the baffle, each end has half of it."""
    boards = ring(
        ("bottom", 0, 0, mm(18)),
        ("back", 450, 0, mm(18)),
        ("top", 450, 400, mm(18)),
        ("baffle", 300, 400, mm(18)),
    )
    fitted, _ = fit_ring(boards)
    top, baffle = fitted[2], fitted[3]
    half = degrees(atan2(4, 3)) / 2
    assert abs(top.high.bevel_deg - half) < 1e-6
    assert abs(baffle.low.bevel_deg - half) < 1e-6
    assert abs(top.high.shorter - mm(18) * tan(half * pi / 180)) < 2
    assert baffle.edge == mm(500)


def test_at_a_sharp_corner_the_baffle_runs_through_and_the_floor_butts_against_it() -> None:
    """The slope is 53.13 degrees from the floor: both ends are bevelled by what is left of 90."""
    boards = ring(
        ("bottom", 0, 0, mm(18)),
        ("back", 450, 0, mm(18)),
        ("top", 450, 400, mm(18)),
        ("baffle", 300, 400, mm(18)),
    )
    fitted, _ = fit_ring(boards)
    bottom, baffle = fitted[0], fitted[3]
    left = 90 - degrees(atan2(4, 3))
    assert (bottom.low.runs_through, baffle.high.runs_through) == (False, True)
    assert abs(bottom.low.bevel_deg - left) < 1e-6
    assert abs(baffle.high.bevel_deg - left) < 1e-6
    assert baffle.high.outside == (0, 0)
    assert abs(bottom.low.set_in - mm(18) * 5 / 4) < 2  # across a board at 53.13 degrees


@pytest.mark.property
@settings(max_examples=300, deadline=None)
@given(
    depth=st.integers(250, 900),
    height=st.integers(250, 900),
    top=st.integers(0, 5),
    front=st.integers(0, 5),
    thicknesses=st.tuples(*[st.integers(90, 250)] * 5),
)
def test_boards_and_inside_fill_the_outline_and_do_not_overlap(
    depth: int, height: int, top: int, front: int, thicknesses: tuple[int, ...]
) -> None:
    thick = [tenth * mm("0.1") for tenth in thicknesses]
    starts = [("bottom", 0, 0), ("back", depth, 0)]
    starts += [("top", depth, height)] * (top > 0)
    starts += [("baffle", depth - top * depth // 12, height)]
    starts += [("front", 0, front * height // 12)] * (front > 0)
    boards = ring(*((*start, size) for start, size in zip(starts, thick, strict=False)))
    fitted, inside = fit_ring(boards)
    pieces = [_polygon(board.corners) for board in fitted]
    hollow = _polygon(inside)
    if any(not each.is_valid or not each.exterior.is_ccw for each in (*pieces, hollow)):
        return  # boards so thick that nothing is left of one, or of the inside: `wedge` refuses
    outline = _polygon(tuple((board.start) for board in boards))
    together = shapely.union_all([*pieces, hollow])
    assert abs(together.area - outline.area) < AREA_MM2
    assert abs(sum(piece.area for piece in pieces) + hollow.area - outline.area) < AREA_MM2


def _polygon(corners: tuple[tuple[int, int], ...]) -> shapely.Polygon:
    return shapely.Polygon([(x / mm(1), y / mm(1)) for x, y in corners])


def test_a_box_is_a_ring_with_square_corners() -> None:
    boards = ring(
        ("bottom", 0, 0, mm(18)),
        ("back", 300, 0, mm(18)),
        ("top", 300, 400, mm(18)),
        ("baffle", 0, 400, mm(18)),
    )
    fitted, inside = fit_ring(boards)
    assert [board.outside for board in fitted] == [mm(282), mm(364), mm(282), mm(400)]
    assert all(end.bevel_deg == 0 for board in fitted for end in (board.low, board.high))
    assert inside == ((mm(18), mm(18)), (mm(282), mm(18)), (mm(282), mm(382)), (mm(18), mm(382)))
