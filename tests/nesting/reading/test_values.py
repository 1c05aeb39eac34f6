from collections.abc import Callable
from datetime import date
from decimal import Decimal
from enum import Enum

import pytest

from nesting.errors import InputError
from nesting.lengths import Unit, inch, mm
from nesting.reading.values import (
    as_choice,
    as_flag,
    as_length,
    as_number,
    as_text,
    as_whole,
    did_you_mean,
    listed,
    show,
    with_unit,
)


class Side(Enum):
    LENGTH = "length"
    WIDTH = "width"


def refused(convert: Callable[[], object]) -> str:
    with pytest.raises(InputError) as error:
        convert()
    return str(error.value)


def test_text_loses_the_blanks_around_it() -> None:
    assert as_text("  birch plywood ") == "birch plywood"


@pytest.mark.parametrize(
    ("value", "message"),
    [
        (5, "5 is not text.\nPut it in quotes."),
        (True, "true is not text.\nPut it in quotes."),
        ("  ", "the text is empty.\nWrite something, or leave it out."),
        (
            "a\nb",
            "the text has a line break or a sign that cannot be printed.\nWrite it on one line.",
        ),
        ("a" * 81, "the text has 81 characters.\nWrite at most 80 characters."),
    ],
)
def test_what_is_no_text_on_one_line_is_refused(value: object, message: str) -> None:
    assert refused(lambda: as_text(value)) == message


@pytest.mark.parametrize(
    ("value", "unit", "length"),
    [
        (18, Unit.MM, mm(18)),
        (Decimal("17.7"), Unit.MM, mm("17.7")),
        (Decimal("1E+3"), Unit.MM, mm(1000)),
        ("23/32", Unit.INCH, inch("23/32")),
        ("18 mm", Unit.INCH, mm(18)),
        (Decimal("0.125"), Unit.INCH, inch("1/8")),
        (20_000, Unit.MM, mm(20_000)),
    ],
)
def test_numbers_and_text_are_lengths(value: object, unit: Unit, length: int) -> None:
    assert as_length(value, unit) == length


NO_LENGTH = 'Write a number, such as 464.6, or text with a unit, such as "18 mm" or "23/32 in".'
TOO_LONG = "Check the figures and the unit: bare numbers are in mm here."


@pytest.mark.parametrize(
    ("value", "message"),
    [
        (True, f"true is not a length.\n{NO_LENGTH}"),
        ([1], f"a list is not a length.\n{NO_LENGTH}"),
        ({}, f"a table is not a length.\n{NO_LENGTH}"),
        (date(2024, 5, 9), f"2024-05-09 is not a length.\n{NO_LENGTH}"),
        (-5, "'-5' is negative.\nWrite a length of more than 0."),
        (0, "'0' is zero.\nWrite a length of more than 0."),
        (Decimal("0.0"), "'0.0' is zero.\nWrite a length of more than 0."),
        (
            Decimal("nan"),
            "'nan' is not a length.\nWrite a number, such as 464.6, 18 mm or 23/32 in.",
        ),
        (
            Decimal("inf"),
            "'inf' is not a length.\nWrite a number, such as 464.6, 18 mm or 23/32 in.",
        ),
        (
            Decimal("17.70001"),
            "'17.70001' is finer than can be marked.\nGive at most 3 decimals.",
        ),
        (24400, f"'24400' is more than 20000 mm, too long to be meant.\n{TOO_LONG}"),
        ("800 in", f"'800 in' is more than 20000 mm, too long to be meant.\n{TOO_LONG}"),
    ],
)
def test_what_is_no_sensible_length_is_refused(value: object, message: str) -> None:
    assert refused(lambda: as_length(value, Unit.MM)) == message


def test_a_length_may_be_zero_where_that_makes_sense() -> None:
    assert as_length(0, Unit.MM, may_be_zero=True) == 0
    assert refused(lambda: as_length("-1", Unit.MM, may_be_zero=True)) == (
        "'-1' is negative.\nWrite a length of 0 or more."
    )


