"""How far the cells of a spreadsheet reach, found out before anything is made of them.

The library that reads spreadsheets makes room for every cell between the first and the last one:
a slip of the key in the last cell of an empty sheet would ask for more memory than there is.
"""

import io
import re
import zipfile
from typing import Final

MOST_CELLS: Final = 2_000_000
LARGEST_UNPACKED: Final = 100_000_000

_SHEET: Final = re.compile(r"xl/worksheets/[^/]+\.xml", re.IGNORECASE)
_ROW: Final = re.compile(rb'<(?:\w+:)?row\s[^>]*?\br="([0-9]{1,9})"')
_CELL: Final = re.compile(rb'<(?:\w+:)?c\s[^>]*?\br="([A-Za-z]{1,4})([0-9]{1,9})"')


def is_too_large(content: bytes) -> bool:
    """Return whether a spreadsheet unpacks to far more than a part list can be.

    What is no archive is left for the reader to refuse.

    References:
        ECMA-376 part 1, 18.3.1.4 and 18.3.1.73: the references of cells and rows.
    """
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            files = archive.infolist()
            if sum(file.file_size for file in files) > LARGEST_UNPACKED:
                return True
            return any(
                _reach(archive.read(file)) > MOST_CELLS
                for file in files
                if _SHEET.fullmatch(file.filename)
            )
    except (zipfile.BadZipFile, NotImplementedError, RuntimeError, OSError, EOFError, ValueError):
        return False


def _reach(sheet: bytes) -> int:
    """Return the number of cells from the first of a sheet to its farthest row and column."""
    rows = [int(match[1]) for match in _ROW.finditer(sheet)]
    cells = [(_column(match[1]), int(match[2])) for match in _CELL.finditer(sheet)]
    columns = max((column for column, _ in cells), default=1)
    return columns * max((*rows, *(row for _, row in cells)), default=0)


def _column(letters: bytes) -> int:
    """Return the number of a column: A is 1, Z 26, AA 27.

    >>> _column(b"XFD")
    16384
    """
    number = 0
    for letter in letters.upper():
        number = number * 26 + letter - ord("A") + 1
    return number
