"""Covering and clearance, each side separately."""

from dataclasses import replace

from nesting.cabinets.design import Closing, Covering, Fit, Fitted
from nesting.lengths import Length, mm
from tests.nesting.cabinets.designs import build, design, part

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
