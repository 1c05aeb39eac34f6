"""Printed figures are read as a tape measure is read.

1 in = 25.4 mm exactly: international yard and pound agreement, 1959.
"""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plans.rehearsal.printed import (
    UNITS,
    KeepSize,
    read_figure,
    read_keep,
    read_size,
    read_sum,
    read_trims,
)

MM, IN = UNITS["mm"], UNITS["in"]


@given(st.integers(-(10**6), 10**6))
def test_tenths_of_a_millimetre_are_read_exactly(tenths: int) -> None:
    text = f"{'-' if tenths < 0 else ''}{abs(tenths) // 10}.{abs(tenths) % 10}"
    assert read_figure(text, MM) == tenths * 100_000


@given(st.integers(0, 200), st.sampled_from([2, 4, 8, 16, 32, 64]), st.data())
def test_fractions_of_an_inch_are_read_exactly(
    whole: int, denominator: int, data: st.DataObject
) -> None:
    numerator = data.draw(st.integers(0, denominator - 1))
    nanometres = (whole + Fraction(numerator, denominator)) * Fraction("25.4") * 10**6
    assert read_figure(f"{whole} {numerator}/{denominator}", IN) == nanometres
    assert read_figure(f"-{whole} {numerator}/{denominator}", IN) == -nanometres


@pytest.mark.parametrize("text", ["23/32", "0", "48", "0.697"])
def test_short_figures_in_inches_are_read(text: str) -> None:
    assert read_figure(text, IN) == Fraction(text) * 25_400_000


@pytest.mark.parametrize(
    "text",
    ["", "x", "12,5", "1/2/3", "1.2345", "1e3", " 5", "5 ", "--5", "5 mm", "nan", "٣", "9" * 99],
)
@pytest.mark.parametrize("unit", [MM, IN], ids=["mm", "in"])
def test_what_is_no_figure_is_refused(text: str, unit: object) -> None:
    assert unit in (MM, IN)
    with pytest.raises(ValueError, match="is not"):
        read_figure(text, MM if unit is MM else IN)


@pytest.mark.parametrize("text", ["1/3", "5/0", "2 1/7", "1/128"])
def test_fractions_that_no_tape_has_are_refused(text: str) -> None:
    with pytest.raises(ValueError, match="is not"):
        read_figure(text, IN)


def test_a_fraction_of_a_millimetre_is_refused() -> None:
    with pytest.raises(ValueError, match="'1/2' is not on a tape in mm"):
        read_figure("1/2", MM)


def test_sizes_keep_sizes_and_sums_are_read() -> None:
    assert read_size("562 × 17.7", MM) == (562_000_000, 17_700_000)
    assert read_keep("356", MM) == KeepSize(is_trim=False, size=356_000_000)
    assert read_keep("trim 3/8", IN) == KeepSize(is_trim=True, size=9_525_000)
    total = read_sum("10 = 2 trim + 3.5 + 0 + 4.5 left", MM)
    assert total.total == 10_000_000
    assert [(term.size // 10**5, term.word) for term in total.terms] == [
        (20, "trim"),
        (35, ""),
        (0, ""),
        (45, "left"),
    ]


@pytest.mark.parametrize("text", ["562", "562 x 300", "1 × 2 × 3", "× 3"])
def test_what_is_no_size_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="is not"):
        read_size(text, MM)


@pytest.mark.parametrize("text", ["10", "10 = ", "10 = 4 + left", "10 = 4 +6", "= 3"])
def test_what_is_no_sum_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="is not"):
        read_sum(text, MM)


def test_trims_are_read_with_their_edges() -> None:
    assert read_trims("left 10, right 0, top 2.5, bottom 10", MM) == (
        ("left edge", 10_000_000),
        ("right edge", 0),
        ("top edge", 2_500_000),
        ("bottom edge", 10_000_000),
    )


@pytest.mark.parametrize(
    "text",
    ["10", "left 1, right 2, top 3", "left 1, top 2, right 3, bottom 4", "left 1, right 2, top, x"],
)
def test_what_does_not_name_all_trims_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"is not|does not name"):
        read_trims(text, MM)
