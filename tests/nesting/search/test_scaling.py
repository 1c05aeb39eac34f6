"""The layout depends on the proportions of a job, not on the unit that it is written in."""

from dataclasses import replace

import pytest

from nesting.job import Job
from nesting.layout import Layout, PartLeaf, Rect, walk
from nesting.lengths import Length, Unit, inch, mm
from nesting.parts import Part
from nesting.saw import Keep, Saw
from nesting.sheets import Sheet, Trim
from nesting.solve import solve_cheapest
from tests.nesting.search.jobs import make_job, make_part, make_random_job, make_sheet

Places = list[tuple[int, int, int, bool, Length, Length, Length, Length]]


def list_places(job: Job, layout: Layout) -> Places:
    """Return every part on every sheet: sheet, part, copy, how it lies, and its rectangle."""
    places = []
    for number, sheet in enumerate(layout.sheets):
        kind = job.sheets[sheet.sheet]
        whole = Rect(x=0, y=0, length=kind.length, width=kind.width)
        for place in walk(sheet.root, whole):
            node, rect = place.node, place.rect
            if isinstance(node, PartLeaf):
                sides = (rect.x, rect.y, rect.length, rect.width)
                places.append((number, node.part, node.copy, node.turned, *sides))
    return places


def double_sheet(sheet: Sheet) -> Sheet:
    trim = sheet.trim
    doubled = Trim(
        left=2 * trim.left, right=2 * trim.right, top=2 * trim.top, bottom=2 * trim.bottom
    )
    return replace(sheet, length=2 * sheet.length, width=2 * sheet.width, trim=doubled)


def double_part(part: Part) -> Part:
    return replace(part, length=2 * part.length, width=2 * part.width, oversize=2 * part.oversize)


def double(job: Job) -> Job:
    """Return a job with every length on the sheets twice as long."""
    return replace(
        job,
        saw=replace(job.saw, kerf=2 * job.saw.kerf, guide_length=2 * job.saw.guide_length),
        keep=Keep(length=2 * job.keep.length, width=2 * job.keep.width),
        sheets=tuple(double_sheet(sheet) for sheet in job.sheets),
        parts=tuple(double_part(part) for part in job.parts),
    )


@pytest.mark.slow
def test_all_lengths_doubled_double_the_layout() -> None:
    for number in range(25):
        job = make_random_job(number)
        places = list_places(job, solve_cheapest(job, effort=1).layout)
        twice = double(job)
        doubled = list_places(twice, solve_cheapest(twice, effort=1).layout)
        assert doubled == [
            (sheet, part, copy, turned, 2 * x, 2 * y, 2 * length, 2 * width)
            for sheet, part, copy, turned, x, y, length, width in places
        ]


def test_the_same_job_in_inches_and_in_millimetres_gets_the_same_layout() -> None:
    sizes = [("23 1/2", "11 3/8", 4), ("16 7/16", "9 1/4", 5), ("30", "14 5/32", 3)]
    in_mm = {"23 1/2": "596.9", "11 3/8": "288.925", "16 7/16": "417.5125"} | {
        "9 1/4": "234.95",
        "30": "762",
        "14 5/32": "359.56875",
    }  # by 25.4 mm an inch exactly (international yard and pound agreement, 1959)
    inches, metric = (
        make_job(
            [
                replace(make_part(length, 1, 1, count), length=read(length), width=read(width))
                for length, width, count in sizes
            ],
            [make_sheet()],
            unit=unit,
            saw=Saw(kerf=kerf),
        )
        for unit, read, kerf in (
            (Unit.INCH, inch, inch("1/8")),
            (Unit.MM, lambda text: read_fine_mm(in_mm[text]), read_fine_mm("3.175")),
        )
    )
    assert solve_cheapest(inches, effort=1).layout == solve_cheapest(metric, effort=1).layout


def read_fine_mm(text: str) -> Length:
    """Return millimetres of any number of decimals; a tape has three at most."""
    whole, _, decimals = text.partition(".")
    return mm(whole) + int((decimals + "000000")[:6])
