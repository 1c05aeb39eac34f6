from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from nesting.errors import InputError
from nesting.reading.toml_syntax import parse_toml


def refused(text: str) -> str:
    with pytest.raises(InputError) as error:
        parse_toml(text, "job.toml")
    return str(error.value)


def test_decimals_are_read_exactly() -> None:
    assert parse_toml("kerf = 2.4", "job.toml") == {"kerf": Decimal("2.4")}


QUOTED = (
    "something follows the value",
    (
        'Put text, units and fractions in quotes, such as "18 mm" or "11 5/8 in", '
        "and begin a new line for the next key."
    ),
)
NO_VALUE = (
    "the value is missing, or is text without quotes",
    (
        'Put text and fractions in quotes, such as "birch plywood" or "23/32 in"; '
        "write true and false in small letters."
    ),
)
NOT_CLOSED = (
    "a quotation mark is opened and not closed",
    'Close the text on the same line with the same mark, such as "birch plywood".',
)
NO_STATEMENT = (
    "this is neither a [table], a key = value nor a # remark",
    "Write one of these on a line of its own, such as width = 300.",
)
NO_EQUALS = (
    "there is no = between a key and its value",
    "Write key = value, such as width = 300.",
)
TABLE_TWICE = (
    "this table is written twice",
    "Keep one of the two; several sheets or parts need double brackets, such as [[part]].",
)
HEADING = ("the bracket is not closed", "Write [saw], or [[sheet]] where there may be several.")
BACKSLASH = ("the text has a backslash", "Write / in the names of files.")
BRACES = (
    "the braces are not closed, or a comma is missing",
    "Write them on one line, such as { left = 10, right = 5 }.",
)
LIST = ("the list is not closed, or a comma is missing", "Write it such as [17.7, 17.8].")
COMMA = ("the number has a decimal comma", "Write a decimal point, such as 464.6.")
TWICE = ("the key is written twice", "Keep one of the two.")
SIGN = ("a sign that cannot be printed stands here", "Take it out.")


@pytest.mark.parametrize(
    ("line", "marks", "words"),
    [
        ("width = 464,6", "           ^", COMMA),
        ("width = 464,6 # wide", "           ^", COMMA),
        ("width = 11 5/8", "           ^", QUOTED),
        ("width = 5 mm", "          ^", QUOTED),
        ("name = Shelf", "       ^", NO_VALUE),
        ("owned = True", "        ^", NO_VALUE),
        ("name = ", "       ^", NO_VALUE),
        ("width: 300", "     ^", NO_EQUALS),
        ("width", "     ^", NO_EQUALS),
        ("= 5", "^", NO_STATEMENT),
        ('name = "Shelf', "             ^", NOT_CLOSED),
        ("name = 'Shelf", "       ^^^^^^", NOT_CLOSED),
        ('file = "C:\\parts.csv"', "            ^", BACKSLASH),
        ("[saw", "    ^", HEADING),
        ("[[sheet]", "       ^", HEADING),
        ("[job]", "    ^", TABLE_TWICE),
        ("first = 2", "         ^", TWICE),
        ("trim = { left = 1, left = 2 }", "                           ^", TWICE),
        ("trim = { left = 1 right = 2 }", "                  ^", BRACES),
        ("measured = [17.7 17.8]", "                 ^", LIST),
        ('name = "a\x00b"', "         ^", SIGN),
    ],
)  # fmt: skip
def test_a_slip_is_named_in_plain_words(line: str, marks: str, words: tuple[str, str]) -> None:
    shown = "".join(sign if sign.isprintable() else " " for sign in line).rstrip()
    assert refused(f"[job]\nfirst = 1\n{line}\n[keep]\n") == (
        f"job.toml, line 3: {words[0]}.\n    {shown}\n    {marks}\n{words[1]}"
    )


@pytest.mark.parametrize("text", ["a = 1" + "0" * 5000, "a = " + "[" * 5000])
def test_what_no_person_writes_is_refused_too(text: str) -> None:
    assert refused(text) == (
        "job.toml: it has a number that is too long, or too many brackets.\nCheck the figures."
    )


def test_a_slip_in_the_last_line_is_found_there() -> None:
    assert refused('a = 1\nname = """x\n\n') == (
        "job.toml, line 2: a quotation mark is opened and not closed.\n"
        '    name = """x\n'
        "               ^\n"
        'Close the text on the same line with the same mark, such as "birch plywood".'
    )


@pytest.mark.property
@given(st.text(st.sampled_from("[]={}\"'#., \nab1\\e-"), max_size=60))
def test_any_text_is_read_or_refused_with_one_fault(text: str) -> None:
    try:
        parse_toml(text, "job.toml")
    except InputError as error:
        message = str(error)
    else:
        message = "job.toml"
    assert message.startswith("job.toml")
    assert "TOML" not in message  # every fault that these signs make has words of its own
