"""Lengths: whole nanometres, exact for millimetres and inches alike.

A bare number in this project is a length in nanometres. Text becomes a length once, through
`Fraction`, and a length becomes text once, on the page; nothing is rounded in between unless a
function with "round" in its name does it.

1 in = 25.4 mm exactly (international yard and pound agreement, 1959), so 1/64 in and 0.001 in
are whole nanometres.
"""

import re
from decimal import Decimal
from enum import Enum
from fractions import Fraction
from typing import TypeAlias

from nesting.errors import Fault, InputError

Length: TypeAlias = int

NM_PER_MM = 1_000_000
NM_PER_INCH = 25_400_000
FINEST_FRACTION = 64
LONGEST_TEXT = 60


class Unit(Enum):
    """The unit that a file or a page uses."""

    MM = "mm"
    INCH = "in"

    @property
    def nanometres(self) -> int:
        """Nanometres in one of this unit."""
        return NM_PER_MM if self is Unit.MM else NM_PER_INCH


_ADVICE = "Write a number, such as 464.6, 18 mm or 23/32 in."
_SUFFIXES = {
    "mm": Unit.MM,
    "in": Unit.INCH,
    "inch": Unit.INCH,
    "inches": Unit.INCH,
    '"': Unit.INCH,
    "″": Unit.INCH,
}
_FOREIGN = {"cm", "m", "dm", "ft", "'", "′", "feet", "foot", "yd", "um", "µm", "km"}
_NUMBER = re.compile(r"(?P<whole>[0-9]{1,15})?(?P<decimals>\.[0-9]{0,50})?")
_FRACTION = re.compile(
    r"(?:(?P<whole>[0-9]{1,9})(?:\s+|\s*-\s*))?"
    r"(?P<numerator>[0-9]{1,9})\s*/\s*(?P<denominator>[0-9]{1,9})"
)
_SUFFIXED = re.compile(r"(?P<figures>.*?)\s*(?P<suffix>[a-zµ]+|[\"″'′])?", re.IGNORECASE)


def mm(value: int | str | Decimal) -> Length:
    """Return a length given in millimetres, with up to 3 decimals.

    >>> mm("17.7")
    17700000
    """
    return parse_length(str(value), Unit.MM)


def inch(value: int | str | Decimal) -> Length:
    """Return a length given in inches: whole, up to 3 decimals, or fractions down to 1/64.

    >>> inch("23/32"), inch("14 1/8")
    (18256250, 358775000)
    """
    return parse_length(str(value), Unit.INCH)


def parse_length(text: str, unit: Unit) -> Length:
    """Return the length that a text means.

    Args:
        text: Such as "464.6", "23/32 in", '14 1/8"' or "18 mm". A unit in the text wins.
        unit: What a bare number is in.

    Raises:
        InputError: With one fault that has no place yet. The text is not a length, is negative,
            is finer than can be marked, or uses a unit that this project does not.
    """
    trimmed = text.strip()
    if len(trimmed) > LONGEST_TEXT:
        raise _fault(trimmed[:LONGEST_TEXT] + "…", "is not a length", _ADVICE)
    match = _SUFFIXED.fullmatch(trimmed)
    figures, suffix = (match["figures"], (match["suffix"] or "").lower()) if match else ("", "")
    if suffix in _FOREIGN:
        raise _fault(text, f"is in {suffix!r}", "Write millimetres (18 mm) or inches (23/32 in).")
    if suffix and suffix not in _SUFFIXES:
        raise _fault(text, "is not a length", _ADVICE)
    if figures.startswith(("-", "\N{MINUS SIGN}")):
        raise _fault(text, "is negative", "Write a length of 0 or more.")
    return _value(text, figures, _SUFFIXES.get(suffix, unit))


def _value(text: str, figures: str, unit: Unit) -> Length:
    fraction = _FRACTION.fullmatch(figures)
    if fraction:
        return _fraction_value(text, fraction, unit)
    number = _NUMBER.fullmatch(figures)
    if not number or not any(character.isdigit() for character in figures):
        raise _fault(text, "is not a length", _ADVICE)
    decimals = (number["decimals"] or ".")[1:].rstrip("0")
    if len(decimals) > 3:  # noqa: PLR2004 - the finest decimal that is whole in both units
        raise _fault(text, "is finer than can be marked", "Give at most 3 decimals.")
    return int(Fraction(f"{number['whole'] or 0}.{decimals or 0}") * unit.nanometres)


def _fraction_value(text: str, fraction: re.Match[str], unit: Unit) -> Length:
    denominator = int(fraction["denominator"])
    if unit is Unit.MM:
        raise _fault(text, "is a fraction of a millimetre", "Write a decimal, such as 0.5.")
    if denominator not in (2, 4, 8, 16, 32, FINEST_FRACTION):
        raise _fault(
            text,
            "is not on a tape measure",
            "Use halves, quarters, 8ths, 16ths, 32nds or 64ths of an inch, or a decimal.",
        )
    if fraction["whole"] and int(fraction["numerator"]) >= denominator:
        raise _fault(text, "has a fraction that is not less than 1", "Write it such as 11 5/8.")
    inches = int(fraction["whole"] or 0) + Fraction(int(fraction["numerator"]), denominator)
    return int(inches * NM_PER_INCH)


def _fault(text: str, what: str, remedy: str) -> InputError:
    return InputError([Fault(where="", what=f"{text.strip()!r} {what}", remedy=remedy)])


def format_length(length: Length, unit: Unit) -> str:
    """Return the text of a length without its unit, exact where the unit allows it.

    A length that was written in this unit reads back as itself. One that was not (18 mm on an
    inch page) is given to the nearest 0.001 of the unit.

    >>> format_length(mm("464.6"), Unit.MM), format_length(inch("14 1/8"), Unit.INCH)
    ('464.6', '14 1/8')
    """
    if unit is Unit.INCH and length * FINEST_FRACTION % NM_PER_INCH == 0:
        return _format_fraction(length)
    thousandths = round_to(length, unit.nanometres // 1000) // (unit.nanometres // 1000)
    text = f"{abs(thousandths) // 1000}.{abs(thousandths) % 1000:03d}".rstrip("0").rstrip(".")
    return f"-{text}" if thousandths < 0 else text


def format_run(length: Length, unit: Unit) -> str:
    """Return a long run, such as all that is sawn, in metres or feet to 0.1, with its unit.

    >>> format_run(mm(15750), Unit.MM), format_run(inch(18), Unit.INCH)
    ('15.8 m', '1.5 ft')
    """
    whole, name = (1000 * NM_PER_MM, "m") if unit is Unit.MM else (12 * NM_PER_INCH, "ft")
    tenths = (20 * length + whole) // (2 * whole)
    return f"{tenths // 10}.{tenths % 10} {name}"


def _format_fraction(length: Length) -> str:
    whole, part = divmod(abs(length), NM_PER_INCH)
    fraction = Fraction(part, NM_PER_INCH)
    pieces = [str(whole)] if whole or not part else []
    if part:
        pieces.append(f"{fraction.numerator}/{fraction.denominator}")
    return ("-" if length < 0 else "") + " ".join(pieces)


def round_to(length: Length, step: Length) -> Length:
    """Return the multiple of step nearest to a length, halves upwards.

    >>> round_to(mm("464.75"), mm("0.5")) == mm(465)
    True
    """
    return (2 * length + step) // (2 * step) * step
