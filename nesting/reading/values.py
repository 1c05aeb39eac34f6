"""From one written value to what it means, or to the reason why it will not do.

Each function raises an `InputError` with one fault that has no place yet; whoever knows the key
or the cell puts the place to it.
"""

from decimal import Decimal
from difflib import get_close_matches
from enum import Enum
from typing import Final, TypeVar

from nesting.errors import Fault, InputError
from nesting.lengths import Length, Unit, format_length, mm, parse_length

LONGEST: Final = mm(20_000)  # longer than any sheet, guide or part that one person saws
LONGEST_TEXT: Final = 80
LARGEST: Final = 1_000_000
DECIMALS: Final = 3

Choice = TypeVar("Choice", bound=Enum)


def as_text(value: object) -> str:
    """Return a text on one line, without blanks around it."""
    if not isinstance(value, str):
        raise refusal(f"{show(value)} is not text", "Put it in quotes.")
    text = value.strip()
    if not text:
        raise refusal("the text is empty", "Write something, or leave it out.")
    if not text.isprintable():
        raise refusal(
            "the text has a line break or a sign that cannot be printed", "Write it on one line."
        )
    if len(text) > LONGEST_TEXT:
        raise refusal(
            f"the text has {len(text)} characters", f"Write at most {LONGEST_TEXT} characters."
        )
    return text


def as_length(
    value: object, unit: Unit, *, may_be_zero: bool = False, most: Length = LONGEST
) -> Length:
    """Return a length.

    Args:
        value: A number in the unit, or text with or without a unit of its own.
        unit: What a bare number is in.
        may_be_zero: True where 0 makes sense.
        most: The longest that makes sense.
    """
    if isinstance(value, bool) or not isinstance(value, int | Decimal | str):
        raise refusal(
            f"{show(value)} is not a length",
            'Write a number, such as 464.6, or text with a unit, such as "18 mm" or "23/32 in".',
        )
    least = "0 or more" if may_be_zero else "more than 0"
    written = value if isinstance(value, str) else show(value)
    if written.strip().startswith(("-", "\N{MINUS SIGN}")):
        raise refusal(f"{written.strip()!r} is negative", f"Write a length of {least}.")
    length = parse_length(written, unit)
    if length == 0 and not may_be_zero:
        raise refusal(f"{written.strip()!r} is zero", f"Write a length of {least}.")
    if length > most:
        raise refusal(
            f"{written.strip()!r} is more than {with_unit(most, unit)}, too long to be meant",
            f"Check the figures and the unit: bare numbers are in {unit.value} here.",
        )
    return length


def as_whole(value: object, *, least: int, most: int = LARGEST) -> int:
    """Return a whole number between two limits."""
    if isinstance(value, bool) or not isinstance(value, int):
        raise refusal(
            f"{show(value)} is not a whole number", f"Write a whole number of {least} or more."
        )
    if value < least:
        raise refusal(f"{value} is less than {least}", f"Write a whole number of {least} or more.")
    if value > most:
        raise refusal(f"it is more than {most}", "Check the figure.")
    return value


def as_number(value: object, *, least: Decimal, most: Decimal = Decimal(LARGEST)) -> Decimal:
    """Return a number between two limits, with at most 3 decimals."""
    asked = f"Write a number of {least} or more"
    if isinstance(value, bool) or not isinstance(value, int | Decimal):
        raise refusal(f"{show(value)} is not a number", f"{asked}, without quotes.")
    number = Decimal(value)
    if not number.is_finite():
        raise refusal(f"{show(value)} is not a number", f"{asked}.")
    if number < least:
        raise refusal(f"{show(value)} is less than {least}", f"{asked}.")
    if number > most:
        raise refusal(f"it is more than {most}", "Check the figure.")
    if number != round(number, DECIMALS):
        raise refusal(
            f"{show(value)} has more than {DECIMALS} decimals", f"Give at most {DECIMALS} decimals."
        )
    return number


def as_flag(value: object) -> bool:
    """Return true or false."""
    if not isinstance(value, bool):
        raise refusal(
            f"{show(value)} is neither true nor false", "Write true or false, without quotes."
        )
    return value


def as_choice(value: object, kinds: type[Choice]) -> Choice:
    """Return the member of an Enum whose value it is, in small or capital letters."""
    known = [str(kind.value) for kind in kinds]
    for kind in kinds:
        if isinstance(value, str) and value.strip().lower() == kind.value:
            return kind
    raise refusal(
        f"{show(value)} is not one of the choices",
        f"{did_you_mean(value, known)}Write {listed(known, 'or')}.",
    )


def refusal(what: str, remedy: str) -> InputError:
    """Return an error with one fault that has no place yet."""
    return InputError([Fault(where="", what=what, remedy=remedy)])


def with_unit(length: Length, unit: Unit) -> str:
    """Return a length as text with its unit.

    >>> with_unit(mm(18), Unit.MM)
    '18 mm'
    """
    return f"{format_length(length, unit)} {unit.value}"


def did_you_mean(word: object, known: list[str]) -> str:
    """Return a question that names the known word nearest to another; nothing if none is near.

    >>> did_you_mean("Widht", ["length", "width"])
    "Did you mean 'width'? "
    """
    folded = {each.lower(): each for each in known}
    near = get_close_matches(str(word).strip().lower(), folded, n=1, cutoff=0.5)
    return f"Did you mean {folded[near[0]]!r}? " if near else ""


def listed(words: list[str], last: str) -> str:
    """Return words as a list for a sentence, each in quotes.

    >>> listed(["length", "width", "any"], "or")
    "'length', 'width' or 'any'"
    """
    quoted = [repr(word) for word in words]
    return f" {last} ".join([", ".join(quoted[:-1]), quoted[-1]] if quoted[1:] else quoted)


def show(value: object) -> str:
    """Return a value as the user wrote it, near enough."""
    match value:
        case bool():
            return str(value).lower()
        case Decimal():
            return _show_number(value)
        case str():
            return repr(value)
        case list():
            return "a list"
        case dict():
            return "a table"
        case _:
            return str(value)


def _show_number(number: Decimal) -> str:
    """Return a number in plain figures, by its power of ten where these would fill pages."""
    if not number.is_finite():
        return str(number).lower().replace("inity", "")
    is_long = abs(number.adjusted()) + len(number.as_tuple().digits) > LONGEST_TEXT
    return f"{number:.3e}" if is_long else f"{number:f}"
