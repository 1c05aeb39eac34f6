"""The tables [yard] and [car]."""

from collections.abc import Iterator
from decimal import Decimal
from typing import Final

from nesting.car import Car
from nesting.job import Assumption
from nesting.lengths import Length, Unit, format_length, inch, mm
from nesting.reading.tables import Table
from nesting.reading.values import with_unit
from nesting.yard import Yard

WIDEST_KERF: Final = mm(15)
MOST_CUTS: Final = 20
LARGEST_MIN_PIECE: Final = mm(2000)
ROUGHEST: Final = mm(20)
LARGEST_CLEARANCE: Final = mm(300)

_INCH_YARD: Final = Yard(kerf=inch("1/8"), min_piece=inch(12), rough=inch("1/8"), unit=Unit.INCH)
_SIDES: Final = 2


def read_yard(table: Table) -> Yard | None:
    """Return what the yard does, from the [yard] table; None where the file has none."""
    if table.is_absent:
        return None
    usual = _INCH_YARD if table.unit is Unit.INCH else Yard()
    yard = Yard(
        kerf=table.length("kerf", usual.kerf, may_be_zero=True, most=WIDEST_KERF),
        max_cuts=table.whole("max_cuts", usual.max_cuts, least=1, most=MOST_CUTS),
        min_piece=table.length(
            "min_piece", usual.min_piece, may_be_zero=True, most=LARGEST_MIN_PIECE
        ),
        price_per_cut=table.number("price_per_cut", usual.price_per_cut),
        rough=table.length("rough", usual.rough, most=ROUGHEST),
        unit=table.choice("unit", Unit, usual.unit),
    )
    table.finish()
    return yard


def read_car(table: Table) -> Car | None:
    """Return the car of the [car] table; None where the file has none."""
    if table.is_absent:
        return None
    width, height = _read_opening(table)
    usual = inch("3/4") if table.unit is Unit.INCH else mm(20)
    floor_length = table.length("floor_length")
    car = Car(
        opening_width=width,
        opening_height=height,
        floor_length=floor_length,
        arch_width=table.length("arch_width", width),
        clearance=table.length("clearance", usual, may_be_zero=True, most=LARGEST_CLEARANCE),
    )
    table.finish()
    if table.is_sound and min(car.room_length, car.room_width, car.room_height) <= 0:
        table.fault(
            "the clearance leaves no room in the car",
            "Clearance is kept free on every side: give a smaller one, or measure the car again.",
        )
    return car


def _read_opening(table: Table) -> tuple[Length, Length]:
    """Return width and height of the opening; a stand-in after recording a fault."""
    example = "[39, 28]" if table.unit is Unit.INCH else "[1000, 700]"
    sides = table.lengths("opening")
    if "opening" not in table.values:
        table.fault(
            "'opening' is missing",
            f"Add a line such as opening = {example}: the width of the open tailgate, then its "
            "height.",
        )
    elif len(sides) == _SIDES:
        return sides[0], sides[1]
    elif table.is_sound:
        table.fault(
            "two lengths are needed",
            f"Write the width and the height of the open tailgate, such as opening = {example}.",
            "opening",
        )
    return mm(1000), mm(1000)


def assume_yard(yard: Yard | None, table: Table) -> Iterator[Assumption]:
    """Yield what the plan takes for granted about the yard."""
    if yard is None:
        return
    unit = table.unit
    for key, name, value, check in (
        ("kerf", "yard's kerf", with_unit(yard.kerf, unit), "Ask the yard."),
        ("max_cuts", "yard's cuts in one sheet, at most", f"{yard.max_cuts}", "Ask the yard."),
        ("min_piece", "yard's smallest piece", with_unit(yard.min_piece, unit), "Ask the yard."),
        (
            "rough",
            "a yard cut may be off by",
            with_unit(yard.rough, unit),
            "Measure the pieces before you load them.",
        ),
        (
            "unit",
            "unit of the yard's page",
            "millimetres" if yard.unit is Unit.MM else "inches",
            "Ask what is on the yard's tape.",
        ),
    ):
        yield Assumption(name=name, value=value, is_default=not table.has(key), check=check)
    yield Assumption(
        name="price of a yard cut",
        value=f"{yard.price_per_cut:f}" if yard.price_per_cut != Decimal(0) else "0: cuts are free",
        is_default=not table.has("price_per_cut"),
        check="Ask the yard.",
    )


def assume_car(car: Car | None, table: Table) -> Iterator[Assumption]:
    """Yield what the plan takes for granted about the car."""
    if car is None:
        return
    unit = table.unit
    opening = f"{format_length(car.opening_width, unit)} × {with_unit(car.opening_height, unit)}"
    for key, name, value, check in (
        (
            "opening",
            "opening of the car, width × height",
            opening,
            "Measure where it is narrowest and lowest, latch and seal included.",
        ),
        (
            "floor_length",
            "length of the car's floor",
            with_unit(car.floor_length, unit),
            "Measure with the seats down, at the height of the load, to the closed tailgate.",
        ),
        (
            "arch_width",
            "width between the wheel arches",
            with_unit(car.arch_width, unit),
            "Measure between the arches, trim panels included.",
        ),
        (
            "clearance",
            "free on every side in the car",
            with_unit(car.clearance, unit),
            "Think of fingers, blankets and the tailgate's lock.",
        ),
    ):
        yield Assumption(name=name, value=value, is_default=not table.has(key), check=check)
