"""Corners cut through: to scale, from the right corner, every letter in its own solid."""

import pytest
from shapely import Point, Polygon

from nesting.lengths import mm
from plans.pages.boxes import text_box
from plans.pages.corner_pictures import corner_pictures
from plans.pages.shapes import Line, Text
from plans.sections.corners import CornerPicture, CornerShape

WIDTH = 186.0
SIDE = CornerShape(
    letter="a", name="left side",
    corners=((0, 0), (mm(18), 0), (mm(18), mm(110)), (0, mm(110))),
)  # fmt: skip
TOP = CornerShape(
    letter="b", name="top",
    corners=((mm(18), 0), (mm(110), 0), (mm(110), mm(18)), (mm(18), mm(18))),
)  # fmt: skip


def corner(*, right: bool, top: bool) -> CornerPicture:
    return CornerPicture(title="a corner", window=mm(110), right=right, top=top, shapes=(SIDE, TOP))


def drawn(picture: CornerPicture) -> tuple[list[Line], list[Text]]:
    shapes = corner_pictures([picture], WIDTH).shapes
    texts = [one for one in shapes if isinstance(one, Text)]
    return [one for one in shapes if isinstance(one, Line)], texts


@pytest.mark.parametrize("right", [False, True])
@pytest.mark.parametrize("top", [False, True])
def test_the_corner_of_the_cabinet_lies_where_it_is_seen(*, right: bool, top: bool) -> None:
    lines, _ = drawn(corner(right=right, top=top))
    xs = [x for line in lines for x in (line.x1, line.x2)]
    ys = [y for line in lines for y in (line.y1, line.y2)]
    # the side is the only solid that reaches from end to end of the window, upright
    upright = [line for line in lines if line.x1 == line.x2]
    long = max(upright, key=lambda line: abs(line.y2 - line.y1))
    assert abs(long.y2 - long.y1) == pytest.approx(max(ys) - min(ys))
    edge = max(xs) if right else min(xs)
    thick = abs(edge - (min(xs) if right else max(xs))) * 18 / 110
    assert min(abs(long.x1 - edge), abs(abs(long.x1 - edge) - thick)) < 0.01
    level = [line for line in lines if line.y1 == line.y2]
    on_edge = [line for line in level if line.y1 == (min(ys) if top else max(ys))]
    assert on_edge


def test_letters_stand_in_their_own_solids_and_their_names_below() -> None:
    _, texts = drawn(corner(right=False, top=False))
    letters = {one.words: text_box(one) for one in texts if one.words in ("a", "b")}
    side = 40.0 - 0.6
    scale = side / 110

    def on_paper(shape: CornerShape) -> Polygon:
        return Polygon(
            [(0.6 + u / mm(1) * scale, 40.4 - v / mm(1) * scale) for u, v in shape.corners]
        )

    for shape in (SIDE, TOP):
        box = letters[shape.letter]
        middle = Point((box.left + box.right) / 2, (box.top + box.bottom) / 2)
        assert on_paper(shape).contains(middle)
        assert any(one.words == f"{shape.letter} {shape.name}" for one in texts)


def test_a_solid_that_is_too_thin_has_no_letter_but_its_name() -> None:
    thin = CornerShape(
        letter="c", name="skin", corners=((0, 0), (mm(3), 0), (mm(3), mm(110)), (0, mm(110)))
    )
    picture = CornerPicture(title="thin", window=mm(110), right=False, top=False, shapes=(thin,))
    _, texts = drawn(picture)
    words = [one.words for one in texts]
    assert "c" not in words
    assert "c skin" in words


def test_without_corners_nothing_is_drawn() -> None:
    assert corner_pictures([], WIDTH).shapes == ()
