"""Figures as they are printed: each rounded once, from its exact value.

Millimetres to 0.1 without a trailing .0, inches to the nearest 1/64 as a reduced fraction.
"""

from decimal import ROUND_FLOOR, Decimal
from fractions import Fraction

from nesting.lengths import FINEST_FRACTION, NM_PER_INCH, Length, Unit, format_length, mm, round_to

PRINTED_STEP: dict[Unit, Length] = {
    Unit.MM: mm("0.1"),
    Unit.INCH: NM_PER_INCH // FINEST_FRACTION,
}
"""The finest step that is printed."""

CENT = Decimal("0.01")


def show(length: Length, unit: Unit) -> str:
    """Return a length as printed, without its unit.

    >>> show(mm("17.75"), Unit.MM), show(mm(18), Unit.INCH), show(-mm("30.4"), Unit.MM)
    ('17.8', '45/64', '-30.4')
    """
    return format_length(round_to(length, PRINTED_STEP[unit]), unit)


def show_with_unit(length: Length, unit: Unit) -> str:
    """Return a length as printed, with its unit."""
    return f"{show(length, unit)} {unit.value}"


def show_size(first: Length, second: Length, unit: Unit) -> str:
    """Return two lengths as printed.

    >>> show_size(mm(562), mm(300), Unit.MM)
    '562 × 300'
    """
    return f"{show(first, unit)} × {show(second, unit)}"


def show_all(lengths: list[Length], unit: Unit) -> list[str]:
    """Return the lengths of a sum as text, so that the printed figures add up.

    They are printed like all other figures where that changes none of them; else, as far as the
    unit allows, exactly.
    """
    if all(length % PRINTED_STEP[unit] == 0 for length in lengths):
        return [show(length, unit) for length in lengths]
    return [format_length(length, unit) for length in lengths]


def show_kg(mass: Fraction) -> str:
    """Return a mass in kilograms to 0.1.

    >>> show_kg(Fraction("36.704"))
    '36.7'
    """
    tenths = (mass * 20 + 1) // 2
    return f"{tenths // 10}.{tenths % 10}"


def show_money(amount: Decimal) -> str:
    """Return an amount of money with two decimals, rounded down, so that a bound stays one."""
    return f"{amount.quantize(CENT, rounding=ROUND_FLOOR)}"


def to_whole(minutes: Decimal) -> int:
    """Return whole minutes, halves upwards."""
    return int((minutes * 2 + 1) // 2)


def count_of(number: int, what: str) -> str:
    """Return a number with its noun, with an s unless there is one."""
    return f"{number} {what}" if number == 1 else f"{number} {what}s"
