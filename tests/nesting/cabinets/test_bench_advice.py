"""Advice for the bench: joints before the rip, grain that runs on, parts easily forgotten."""

import pytest

from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import Along, GrainRound, Grains
from nesting.cabinets.expand import expand
from nesting.cabinets.fittings import Fittings, Hardware
from nesting.cabinets.hidden_parts import HiddenPart
from nesting.cabinets.joints import Joint, JointKind
from nesting.cabinets.shelving import Grille, Shelves
from nesting.errors import InputError
from nesting.lengths import Unit, mm
from tests.nesting.cabinets.designs import BIRCH, build, design

OPEN = Closing(fit=Fit.NONE)


def test_a_mirrored_pair_with_a_common_groove_is_offered_one_wide_blank() -> None:
    """Acceptance: offers a blank = 2w + kerf."""
    built = expand(
        design(joint=Joint(kind=JointKind.REBATE)),
        letters=("A",),
        measured={BIRCH: mm("17.7")},
        step=mm("0.5"),
        unit=Unit.MM,
        kerf=mm("2.4"),
    )
    assert built.advice == (
        (
            "Joint first, rip after: cut one blank 600 long and 2 × 350 + 2.4 = 702.4 wide for "
            "left side and right side, make grooves and rebates across it, then rip it in two. "
            "The joints line up even if they are misplaced. With joint_first = true the plan "
            "cuts them so."
        ),
    )


def test_a_stopped_groove_cannot_be_cut_across_two() -> None:
    stopped = design(baffle=OPEN, shelves=Shelves(groove=mm(6), set_back=mm(10)))
    assert build(stopped).advice == ()


def test_grain_round_the_carcass_names_the_order_of_the_strip() -> None:
    (advice,) = build(design(joint=Joint(kind=JointKind.MITRE), grain_round=GrainRound.ALL)).advice
    assert advice.startswith(
        "Grain round the carcass: cut bottom, left side, top, right side one after the other from "
        "one strip 350 wide, in this order (500 + 600 + 500 + 600)"
    )
    assert "either end has to spare" in advice
    plain = build(design(grain_round=GrainRound.ALL))
    strips = {part.name: part.strip.place for part in plain.parts if part.strip is not None}
    assert strips == {"Bottom": 1, "Side, left": 2, "Top": 3, "Side, right": 4}
    assert "to spare" not in plain.advice[0]


def test_grain_may_run_over_the_top_alone() -> None:
    built = build(design(grain_round=GrainRound.OVER_TOP))
    strips = {part.name: part.strip.place for part in built.parts if part.strip is not None}
    assert strips == {"Side, left": 1, "Top": 2, "Side, right": 3}
    top = next(part for part in built.parts if part.name == "Top")
    assert top.note.startswith(
        "grain runs round: 2 of 3 in the strip; joint a to left side; joint b to right side"
    )


def test_grain_that_runs_from_front_to_rear_cannot_run_round() -> None:
    with pytest.raises(InputError, match="is to run from front to rear"):
        design(grain_round=GrainRound.ALL, grains=Grains(sides=Along.DEPTH))


def test_a_pair_with_a_joint_across_it_is_bound_side_by_side_where_that_is_asked() -> None:
    built = build(design(joint=Joint(kind=JointKind.REBATE), joint_first=True))
    (strip,) = {part.strip for part in built.parts if part.strip is not None}
    assert strip is not None
    assert (strip.name, strip.is_across) == ("joint first, left side and right side", True)
    assert "With joint_first" not in built.advice[0]
    (warning,) = build(design(joint_first=True)).warnings
    assert "joint_first has no effect" in warning


def test_each_part_that_is_easily_forgotten_is_asked_for_until_it_is_answered() -> None:
    """Common practice, no source."""
    asked = build(design(answers=())).questions
    assert len(asked) == len(HiddenPart)
    for part in HiddenPart:
        answered = build(design(answers=((part.value, "none"),))).questions
        (gone,) = set(asked) - set(answered)
        assert f"{part.value} = " in gone


def test_a_grille_in_the_design_is_not_asked_for() -> None:
    with_grille = design(
        answers=(),
        baffle=Closing(fit=Fit.INSET, set_back=mm(15), held_by="glue"),
        grille=Grille(section=(mm(12), mm(20)), cloth=mm(1)),
    )
    assert not any("grille" in question for question in build(with_grille).questions)


def test_what_the_fittings_hold_is_not_asked_for() -> None:
    fitted = design(answers=(), fittings=Fittings(hardware=Hardware(feet=4, handles=2)))
    asked = " ".join(build(fitted).questions)
    assert "feet" not in asked
    assert "handles" not in asked
    assert "spare" in asked


def test_a_case_that_is_open_in_front_is_not_asked_for_ports_or_handles() -> None:
    asked = " ".join(build(design(answers=(), baffle=OPEN)).questions)
    assert "feet" in asked
    assert "port" not in asked
    assert "Handles" not in asked
