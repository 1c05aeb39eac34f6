"""Tiles of a template laid on each other by their joining lines give the holes of the job file."""

from collections.abc import Iterator
from functools import cache
from math import hypot, pi
from pathlib import Path

import pytest

from nesting.lengths import mm
from nesting.reading.job_toml import read_job
from plans.pages.boxes import Box
from plans.pages.shapes import Line, LineKind, Rectangle, Shape, Solid
from plans.pages.template_tiles import OVERLAP, Tiling, draw_map, draw_tile, spread
from plans.sections.holes import make_panel_holes
from plans.sections.templates import Template, make_templates

SAMPLES = Path(__file__).parents[3] / "samples"
VIEW = Box(5.0, 0.0, 170.0, 175.0)
SMALL = Box(5.0, 0.0, 90.0, 75.0)


@cache
def templates() -> dict[str, Template]:
    job = read_job(SAMPLES / "hall_bass_cabinets.toml")
    return {each.codes: each for each in make_templates(make_panel_holes(job))}


def laid_out(template: Template, view: Box, *, turns: bool = False) -> Iterator[tuple[int, Shape]]:
    """Yield the number of its tile and every shape where it lies on the panel, centre at 0, 0."""
    tiling = spread(template, view)
    for number in range(tiling.count):
        row, place = divmod(number, tiling.across)
        is_turned = turns and tiling.is_alternate(number)
        for shape in draw_tile(template, tiling, number, is_turned=is_turned):
            # a turned tile is turned back by hand before it is joined
            upright = turned_back(shape, view) if is_turned else shape
            over = tiling.left + place * (view.width - OVERLAP) - view.left
            down = tiling.top + row * (view.height - OVERLAP) - view.top
            yield number, shifted(upright, over, down)


def turned_back(shape: Shape, view: Box) -> Shape:
    across, down = view.left + view.right, view.top + view.bottom
    if isinstance(shape, Line):
        return Line(
            x1=across - shape.x1, y1=down - shape.y1, x2=across - shape.x2, y2=down - shape.y2,
            kind=shape.kind,
        )  # fmt: skip
    return shape


def shifted(shape: Shape, over: float, down: float) -> Shape:
    if isinstance(shape, Line):
        return Line(
            x1=shape.x1 + over, y1=shape.y1 + down, x2=shape.x2 + over, y2=shape.y2 + down,
            kind=shape.kind,
        )  # fmt: skip
    return shape


def cut_lines(template: Template, view: Box, *, turns: bool = False) -> list[Line]:
    return [
        shape
        for _, shape in laid_out(template, view, turns=turns)
        if isinstance(shape, Line) and shape.kind is LineKind.CUT and not is_arrow(shape)
    ]


def is_arrow(line: Line) -> bool:
    return line.x1 == line.x2 and abs(abs(line.y2 - line.y1) - 5.5) < 0.01


def test_there_is_a_template_for_every_kind_of_hole_also_for_windows() -> None:
    assert list(templates()) == ["H1, H2", "H3", "H4", "H5, H6"]
    handles = templates()["H5, H6"]
    assert handles.window == (mm(170), mm(90))
    assert handles.numbers == "window 170 × 90, flange 200"


@pytest.mark.parametrize("turns", [False, True])
@pytest.mark.parametrize("view", [VIEW, SMALL], ids=["large", "small"])
def test_joined_tiles_show_a_circle_of_the_cut_out(view: Box, *, turns: bool) -> None:
    lines = cut_lines(templates()["H1, H2"], view, turns=turns)
    for line in lines:  # every stretch lies on the circle of 232 mm, and is as long as can be
        for x, y in ((line.x1, line.y1), (line.x2, line.y2)):
            assert hypot(x, y) == pytest.approx(116.0, abs=0.03)
    assert sum(hypot(line.x2 - line.x1, line.y2 - line.y1) for line in lines) >= 232 * pi - 0.2


@pytest.mark.parametrize("turns", [False, True])
@pytest.mark.parametrize("view", [VIEW, SMALL], ids=["large", "small"])
def test_joined_tiles_show_a_window_with_its_four_corners(view: Box, *, turns: bool) -> None:
    lines = cut_lines(templates()["H5, H6"], view, turns=turns)
    ends = {
        (round(x, 6), round(y, 6))
        for line in lines
        for x, y in ((line.x1, line.y1), (line.x2, line.y2))
    }
    assert {(85, 45), (-85, 45), (85, -45), (-85, -45)} <= ends
    assert all(abs(x) == 85 or abs(y) == 45 for x, y in ends)
    assert max(abs(x) for x, _ in ends) == 85
    assert max(abs(y) for _, y in ends) == 45


def test_joining_lines_of_neighbours_lie_on_each_other_also_when_tiles_are_turned() -> None:
    for turns in (False, True):
        joins: dict[tuple[object, ...], set[int]] = {}
        for number, shape in laid_out(templates()["H1, H2"], VIEW, turns=turns):
            if isinstance(shape, Line) and shape.kind is LineKind.SCISSORS:
                xs, ys = (
                    {round(shape.x1, 6), round(shape.x2, 6)},
                    {round(shape.y1, 6), round(shape.y2, 6)},
                )
                key = ("x", *xs) if len(xs) == 1 else ("y", *ys)
                joins.setdefault(key, set()).add(number)
        assert [len(tiles) for tiles in joins.values()] == [4, 4]


def test_every_second_tile_is_turned_as_on_a_chessboard() -> None:
    tiling = Tiling(across=3, down=2, view=VIEW, left=0.0, top=0.0)
    assert [tiling.is_alternate(number) for number in range(6)] == [
        False, True, False,
        True, False, True,
    ]  # fmt: skip


def test_the_arrow_points_up_and_down_where_the_tile_is_turned() -> None:
    template = templates()["H1, H2"]
    tiling = spread(template, VIEW)
    for number in range(tiling.count):
        for is_turned in (False, True):
            shapes = list(draw_tile(template, tiling, number, is_turned=is_turned))
            (head,) = [shape for shape in shapes if isinstance(shape, Solid)]
            tip, *back = [y for _, y in head.points]
            assert all((tip > y) == is_turned for y in back)


def test_the_small_plan_shows_every_tile_and_one_of_them_black() -> None:
    tiling = spread(templates()["H1, H2"], VIEW)
    for number in range(tiling.count):
        shapes = list(draw_map(tiling, number, 0.0, 0.0))
        boxes = [shape for shape in shapes if isinstance(shape, Rectangle)]
        (black,) = [shape for shape in shapes if isinstance(shape, Solid)]
        assert len(boxes) == tiling.count
        assert black.points[0] == (boxes[number].x, boxes[number].y)


def test_a_hole_that_fits_one_tile_is_drawn_in_its_middle() -> None:
    # the flange of the port is 124 mm, and 6 mm are left white on either side
    tiling = spread(templates()["H3"], Box(5.0, 0.0, 142.0, 137.0))
    assert (tiling.count, -tiling.left, -tiling.top) == (1, 137.0 / 2, 137.0 / 2)
    assert spread(templates()["H3"], Box(5.0, 0.0, 140.0, 137.0)).count == 2
