"""Covering and clearance, each side separately."""

from dataclasses import replace

import pytest

from nesting.cabinets.closing_design import Closing, Covering, Fit, Fitted, Margins
from nesting.cabinets.design import Battens
from nesting.cabinets.sums import add
from nesting.errors import InputError
from nesting.lengths import Length, mm
from nesting.parts import Status
from tests.nesting.cabinets.designs import build, design, lay_out, part

COVERING = Covering(thickness=mm("1.2"), ease=mm(1))


def back_width(closing: Closing, covering: Covering | None) -> Length:
    built = build(design(back=closing, covering=covering), step=mm("0.1"))
    return part(built, "Back").width


INSET = Closing(fit=Fit.INSET)
OPENING = mm("464.6")


def test_without_covering_the_panel_has_the_size_of_the_opening() -> None:
    assert back_width(INSET, None) == OPENING


def test_an_unwrapped_panel_leaves_room_for_the_covering_of_the_opening() -> None:
    assert back_width(INSET, COVERING) == OPENING - 2 * mm("1.2") - 2 * mm(1)


def test_a_wrapped_panel_leaves_room_for_its_own_covering_too() -> None:
    wrapped = replace(INSET, wrapped=True)
    assert back_width(wrapped, COVERING) == OPENING - 4 * mm("1.2") - 2 * mm(1)


def test_a_panel_fitted_before_covering_has_the_size_of_the_bare_opening() -> None:
    early = replace(INSET, fitted=Fitted.BEFORE_COVERING)
    assert back_width(early, COVERING) == OPENING


def test_clearance_is_kept_where_the_covering_is_paint() -> None:
    assert back_width(INSET, Covering(thickness=0, ease=mm(1))) == OPENING - 2 * mm(1)


def test_covering_moves_no_panel_of_the_carcass_and_no_planted_one() -> None:
    bare = build(design(baffle=Closing(fit=Fit.PLANTED)))
    covered = build(design(baffle=Closing(fit=Fit.PLANTED), covering=COVERING))
    for name in ("Side", "Top or bottom", "Baffle"):
        sizes = [(each.length, each.width) for each in (part(bare, name), part(covered, name))]
        assert sizes[0] == sizes[1]


def test_lining_and_what_one_side_has_more_are_taken_off_too() -> None:
    """Acceptance: panel = opening - stack left - stack right - 2 x ease, each side separately."""
    seamed = replace(INSET, wrapped=True, extra=Margins(left=mm("1.2"), right=mm("0.5")))
    lined = replace(COVERING, lining=mm("0.6"))
    stack = mm("0.6") + mm("1.2") + mm("1.2")
    assert back_width(seamed, lined) == OPENING - 2 * stack - mm("1.2") - mm("0.5") - 2 * mm(1)


def test_an_open_back_is_an_upper_and_a_lower_board_alike_unless_said_otherwise() -> None:
    alike = build(design(back=replace(INSET, gap=mm(200))), step=mm("0.1"))
    sizes = {each.name: each.length for each in alike.parts if each.name.startswith("Back")}
    assert sizes == {"Back, lower": mm("182.3"), "Back, upper": mm("182.3")}
    uneven = build(design(back=replace(INSET, gap=mm(200), upper=mm(120))), step=mm("0.1"))
    sizes = {each.name: each.length for each in uneven.parts if each.name.startswith("Back")}
    assert sizes == {"Back, lower": mm("244.6"), "Back, upper": mm(120)}


def test_the_gap_of_an_open_back_is_declared_and_has_the_height_that_was_asked_for() -> None:
    for fit in (Fit.INSET, Fit.PLANTED):
        laid = lay_out(design(back=Closing(fit=fit, gap=mm(200), upper=mm(120))))
        gap = next(space for space in laid.spaces if space.name == "gap in the back")
        assert gap.box.high[2] - gap.box.low[2] == mm(200)


def test_an_open_back_in_a_covered_opening_keeps_clear_of_it_but_not_of_its_own_gap() -> None:
    covered = build(
        design(back=replace(INSET, gap=mm(200), upper=mm(120)), covering=COVERING),
        step=mm("0.1"),
    )
    assert part(covered, "Back, upper").length == mm(120)
    assert part(covered, "Back, lower").length == mm("244.6") - 2 * (mm("1.2") + mm(1))


@pytest.mark.parametrize(
    ("closing", "message"),
    [
        (Closing(fit=Fit.INSET, gap=mm(560)), "gap and upper board leave nothing of its height"),
        (Closing(fit=Fit.INSET, gap=mm(564), upper=mm(10)), "gap and upper board leave nothing"),
        (Closing(fit=Fit.INSET, upper=mm(100)), "an upper board needs a height of more than 0"),
        (Closing(fit=Fit.INSET, gap=-1), "its gap, or what is taken off one side, is negative"),
    ],
)
def test_an_open_back_that_leaves_no_boards_is_refused(closing: Closing, message: str) -> None:
    tall = mm("564.6")
    wanted = replace(closing, gap=tall - 1) if closing.gap == mm(560) else closing
    with pytest.raises(InputError) as error:
        build(design(back=wanted))
    assert error.value.faults[0].what.startswith(message)


def test_the_rear_frame_is_set_back_by_the_back_and_more_where_covering_is_used() -> None:
    """Common practice, no source."""
    frames = Battens(section=(mm(20), mm(30)), rear=True)
    set_backs = []
    for covering, wrapped in ((None, None), (COVERING, False), (COVERING, True)):
        laid = lay_out(
            design(back=replace(INSET, wrapped=wrapped), covering=covering, battens=frames)
        )
        set_backs.append(mm(350) - max(bar.box.high[1] for bar in laid.bars))
    assert set_backs == [mm("17.7"), mm("17.7") + mm("1.2"), mm("17.7") + 3 * mm("1.2")]


def test_front_and_back_are_cut_after_the_frame_stands_to_measured_openings() -> None:
    """Common practice, no source: they wait, and their blanks are larger until then."""
    built = build(design(covering=COVERING, back=replace(INSET, wrapped=True)))
    for name in ("Baffle", "Back"):
        assert part(built, name).status is Status.MEASURE_FIRST
        assert part(built, name).oversize == mm(3)
        assert "measure its place in the standing carcass" in part(built, name).to_do[0]


def test_a_covered_back_in_a_covered_opening_is_smaller_by_both_coverings_on_each_side() -> None:
    """Common practice, no source."""
    laid = lay_out(design(covering=COVERING, back=replace(INSET, wrapped=True)))
    back = next(panel for panel in laid.shell if panel.name == "back")
    for span in (back.length, back.width):
        for clear in (span.low_clear, span.high_clear):
            assert add(clear) == 2 * COVERING.thickness + COVERING.ease
