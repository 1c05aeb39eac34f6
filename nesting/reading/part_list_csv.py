"""Part lists as text: one row a line, with commas, semicolons or tabs between the cells."""

import re
from dataclasses import replace

from nesting.errors import InputError
from nesting.reading.excerpts import quote
from nesting.reading.list_rows import Cell, Line, ListFile
from nesting.reading.plain_parts import PART_KEYS
from nesting.reading.values import refusal

_QUOTED = re.compile(r'"((?:[^"]|"")*)"')


def split_cells(text: str, separator: str) -> tuple[Cell, ...]:
    """Return the cells of one line.

    A cell may stand in quotation marks, doubled where it contains one; a mark inside a cell that
    does not begin with one is an ordinary sign, such as for inches.

    Args:
        text: The line.
        separator: The one sign between cells.

    Raises:
        InputError: A quotation mark is not closed, or text follows one that is.

    References:
        RFC 4180, section 2, for the quotation marks.

    >>> [cell.value for cell in split_cells('"Side, left", 600, 11 5/8"', ",")]
    ['Side, left', '600', '11 5/8"']
    """
    cells: list[Cell] = []
    start = 0
    while start <= len(text):
        first = start
        while first < len(text) and text[first] in " \t" and text[first] != separator:
            first += 1
        quoted = _QUOTED.match(text, first)
        if text[first : first + 1] == '"' and not quoted:
            raise refusal(
                "a quotation mark is opened and not closed",
                'Close it, or write inches as "in" instead of a mark.',
            )
        end = text.find(separator, quoted.end() if quoted else first)
        end = len(text) if end < 0 else end
        shown = text[first:end].rstrip()
        value = quoted[1].replace('""', '"').strip() if quoted else shown
        if quoted and shown != quoted[0]:
            raise refusal(
                "text follows a quotation mark that closes a cell",
                "Double the mark where it belongs to the text.",
            )
        cells.append(Cell(value=value, start=first, end=first + len(shown)))
        start = end + 1
    return tuple(cells)


def read_csv(text: str, file: ListFile) -> tuple[ListFile, list[Line] | None]:
    """Return the rows of a list, and the list with its separator.

    The rows are None where the headings cannot be read.

    Args:
        text: The whole file, lines ending in a newline.
        file: The list, for faults.
    """
    texts = text.split("\n")
    heading = next((line for line in texts if line.strip()), "")
    separator = max(";\t,", key=lambda sign: _known_columns(heading, sign))
    lines: list[Line] = []
    for number, line in enumerate(texts, start=1):
        if not line.strip():
            continue
        try:
            cells = split_cells(line, separator)
        except InputError as error:
            fault = error.faults[0]
            mark = line.find('"')
            file.fault(
                fault.what, fault.remedy, row=number, excerpt=quote(line, mark, len(line.rstrip()))
            )
            if not lines:
                return file, None
            continue
        lines.append(Line(number=number, text=line, cells=cells))
    return replace(file, separator=separator), lines


def _known_columns(heading: str, separator: str) -> tuple[int, int]:
    """Return how many headings are known with a separator, and how many there are."""
    try:
        names = [str(cell.value).lower() for cell in split_cells(heading, separator)]
    except InputError:
        return 0, 0
    return len(set(names) & set(PART_KEYS)), len(names)
