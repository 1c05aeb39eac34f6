"""Handed parts: pairs that may take each other's place, and pairs that may not."""

from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import GrainRound
from nesting.cabinets.joints import Joint, JointKind
from nesting.cabinets.shelving import Shelves
from nesting.lengths import mm
from tests.nesting.cabinets.designs import build, design

OPEN = Closing(fit=Fit.NONE)


def notes(**changes: object) -> dict[str, str]:
    built = build(design(baffle=OPEN, **changes))
    return {part.name: part.note for part in built.parts if part.name != "Back"}


def test_a_symmetric_pair_is_interchangeable() -> None:
    """Acceptance: a symmetric pair says "interchangeable". Rebates at both ends are symmetric."""
    for joint in (Joint(), Joint(kind=JointKind.REBATE), Joint(kind=JointKind.MITRE)):
        assert notes(joint=joint) == {
            "Side": "interchangeable",
            "Top or bottom": "interchangeable",
        }


def test_a_groove_off_the_middle_over_the_whole_depth_still_turns_over() -> None:
    """A left side with a through groove is a right side when it is turned front to rear."""
    planted = Closing(fit=Fit.PLANTED)
    found = notes(shelves=Shelves(clear=(mm(100),), groove=mm(6)), back=planted)
    assert found["Side"] == "interchangeable"


def test_a_stopped_groove_off_the_middle_makes_a_left_and_a_right_side() -> None:
    """Acceptance: a pair with any asymmetric feature gets two different identities."""
    found = notes(shelves=Shelves(clear=(mm(100),), groove=mm(6), set_back=mm(15)))
    assert found == {
        "Side, left": "handed: mirror image of Side, right",
        "Side, right": "handed: mirror image of Side, left",
        "Top or bottom": "interchangeable",
        "Shelf": "",
    }


def test_a_stopped_groove_in_the_middle_turns_over_end_for_end() -> None:
    found = notes(shelves=Shelves(count=1, groove=mm(6), set_back=mm(15)))
    assert found["Side"] == "interchangeable"


def test_grain_that_runs_round_gives_every_panel_its_place_in_the_strip() -> None:
    found = notes(grain_round=GrainRound.ALL)
    assert found == {
        "Side, left": (
            "grain runs round: 2 of 4 in the strip; joint a to bottom; joint b to top; "
            "handed: mirror image of Side, right"
        ),
        "Side, right": (
            "grain runs round: 4 of 4 in the strip; joint c to top; "
            "handed: mirror image of Side, left"
        ),
        "Top": (
            "grain runs round: 3 of 4 in the strip; joint b to left side; "
            "joint c to right side; handed: mirror image of Bottom"
        ),
        "Bottom": (
            "grain runs round: 1 of 4 in the strip; joint a to left side; "
            "handed: mirror image of Top"
        ),
    }
