"""Corner joints: sizes, the wood that is taken out, and what the blank has."""

from math import tan

import pytest

from nesting.cabinets.clashes import find_clashes
from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import Through
from nesting.cabinets.joints import Joint, JointKind
from nesting.errors import InputError
from nesting.lengths import Length, mm
from nesting.parts import Status
from tests.nesting.cabinets.designs import build, design, lay_out, part


def lengths(joint: Joint, through: Through = Through.SIDES) -> dict[str, Length]:
    built = build(design(joint=joint, through=through), thickness=mm(18), step=mm("0.1"))
    return {name: part(built, name).length for name in ("Side", "Top or bottom")}


@pytest.mark.parametrize(
    ("joint", "top"),
    [
        (Joint(), 464),
        (Joint(kind=JointKind.REBATE), 464 + 18),
        (Joint(kind=JointKind.REBATE, depth=mm(12)), 464 + 24),
        (Joint(kind=JointKind.GROOVE, depth=mm(6), tongue=mm(8)), 464 + 12),
        (Joint(kind=JointKind.MITRE), 500),
        (Joint(kind=JointKind.FINGER), 500),
    ],
)
def test_what_is_let_in_lengthens_the_panel_between_by_twice_its_depth(
    joint: Joint, top: int
) -> None:
    """A 500 mm wide box of 18 mm: butt 464; half lap of 9 each end 482; mitre and fingers 500."""
    assert lengths(joint) == {"Side": mm(600), "Top or bottom": mm(top)}


def test_swapping_the_owner_of_a_rebate_changes_exactly_two_sizes() -> None:
    joint = Joint(kind=JointKind.REBATE, depth=mm(9))
    assert lengths(joint, Through.TOP_AND_BOTTOM) == {
        "Side": mm(564 + 18),
        "Top or bottom": mm(500),
    }


def test_a_rebate_is_shown_in_the_sum_and_on_the_panel_that_has_it() -> None:
    built = build(design(joint=Joint(kind=JointKind.REBATE, depth=mm(9))))
    assert part(built, "Top or bottom").sums[0] == (
        "482.5 = 500 - 17.7 - 17.7 + 9 + 9 (482.6, to the nearest 0.5)"
    )
    assert part(built, "Side").to_do == (
        "rebate the inside face at both ends, 17.7 wide and 9 deep",
    )
    assert part(built, "Top or bottom").to_do == ()


def test_a_tongue_and_its_groove_take_the_same_wood() -> None:
    laid = lay_out(design(joint=Joint(kind=JointKind.GROOVE, depth=mm(6), tongue=mm(8))))
    side, top = (
        next(panel for panel in laid.shell if panel.name == name) for name in ("left side", "top")
    )
    grooves = [cut.box for cut in side.cuts if cut.what == "groove"]
    assert [(box.high[0] - box.low[0], box.high[2] - box.low[2]) for box in grooves] == (
        [(mm(6), mm(8))] * 2
    )
    rebates = [cut.box for cut in top.cuts]
    assert {box.high[2] - box.low[2] for box in rebates} == {mm("17.7") - mm(8)}
    assert all(box.high[2] == top.box.high[2] for box in rebates)  # on the outside face
    assert not list(find_clashes(laid))


def test_fingers_share_the_corner_between_both_panels() -> None:
    laid = lay_out(design(joint=Joint(kind=JointKind.FINGER, fingers=7)))
    side, top = (
        next(panel for panel in laid.shell if panel.name == name) for name in ("left side", "top")
    )
    at_top = [cut.box for cut in side.cuts if cut.box.low[2] > mm(300)]
    at_left = [cut.box for cut in top.cuts if cut.box.low[0] < mm(250)]
    assert (len(at_top), len(at_left)) == (3, 4)
    covered = sorted((box.low[1], box.high[1]) for box in at_top + at_left)
    assert covered == [(mm(at), mm(at + 50)) for at in range(0, 350, 50)]
    assert not list(find_clashes(laid))


def test_finger_lines_are_all_measured_from_one_edge() -> None:
    """No error adds up: each line is rounded from the front edge by itself."""
    text = part(build(design(joint=Joint(kind=JointKind.FINGER, fingers=9))), "Side").to_do[0]
    listed = text.split("lines at ")[1].split(" from")[0].split(", ")
    assert listed == ["0", "39", "78", "116.5", "155.5", "194.5", "233.5", "272", "311"]
    exact = [350 * number / 9 for number in range(9)]
    assert all(abs(float(line) - at) <= 0.25 for line, at in zip(listed, exact, strict=True))
    assert "Slots are 0.1 wider" in text


