from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.hole_sheets import write_hole_sheet
from nesting.cabinets.holes import Mounted
from nesting.lengths import Unit, mm
from tests.nesting.cabinets.designs import design
from tests.nesting.cabinets.fit_samples import place, woofer


def test_a_sheet_carries_the_four_numbers_and_says_recess_then_hole_then_bolts() -> None:
    """Acceptance: cut-out, bolt circle, flange and recess; order recess, hole, bolts."""
    (placed,) = place(design(), woofer())
    sheet = write_hole_sheet(placed, Unit.MM)
    assert (sheet.cut_out, sheet.bolt_circle, sheet.flange, sheet.recess) == (
        mm(278),
        mm(305),
        mm(320),
        mm(6),
    )
    assert sheet.order == (
        "Have the driver in hand and lay it on the panel before anything is cut.",
        "Mark the centre on the outside face: 232.3 from the left edge, 250 from the bottom edge.",
        "Recess first, while its middle still holds the pivot: 320 across, 6 deep.",
        (
            "Cut the hole: 278 across. Fix the disc before the last pass, so that it does not "
            "come free with the pivot on it."
        ),
        (
            "Offer up the driver, then drill 8 holes on the bolt circle of 305; 116.7 from one "
            "to the next."
        ),
        "Pull 8 T-nuts in from the inside with a bolt, before the box is closed.",
    )


def test_the_edges_exist_when_the_hole_is_marked() -> None:
    """Acceptance: coordinates from edges that exist at that moment in the sequence."""
    (late,) = place(design(), woofer())
    assert write_hole_sheet(late, Unit.MM).when.startswith("Mark it when the baffle has been trim")
    (final,) = place(design(baffle=Closing(fit=Fit.PLANTED)), woofer())
    assert write_hole_sheet(final, Unit.MM).when.startswith("Mark it on the baffle as cut")


def test_a_driver_fixed_from_the_inside_is_marked_on_the_inside() -> None:
    (placed,) = place(design(), woofer(mounted=Mounted.INSIDE))
    assert write_hole_sheet(placed, Unit.MM).face == "inside face"


def test_each_bolt_has_its_number_and_its_distances() -> None:
    (placed,) = place(design(), woofer())
    bolts = write_hole_sheet(placed, Unit.MM).bolts
    assert [bolt.number for bolt in bolts] == list(range(1, 9))
    assert bolts[0].distances == (placed.distances[0], mm(250) + mm("152.5"))
