"""Sheets that nobody has measured yet: what a plan may count on."""

from pathlib import Path

import pytest

from nesting.cut_sequence import order_cuts
from nesting.layout import Direction, PartLeaf, Rect, walk
from nesting.lengths import mm
from nesting.reading.job_toml import read_job_text
from nesting.solve import solve

SHEET = """
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = 2440
width = 1220
"""

# A maker of birch plywood allows 4 mm on the length of 2440, 3 mm on the width of 1220, and 2 mm a
# metre out of square, which is 5 mm over the length; a raw edge is lost at either end.
MOST_LENGTH = mm(2440 - 4 - 2 * 5)
MOST_WIDTH = mm(1220 - 3 - 2 * 5)


def part(length: int, width: int, count: int = 1) -> str:
    return (
        f'[[part]]\nname = "Part {length} {width}"\nlength = {length}\nwidth = {width}\n'
        f"count = {count}\n"
    )


@pytest.mark.parametrize(
    ("length", "width", "fits"),
    [(2420, 1200, True), (2427, 300, False), (300, 1208, False)],
)
def test_no_part_counts_on_wood_that_may_not_be_there(
    length: int, width: int, *, fits: bool
) -> None:
    job = read_job_text(
        SHEET + part(length, width).replace("count", 'grain = "length"\ncount'), Path("job.toml")
    )
    assert (not solve(job, effort=0).layout.unplaced) == fits


def test_parts_stay_within_the_worst_sheet_and_two_cuts_make_its_corner() -> None:
    job = read_job_text(SHEET + part(562, 300, 11) + part(400, 333, 7), Path("job.toml"))
    for sheet_layout in solve(job, effort=1).layout.sheets:
        sheet = job.sheets[sheet_layout.sheet]
        rects = [
            place.rect
            for place in walk(
                sheet_layout.root, Rect(x=0, y=0, length=sheet.length, width=sheet.width)
            )
            if isinstance(place.node, PartLeaf)
        ]
        left, low = min(rect.x for rect in rects), min(rect.y for rect in rects)
        assert max(rect.x + rect.length for rect in rects) - left <= MOST_LENGTH
        assert max(rect.y + rect.width for rect in rects) - low <= MOST_WIDTH
        first, second = order_cuts(job, sheet_layout).steps[:2]
        assert first.is_trim
        assert second.is_trim
        assert {first.direction, second.direction} == {Direction.RIP, Direction.CROSSCUT}
