"""What is said of a sheet in words."""

from plans.pages.sheet_facts import say_alike
from tests.plans.pages.plan_samples import two_bass_cabinets

VIEW = two_bass_cabinets()
CODES = tuple(part.code for part in VIEW.parts)


def test_parts_that_look_alike_are_named_once_and_not_the_other_way_round_too() -> None:
    first, second, third = CODES[:3]
    alike = {first: (third, second), second: (first,), third: (first,)}
    assert say_alike(VIEW, alike) == f"Look alike: {first} ≠ {third}, {second}."


def test_a_part_that_looks_like_one_of_another_sheet_is_named_with_it() -> None:
    first, second = CODES[:2]
    alike = {first: (second, "Z1"), second: (first,)}
    assert say_alike(VIEW, alike) == (f"Look alike: {first} ≠ {second}, Z1; {second} ≠ {first}.")


def test_nothing_is_said_where_no_parts_look_alike() -> None:
    assert say_alike(VIEW, {}) == ""
