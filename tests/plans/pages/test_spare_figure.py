"""The figure of a part's allowances: a black strip at each edge that has wood to spare."""

from collections.abc import Sequence

import pytest

from plans.pages.shapes import Line, Solid, Text
from plans.pages.spare_figure import HEIGHT, WIDTH, spare_figure


def strips(edges: Sequence[str]) -> set[str]:
    """Return where black strips stand outside the outline, and which edges are named there."""
    shapes = spare_figure(edges, 0.0, 0.0)
    lines = [shape for shape in shapes if isinstance(shape, Line)]
    left, right = (f(line.x1 for line in lines) for f in (min, max))
    upper, lower = (f(line.y1 for line in lines) for f in (min, max))
    found = set()
    for solid in (shape for shape in shapes if isinstance(shape, Solid)):
        xs, ys = [x for x, _ in solid.points], [y for _, y in solid.points]
        found |= {"at the left"} if max(xs) <= left else set()
        found |= {"at the right"} if min(xs) >= right else set()
        found |= {"above"} if max(ys) <= upper else set()
        found |= {"below"} if min(ys) >= lower else set()
    return found | {shape.words for shape in shapes if isinstance(shape, Text)}


@pytest.mark.parametrize(
    ("edges", "expected"),
    [
        (("left", "right"), {"at the left", "at the right", "left", "right"}),
        (("top", "bottom"), {"above", "below"}),
        (("top",), {"above"}),
        # A side: its ends are up and down, its edges at the front and the rear.
        (("bottom", "front"), {"below", "at the left", "front"}),
        # A level panel, from above: its front is below.
        (("left", "front"), {"at the left", "left", "below"}),
        (("rear",), {"at the right", "rear"}),
        (
            ("left", "right", "top", "bottom"),
            {"above", "below", "at the left", "at the right", "left", "right"},
        ),
    ],
)
def test_a_strip_stands_at_every_edge_that_has_wood_to_spare(
    edges: tuple[str, ...], expected: set[str]
) -> None:
    """Acceptance: allowance side drawn."""
    assert strips(edges) == expected


def test_nothing_stands_outside_the_figure() -> None:
    for shape in spare_figure(("left", "right", "top", "bottom"), 0.0, 0.0):
        if isinstance(shape, Solid):
            assert all(0 <= x <= WIDTH and 0 <= y <= HEIGHT for x, y in shape.points)
