"""Order of assembly, and what it shuts out: common practice, no source, unless one is named."""

from dataclasses import replace

from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import BoxDesign, Braces
from nesting.cabinets.fit_out import FitOut
from nesting.cabinets.fittings import (
    AssemblyWishes,
    CarcassScrews,
    Fittings,
    InsideItem,
    LoadsFrom,
    Screws,
)
from nesting.cabinets.holes import Hole, HoleKind, Mounted
from nesting.cabinets.shelving import Shelves
from nesting.lengths import mm
from tests.nesting.cabinets.designs import design
from tests.nesting.cabinets.fit_samples import COVERED, FRAMED, fit, woofer

CONNECTOR = Hole(
    name="connector",
    kind=HoleKind.CONNECTOR,
    panel="back",
    cut_out=mm(120),
    places=(("bottom", mm(150)),),
)


def wishes(**changes: object) -> AssemblyWishes:
    return replace(AssemblyWishes(), **changes)  # type: ignore[arg-type]


def fitted(wanted: BoxDesign, *holes: Hole, **changes: object) -> FitOut:
    return fit(wanted, Fittings(holes=holes, assembly=wishes(**changes)))


def number(found: FitOut, words: str) -> int:
    return next(step.number for step in found.steps if words in step.what)


def last(found: FitOut, item: str) -> int:
    return next(limit.last_step for limit in found.limits if limit.item == item)


def test_a_covered_box_goes_together_in_this_order() -> None:
    found = fitted(COVERED, woofer(), damping=True)
    assert [step.what for step in found.steps] == [
        "Glue up the carcass: left side, right side, top, bottom. Check its diagonals.",
        "Fix the front frame of battens.",
        "Fix the rear frame of battens.",
        "Cover the carcass. Let the glue of the covering set.",
        "Measure the place of the baffle and trim it.",
        "Cut the hole for the woofer in the baffle.",
        "Pull in 8 T-nuts of the woofer on the baffle with a bolt; do not hammer them.",
        "Put the baffle in.",
        "Measure the place of the back and trim it.",
        "Cover the back.",
        "Fix the damping to the inside.",
        "Put the back in.",
        "Fit the woofer from outside.",
    ]


def test_each_row_of_t_nuts_comes_before_the_step_that_closes_its_side() -> None:
    rear = woofer(name="rear woofer", panel="back")
    side = woofer(
        name="side woofer",
        panel="left side",
        places=(("bottom", mm(250)),),
        cut_out=mm(200),
        bolt_circle=mm(230),
        flange=mm(250),
    )
    found = fitted(FRAMED, woofer(), rear, side)
    assert number(found, "T-nuts of the woofer") < number(found, "Put the baffle in")
    assert number(found, "T-nuts of the rear woofer") < number(found, "Put the back in")
    assert number(found, "T-nuts of the side woofer") < number(found, "Glue up the carcass")


def test_damping_is_shut_out_by_the_last_panel_though_the_drivers_hole_is_open() -> None:
    """A loudspeaker builder's page: damping cannot be placed through the driver hole."""
    found = fitted(FRAMED, woofer(), damping=True)
    closing = number(found, "Put the back in")
    assert last(found, "damping") == closing - 1
    assert found.steps[closing - 1].impossible == ("damping",)
    assert number(found, "damping") < closing


def test_a_hand_reaches_the_t_nuts_through_a_connectors_hole() -> None:
    """Forum posts on T-nuts: a connector's hole large enough for a hand saves the day."""
    through = fitted(FRAMED, woofer(), CONNECTOR)
    assert last(through, "T-nuts of the woofer") == number(through, "Fit the connector") - 1
    small = replace(CONNECTOR, cut_out=mm(90))
    woofer_only = fitted(FRAMED, woofer(), small)
    assert last(woofer_only, "T-nuts of the woofer") == number(woofer_only, "Fit the woofer") - 1


def test_a_hand_reaches_no_further_than_an_arm() -> None:
    high = replace(CONNECTOR, places=(("top", mm(80)),))
    low = woofer(cut_out=mm(90), bolt_circle=mm(120), flange=mm(140), places=(("bottom", mm(90)),))
    shut = fitted(FRAMED, low, high, reach=mm(480))
    assert last(shut, "T-nuts of the woofer") == number(shut, "Put the back in") - 1
    longer = fitted(FRAMED, low, high, reach=mm(600))
    assert last(longer, "T-nuts of the woofer") > number(longer, "Put the back in")


