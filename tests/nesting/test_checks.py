"""The checker is tried on layouts made by hand, and on good ones spoilt in one place."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from nesting.checks import check_layout
from nesting.job import Job
from nesting.layout import Cut, Direction, Layout, Node, PartLeaf, RestLeaf, SheetLayout, Unplaced
from nesting.lengths import mm
from nesting.parts import Grain
from nesting.saw import Saw
from nesting.sheets import Defect, Trim, Use
from tests.nesting.search.jobs import make_job, make_part, make_sheet

KERF = mm(3)


def make_two_part_job(**more: object) -> Job:
    part = make_part("side", 600, 400, 2, grain=Grain.LENGTH, **more)
    sheet = make_sheet(length=1250, width=420, count=1, trim=Trim(bottom=mm(10), left=mm(2)))
    return make_job([part], [sheet], saw=Saw(kerf=KERF))


def make_two_part_layout() -> Layout:
    """Return two sides in a row: trimmed below and left, the rest above and at the right end."""
    side = [
        Cut(
            direction=Direction.RIP,
            at=mm(400),
            removed=KERF,
            first=PartLeaf(part=0, copy=copy),
            second=RestLeaf(),
        )
        for copy in range(2)
    ]
    second = Cut(
        direction=Direction.CROSSCUT, at=mm(600), removed=KERF, first=side[1], second=RestLeaf()
    )
    row = Cut(direction=Direction.CROSSCUT, at=mm(600), removed=KERF, first=side[0], second=second)
    left = Cut(
        direction=Direction.CROSSCUT, at=0, removed=mm(2), first=None, second=row, is_trim=True
    )
    root = Cut(
        direction=Direction.RIP,
        at=mm(7),
        removed=KERF,
        first=RestLeaf(),
        second=left,
        is_trim=True,
    )
    return Layout(sheets=(SheetLayout(sheet=0, root=root),))


def change(node: Node | None, path: tuple[int, ...], edit: Callable[[Any], Node]) -> Node:
    """Return a tree with one node edited."""
    if not path:
        return edit(node)
    assert isinstance(node, Cut)
    if path[0] == 0:
        return replace(node, first=change(node.first, path[1:], edit))
    return replace(node, second=change(node.second, path[1:], edit))


def spoil(path: tuple[int, ...], **values: object) -> Layout:
    """Return the two-part layout with some values of one node changed."""
    layout = make_two_part_layout()
    root = change(layout.sheets[0].root, path, lambda node: replace(node, **values))
    return Layout(sheets=(SheetLayout(sheet=0, root=root),))


ROW = (1, 1)
FIRST_SIDE = (1, 1, 0)
LAST = (1, 1, 1)


def test_a_good_layout_passes() -> None:
    assert check_layout(make_two_part_job(), make_two_part_layout()) == ()


@pytest.mark.parametrize(
    ("layout", "word"),
    [
        (spoil(ROW, at=mm(601)), "comes out as"),
        (spoil(ROW, removed=mm("2.9")), "kerf"),
        (spoil(ROW, at=mm(1300)), "leaves its piece"),
        (spoil(LAST, second=None), "beyond"),
        (spoil((1,), first=RestLeaf()), "before it"),
        (spoil((1,), removed=0), "removes nothing"),
        (spoil((*FIRST_SIDE, 0), turned=True), "comes out as"),
        (spoil((*FIRST_SIDE, 0), copy=1), "placed 2 times"),
        (spoil((*FIRST_SIDE, 0), copy=7), "no copy 7"),
        (spoil((*FIRST_SIDE, 0), part=3), "no part 3"),
        (spoil((*FIRST_SIDE, 1), is_offcut=True), "kept"),
        (spoil((), first=PartLeaf(part=0, copy=0)), "trim"),
        (spoil(FIRST_SIDE, first=RestLeaf(is_offcut=True)), "wanted 2 times, placed 1"),
    ],
)
def test_a_spoilt_layout_is_refused(layout: Layout, word: str) -> None:
    faults = check_layout(make_two_part_job(), layout)
    assert any(word in fault for fault in faults), faults


def test_a_part_in_the_trim_is_refused() -> None:
    wider = make_two_part_job()
    sheet = replace(wider.sheets[0], trim=Trim(bottom=mm(10), left=mm(2), right=mm(50)))
    faults = check_layout(replace(wider, sheets=(sheet,)), make_two_part_layout())
    assert any("lies in the trim" in fault for fault in faults)


def test_a_part_against_the_grain_is_refused() -> None:
    job = make_two_part_job()
    across = replace(job.parts[0], grain=Grain.WIDTH)
    faults = check_layout(replace(job, parts=(across,)), make_two_part_layout())
    assert any("against the grain" in fault for fault in faults)


def test_a_part_on_the_wrong_thickness_is_refused() -> None:
    job = make_two_part_job(thickness=mm(12))
    faults = check_layout(job, make_two_part_layout())
    assert any("not its material and thickness" in fault for fault in faults)


def test_more_sheets_than_there_are_are_refused() -> None:
    layout = make_two_part_layout()
    twice = Layout(sheets=(*layout.sheets, *layout.sheets))
    faults = check_layout(make_two_part_job(), twice)
    assert any("2 of 'birch 18' are used, and there are 1" in fault for fault in faults)


def test_a_copy_reported_and_placed_is_refused() -> None:
    layout = replace(
        make_two_part_layout(), unplaced=(Unplaced(part=0, count=1, reason="no room"),)
    )
    faults = check_layout(make_two_part_job(), layout)
    assert any("reported 1 times" in fault for fault in faults)


ON_FIRST_SIDE = Defect(what="knot hole", x=mm(100), y=mm(100), length=mm(20), width=mm(20))
"""On the first of the two sides, which begins at 2 x 10 and is 600 x 400."""


def check_with(defect: Defect, *, is_hidden: bool = False) -> tuple[str, ...]:
    job = make_two_part_job(is_hidden=is_hidden)
    return check_layout(
        replace(job, sheets=(replace(job.sheets[0], defects=(defect,)),)), make_two_part_layout()
    )


def test_a_part_on_a_defect_is_found_hidden_or_not() -> None:
    for is_hidden in (False, True):
        (fault,) = check_with(ON_FIRST_SIDE, is_hidden=is_hidden)
        assert "copy 0 of 'side' lies on a knot hole" in fault


def test_only_a_hidden_part_may_lie_on_what_is_for_hidden_parts() -> None:
    stain = replace(ON_FIRST_SIDE, what="stain", use=Use.HIDDEN_PARTS)
    (fault,) = check_with(stain)
    assert "copy 0 of 'side' shows and lies on a stain" in fault
    assert check_with(stain, is_hidden=True) == ()


@pytest.mark.parametrize(
    ("x", "length", "is_right"),
    [(mm(602), KERF, True), (mm(602), KERF + 1, False), (mm(602) - 1, KERF, False)],
)
def test_a_defect_may_lie_in_the_kerf_to_the_last_nanometre(
    x: int, length: int, *, is_right: bool
) -> None:
    defect = replace(ON_FIRST_SIDE, x=x, length=length)
    assert (check_with(defect) == ()) is is_right
