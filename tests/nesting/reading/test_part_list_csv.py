import csv
from pathlib import Path
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from nesting.errors import InputError
from nesting.lengths import mm
from nesting.parts import Grain
from nesting.reading.part_list_csv import split_cells
from tests.nesting.reading.job_files import SHEET, message, read, write

LIST = '[[part_list]]\nfile = "parts.csv"\n'


def parts_of(folder: Path, text: str) -> list[tuple[str, int, int, int]]:
    write(folder, text, "parts.csv")
    return [(p.name, p.length, p.width, p.count) for p in read(folder, SHEET + LIST).parts]


def refused(folder: Path, text: str) -> str:
    write(folder, text, "parts.csv")
    return message(folder, SHEET + LIST)


EXPECTED = [("Side", mm("464.5"), mm(300), 2), ("Top, loose", mm(600), mm("300.5"), 1)]


@pytest.mark.parametrize(
    "text",
    [
        'name,length,width,count\nSide,464.5,300,2\n"Top, loose",600,300.5,1\n',
        'name, length, width, count\nSide, 464.5, 300, 2\n"Top, loose" , 600, 300.5,\n',
        "name;length;width;count\nSide;464,5;300;2\nTop, loose;600;300,5;1\n",
        "name;length;width;count\nSide;464.5;300;2\nTop, loose;600;300.5;1\n",
        "name\tlength\twidth\tcount\nSide\t464,5\t300\t2\nTop, loose\t600\t300.5\t\n",
        "COUNT;Width;LENGTH;Name\n2;300;464,5;Side\n;300,5 mm;600;Top, loose\n",
        "\ufeffname;length;width;count\r\nSide;464,5;300;2\r\nTop, loose;600;300,5;1\r\n",
        "\n\nname;length;width;count\n\nSide;464,5;300;2\n;;;\n\nTop, loose;600;300,5;1",
        "name;length;width;count;\nSide;464,5;300;2;\nTop, loose;600;300,5;1;\n",
        '"name";"length";"width";"count"\n"Side";"464,5";"300";"2"\n"Top, loose";600;300,5;1\n',
    ],
    ids=[
        "commas",
        "blanks around",
        "semicolons",
        "semicolons and points",
        "tabs",
        "another order",
        "byte order mark",
        "blank rows",
        "semicolon at the end",
        "quotes",
    ],
)
def test_the_same_list_in_any_dress_gives_the_same_parts(tmp_path: Path, text: str) -> None:
    assert parts_of(tmp_path, text) == EXPECTED


def test_every_column_is_read(tmp_path: Path) -> None:
    write(
        tmp_path,
        "name,length,width,count,grain,material,thickness,oversize\n"
        'Side,18 1/4 in,"11 13/16""",2,Width,birch plywood,18,3\n',
        "parts.csv",
    )
    (part,) = read(tmp_path, SHEET + LIST).parts
    assert (part.length, part.width) == (mm("463.55"), 300_037_500)
    assert (part.grain, part.material, part.thickness, part.oversize) == (
        Grain.WIDTH,
        "birch plywood",
        mm(18),
        mm(3),
    )


def test_bare_numbers_of_a_list_are_in_the_unit_of_the_job(tmp_path: Path) -> None:
    write(tmp_path, "name,length,width\nSide,18 1/4,11\n", "parts.csv")
    inches = '[job]\nunits = "in"\n' + SHEET.replace("2440", "96").replace("1220", "48")
    (part,) = read(tmp_path, inches.replace("thickness = 18", 'thickness = "3/4"') + LIST).parts
    assert (part.length, part.width) == (463_550_000, 279_400_000)


def test_a_bad_cell_is_named_with_row_and_column_and_pointed_at(tmp_path: Path) -> None:
    text = "name, length, width, count\n" + "\n" * 5 + "Side panel, 600 mm, 11 5/9 in, 2\n"
    assert refused(tmp_path, text) == (
        "parts.csv, row 7, column 'width': '11 5/9 in' is not on a tape measure.\n"
        "    Side panel, 600 mm, 11 5/9 in, 2\n"
        "                        ^^^^^^^^^\n"
        "Use halves, quarters, 8ths, 16ths, 32nds or 64ths of an inch, or a decimal."
    )


def test_a_decimal_comma_between_commas_is_told_from_a_cell_too_many(tmp_path: Path) -> None:
    assert refused(tmp_path, "name,length,width\nSide,464,5,300\n") == (
        "parts.csv, row 2: '300' stands under no heading.\n"
        "    Side,464,5,300\n"
        "               ^^^\n"
        "Take out what is too much, or write a heading above it. "
        "A number with a decimal comma is two cells here: write a point."
    )


def test_a_decimal_comma_between_commas_is_told_from_an_empty_cell_too_many(
    tmp_path: Path,
) -> None:
    assert refused(tmp_path, "name,length,width,count,grain\nSide,464,5,300,,\n") == (
        "parts.csv, row 2: the row has 6 cells, but there are 5 headings.\n"
        "    Side,464,5,300,,\n"
        "                    ^\n"
        "Take out what is too much, or write a heading above it. "
        "A number with a decimal comma is two cells here: write a point."
    )


