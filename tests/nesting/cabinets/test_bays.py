"""Bays of a case: sizes by hand, and what can still be reached in each."""

from nesting.cabinets.bays import find_bays
from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import Braces
from nesting.cabinets.fittings import AssemblyWishes, Fittings, InsideItem
from nesting.cabinets.shelving import Dividers, Shelves
from nesting.cabinets.space import Axis
from nesting.lengths import mm
from tests.nesting.cabinets.designs import design, lay_out
from tests.nesting.cabinets.fit_samples import fit

OPEN = Closing(fit=Fit.NONE)
CASE = design(baffle=OPEN, dividers=Dividers(), shelves=Shelves(clear=(mm(200),), groove=mm(6)))


def test_a_divider_and_shelves_make_four_bays() -> None:
    """500 - 3 x 17.7 over 2 wide; 200 high below, 600 - 3 x 17.7 - 200 above."""
    laid = lay_out(CASE)
    sizes = [
        (bay.size(Axis.WIDTH), bay.size(Axis.HEIGHT))
        for bay in find_bays(laid.spaces[0].box, laid.inner)
    ]
    wide = mm("223.45")
    assert sizes == [(wide, mm(200))] * 2 + [(wide, mm("346.9"))] * 2


def test_braces_make_no_bays() -> None:
    laid = lay_out(design(baffle=OPEN, braces=Braces(depth=mm(60))))
    assert len(find_bays(laid.spaces[0].box, laid.inner)) == 1


def test_what_goes_into_a_case_has_to_pass_one_of_its_bays() -> None:
    """300 x 250 goes through the open front, but into no bay once its panels stand."""
    wishes = AssemblyWishes(
        items=(
            InsideItem(name="crate", size=(mm(250), mm(300))),
            InsideItem(name="box", size=(mm(210), mm(300))),
        )
    )
    limits = {each.item: each for each in fit(CASE, Fittings(assembly=wishes)).limits}
    assert limits["box"].text.endswith("(223.45 × 346.9 mm).")
    assert "bay" in limits["box"].text
    assert limits["crate"].last_step < limits["box"].last_step
