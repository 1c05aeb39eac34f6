from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from nesting.errors import InputError
from nesting.lengths import (
    NM_PER_INCH,
    NM_PER_MM,
    Unit,
    format_length,
    inch,
    mm,
    parse_length,
    round_to,
)

# Decimal-to-fraction chart, machinecalcs.com: inch fraction and millimetres to 4
# decimals. The chart rounds ties down: 1/32 in is 0.79375 mm exactly and printed as 0.7937.
CHART = {
    "1/64": "0.3969",
    "1/32": "0.7937",
    "3/64": "1.1906",
    "1/16": "1.5875",
    "1/8": "3.1750",
    "15/64": "5.9531",
    "3/8": "9.5250",
    "15/32": "11.9063",
    "1/2": "12.7000",
    "19/32": "15.0812",
    "5/8": "15.8750",
    "23/32": "18.2562",
    "3/4": "19.0500",
    "47/64": "18.6531",
}


@pytest.mark.parametrize(("fraction", "millimetres"), CHART.items())
def test_fractions_of_an_inch_agree_with_a_published_chart(fraction: str, millimetres: str) -> None:
    exact = Fraction(inch(fraction), NM_PER_MM)
    assert abs(exact - Fraction(millimetres)) <= Fraction("0.00006")


@pytest.mark.parametrize("fraction", CHART)
def test_fractions_of_an_inch_are_exact(fraction: str) -> None:
    # Reference: the standard library's Fraction, and 1 in = 25.4 mm of the 1959 agreement.
    assert Fraction(inch(fraction), NM_PER_MM) == Fraction(fraction) * Fraction("25.4")


def test_an_inch_is_25_4_mm_and_a_yard_914_4_mm() -> None:
    # International yard and pound agreement, 1959; NIST Handbook 44, appendix C (from memory).
    assert inch(1) == mm("25.4")
    assert inch(36) == mm("914.4")


def test_0_123_inch_is_an_eighth_to_the_nearest_64th() -> None:
    # Worked example of the decimal-to-fraction chart, machinecalcs.com: 0.123 in = 8/64 = 1/8.
    assert format_length(round_to(inch("0.123"), inch("1/64")), Unit.INCH) == "1/8"


def test_five_eighths_of_an_inch_are_1_5875_cm() -> None:
    # Table of sixteenths, quadibloc.com/other/cnvint.htm.
    assert Fraction(inch("5/8"), 10 * NM_PER_MM) == Fraction("1.5875")


def test_a_sheet_of_eight_by_four_feet_is_not_2440_by_1220() -> None:
    assert (inch(96), inch(48)) == (mm("2438.4"), mm("1219.2"))


@pytest.mark.parametrize(
    ("text", "unit", "length"),
    [
        ("18", Unit.MM, 18 * NM_PER_MM),
        ("18", Unit.INCH, 18 * NM_PER_INCH),
        (" 464.6 ", Unit.MM, 464_600_000),
        ("464.600", Unit.MM, 464_600_000),
        ("464.6000000", Unit.MM, 464_600_000),
        (".5", Unit.MM, 500_000),
        ("5.", Unit.MM, 5_000_000),
        ("0", Unit.MM, 0),
        ("18 mm", Unit.INCH, 18 * NM_PER_MM),
        ("18MM", Unit.INCH, 18 * NM_PER_MM),
        ("23/32 in", Unit.MM, 18_256_250),
        ('11 5/8"', Unit.MM, 295_275_000),
        ("11 5/8″", Unit.MM, 295_275_000),
        ("11-5/8 in", Unit.MM, 295_275_000),
        ("11 - 5/8 inch", Unit.MM, 295_275_000),
        ("2 inches", Unit.MM, 2 * NM_PER_INCH),
        ("5/4", Unit.INCH, 31_750_000),
        ("0.001", Unit.INCH, 25_400),
        ("0.001", Unit.MM, 1000),
    ],
)
def test_text_becomes_a_length(text: str, unit: Unit, length: int) -> None:
    assert parse_length(text, unit) == length


@pytest.mark.parametrize("value", [18, "18", Decimal(18), Decimal("18.0")])
def test_whole_numbers_text_and_decimals_are_the_same_length(value: int | str | Decimal) -> None:
    assert mm(value) == 18_000_000