def test_a_decimal_comma_in_quotes_between_commas_is_refused(tmp_path: Path) -> None:
    assert refused(tmp_path, 'name,length,width\nSide,"464,5",300\n') == (
        "parts.csv, row 2, column 'length': '464,5' is not a length.\n"
        '    Side,"464,5",300\n'
        "         ^^^^^^^\n"
        "Write a number, such as 464.6, 18 mm or 23/32 in."
    )


def test_a_comma_that_may_stand_between_thousands_is_refused(tmp_path: Path) -> None:
    assert refused(tmp_path, "name;length;width\nSide;1,200;300\n") == (
        "parts.csv, row 2, column 'length': "
        "'1,200' may have a decimal comma or one between thousands.\n"
        "    Side;1,200;300\n"
        "         ^^^^^\n"
        "Write it without a comma, or with a decimal point."
    )


def test_a_comma_that_cannot_stand_between_thousands_is_a_decimal_comma(tmp_path: Path) -> None:
    text = "name;length;width\na;0,125 in;300\nb;1200,125;300\nc;,5 in;300\n"
    assert [length for _, length, _, _ in parts_of(tmp_path, text)] == [
        3_175_000,
        mm("1200.125"),
        12_700_000,
    ]


def test_too_many_commas_in_a_number_are_refused(tmp_path: Path) -> None:
    assert refused(tmp_path, "name;length;width\nSide;1,2,3;300\n").startswith(
        "parts.csv, row 2, column 'length': '1,2.3' is not a length.\n"
    )


def test_a_quotation_mark_that_is_not_closed_is_refused(tmp_path: Path) -> None:
    assert refused(tmp_path, 'name,length,width\n"Side,600,300\nTop,600,300\n') == (
        "parts.csv, row 2: a quotation mark is opened and not closed.\n"
        '    "Side,600,300\n'
        "    ^^^^^^^^^^^^^\n"
        'Close it, or write inches as "in" instead of a mark.'
    )


def test_text_behind_a_closed_quotation_mark_is_refused(tmp_path: Path) -> None:
    assert refused(tmp_path, 'name,length,width\n"Side" left,600,300\n') == (
        "parts.csv, row 2: text follows a quotation mark that closes a cell.\n"
        '    "Side" left,600,300\n'
        "    ^^^^^^^^^^^^^^^^^^^\n"
        "Double the mark where it belongs to the text."
    )


def test_headings_that_cannot_be_read_are_the_only_fault(tmp_path: Path) -> None:
    assert refused(tmp_path, '"name,length,width\nSide,600\n') == (
        "parts.csv, row 1: a quotation mark is opened and not closed.\n"
        '    "name,length,width\n'
        "    ^^^^^^^^^^^^^^^^^^\n"
        'Close it, or write inches as "in" instead of a mark.'
    )


def test_a_list_that_is_not_utf_8_names_its_line(tmp_path: Path) -> None:
    (tmp_path / "parts.csv").write_bytes("name,length,width\nTür,600,300\n".encode("latin-1"))
    assert message(tmp_path, SHEET + LIST) == (
        "parts.csv, line 2: a letter is not written in UTF-8.\n"
        "    T�r,600,300\n"
        "     ^\n"
        "Save the file again with the encoding UTF-8."
    )


@pytest.mark.parametrize(
    ("line", "cells"),
    [
        ("", [""]),
        (",", ["", ""]),
        ('a," b ",c', ["a", "b", "c"]),
        ('"a ""b"" c",d', ['a "b" c', "d"]),
        ('11 5/8",2', ['11 5/8"', "2"]),
        ('"11 5/8""",2', ['11 5/8"', "2"]),
        ('""', [""]),
    ],
)
def test_a_line_is_split_into_cells(line: str, cells: list[str]) -> None:
    assert [cell.value for cell in split_cells(line, ",")] == cells


CELLS = st.text(st.sampled_from('ab1 ,;"\t5/'), max_size=8)


@pytest.mark.property
@pytest.mark.parametrize("quoting", [csv.QUOTE_ALL, csv.QUOTE_MINIMAL])
@given(st.lists(CELLS, min_size=1, max_size=6), st.sampled_from(",;\t"))
def test_what_the_standard_library_writes_is_read_back(
    quoting: Literal[0, 1], cells: list[str], separator: str
) -> None:
    # Reference: the csv module of the standard library, apart from blanks around a cell.
    lines: list[str] = []

    class Lines:
        def write(self, line: str) -> None:
            lines.append(line)

    writer = csv.writer(Lines(), delimiter=separator, lineterminator="", quoting=quoting)
    writer.writerow(cells)
    found = split_cells(lines[0], separator)
    assert [cell.value for cell in found] == [cell.strip() for cell in cells]


@pytest.mark.property
@given(st.text(st.sampled_from('ab1 ,;"\t'), max_size=30), st.sampled_from(",;\t"))
def test_any_line_is_split_into_cells_that_stand_where_they_say_or_refused(
    line: str, separator: str
) -> None:
    try:
        cells = split_cells(line, separator)
    except InputError:
        return
    for cell in cells:
        shown = line[cell.start : cell.end]
        assert cell.value == shown or shown.startswith('"')
    if '"' not in line:
        assert [cell.value for cell in cells] == [each.strip() for each in line.split(separator)]
