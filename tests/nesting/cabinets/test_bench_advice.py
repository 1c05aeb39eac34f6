"""Advice for the bench: joints before the rip, grain that runs on, parts easily forgotten."""

from nesting.cabinets.design import Closing, Fit
from nesting.cabinets.expand import expand
from nesting.cabinets.fittings import Fittings, Hardware
from nesting.cabinets.hidden_parts import HiddenPart
from nesting.cabinets.joints import Joint, JointKind
from nesting.cabinets.shelving import Grille, Shelves
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
            "The joints line up even if they are misplaced."
        ),
    )


def test_a_stopped_groove_cannot_be_cut_across_two() -> None:
    stopped = design(baffle=OPEN, shelves=Shelves(groove=mm(6), set_back=mm(10)))
    assert build(stopped).advice == ()


def test_grain_round_the_carcass_names_the_order_of_the_strip() -> None:
    (advice,) = build(design(joint=Joint(kind=JointKind.MITRE), grain_round=True)).advice
    assert advice.startswith(
        "Grain round the carcass: cut bottom, left side, top, right side one after the other from "
        "one strip 350 wide, in this order (500 + 600 + 500 + 600)"
    )
    matches = {
        part.match
        for part in build(design(grain_round=True)).parts
        if part.name not in ("Baffle", "Back")
    }
    assert matches == {"Stage box: depth, one strip"}


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
