"""Corner pictures: what a plane through the cabinet really cuts."""

import itertools
from dataclasses import replace

from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.joints import Joint, JointKind
from nesting.lengths import mm
from plans.sections.corners import CornerPicture, make_corners
from tests.nesting.cabinets import test_wedge
from tests.nesting.cabinets.designs import build, design


def areas(picture: CornerPicture) -> dict[str, int]:
    """The area of each outline in square millimetres, by the shoelace formula."""
    found = {}
    for shape in picture.shapes:
        closed = [*shape.corners, shape.corners[0]]
        twice = sum(a[0] * b[1] - b[0] * a[1] for a, b in itertools.pairwise(closed))
        found[shape.name] = round(abs(twice) / 2 / mm(1) ** 2)
    return found


def test_a_rebate_is_taken_out_of_the_panel_and_the_back_stands_in_it() -> None:
    """A side of 18 by 350 less a rebate of 9 by 18; a back of 18 by 500 - 2 x 9."""
    wanted = design(back=Closing(fit=Fit.REBATE, depth=mm(9)), baffle=Closing(fit=Fit.NONE))
    rear = make_corners(build(wanted, mm(18)))[3]
    assert rear.title == "rear left, seen from above"
    assert areas(rear) == {"left side": 18 * 350 - 9 * 18, "back": 18 * 482}


def test_a_tongue_and_its_groove_are_drawn() -> None:
    """The top loses all but a tongue of 9 by 9 at each end, the side a groove of 9 by 9."""
    joint = Joint(kind=JointKind.GROOVE, depth=mm(9), tongue=mm(9))
    corner = make_corners(build(design(joint=joint), mm(18)))[0]
    assert areas(corner)["left side"] == 18 * 600 - 2 * 9 * 9
    assert areas(corner)["top"] == 18 * 482 - 2 * 9 * 9


def test_a_wedge_is_cut_through_from_the_side() -> None:
    built = test_wedge.build(replace(test_wedge.WEDGE, front=mm(60)), mm(18))
    pictures = make_corners(built)
    assert [picture.title for picture in pictures] == [
        "bottom front, seen from the left",
        "top rear, seen from the left",
        "bottom rear, seen from the left",
        "rear left, seen from above",
    ]
    assert {shape.name for shape in pictures[0].shapes} == {"bottom", "baffle", "front"}
    assert {shape.name for shape in pictures[3].shapes} == {"left side", "back"}
