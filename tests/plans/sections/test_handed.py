"""Which hand holds the saw: it swaps the guide columns and the stand mark, and nothing else."""

from dataclasses import replace

from nesting.saw import Hand
from plans.plan import Figures, make_plan
from plans.sections.handed import make_handed
from tests.nesting.hand_made import SAW, two_cabinets


def test_the_other_hand_swaps_columns_and_stand_mark() -> None:
    right, left = make_handed(Hand.RIGHT), make_handed(Hand.LEFT)
    assert left.columns == right.columns[::-1] == ("right", "left")
    assert left.stand == right.stand.replace("left", "right") != right.stand
    assert replace(left, columns=right.columns, stand=right.stand) == right


def test_the_note_says_who_decides_and_promises_nothing() -> None:
    for hand in Hand:
        note = make_handed(hand).note
        assert "your saw's manual" in note
        assert "safe" not in note


def test_no_number_of_a_plan_depends_on_the_hand() -> None:
    job, layout = two_cabinets()
    other = replace(job, saw=replace(SAW, hand=Hand.LEFT))
    plans = [make_plan(one, Figures(layout=layout)) for one in (job, other)]
    assert plans[0].sheets == plans[1].sheets
    assert plans[0].parts == plans[1].parts
    assert plans[0].offcuts == plans[1].offcuts
    assert plans[0].fingerprint != plans[1].fingerprint
    assert plans[1].handed == make_handed(Hand.LEFT)
