from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st
from shapely import box

from nesting.layout import Rect
from nesting.lengths import mm
from nesting.sheets import Defect, Use
from nesting.zones import cut_out, is_sound, list_barred, meets, usable_of
from tests.nesting.hand_made import BIRCH, part

DEFECT = Defect(x=mm(600), y=mm(300), length=mm(80), width=mm(50))
BOXES = st.tuples(*2 * [st.integers(0, 12)], *2 * [st.integers(1, 8)])


def test_a_part_may_touch_a_defect() -> None:
    beside = Rect(x=0, y=0, length=mm(600), width=mm(1000))
    assert is_sound(beside, [DEFECT])
    assert not is_sound(replace(beside, length=mm(600) + 1), [DEFECT])


@given(BOXES, BOXES)
def test_meeting_and_cutting_out_are_those_of_a_geometry_library(
    one: tuple[int, int, int, int], other: tuple[int, int, int, int]
) -> None:
    (x, y, length, width), (a, b, along, across) = one, other
    rect, defect = (
        Rect(x=x, y=y, length=length, width=width),
        Defect(x=a, y=b, length=along, width=across),
    )
    common = box(x, y, x + length, y + width).intersection(box(a, b, a + along, b + across))
    assert meets(rect, defect) is (common.area > 0)
    for inner in cut_out([defect], rect):
        low, left = inner.y + y, inner.x + x
        assert common.equals(box(left, low, left + inner.length, low + inner.width))


def test_only_hidden_parts_may_lie_on_what_is_for_hidden_parts() -> None:
    stain = replace(DEFECT, use=Use.HIDDEN_PARTS)
    shown = part("Side", 500, 300)
    assert list_barred(shown, [stain, DEFECT]) == (stain, DEFECT)
    assert list_barred(replace(shown, is_hidden=True), [stain, DEFECT]) == (DEFECT,)


def test_what_is_usable_ends_at_the_trims() -> None:
    assert usable_of(Rect(x=0, y=mm(500), length=mm(2440), width=mm(720)), BIRCH) == Rect(
        x=mm(10), y=mm(500), length=mm(2420), width=mm(710)
    )
