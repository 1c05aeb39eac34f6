"""The part lists that a job file names."""

from collections.abc import Iterator
from pathlib import Path

from nesting.errors import InputError
from nesting.reading.list_rows import Line, ListFile, Row
from nesting.reading.part_list_csv import read_csv
from nesting.reading.part_list_spreadsheet import read_spreadsheet
from nesting.reading.part_rows import read_rows
from nesting.reading.tables import Table
from nesting.reading.text_files import decode, read_bytes

_TEXT = (".csv", ".tsv", ".txt")
_SPREADSHEETS = (".xlsx", ".ods")


def read_part_list(table: Table, folder: Path) -> Iterator[Row]:
    """Yield the rows of the part list that a [[part_list]] table names.

    Args:
        table: The table; its keys are checked.
        folder: The job file's folder, which a relative path begins at.
    """
    written = table.text("file")
    table.finish()
    if not table.is_sound:
        return
    path = folder / written
    if path.suffix.lower() not in (*_TEXT, *_SPREADSHEETS):
        table.fault(
            f"{written!r} is not a kind of part list that can be read",
            f"Save it as one of {', '.join((*_TEXT[:2], *_SPREADSHEETS))}.",
            "file",
        )
        return
    try:
        content = read_bytes(path)
    except InputError as error:
        fault = error.faults[0]
        table.fault(f"{written!r}: {fault.what}", fault.remedy, "file")
        return
    file, lines = _read_lines(content, ListFile(name=path.name, table=table), path.suffix.lower())
    if lines is not None:
        yield from read_rows(file, lines)


def _read_lines(content: bytes, file: ListFile, suffix: str) -> tuple[ListFile, list[Line] | None]:
    if suffix in _SPREADSHEETS:
        return file, read_spreadsheet(content, file)
    try:
        return read_csv(decode(content, file.name), file)
    except InputError as error:
        file.table.faults.add(error.faults[0], line=file.table.line)
        file.table.is_sound = False
        return file, None
