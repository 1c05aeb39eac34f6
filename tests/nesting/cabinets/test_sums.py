import re
from fractions import Fraction

import pytest
from hypothesis import given, settings

from nesting.cabinets.closing_design import Closing, Covering, Fit
from nesting.cabinets.design import BoxDesign
from nesting.cabinets.space import Axis
from nesting.cabinets.sums import Rounding, Span, Term, round_size, write_closing_sum, write_sum
from nesting.lengths import NM_PER_MM, Length, Unit, inch, mm
from tests.nesting.cabinets.designs import THICKNESSES, box_designs, build, design, part


def between(whole: Length, thickness: Length, rounding: Rounding = Rounding.NEAREST) -> Span:
    side = (Term(length=thickness, what="side"),)
    return Span(
        axis=Axis.WIDTH,
        whole=whole,
        named="outside width",
        low=side,
        high=side,
        rounding=rounding,
    )


def test_a_panel_between_two_others_is_rounded_to_the_nearest_step() -> None:
    span = between(mm(500), mm("17.7"))
    assert write_sum(span, mm("0.5"), Unit.MM) == (
        "464.5 = 500 - 17.7 - 17.7 (464.6, to the nearest 0.5)"
    )


def test_what_goes_into_an_opening_is_rounded_down() -> None:
    span = between(mm(500), mm("17.6"), Rounding.DOWN)
    assert round_size(span, mm("0.5")) == mm("464.5")
    assert write_sum(span, mm("0.5"), Unit.MM) == (
        "464.5 = 500 - 17.6 - 17.6 (464.8, rounded down to 0.5)"
    )


def test_a_size_on_the_step_is_a_plain_sum() -> None:
    span = between(inch("15 5/8"), inch("3/4"))
    assert write_sum(span, inch("1/32"), Unit.INCH) == "14 1/8 = 15 5/8 - 3/4 - 3/4"


def test_a_panel_that_runs_through_names_the_outside_size() -> None:
    span = Span(axis=Axis.HEIGHT, whole=mm(600), named="outside height")
    assert write_sum(span, mm("0.5"), Unit.MM) == "600 = outside height"


def test_covering_and_clearance_are_taken_off_the_opening() -> None:
    """Panel = opening - covering on each side - 2 x clearance, shown as a sum."""
    covered = design(
        covering=Covering(thickness=mm("1.2"), ease=mm(1)),
        back=Closing(fit=Fit.INSET, wrapped=True),
    )
    assert part(build(covered), "Back").sums[1] == (
        "457.5 = 464.6 - 3.4 - 3.4 (457.8, rounded down to 0.5); "
        "opening 464.6 = 500 - 17.7 - 17.7; "
        "each side 3.4 = 1.2 covering + 1.2 covering of the back + 1 clearance"
    )


def test_sides_with_different_clearance_are_explained_one_by_one() -> None:
    span = Span(
        axis=Axis.WIDTH,
        whole=mm(100),
        named="as measured",
        low_clear=(Term(length=mm(2), what="covering"),),
    )
    assert write_sum(span, mm("0.5"), Unit.MM) == (
        "98 = 100 - 2 - 0; opening 100 = as measured; left 2 = 2 covering; right 0 = 0"
    )


@pytest.mark.parametrize(
    ("middle", "text"),
    [
        ("464.6", "500 = 17.7 + 464.6 + 17.7 (width: side, top, side)"),
        ("464.5", "500 = 17.7 + 464.5 + 17.7 + 0.1 (width: side, top, side, rounding)"),
        ("465", "500 = 17.7 + 465 + 17.7 - 0.4 (width: side, top, side, rounding)"),
    ],
)
def test_a_closing_sum_names_what_rounding_left_over(middle: str, text: str) -> None:
    terms = tuple(
        Term(length=mm(length), what=what)
        for length, what in (("17.7", "side"), (middle, "top"), ("17.7", "side"))
    )
    assert write_closing_sum(mm(500), terms, "width", Unit.MM) == text


def evaluate(text: str) -> Fraction:
    """Add up what stands to the right of the equals sign of a sum in millimetres."""
    terms = re.findall(r"([+-]?) ?(\d+(?:\.\d+)?)", re.split(r"[(;]", text.split("=")[1])[0])
    return sum((Fraction(f"{sign}{value}") for sign, value in terms), Fraction(0))


@pytest.mark.property
@settings(max_examples=200, deadline=None)
@given(box_designs(), THICKNESSES)
def test_every_printed_sum_holds_within_one_step(wanted: BoxDesign, thickness: Length) -> None:
    """Acceptance: after rounding, every sum line holds within one printed step."""
    step = mm("0.5")
    built = build(wanted, thickness=thickness, step=step)
    for sums in [each.sums for each in built.parts] + [each.sums for each in built.battens]:
        for text in sums:
            size = Fraction(re.split(r" (?=\d)", text.split(" = ")[0])[-1])
            if " outside " not in text and "as designed" not in text:
                assert abs(evaluate(text) - size) * NM_PER_MM < step, text
    for text in built.sums:
        assert evaluate(text) == Fraction(text.split(" = ")[0]), text


@pytest.mark.property
@settings(max_examples=200, deadline=None)
@given(box_designs(), THICKNESSES)
def test_rounding_never_makes_a_panel_larger_than_the_opening_as_it_is_cut(
    wanted: BoxDesign, thickness: Length
) -> None:
    """The opening of the glued box follows from the rounded panels around it, not from the design.

    Where sides run through it is their rounded height less two thicknesses, and the rounded length
    of the top; the other way round where top and bottom do.
    """
    step = mm("0.5")
    built = build(wanted, thickness=thickness, step=step)
    side, top = part(built, "Side"), part(built, "Top or bottom")
    height, width, _ = built.outside
    upright = min(side.length, height - 2 * thickness)
    across = min(top.length, width - 2 * thickness)
    if side.length != height:
        upright = side.length
    if top.length != width:
        across = top.length
    for panel in built.panels:
        cut = {span.axis: round_size(span, step) for span in (panel.length, panel.width)}
        if panel.kind in {"Baffle", "Back", "Brace"} and panel.length.low:
            assert cut.get(Axis.HEIGHT, 0) <= upright
            assert cut.get(Axis.WIDTH, 0) <= across


@pytest.mark.property
@settings(max_examples=200, deadline=None)
@given(box_designs(), THICKNESSES)
def test_every_size_is_a_multiple_of_the_step_and_within_one_of_its_solid(
    wanted: BoxDesign, thickness: Length
) -> None:
    step = mm("0.5")
    built = build(wanted, thickness=thickness, step=step)
    for panel in built.panels:
        cut = part(built, panel.kind)
        for span, size in ((panel.length, cut.length), (panel.width, cut.width)):
            assert size % step == 0
            assert abs(size - panel.box.size(span.axis)) < step
