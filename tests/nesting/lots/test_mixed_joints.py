"""Parts that meet in a joint and come from sheets of different thickness."""

from dataclasses import replace

from nesting.cabinets.boards import Board
from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import BoxDesign
from nesting.cabinets.expand import expand
from nesting.job import Job
from nesting.layout import Layout, PartLeaf, SheetLayout
from nesting.lengths import Unit, mm
from nesting.lots import find_mixed_joints
from nesting.sheets import Sheet
from tests.nesting.hand_made import BIRCH, job

THIN = replace(BIRCH, name="thin lot", measured=(mm("17.5"),))
THICK = replace(BIRCH, name="thick lot", measured=(mm("17.8"), mm("17.7")))
NAMES = ("Side", "Top or bottom", "Baffle", "Back")


def one_box(*sheets: Sheet) -> Job:
    design = BoxDesign(
        name="Box",
        height=mm(600),
        width=mm(400),
        depth=mm(300),
        board=Board(material=BIRCH.material, thickness=BIRCH.thickness),
        baffle=Closing(fit=Fit.INSET),
        back=Closing(fit=Fit.INSET),
    )
    build = expand(design, letters=("A",), measured={}, step=mm("0.5"), unit=Unit.MM)
    return replace(job(*build.parts, sheets=sheets), cabinets=(build,))


def from_sheets(made: Job, **sheet_of: int) -> Layout:
    """Return a layout in which the parts named come from other sheets than the first one."""
    return Layout(
        sheets=tuple(
            SheetLayout(
                sheet=sheet_of.get(part.name.split()[0], 0), root=PartLeaf(part=index, copy=copy)
            )
            for index, part in enumerate(made.parts)
            for copy in range(part.count)
        )
    )


def test_parts_of_one_lot_are_not_mentioned() -> None:
    made = one_box(THIN, THICK)
    assert [part.name for part in made.parts] == list(NAMES)
    assert find_mixed_joints(made, from_sheets(made)) == ()


def test_each_joint_that_spans_two_lots_is_named() -> None:
    made = one_box(THIN, THICK)
    joints = find_mixed_joints(made, from_sheets(made, Baffle=1))
    # an inset baffle touches the sides and the top and bottom, never the back
    assert {frozenset(joint.parts) for joint in joints} == {
        frozenset({"Side", "Baffle"}),
        frozenset({"Top or bottom", "Baffle"}),
    }
    assert all(joint.cabinet == "A" for joint in joints)
    assert {frozenset(joint.stocks) for joint in joints} == {frozenset({"thin lot", "thick lot"})}
    # the mean of 17.8 and 17.7 is 17.8 to 0.1, halves upwards
    assert {frozenset(joint.thicknesses) for joint in joints} == {
        frozenset({mm("17.5"), mm("17.8")})
    }


def test_up_to_two_tenths_of_a_millimetre_is_one_lot() -> None:
    near = replace(THICK, measured=(mm("17.7"),))
    made = one_box(THIN, near)
    assert find_mixed_joints(made, from_sheets(made, Baffle=1)) == ()
    assert find_mixed_joints(made, from_sheets(made, Baffle=1), limit=mm("0.1"))


def test_a_sheet_that_nobody_has_measured_is_not_compared() -> None:
    made = one_box(THIN, replace(THICK, measured=()))
    assert find_mixed_joints(made, from_sheets(made, Baffle=1)) == ()
