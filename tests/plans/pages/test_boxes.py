import pytest

from plans.pages.boxes import Box, box_at, find_room, text_box
from plans.pages.shapes import Anchor, Role, Text

ROOM = Box(0.0, 0.0, 100.0, 50.0)


def test_an_empty_room_gives_the_very_place_asked_for() -> None:
    place = find_room(ROOM, 20.0, 10.0, [], (50.0, 25.0))
    assert place == box_at(40.0, 20.0, 20.0, 10.0)


def test_a_place_beside_what_stands_there_is_the_nearest_free_one() -> None:
    taken = [Box(45.0, 0.0, 55.0, 50.0)]
    place = find_room(ROOM, 20.0, 10.0, taken, (50.0, 25.0))
    assert place is not None
    assert place.right == 45.0 or place.left == 55.0
    assert not place.meets(taken[0])


def test_no_room_is_said_to_be_none() -> None:
    assert find_room(ROOM, 101.0, 10.0, [], (50.0, 25.0)) is None
    assert find_room(ROOM, 20.0, 10.0, [ROOM], (50.0, 25.0)) is None


def test_the_only_gap_is_found() -> None:
    taken = [Box(0.0, 0.0, 70.0, 50.0), Box(91.0, 0.0, 100.0, 50.0), Box(70.0, 0.0, 91.0, 39.0)]
    assert find_room(ROOM, 20.0, 10.0, taken, (0.0, 0.0)) == Box(70.0, 39.0, 90.0, 49.0)


def test_a_text_turned_upright_stands_where_it_reads_from_the_bottom_up() -> None:
    level = Text(x=50.0, y=50.0, words="A1", height=10.0, role=Role.CODE, bold=True)
    upright = Text(
        x=50.0, y=50.0, words="A1", height=10.0, role=Role.CODE, bold=True, is_upright=True
    )
    one, two = text_box(level), text_box(upright)
    assert (one.width, one.height) == pytest.approx((two.height, two.width))
    assert (one.left, one.bottom) == (50.0, 50.0)
    assert (two.right, two.bottom) == (50.0, 50.0)


def test_the_anchor_shifts_a_text_by_its_own_width() -> None:
    texts = [Text(x=50.0, y=9.0, words="380", height=5.0, anchor=anchor) for anchor in Anchor]
    start, middle, end = (text_box(text) for text in texts)
    assert start.left == 50.0
    assert abs(middle.left + middle.right - 100.0) < 1e-9
    assert end.right == 50.0


def test_a_code_with_a_six_takes_the_room_of_its_underline() -> None:
    plain = text_box(Text(x=0, y=0, words="A5", height=5.0, role=Role.CODE))
    underlined = text_box(Text(x=0, y=0, words="A6", height=5.0, role=Role.CODE))
    size = text_box(Text(x=0, y=0, words="46", height=5.0, role=Role.FIGURE))
    assert underlined.bottom > plain.bottom + 0.8
    assert size.bottom < 0.2
