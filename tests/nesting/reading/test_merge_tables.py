"""Merges: a part takes the size of one that it looks like, where that size is free."""

from pathlib import Path

import pytest

from nesting.errors import InputError
from nesting.job import Job
from nesting.lengths import mm
from nesting.reading.job_toml import read_job_text

SHEET = """[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
measured = [18]
length = 2440
width = 1220
[[sheet]]
name = "birch 12"
material = "birch plywood"
thickness = 12
length = 2440
width = 1220
"""
SHELF = '[[part]]\nname = "Shelf"\nlength = 562\nwidth = 300\nthickness = 18\n'
RAIL = '[[part]]\nname = "Rail"\nlength = 562\nwidth = 292\nthickness = 18\nfree = ["width"]\n'
CUPBOARD = """[[cabinet]]
name = "Cupboard"
family = "case"
height = 800
width = 590
depth = 300
thickness = 18
back = "none"
shelves = 1
free = ["width"]
"""


def merge(part: str, like: str) -> str:
    return f'[[merge]]\npart = "{part}"\nlike = "{like}"\n'


def read(text: str) -> Job:
    return read_job_text(SHEET + text, Path("job.toml"))


def message(text: str) -> str:
    with pytest.raises(InputError) as caught:
        read(text)
    return str(caught.value)


def test_a_free_part_takes_the_size_of_the_other() -> None:
    """Acceptance: accepted merge updates the design, and the change is shown."""
    job = read(SHELF + RAIL + merge("Rail", "Shelf"))
    assert [(part.name, part.length, part.width) for part in job.parts] == [
        ("Shelf", mm(562), mm(300)),
        ("Rail", mm(562), mm(300)),
    ]
    (said,) = [each for each in job.assumptions if "made like" in each.name]
    assert (said.name, said.value) == ("Rail is made like Shelf", "width 292 → 300 mm")


def test_the_outside_of_a_cabinet_moves_so_that_its_part_comes_out_right() -> None:
    """Shelves stand between two sides of 18: 562 inside needs 598 outside, not 590."""
    job = read(SHELF + CUPBOARD + merge("Cupboard: Shelf", "Shelf"))
    assert job.cabinets[0].outside == (mm(800), mm(598), mm(300))
    shelves = [part for part in job.parts if part.name == "Shelf"]
    assert {(part.length, part.width) for part in shelves} == {(mm(562), mm(300))}
    (said,) = [each for each in job.assumptions if "made like" in each.name]
    assert said.value == "length 554 → 562 mm"


def test_nothing_is_changed_without_a_merge() -> None:
    assert not any("made like" in each.name for each in read(SHELF + RAIL).assumptions)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (
            SHELF + RAIL.replace('free = ["width"]\n', "") + merge("Rail", "Shelf"),
            (
                "the width of 'Rail' would change by 8 mm, and it is not free to do so.\n"
                'Write free = ["width"] in its [[part]], with a free_limit of at least that'
            ),
        ),
        (
            SHELF + RAIL + "free_limit = 5\n" + merge("Rail", "Shelf"),
            "the width of 'Rail' would change by 8 mm, and it is not free to do so",
        ),
        (
            SHELF + CUPBOARD.replace('["width"]', '["depth"]') + merge("Cupboard: Shelf", "Shelf"),
            "the length of 'Cupboard: Shelf' would change by 8 mm, and it is not free to do so",
        ),
        (
            SHELF + RAIL + merge("Rail", "Shelves"),
            "there is no part 'Shelves'",
        ),
        (
            SHELF + RAIL.replace("thickness = 18", "thickness = 12") + merge("Rail", "Shelf"),
            "'Rail' and 'Shelf' are not of the same board",
        ),
    ],
)
def test_what_cannot_be_merged_is_refused_with_a_remedy(text: str, expected: str) -> None:
    assert expected in message(text)


def test_a_faulty_cabinet_is_told_and_its_merge_is_left_alone() -> None:
    text = message(SHELF + CUPBOARD.replace("590", "20") + merge("Cupboard: Shelf", "Shelf"))
    assert "'Cupboard'" in text
    assert "merge" not in text
