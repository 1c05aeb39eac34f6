"""The tables [[sheet]]."""

from decimal import Decimal
from typing import Final

from nesting.lengths import Length, Unit, inch, mm
from nesting.reading.defect_tables import ReadDefect, read_defects, tell_apart
from nesting.reading.stock import THICKEST
from nesting.reading.tables import Table
from nesting.reading.values import with_unit
from nesting.sheets import Sheet, SheetGrain, Trim

SMALLEST: Final = mm(50)
MOST_SHEETS: Final = 20_000
FARTHEST_READING: Final = 15  # per cent off the nominal thickness: a slip of the pen beyond
SIDES: Final = ("left", "right", "top", "bottom")


def default_trim(unit: Unit) -> Length:
    """Return what is taken off each edge where the job file does not say.

    Judgement, no source: more than the 2 mm a sheet may be short and the 5 mm that its corner may
    be out of square over its length.
    """
    return inch("3/8") if unit is Unit.INCH else mm(10)


def read_sheets(tables: tuple[Table, ...]) -> tuple[tuple[Sheet, Table], ...]:
    """Return the sheets that could be read, each with its table, after recording all faults.

    A sheet that is not sound is a kind of its own, beside the others of its table.
    """
    read = [_read_sheet(table) for table in tables]
    first: dict[str, Table] = {}
    found: list[tuple[Sheet, Table]] = []
    for (whole, defects), table in zip(read, tables, strict=True):
        told_apart = list(tell_apart(whole, defects))
        for name in dict.fromkeys((whole.name, *(sheet.name for sheet in told_apart))):
            if name in first and table.values.get("name"):
                table.fault(
                    f"the name {name!r} is taken already ({first[name].place})",
                    "Give every kind of sheet its own name.",
                    "name",
                )
            first.setdefault(name, table)
        if table.is_sound:
            found += [(sheet, table) for sheet in told_apart]
    return tuple(found)


def _read_sheet(table: Table) -> tuple[Sheet, tuple[ReadDefect, ...]]:
    name, material = table.text("name"), table.text("material")
    thickness = table.length("thickness", most=THICKEST)
    measured = table.lengths("measured", most=THICKEST)
    length, width = _read_side(table, "length"), _read_side(table, "width")
    grain = table.choice("grain", SheetGrain, SheetGrain.LENGTH)
    price = table.number("price", Decimal(0))
    count = table.whole("count", 1, least=1, most=MOST_SHEETS) if table.has("count") else None
    owned = table.flag("owned")
    trim = _read_trim(table)
    defects = read_defects(table, (length, width), count)
    table.finish()
    if table.is_sound:
        _check_readings(table, thickness, measured)
        _check_trim(table, (length, width), trim)
        _check_owned(table, price, count, owned=owned)
    sheet = Sheet(
        name=name,
        material=material,
        thickness=thickness,
        measured=measured,
        length=length,
        width=width,
        grain=grain,
        price=price,
        count=count,
        owned=owned,
        trim=trim,
    )
    return sheet, defects


def _read_side(table: Table, key: str) -> Length:
    side = table.length(key)
    if table.has(key) and side < SMALLEST:
        table.fault(
            f"{with_unit(side, table.unit)} is too small for a sheet",
            f"Check the figure: bare numbers are in {table.unit.value} here.",
            key,
        )
    return side


def _read_trim(table: Table) -> Trim:
    usual = default_trim(table.unit)
    if table.has("trim") and not isinstance(table.values["trim"], dict):
        each = table.length("trim", usual, may_be_zero=True)
        return Trim(left=each, right=each, top=each, bottom=each)
    inner = table.table("trim")
    trim = Trim(**{side: inner.length(side, usual, may_be_zero=True) for side in SIDES})
    inner.finish()
    return trim


def _check_readings(table: Table, thickness: Length, measured: tuple[Length, ...]) -> None:
    for reading in measured:
        if abs(reading - thickness) * 100 > FARTHEST_READING * thickness:
            table.fault(
                f"{with_unit(reading, table.unit)} is more than {FARTHEST_READING} % "
                f"off the thickness of {with_unit(thickness, table.unit)}",
                "Measure again, or correct the figure that is mistyped.",
                "measured",
            )


def _check_trim(table: Table, size: tuple[Length, Length], trim: Trim) -> None:
    for side, name, trims in (
        (size[0], "length", trim.left + trim.right),
        (size[1], "width", trim.top + trim.bottom),
    ):
        if trims >= side:
            table.fault(
                f"the trims leave nothing of the {name} of {with_unit(side, table.unit)}",
                "Give how much of each edge is not used, a little only.",
                "trim",
            )


def _check_owned(table: Table, price: Decimal, count: int | None, *, owned: bool) -> None:
    if owned and price:
        table.fault(
            "a sheet that is owned has a price",
            "Take the price out: the sheet costs nothing more. "
            "Or write owned = false if it is still to be bought.",
            "price",
        )
    if owned and count is None:
        table.fault(
            "a sheet is owned, but not how many of them",
            "Add a line such as count = 1.",
            "owned",
        )