def test_a_mitre_gives_outside_and_inside_size_and_asks_for_the_guide_again() -> None:
    """Bevel overhang t x tan(a), arithmetic: 18 mm at 45 degrees is 18.000 mm."""
    built = build(design(joint=Joint(kind=JointKind.MITRE)), thickness=mm(18))
    text = part(built, "Side").to_do[0]
    assert text.startswith(
        "bevel both ends 45°: 600 on the outside face, 564 on the inside face, "
        "18 × tan 45° = 18 shorter at each end."
    )
    assert "guide offset changes with the tilt" in text
    side = built.panels[0]
    assert all(abs(bevel.shorter - mm(18) * tan(0.7853981633974483)) < 10 for bevel in side.bevels)


def test_the_blank_of_a_mitred_panel_is_longer_at_both_ends_and_nowhere_else() -> None:
    """Acceptance: blank = finished + allowances, and the edges are named."""
    side = part(build(design(joint=Joint(kind=JointKind.MITRE), bevel_allowance=mm(4))), "Side")
    assert (side.blank_length - side.length, side.blank_width - side.width) == (mm(8), 0)
    assert side.allowances == (
        "bottom end + 4, taken off by the bevel",
        "top end + 4, taken off by the bevel",
    )
    assert side.status is Status.OVERSIZE


def test_panels_that_run_through_and_planted_ones_can_be_left_long_for_flush_trimming() -> None:
    built = build(design(flush=mm(1), back=Closing(fit=Fit.PLANTED)))
    extra = {
        each.name: (each.blank_length - each.length, each.blank_width - each.width)
        for each in built.parts
        if each.name != "Baffle"
    }
    assert extra == {
        "Side": (mm(2), 0),
        "Top or bottom": (0, 0),
        "Back": (mm(2), mm(2)),
    }
    assert part(built, "Back").allowances[0] == "bottom edge + 1, trimmed flush after gluing"


@pytest.mark.parametrize("kind", JointKind)
@pytest.mark.parametrize("through", Through)
def test_every_edge_has_one_owner_whatever_the_joint(kind: JointKind, through: Through) -> None:
    edges = build(design(joint=Joint(kind=kind), through=through)).edges
    assert len(edges) == 12
    corners = {edge.owner for edge in edges[:4]}
    assert corners == (
        {"left side", "right side"} if through is Through.SIDES else {"top", "bottom"}
    )
    assert {edge.joint for edge in edges[:4]} == {"" if kind is JointKind.BUTT else kind.value}


@pytest.mark.parametrize(
    ("joint", "message"),
    [
        (
            Joint(kind=JointKind.REBATE, depth=mm(18)),
            "its depth leaves nothing of the board, which is 17.7 mm thick",
        ),
        (
            Joint(kind=JointKind.GROOVE, tongue=mm(20)),
            "its tongue leaves nothing of the board, which is 17.7 mm thick",
        ),
        (
            Joint(kind=JointKind.FINGER, finger_width=mm(200)),
            "the depth of the carcass does not hold its fingers",
        ),
    ],
)
def test_a_joint_that_the_board_does_not_hold_is_refused(joint: Joint, message: str) -> None:
    with pytest.raises(InputError) as error:
        build(design(joint=joint))
    assert error.value.faults[0].what == message


@pytest.mark.parametrize(
    ("said", "message"),
    [
        ({"kind": JointKind.BUTT, "depth": mm(5)}, "a butt has no depth"),
        (
            {"kind": JointKind.FINGER, "fingers": 4},
            "4 fingers do not begin and end with the same panel",
        ),
        (
            {"kind": JointKind.FINGER, "fingers": 5, "finger_width": mm(9)},
            "both the number and the width of the fingers are given",
        ),
        ({"kind": JointKind.FINGER, "fit": -1}, "its fit is negative"),
    ],
)
def test_what_no_joint_can_be_is_refused(said: dict[str, object], message: str) -> None:
    with pytest.raises(InputError) as error:
        Joint(**said)  # type: ignore[arg-type]
    assert error.value.faults[0].what == message
