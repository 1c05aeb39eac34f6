"""The drawing of a cabinet: as large as fits, its holes where they are seen and only there."""

from dataclasses import replace

import pytest

from nesting.reading.job_toml import read_job
from plans.pages.boxes import text_box
from plans.pages.cabinet_picture import cabinet_picture
from plans.pages.shapes import Line, Text
from plans.sections.picture import Picture, make_pictures
from tests.plans.full_plan import FULL_JOB


@pytest.fixture(scope="module")
def wedge() -> Picture:
    (picture,) = make_pictures(read_job(FULL_JOB))
    return picture


def lines_of(picture: Picture) -> set[tuple[float, float, float, float]]:
    shapes = cabinet_picture(picture, 90.0, 80.0).shapes
    return {
        (round(line.x1, 6), round(line.y1, 6), round(line.x2, 6), round(line.y2, 6))
        for line in shapes
        if isinstance(line, Line)
    }


def test_a_hole_in_the_sloped_baffle_is_drawn_whole_and_one_in_the_left_side_is_not(
    wedge: Picture,
) -> None:
    driver, handle = wedge.mouths
    bare = lines_of(replace(wedge, mouths=()))
    seen = lines_of(replace(wedge, mouths=(driver,))) - bare
    assert len(seen) == 40
    assert {(x1, y1) for x1, y1, _, _ in seen} == {(x2, y2) for _, _, x2, y2 in seen}
    assert lines_of(replace(wedge, mouths=(handle,))) == bare


@pytest.mark.parametrize(("width", "height"), [(60.0, 80.0), (40.0, 60.0), (180.0, 40.0)])
def test_nothing_is_drawn_outside_the_room_there_is(
    wedge: Picture, width: float, height: float
) -> None:
    drawn = cabinet_picture(wedge, width, height)
    assert drawn.height <= height + 1e-9
    for shape in drawn.shapes:
        if isinstance(shape, Line):
            assert 0 <= min(shape.x1, shape.x2) <= max(shape.x1, shape.x2) <= width + 1e-9
        elif isinstance(shape, Text):
            box = text_box(shape)
            assert 0 <= box.left <= box.right <= width + 1e-9
