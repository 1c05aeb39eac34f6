"""The checker must find what is planted; else it proves nothing about other pages."""

import pytest

from plans.pages.clashes import find_clashes
from plans.pages.shapes import (
    Hatch,
    HatchKind,
    Line,
    LineKind,
    Page,
    Role,
    Shape,
    Solid,
    Text,
    TickBox,
)

KEEP = Text(x=50, y=50, words="380", height=10, role=Role.KEEP, bold=True)


def page(*shapes: Shape) -> Page:
    return Page(width_mm=210, height_mm=297, title="", job_name="", fingerprint="", shapes=shapes)


def test_a_clear_page_has_no_clashes() -> None:
    assert find_clashes(page(KEEP, TickBox(x=20, y=40, size=6.5))) == ()


@pytest.mark.parametrize(
    ("planted", "message"),
    [
        (Text(x=60, y=45, words="318", height=5), "stand on each other"),
        (Text(x=60, y=30, words="318", height=5, is_upright=True, bold=True), None),
        (Text(x=60, y=55, words="318", height=5, is_upright=True), "stand on each other"),
        (Text(x=60, y=80, words="note", height=2.9), "2.90 mm high"),
        (Text(x=60, y=80, words="380", height=4.9, role=Role.KEEP), "4.90 mm high"),
        (Text(x=60, y=80, words="342", height=4.9, role=Role.FIGURE), "4.90 mm high"),
        (Text(x=190, y=80, words="too far right", height=3), "in the margin"),
        (Text(x=60, y=11, words="too high", height=3), "in the margin"),
        (Line(x1=20, y1=45, x2=90, y2=45, kind=LineKind.RULE), "a line runs through '380'"),
        (Line(x1=20, y1=20, x2=90, y2=70, kind=LineKind.LEADER), "a line runs through '380'"),
        (Line(x1=20, y1=50.3, x2=90, y2=50.3, kind=LineKind.HEAVY_RULE), "a line runs through"),
        (Line(x1=20, y1=30, x2=90, y2=30, kind=LineKind.RULE), None),
        (Line(x1=40, y1=70, x2=110, y2=45, kind=LineKind.LEADER), None),
        (Line(x1=20, y1=80, x2=198, y2=80, kind=LineKind.RULE), "a line stands in the margin"),
        (Hatch(x=40, y=30, width=60, height=40, kind=HatchKind.WASTE), "a line runs through"),
        (Solid(points=((55, 45), (58, 45), (56, 48))), "a mark stands on '380'"),
        (TickBox(x=20, y=80, size=5.9), "a tick box is 5.9 mm"),
        (TickBox(x=48, y=44, size=6.5), "a line runs through '380'"),
    ],
)
def test_what_stands_in_the_way_is_found(planted: Shape, message: str | None) -> None:
    clashes = find_clashes(page(KEEP, planted))
    if message is None:
        assert clashes == ()
    else:
        assert message in "\n".join(clashes)