@pytest.mark.parametrize(
    ("value", "message"),
    [
        (True, "true is not a whole number.\nWrite a whole number of 1 or more."),
        ("2", "'2' is not a whole number.\nWrite a whole number of 1 or more."),
        (Decimal("2.0"), "2.0 is not a whole number.\nWrite a whole number of 1 or more."),
        (0, "0 is less than 1.\nWrite a whole number of 1 or more."),
        (21, "it is more than 20.\nCheck the figure."),
    ],
)
def test_what_is_no_count_is_refused(value: object, message: str) -> None:
    assert refused(lambda: as_whole(value, least=1, most=20)) == message


def test_a_whole_number_may_be_at_either_limit() -> None:
    assert [as_whole(value, least=1, most=20) for value in (1, 20)] == [1, 20]


@pytest.mark.parametrize(
    ("value", "message"),
    [
        (True, "true is not a number.\nWrite a number of 0 or more, without quotes."),
        ("62", "'62' is not a number.\nWrite a number of 0 or more, without quotes."),
        (Decimal("nan"), "nan is not a number.\nWrite a number of 0 or more."),
        (Decimal("-inf"), "-inf is not a number.\nWrite a number of 0 or more."),
        (Decimal("-0.5"), "-0.5 is less than 0.\nWrite a number of 0 or more."),
        (Decimal("1e300"), "it is more than 1000000.\nCheck the figure."),
        (Decimal("0.0001"), "0.0001 has more than 3 decimals.\nGive at most 3 decimals."),
    ],
)
def test_what_is_no_sensible_number_is_refused(value: object, message: str) -> None:
    assert refused(lambda: as_number(value, least=Decimal(0))) == message


def test_a_price_keeps_its_decimals() -> None:
    assert str(as_number(Decimal("62.00"), least=Decimal(0))) == "62.00"


def test_a_flag_is_true_or_false_and_nothing_else() -> None:
    assert as_flag(True) is True  # noqa: FBT003 - the value under test
    assert refused(lambda: as_flag("true")) == (
        "'true' is neither true nor false.\nWrite true or false, without quotes."
    )


def test_a_choice_may_be_written_in_capital_letters() -> None:
    assert as_choice(" Width ", Side) is Side.WIDTH


def test_a_choice_that_is_none_names_the_nearest_and_all() -> None:
    assert refused(lambda: as_choice("widht", Side)) == (
        "'widht' is not one of the choices.\nDid you mean 'width'? Write 'length' or 'width'."
    )
    assert refused(lambda: as_choice(5, Side)) == (
        "5 is not one of the choices.\nWrite 'length' or 'width'."
    )


def test_a_word_far_from_all_known_ones_suggests_nothing() -> None:
    assert did_you_mean("xyz", ["length", "width"]) == ""


def test_a_word_is_suggested_as_it_is_known() -> None:
    assert did_you_mean("birch PLYWOOD", ["Birch plywood"]) == "Did you mean 'Birch plywood'? "


def test_words_are_listed_as_in_a_sentence() -> None:
    assert listed(["a"], "or") == "'a'"
    assert listed(["a", "b"], "and") == "'a' and 'b'"


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (True, "true"),
        (Decimal("1E+3"), "1000"),
        (Decimal("inf"), "inf"),
        ("a", "'a'"),
        ([1], "a list"),
        ({}, "a table"),
        (5, "5"),
    ],
)
def test_a_value_is_shown_as_it_was_written(value: object, text: str) -> None:
    assert show(value) == text


def test_a_length_is_shown_with_its_unit() -> None:
    assert with_unit(inch("23/32"), Unit.INCH) == "23/32 in"


@pytest.mark.parametrize("text", ["1e999999999", "1e-999999999", "-3e999999999"])
def test_a_number_of_a_thousand_million_figures_is_refused_in_one_line(text: str) -> None:
    with pytest.raises(InputError) as caught:
        as_length(Decimal(text), Unit.MM)
    assert len(str(caught.value)) < 200
    with pytest.raises(InputError) as caught:
        as_number(Decimal(text), least=Decimal(0))
    assert len(str(caught.value)) < 200