def test_a_third_of_an_inch_is_refused_with_a_remedy() -> None:
    with pytest.raises(InputError) as refused:
        parse_length("11 5/9", Unit.INCH)
    assert str(refused.value) == (
        "'11 5/9' is not on a tape measure.\n"
        "Use halves, quarters, 8ths, 16ths, 32nds or 64ths of an inch, or a decimal."
    )


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (
            "56.2 cm",
            "'56.2 cm' is in 'cm'.\nWrite millimetres (18 mm) or inches (23/32 in).",
        ),
        ("4'", '"4\'" is in "\'".\nWrite millimetres (18 mm) or inches (23/32 in).'),
        ("-5", "'-5' is negative.\nWrite a length of 0 or more."),
        ("−5 mm", "'−5 mm' is negative.\nWrite a length of 0 or more."),
        ("1/2", "'1/2' is a fraction of a millimetre.\nWrite a decimal, such as 0.5."),
        ("0.0005", "'0.0005' is finer than can be marked.\nGive at most 3 decimals."),
        (
            "11 9/8 in",
            "'11 9/8 in' has a fraction that is not less than 1.\nWrite it such as 11 5/8.",
        ),
        *(
            (text, f"{text!r} is not a length.\nWrite a number, such as 464.6, 18 mm or 23/32 in.")
            for text in (
                "",
                "abc",
                "464,6",
                "1 2",
                ".",
                "in",
                "1e3",
                "+5",
                "nan",
                "12 bananas",
                "4' 6\"",
                "5 mm 3",
                "٣",
                "²",
                "1\n2",
                "9" * 40,
            )
        ),
    ],
)
def test_what_is_no_length_is_refused_in_plain_words(text: str, message: str) -> None:
    with pytest.raises(InputError) as refused:
        parse_length(text, Unit.MM)
    assert str(refused.value) == message


def test_a_very_long_text_is_refused_without_being_printed_whole() -> None:
    with pytest.raises(InputError) as refused:
        parse_length("1" + " " * 100_000 + "x", Unit.MM)
    assert len(str(refused.value)) < 160


@pytest.mark.parametrize(
    ("length", "unit", "text"),
    [
        (mm(0), Unit.MM, "0"),
        (mm("464.6"), Unit.MM, "464.6"),
        (mm(1220), Unit.MM, "1220"),
        (mm("0.001"), Unit.MM, "0.001"),
        (-mm("0.5"), Unit.MM, "-0.5"),
        (inch(0), Unit.INCH, "0"),
        (inch("1/64"), Unit.INCH, "1/64"),
        (inch("14.125"), Unit.INCH, "14 1/8"),
        (-inch("14 1/8"), Unit.INCH, "-14 1/8"),
        (inch("0.123"), Unit.INCH, "0.123"),
        (mm(18), Unit.INCH, "0.709"),  # 18 / 25.4 = 0.70866
        (inch("23/32"), Unit.MM, "18.256"),  # 18.25625
    ],
)
def test_a_length_becomes_text(length: int, unit: Unit, text: str) -> None:
    assert format_length(length, unit) == text


@pytest.mark.parametrize(
    ("length", "step", "rounded"),
    [
        ("464.74", "0.5", "464.5"),
        ("464.75", "0.5", "465"),
        ("464.25", "0.5", "464.5"),
        ("464.24", "0.5", "464"),
        ("7", "3", "6"),
        ("7.5", "3", "9"),
    ],
)
def test_rounding_goes_to_the_nearest_step_and_halves_go_up(
    length: str, step: str, rounded: str
) -> None:
    assert round_to(mm(length), mm(step)) == mm(rounded)


WRITTEN = st.one_of(
    st.decimals(0, 20_000, places=3).map(lambda d: (f"{d:f}", Unit.MM)),
    st.decimals(0, 800, places=3).map(lambda d: (f"{d:f}", Unit.INCH)),
    st.tuples(st.integers(0, 800), st.integers(0, 63), st.sampled_from([2, 4, 8, 16, 32, 64])).map(
        lambda t: (f"{t[0]} {t[1] % t[2]}/{t[2]}", Unit.INCH)
    ),
)


@pytest.mark.property
@given(WRITTEN)
def test_a_length_printed_in_the_unit_it_was_written_in_reads_back_as_itself(
    written: tuple[str, Unit],
) -> None:
    text, unit = written
    length = parse_length(text, unit)
    assert parse_length(format_length(length, unit), unit) == length


@pytest.mark.property
@given(WRITTEN)
def test_every_accepted_length_is_what_the_standard_library_makes_of_it(
    written: tuple[str, Unit],
) -> None:
    text, unit = written
    exact = sum(Fraction(word) for word in text.split()) * unit.nanometres
    assert parse_length(text, unit) == exact


@pytest.mark.property
@given(WRITTEN)
def test_every_accepted_length_lies_on_a_grid_of_25_nm(written: tuple[str, Unit]) -> None:
    assert parse_length(*written) % 25 == 0


@pytest.mark.property
@given(st.integers(-(10**12), 10**12), st.integers(1, 10**8))
def test_a_rounded_length_is_a_multiple_within_half_a_step(length: int, step: int) -> None:
    rounded = round_to(length, step)
    assert rounded % step == 0
    assert 2 * abs(rounded - length) <= step


@pytest.mark.property
@given(st.text(max_size=80))
def test_any_text_is_a_length_or_refused_with_one_fault(text: str) -> None:
    try:
        length = parse_length(text, Unit.MM)
    except InputError as error:
        faults = error.faults
    else:
        faults = ()
    if faults:
        assert [bool(fault.what and fault.remedy) for fault in faults] == [True]
    else:
        assert length >= 0
