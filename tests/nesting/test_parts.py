from dataclasses import FrozenInstanceError, replace

import pytest

from nesting.errors import InputError
from nesting.lengths import mm
from nesting.parts import Grain, Part, Status

SHELF = Part(
    name="Shelf", length=mm(562), width=mm(300), material="birch plywood", thickness=mm(18)
)


def test_a_part_is_one_final_piece_of_any_grain_where_nothing_is_said() -> None:
    assert (SHELF.count, SHELF.grain, SHELF.status) == (1, Grain.ANY, Status.FINAL)


def test_the_blank_is_larger_by_the_oversize_in_both_directions() -> None:
    blank = replace(SHELF, oversize=mm("2.5"))
    assert (blank.blank_length, blank.blank_width) == (mm("564.5"), mm("302.5"))


def test_the_blank_of_a_part_without_oversize_is_the_part() -> None:
    assert (SHELF.blank_length, SHELF.blank_width) == (SHELF.length, SHELF.width)


def test_a_part_cannot_be_changed() -> None:
    with pytest.raises(FrozenInstanceError):
        SHELF.count = 2  # type: ignore[misc]


@pytest.mark.parametrize(
    ("change", "what", "remedy"),
    [
        (
            {"length": 0},
            "its length and width must be more than 0",
            "Give the finished size of the part.",
        ),
        (
            {"width": -1},
            "its length and width must be more than 0",
            "Give the finished size of the part.",
        ),
        (
            {"oversize": -1},
            "its oversize is negative",
            "Give how much larger the blank is, 0 for none.",
        ),
        (
            {"count": 0},
            "its count is 0",
            "Give a whole number of 1 or more, or take the part out.",
        ),
    ],
)
def test_what_no_part_can_be_is_refused(change: dict[str, int], what: str, remedy: str) -> None:
    with pytest.raises(InputError) as refused:
        replace(SHELF, **change)  # type: ignore[arg-type]
    assert str(refused.value) == f"part 'Shelf': {what}.\n{remedy}"


def test_all_faults_of_a_part_are_told_together() -> None:
    with pytest.raises(InputError) as refused:
        replace(SHELF, length=0, oversize=-1, count=0)
    assert len(refused.value.faults) == 3


def test_a_blank_is_larger_where_edges_are_worked_on_later() -> None:
    part = replace(SHELF, oversize=mm(3), extra_length=mm(2), extra_width=0)
    assert part.blank_length - part.length == mm(5)
    assert part.blank_width - part.width == mm(3)
