"""What is wrong with text that is not TOML, in plain words."""

import re
import tomllib
from decimal import Decimal
from typing import Any

from nesting.errors import Fault, InputError
from nesting.reading.excerpts import quote
from nesting.reading.toml_lines import STRING

_PLACE = re.compile(r" \(at (?:line (?P<line>\d+), column (?P<column>\d+)|end of document)\)$")
_COMMA = re.compile(r"=\s*\d+,\d+\s*(?:#.*)?$")

_STATEMENT = (
    "this is neither a [table], a key = value nor a # remark",
    "Write one of these on a line of its own, such as width = 300.",
)
_VALUE = (
    "the value is missing, or is text without quotes",
    (
        'Put text and fractions in quotes, such as "birch plywood" or "23/32 in"; '
        "write true and false in small letters."
    ),
)
_AFTER = (
    "something follows the value",
    (
        'Put text, units and fractions in quotes, such as "18 mm" or "11 5/8 in", '
        "and begin a new line for the next key."
    ),
)
_QUOTES = (
    "a quotation mark is opened and not closed",
    'Close the text on the same line with the same mark, such as "birch plywood".',
)
_TWICE = ("the key is written twice", "Keep one of the two.")
_TABLE_TWICE = (
    "this table is written twice",
    "Keep one of the two; several sheets or parts need double brackets, such as [[part]].",
)
_HEADING = ("the bracket is not closed", "Write [saw], or [[sheet]] where there may be several.")
_PLAIN_WORDS = {
    "Expected '='": (
        "there is no = between a key and its value",
        "Write key = value, such as width = 300.",
    ),
    "Invalid statement": _STATEMENT,
    "Invalid initial": _STATEMENT,
    "Invalid value": _VALUE,
    "Expected newline": _AFTER,
    "Unterminated string": _QUOTES,
    'Expected "\'"': _QUOTES,
    "Illegal character '\\n'": _QUOTES,
    "Found invalid character '\\n'": _QUOTES,
    "Unescaped '\\'": ("the text has a backslash", "Write / in the names of files."),
    "Cannot overwrite": _TWICE,
    "Duplicate inline": _TWICE,
    "Cannot declare": _TABLE_TWICE,
    "Cannot mutate": _TABLE_TWICE,
    "Cannot redefine": _TABLE_TWICE,
    "Expected ']": _HEADING,
    "Unclosed array": (
        "the list is not closed, or a comma is missing",
        "Write it such as [17.7, 17.8].",
    ),
    "Unclosed inline": (
        "the braces are not closed, or a comma is missing",
        "Write them on one line, such as { left = 10, right = 5 }.",
    ),
    "Illegal character": ("a sign that cannot be printed stands here", "Take it out."),
    "Found invalid": ("a sign that cannot be printed stands here", "Take it out."),
}


def parse_toml(text: str, name: str) -> dict[str, Any]:
    """Return the tables of a TOML text, with decimals as `Decimal`.

    Args:
        text: The whole file.
        name: What messages call it.

    Raises:
        InputError: With one fault, the first: after it nothing can be read for certain.
    """
    try:
        return tomllib.loads(text, parse_float=Decimal)
    except tomllib.TOMLDecodeError as error:
        raise InputError([_fault(str(error), text, name)]) from None
    except (ValueError, ArithmeticError, RecursionError):
        what = "it has a number that is too long, or too many brackets"
        raise InputError([Fault(where=name, what=what, remedy="Check the figures.")]) from None


def _fault(message: str, text: str, name: str) -> Fault:
    lines = text.split("\n")
    place = _PLACE.search(message)
    if place and place["line"]:
        number, column = int(place["line"]), int(place["column"])
    else:
        number = max((n for n, line in enumerate(lines, 1) if line.strip()), default=1)
        column = len(lines[number - 1]) + 1
    end = column
    if message.startswith('Expected "\'"'):
        number, column, end = _unclosed(lines, (number, column, column))
    line = lines[number - 1]
    what, remedy = next(
        (words for start, words in _PLAIN_WORDS.items() if message.startswith(start)),
        ("this cannot be read as TOML", "Write key = value, such as width = 300."),
    )
    if (what, remedy) == _AFTER and _COMMA.search(line):
        what, remedy = "the number has a decimal comma", "Write a decimal point, such as 464.6."
    return Fault(
        where=f"{name}, line {number}",
        what=what,
        remedy=remedy,
        excerpt=quote(line, column - 1, end),
    )


def _unclosed(lines: list[str], otherwise: tuple[int, int, int]) -> tuple[int, int, int]:
    """Return line, column and end of the first single quotation mark that is not closed.

    The standard library knows only that the file ends without it.
    """
    for number, line in enumerate(lines, start=1):
        plain = STRING.sub(lambda found: "x" * len(found[0]), line).split("#")[0]
        if "'" in plain:
            return number, plain.index("'") + 1, len(plain.rstrip())
    return otherwise
