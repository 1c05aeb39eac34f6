"""The rows of a part list, and the headings above them."""

from collections.abc import Iterator, Sequence
from typing import Final

from nesting.reading.excerpts import quote
from nesting.reading.list_rows import Cell, Line, ListFile, Row
from nesting.reading.plain_parts import MOST_COPIES, PART_KEYS
from nesting.reading.values import did_you_mean, listed, show

MOST_COLUMNS: Final = 500
NEEDED: Final = ("name", "length", "width")


def read_rows(file: ListFile, lines: Sequence[Line]) -> Iterator[Row]:
    """Yield the rows below the headings, after recording what is wrong with these.

    The first row that is not blank holds the headings. Blank rows are skipped.
    """
    filled = [line for line in lines if any(cell.value != "" for cell in line.cells)]
    if not filled and not file.table.is_sound:
        return
    if not filled:
        file.fault(
            "the list is empty",
            "Write the headings name, length, width, count in its first row "
            "and one part in each row below.",
            row=0,
        )
        return
    if len(filled) > MOST_COPIES + 1:
        file.fault(
            f"it has {len(filled)} rows, more than {MOST_COPIES}",
            "Check that it is the right one, or split the job.",
            row=0,
        )
        return
    columns = _columns(file, filled[0])
    if columns and not filled[1:] and file.table.is_sound:
        file.fault("it lists no part", "Write one part in each row below the headings.", row=0)
    for line in filled[1:] if columns else ():
        stray = _find_stray(line, columns, is_strict=file.separator == ",")
        if stray is None:
            yield Row(
                file=file,
                line=line,
                cells={
                    column: cell
                    for column, cell in zip(columns, line.cells, strict=False)
                    if column in PART_KEYS and cell.value != ""
                },
                columns=frozenset(columns),
                unit=file.table.unit,
            )
            continue
        comma = " A number with a decimal comma is two cells here: write a point."
        file.fault(
            f"{show(stray.value)} stands under no heading"
            if stray.value != ""
            else f"the row has {len(line.cells)} cells, but there are {len(columns)} headings",
            "Take out what is too much, or write a heading above it."
            + (comma if file.separator == "," else ""),
            row=line.number,
            excerpt=quote(line.text, stray.start, stray.end),
        )


def _find_stray(line: Line, columns: list[str], *, is_strict: bool) -> Cell | None:
    """Return a cell that stands under no heading, one that holds something if there is one.

    Where strict, also an empty cell beyond the headings: between commas it is the trace of a
    decimal comma further left, after which every number of the row is taken for another one.
    """
    beyond = line.cells[len(columns) :]
    under_none = [cell for name, cell in zip(columns, line.cells, strict=False) if not name]
    filled = [cell for cell in (*beyond, *under_none) if cell.value != ""]
    if filled:
        return filled[0]
    return beyond[0] if beyond and is_strict else None


def _columns(file: ListFile, heading: Line) -> list[str]:
    """Return the names of the columns; none where nothing can be made of the headings."""
    names = [str(cell.value).strip().lower() for cell in heading.cells]
    known = list(PART_KEYS)
    if len(names) > MOST_COLUMNS:
        file.fault(
            f"the first row has {len(names)} cells, more than {MOST_COLUMNS}",
            "Check that it is the right one, with one part in each row.",
            row=heading.number,
        )
        return []
    if not set(names) & set(known):
        file.fault(
            "the first row has no heading that is known",
            f"Write {', '.join(NEEDED)} and what else is needed of {listed(known, 'and')} in it, "
            "with a comma, a semicolon or a tab between them.",
            row=heading.number,
            excerpt=(heading.text.strip(),),
        )
        return []
    for position, (name, cell) in enumerate(zip(names, heading.cells, strict=True)):
        excerpt = quote(heading.text, cell.start, cell.end)
        if name and name not in known:
            file.fault(
                f"there is no column {str(cell.value)!r}",
                f"{did_you_mean(name, known)}The columns are {listed(known, 'and')}; "
                "take out what is not needed.",
                row=heading.number,
                excerpt=excerpt,
            )
        elif name and name in names[:position]:
            file.fault(
                f"the column {name!r} is there twice",
                "Keep one of the two.",
                row=heading.number,
                excerpt=excerpt,
            )
    for name in NEEDED:
        if name not in names:
            file.fault(
                f"the column {name!r} is missing",
                "Add it to the headings.",
                row=heading.number,
                excerpt=(heading.text.strip(),),
            )
    return names
