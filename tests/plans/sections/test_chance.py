"""How much a plan forgives, in words."""

from dataclasses import replace

from nesting.lengths import Unit
from nesting.tolerance import StripChance, Tolerance
from plans.sections.chance import USUAL, say_chance

STRIPS = (
    StripChance(sheet=1, piece="P2", parts=("A1", "A2"), chance=998),
    StripChance(sheet=2, piece="P9", parts=("B1", "B2", "B3", "B4", "B5"), chance=941),
)
FOUND = Tolerance(chance=933, strips=STRIPS, with_slack=())
CLOSER = Tolerance(chance=999, strips=(), with_slack=())


def test_the_chance_of_all_parts_and_the_worst_row_are_named() -> None:
    assert say_chance(FOUND, CLOSER, USUAL[Unit.MM], Unit.MM) == (
        "Tried with settings a little off, two in three by less than 0.5 mm: every part "
        "reaches its size, to 1 mm, in 93.3 % of the trials; set twice as closely, in "
        "99.9 %. Most at risk is P9 of sheet 2 (B1, B2, B3, B4 and 1 more), 94.1 %."
    )


def test_a_plan_that_always_comes_out_names_no_row() -> None:
    sure = replace(FOUND, chance=1000, strips=(replace(STRIPS[0], chance=1000),))
    said = say_chance(sure, sure, USUAL[Unit.INCH], Unit.INCH)
    assert said.startswith("Tried with settings a little off, two in three by less than 1/64 in:")
    assert said.endswith("set twice as closely, in 100.0 %.")
