"""The places of a sheet that are not sound, in words."""

from dataclasses import replace

from nesting.defects import solve_clear
from nesting.lengths import mm
from nesting.sheets import Defect, Use
from plans.plan import make_plan
from tests.nesting.defects.defect_jobs import unsound
from tests.nesting.hand_made import job, part


def test_the_parts_on_a_stain_are_named_in_the_order_of_their_codes() -> None:
    """By hand: twelve parts of one kind are A1 to A12, and A10 comes after A9, not after A1."""
    stain = Defect(
        what="stain", x=mm(20), y=mm(20), length=mm(2400), width=mm(1180), use=Use.HIDDEN_PARTS
    )
    cleats = replace(part("Cleat", 500, 300, count=12), is_hidden=True)
    made = job(cleats, sheets=[unsound(stain)])
    (sheet,) = make_plan(made, solve_clear(made, effort=0)).sheets
    (view,) = sheet.defects
    assert view.parts == tuple(f"A{number}" for number in range(1, 13))
    assert view.text.endswith("ONLY HIDDEN PARTS MAY LIE ON IT: " + ", ".join(view.parts) + ".")
