from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from nesting.layout import Direction, Rect
from nesting.lengths import mm
from nesting.saw import Saw
from nesting.supports import (
    BATTEN,
    LONGEST_FREE,
    draw_supports,
    find_guide_room,
    place_supports,
)

SAW = Saw(kerf=mm("2.4"), base_left=mm(38), base_right=mm(130), guide_width=mm(100))


@given(
    extent=st.integers(1, 3100),
    share=st.fractions(0, 1),
    kerf=st.sampled_from([0, mm("2.4"), mm(4)]),
)
def test_two_battens_on_each_side_none_across_the_kerf_and_nothing_hangs_free_for_long(
    extent: int, share: float, kerf: int
) -> None:
    length = mm(extent)
    start = int((length - min(kerf, length)) * share)
    end = min(start + kerf, length)
    found = place_supports(length, start, end, low_is_waste=False, high_is_waste=False)
    assert found.needs_board or min(len(found.low), len(found.high)) >= 2
    for middle in (*found.low, *found.high):
        assert BATTEN // 2 <= middle <= length - BATTEN // 2
        assert middle + BATTEN // 2 <= start or middle - BATTEN // 2 >= end
    for side in (found.low, found.high):
        gaps = [after - before for before, after in pairwise(side)]
        assert all(BATTEN <= gap <= LONGEST_FREE for gap in gaps)
        assert max(gaps, default=0) <= found.longest_free <= LONGEST_FREE


def test_a_crosscut_has_battens_close_to_the_line_and_at_the_ends() -> None:
    found = place_supports(mm(2440), mm(1200), mm(1203), low_is_waste=False, high_is_waste=False)
    assert (found.low[-1], found.high[0]) == (mm(1150), mm(1253))
    assert (found.low[0], found.high[-1]) == (mm(40), mm(2400))
    assert not found.needs_board


@pytest.mark.parametrize(
    ("kept", "needs_board"),
    [(100, True), (129, True), (130, False)],
)
def test_a_strip_too_narrow_for_two_battens_lies_on_a_board(
    kept: int, *, needs_board: bool
) -> None:
    found = place_supports(
        mm(1000), mm(kept), mm(kept + 3), low_is_waste=False, high_is_waste=False
    )
    assert found.needs_board is needs_board


def test_narrow_waste_falls_free() -> None:
    found = place_supports(mm(1220), mm(8), mm(10), low_is_waste=True, high_is_waste=False)
    assert not found.needs_board
    assert found.low == ()


@pytest.mark.parametrize("direction", list(Direction))
def test_battens_are_as_long_as_the_cut(direction: Direction) -> None:
    piece = Rect(x=mm(10), y=mm(20), length=mm(1000), width=mm(800))
    extent = piece.length if direction is Direction.CROSSCUT else piece.width
    found = place_supports(extent, mm(400), mm(403), low_is_waste=False, high_is_waste=False)
    for batten in draw_supports(found, direction, piece):
        if direction is Direction.CROSSCUT:
            assert (batten.y, batten.width, batten.length) == (piece.y, piece.width, BATTEN)
        else:
            assert (batten.x, batten.length, batten.width) == (piece.x, piece.length, BATTEN)


def test_the_guide_has_room_where_base_plate_guide_and_clamp_lie_on_the_piece() -> None:
    # 38 + 100 + 20 on the near side, 130 + 100 + 20 on the far side
    near, far = mm(158), mm(250)
    for left, right in ((near, far), (near - 1, far), (near, far - 1), (near - 1, far - 1)):
        room = find_guide_room(SAW, left + SAW.kerf + right, left, left + SAW.kerf)
        assert (room.left, room.right) == (left == near, right == far)
        assert room.needs_outrigger is (left < near and right < far)


def test_a_wider_guide_needs_more_room() -> None:
    wide = replace(SAW, guide_width=mm(200))
    assert find_guide_room(SAW, mm(400), mm(200), mm(203)).left
    assert not find_guide_room(wide, mm(400), mm(200), mm(203)).left
