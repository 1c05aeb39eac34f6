"""Joints that span lots, in words."""

from plans.sections.lots import say_mixed_joints
from tests.nesting.lots.test_mixed_joints import THICK, THIN, from_sheets, one_box


def test_the_joints_of_a_cabinet_and_two_lots_are_one_sentence() -> None:
    made = one_box(THIN, THICK)
    (said,) = say_mixed_joints(made, from_sheets(made, Baffle=1))
    assert said == (
        "Cabinet A, where Baffle and Side; Baffle and Top or bottom meet: the first is from "
        "thick lot (17.8 mm), the other from thin lot (17.5 mm). Set grooves and rebates to each, "
        "or cut both from one lot."
    )


def test_nothing_is_said_of_one_lot() -> None:
    made = one_box(THIN, THICK)
    assert list(say_mixed_joints(made, from_sheets(made))) == []
