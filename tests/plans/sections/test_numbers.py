"""Figures as they are printed."""

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from nesting.lengths import Unit, inch, mm
from plans.sections.numbers import (
    PRINTED_STEP,
    show,
    show_all,
    show_kg,
    show_money,
    show_size,
    show_with_unit,
    to_whole,
)

# Decimal-to-fraction chart, machinecalcs.com, as listed in the trade: 0.123 in is 8/64 = 1/8.


def test_an_inch_decimal_is_printed_as_the_chart_rounds_it() -> None:
    assert show(inch("0.123"), Unit.INCH) == "1/8"


@pytest.mark.parametrize(
    ("length", "text"),
    [
        (mm("17.75"), "17.8"),
        (mm(562), "562"),
        (mm("2.40"), "2.4"),
        (-mm("30.4"), "-30.4"),
        (0, "0"),
    ],
)
def test_millimetres_are_printed_to_a_tenth(length: int, text: str) -> None:
    assert show(length, Unit.MM) == text


def test_sizes_and_units() -> None:
    assert show_size(inch("22 1/8"), inch(12), Unit.INCH) == "22 1/8 × 12"
    assert show_with_unit(inch("3/32"), Unit.INCH) == "3/32 in"


@given(st.integers(-(10**10), 10**10), st.sampled_from(Unit))
def test_a_printed_figure_is_at_most_half_a_step_off(length: int, unit: Unit) -> None:
    text = show(length, unit)
    sign = -1 if text.startswith("-") else 1
    value = sum((Fraction(part) for part in text.removeprefix("-").split()), Fraction(0))
    assert abs(sign * value * unit.nanometres - length) <= Fraction(PRINTED_STEP[unit], 2)


def test_the_figures_of_a_sum_are_exact_where_tenths_would_not_add_up() -> None:
    assert show_all([mm("10.5"), mm("5.25"), mm("5.25")], Unit.MM) == ["10.5", "5.25", "5.25"]
    assert show_all([mm("10.5"), mm("5.2"), mm("5.3")], Unit.MM) == ["10.5", "5.2", "5.3"]


def test_masses_money_and_minutes() -> None:
    assert (show_kg(Fraction("36.704")), show_kg(Fraction("0.05"))) == ("36.7", "0.1")
    assert (show_money(Decimal(62)), show_money(Decimal("82.666"))) == ("62.00", "82.66")
    assert (to_whole(Decimal("46.5")), to_whole(Decimal("46.49"))) == (47, 46)