def test_for_each_step_the_largest_opening_that_a_thing_passes_is_named() -> None:
    board = InsideItem(name="crossover", size=(mm(150), mm(60)))
    found = fitted(FRAMED, woofer(), CONNECTOR, items=(board,))
    (limit,) = (each for each in found.limits if each.item == "crossover")
    assert limit.ways[number(found, "Glue up") - 1] == "the open front (464.6 × 564.6 mm)"
    assert limit.ways[number(found, "Fix the front frame") - 1] == (
        "the open rear (464.6 × 564.6 mm)"
    )
    assert limit.ways[number(found, "Put the back in") - 1] == "the hole for the woofer (278 mm)"
    assert limit.text == (
        f"crossover: last chance before step {len(found.steps) - 1} (Fit the woofer from outside.)"
    )


def test_a_board_too_wide_for_the_hole_must_go_in_before_the_back() -> None:
    """280 x 60: its diagonal is more than the 278 of the hole."""
    board = InsideItem(name="board", size=(mm(280), mm(60)))
    found = fitted(FRAMED, woofer(), items=(board,))
    assert last(found, "board") == number(found, "Put the back in") - 1


def test_a_baffle_from_the_rear_does_not_pass_the_rear_frame() -> None:
    found = fitted(FRAMED, baffle_from=LoadsFrom.REAR)
    assert number(found, "Put the baffle in from the rear") < number(found, "Fix the rear frame")
    assert number(found, "Fix the front frame") < number(found, "Put the baffle in")
    (said,) = found.warnings
    assert said == (
        "The baffle goes in from the rear and does not pass the rear frame: the rear frame is "
        "fixed after it, and the baffle cannot be taken out again."
    )
    assert not fitted(FRAMED).warnings


def test_a_baffle_from_the_rear_comes_before_the_braces() -> None:
    braced = replace(FRAMED, braces=Braces(depth=mm(100)), battens=None)
    found = fitted(braced, baffle_from=LoadsFrom.REAR)
    assert number(found, "Put the baffle in") < number(found, "Fit brace 1")
    front = fitted(braced)
    assert number(front, "Fit brace 1") < number(front, "Put the baffle in")


def test_an_open_back_shuts_nothing_out() -> None:
    found = fitted(replace(FRAMED, back=Closing(fit=Fit.NONE), battens=None), damping=True)
    assert last(found, "damping") == len(found.steps)
    assert not any(step.impossible for step in found.steps)


def test_a_driver_fixed_from_the_inside_goes_in_before_the_last_panel() -> None:
    found = fitted(FRAMED, woofer(mounted=Mounted.INSIDE))
    assert number(found, "Put the baffle in") < number(found, "Fix the woofer from the inside")
    assert number(found, "Fix the woofer from the inside") < number(found, "Put the back in")
    assert last(found, "woofer") == number(found, "Put the back in") - 1


def test_a_shelf_in_a_groove_is_glued_up_with_the_carcass() -> None:
    grooved = design(baffle=Closing(fit=Fit.NONE), shelves=Shelves(clear=(mm(200),), groove=mm(6)))
    assert "shelf 1" in fitted(grooved).steps[0].what
    loose = design(baffle=Closing(fit=Fit.NONE), shelves=Shelves(clear=(mm(200),)))
    assert number(fitted(loose), "Fit shelf 1") == 2


def test_the_boards_of_a_slot_are_glued_on_before_its_panel_goes_in() -> None:
    slot = Hole(
        name="slot",
        kind=HoleKind.PORT,
        panel="baffle",
        window=(mm(200), mm(60)),
        wall=mm(12),
        depth=mm(150),
    )
    found = fitted(FRAMED, slot)
    assert number(found, "Glue the boards of the slot") < number(found, "Put the baffle in")
    assert not any("Fit the slot" in step.what for step in found.steps)
    assert found.warnings == ()


def test_screws_stand_in_the_step_that_drives_them_and_come_out_before_edges_are_rounded() -> None:
    """Common practice, no source: no cutter may meet a screw."""
    screws = Screws(carcass=CarcassScrews.UNTIL_DRY, round_over=mm(6))
    steps = [step.what for step in fit(FRAMED, Fittings(screws=screws)).steps]
    assert steps[:4] == [
        (
            "Glue up the carcass: left side, right side, top, bottom. Drive 12 screws 50 mm. "
            "Check its diagonals."
        ),
        (
            "When the glue is dry, take the screws of the carcass out again, every one, and fill "
            "their holes: no cutter may meet a screw."
        ),
        "Round the outside edges over, radius 6 mm.",
        "Fix the front frame of battens. Drive 14 screws 30 mm.",
    ]
    stay = replace(screws, carcass=CarcassScrews.STAY, round_over=0)
    kept = [step.what for step in fit(FRAMED, Fittings(screws=stay)).steps]
    assert not any("take the screws" in what or "Round the" in what for what in kept)


def test_edges_are_rounded_only_after_a_planted_panel_has_closed_them() -> None:
    wanted = design(baffle=Closing(fit=Fit.PLANTED))
    found = fit(wanted, Fittings(screws=Screws(round_over=mm(6))))
    assert number(found, "Put the baffle in") < number(found, "Round the outside edges over")
