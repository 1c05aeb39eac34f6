"""Part lists as spreadsheets: Office Open XML (.xlsx) and OpenDocument (.ods)."""

import io
from collections.abc import Sequence
from decimal import Decimal

from python_calamine import CalamineError, CalamineWorkbook, PasswordError

from nesting.reading.list_rows import Cell, Line, ListFile
from nesting.reading.spreadsheet_size import is_too_large


def read_spreadsheet(content: bytes, file: ListFile) -> list[Line] | None:
    """Return the rows of the one sheet that holds something; None after recording a fault.

    Numbers are taken as they are stored, to the last digit: 17.70000000000005, the result of a
    sum in the spreadsheet, is not 17.7 and is refused later with its place.

    Args:
        content: The file's bytes.
        file: The list, for faults.
    """
    if is_too_large(content):
        file.fault(
            "it reaches much farther than a part list does, perhaps by one stray cell",
            "Copy the part list alone into a new spreadsheet.",
            row=0,
        )
        return None
    try:
        workbook = CalamineWorkbook.from_filelike(io.BytesIO(content))
        tables = {
            name: workbook.get_sheet_by_name(name).to_python(skip_empty_area=False)
            for name in workbook.sheet_names
        }
    except PasswordError:
        file.fault("it is locked with a password", "Save it without one.", row=0)
        return None
    except CalamineError:
        file.fault(
            "it cannot be read as a spreadsheet", "Save it again as .xlsx, .ods or .csv.", row=0
        )
        return None
    filled = {
        name: rows
        for name, rows in tables.items()
        if any(_cell_value(value) != "" for row in rows for value in row)
    }
    if len(filled) > 1:
        names = ", ".join(repr(name) for name in filled)
        file.fault(
            f"several of its sheets hold something: {names}",
            "Keep the part list alone in a file of its own.",
            row=0,
        )
        return None
    return [
        _line(number, row) for rows in filled.values() for number, row in enumerate(rows, start=1)
    ]


def _line(number: int, row: Sequence[object]) -> Line:
    text = ""
    cells = []
    for position, raw in enumerate(row):
        value = _cell_value(raw)
        shown = f"{value:f}" if isinstance(value, Decimal) else str(value)
        text += ", " if position else ""
        cells.append(Cell(value=value, start=len(text), end=len(text) + len(shown)))
        text += shown
    return Line(number=number, text=text, cells=tuple(cells))


def _cell_value(raw: object) -> object:
    match raw:
        case bool():
            return raw
        case float():
            number = Decimal(repr(raw))
            return Decimal(int(number)) if number == number.to_integral_value() else number
        case int():
            return Decimal(raw)
        case str():
            return raw.strip()
        case _:
            return raw
