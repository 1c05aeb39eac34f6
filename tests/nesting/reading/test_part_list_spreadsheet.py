from collections.abc import Callable, Sequence
from datetime import date
from pathlib import Path

import openpyxl
import pytest
from odf.opendocument import OpenDocumentSpreadsheet
from odf.table import Table, TableCell, TableRow
from odf.text import P

from nesting.lengths import mm
from nesting.parts import Grain
from tests.nesting.reading.job_files import SHEET, message, read

Rows = Sequence[Sequence[object]]


def write_xlsx(path: Path, rows: Rows, *more: Rows) -> None:
    """Write a workbook with openpyxl, which the project itself does not read with."""
    workbook = openpyxl.Workbook()
    for number, content in enumerate([rows, *more]):
        sheet = workbook.active if number == 0 else workbook.create_sheet(f"Sheet {number}")
        for row in content:
            sheet.append(list(row))
    workbook.save(path)


def write_ods(path: Path, rows: Rows) -> None:
    """Write a spreadsheet with odfpy, which the project itself does not read with."""
    document = OpenDocumentSpreadsheet()
    table = Table(name="Parts")
    for row in rows:
        table_row = TableRow()
        for value in row:
            if isinstance(value, int | float):
                cell = TableCell(valuetype="float", value=value)
            else:
                cell = TableCell(valuetype="string")
                cell.addElement(P(text="" if value is None else str(value)))
            table_row.addElement(cell)
        table.addElement(table_row)
    document.spreadsheet.addElement(table)
    document.save(str(path))


def job(name: str) -> str:
    return f'{SHEET}[[part_list]]\nfile = "{name}"\n'


ROWS: Rows = [
    ["Name", "Length", "Width", "Count", "Grain"],
    ["Side", 464.6, 300, 2, "length"],
    [12, "11 5/8 in", 17.7, None, None],
    [],
    ["Top", 600.0, "300 mm", 1.0, "ANY"],
]


@pytest.mark.parametrize(("name", "save"), [("parts.xlsx", write_xlsx), ("parts.ods", write_ods)])
def test_a_spreadsheet_of_either_kind_gives_the_same_parts(
    tmp_path: Path, name: str, save: Callable[[Path, Rows], None]
) -> None:
    save(tmp_path / name, ROWS)
    parts = read(tmp_path, job(name)).parts
    assert [(p.name, p.length, p.width, p.count, p.grain) for p in parts] == [
        ("Side", mm("464.6"), mm(300), 2, Grain.LENGTH),
        ("12", 295_275_000, mm("17.7"), 1, Grain.ANY),
        ("Top", mm(600), mm(300), 1, Grain.ANY),
    ]


def test_a_list_may_begin_below_the_first_row_and_beside_the_first_column(tmp_path: Path) -> None:
    rows: Rows = [[], [None, "name", "length", "width"], [None, "Side", 600, -300]]
    write_xlsx(tmp_path / "parts.xlsx", rows)
    assert message(tmp_path, job("parts.xlsx")) == (
        "parts.xlsx, row 3, column 'width': '-300' is negative.\n"
        "    , Side, 600, -300\n"
        "                 ^^^^\n"
        "Write a length of more than 0."
    )


def test_a_sum_that_is_not_quite_the_number_it_shows_is_refused(tmp_path: Path) -> None:
    # In binary floating point, as a spreadsheet stores it, 464.6 - 446.9 is not quite 17.7.
    rows: Rows = [["name", "length", "width"], ["Side", 600, 464.6 - 446.9]]
    write_xlsx(tmp_path / "parts.xlsx", rows)
    assert message(tmp_path, job("parts.xlsx")) == (
        "parts.xlsx, row 2, column 'width': '17.70000000000005' is finer than can be marked.\n"
        "    Side, 600, 17.70000000000005\n"
        "               ^^^^^^^^^^^^^^^^^\n"
        "Round it to 3 decimals in the spreadsheet, "
        "also where fewer are shown: the result of a sum often has more."
    )


def test_a_cell_that_became_a_date_is_named(tmp_path: Path) -> None:
    rows: Rows = [["name", "length", "width"], ["Side", 600, date(2024, 5, 8)]]
    write_xlsx(tmp_path / "parts.xlsx", rows)
    assert message(tmp_path, job("parts.xlsx")) == (
        "parts.xlsx, row 2, column 'width': the cell holds the date or time 2024-05-08.\n"
        "    Side, 600, 2024-05-08\n"
        "               ^^^^^^^^^^\n"
        "Format it as text or as a plain number and type it again."
    )


@pytest.mark.parametrize(
    ("count", "shown", "what"),
    [
        (2.5, "2.5", "2.5 is not a whole number"),
        (True, "True", "true is not a whole number"),
        (0, "0", "0 is less than 1"),
        ("two", "two", "'two' is not a whole number"),
    ],
)
def test_a_count_that_is_none_is_refused(
    tmp_path: Path, count: object, shown: str, what: str
) -> None:
    write_xlsx(
        tmp_path / "parts.xlsx", [["name", "length", "width", "count"], ["Side", 600, 300, count]]
    )
    assert message(tmp_path, job("parts.xlsx")) == (
        f"parts.xlsx, row 2, column 'count': {what}.\n"
        f"    Side, 600, 300, {shown}\n"
        f"                    {'^' * len(shown)}\n"
        "Write a whole number of 1 or more."
    )


def test_an_empty_sheet_beside_the_list_does_not_matter(tmp_path: Path) -> None:
    write_xlsx(tmp_path / "parts.xlsx", [], ROWS, [])
    assert len(read(tmp_path, job("parts.xlsx")).parts) == 3


def test_two_sheets_that_hold_something_are_refused(tmp_path: Path) -> None:
    write_xlsx(tmp_path / "parts.xlsx", ROWS, ROWS)
    assert message(tmp_path, job("parts.xlsx")) == (
        "parts.xlsx: several of its sheets hold something: 'Sheet', 'Sheet 1'.\n"
        "Keep the part list alone in a file of its own."
    )


def test_an_empty_workbook_is_refused(tmp_path: Path) -> None:
    write_xlsx(tmp_path / "parts.xlsx", [])
    assert message(tmp_path, job("parts.xlsx")) == (
        "parts.xlsx: the list is empty.\n"
        "Write the headings name, length, width, count in its first row "
        "and one part in each row below."
    )


@pytest.mark.parametrize("name", ["parts.xlsx", "parts.ods"])
@pytest.mark.parametrize("content", [b"", b"name,length\n", b"PK\x03\x04 cut short"])
def test_a_file_that_is_no_spreadsheet_is_refused(
    tmp_path: Path, name: str, content: bytes
) -> None:
    (tmp_path / name).write_bytes(content)
    assert message(tmp_path, job(name)) == (
        f"{name}: it cannot be read as a spreadsheet.\nSave it again as .xlsx, .ods or .csv."
    )


def test_a_workbook_cut_short_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "parts.xlsx"
    write_xlsx(path, ROWS)
    whole = path.read_bytes()
    for length in range(0, len(whole), 97):
        path.write_bytes(whole[:length])
        assert message(tmp_path, job("parts.xlsx")) == (
            "parts.xlsx: it cannot be read as a spreadsheet.\nSave it again as .xlsx, .ods or .csv."
        )


def test_a_stray_cell_in_the_farthest_corner_is_refused_before_room_is_made_for_it(
    tmp_path: Path,
) -> None:
    workbook = openpyxl.Workbook()
    workbook.active["A1"] = "name"
    workbook.active["XFD1048576"] = "stray"
    workbook.save(tmp_path / "parts.xlsx")
    assert message(tmp_path, job("parts.xlsx")) == (
        "parts.xlsx: it reaches much farther than a part list does, perhaps by one stray cell.\n"
        "Copy the part list alone into a new spreadsheet."
    )


def test_a_number_that_is_absurdly_large_is_an_input_error(tmp_path: Path) -> None:
    write_xlsx(tmp_path / "parts.xlsx", [["name", "length", "width"], ["Side", 1e300, 300]])
    assert "column 'length': '1.000e+300' is not a length" in message(tmp_path, job("parts.xlsx"))
