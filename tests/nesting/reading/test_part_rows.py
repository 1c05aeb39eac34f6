from pathlib import Path

import pytest

from tests.nesting.reading.job_files import SHEET, message, read, write

LIST = '[[part_list]]\nfile = "parts.csv"\n'


def refused(folder: Path, text: str) -> str:
    write(folder, text, "parts.csv")
    return message(folder, SHEET + LIST)


def test_a_column_that_is_not_known_names_the_nearest(tmp_path: Path) -> None:
    assert refused(tmp_path, "name,length,Widht,colour\nSide,600,300,red\n") == (
        "parts.csv, row 1: there is no column 'Widht'.\n"
        "    name,length,Widht,colour\n"
        "                ^^^^^\n"
        "Did you mean 'width'? The columns are 'name', 'length', 'width', 'count', 'grain', "
        "'material', 'thickness', 'oversize', 'face' and 'match'; take out what is not needed.\n"
        "parts.csv, row 1: there is no column 'colour'.\n"
        "    name,length,Widht,colour\n"
        "                      ^^^^^^\n"
        "Did you mean 'count'? The columns are 'name', 'length', 'width', 'count', 'grain', "
        "'material', 'thickness', 'oversize', 'face' and 'match'; take out what is not needed.\n"
        "parts.csv, row 1: the column 'width' is missing.\n"
        "    name,length,Widht,colour\n"
        "Add it to the headings."
    )


def test_a_column_twice_is_refused(tmp_path: Path) -> None:
    assert refused(tmp_path, "name,length,width,Length\nSide,600,300,600\n") == (
        "parts.csv, row 1: the column 'length' is there twice.\n"
        "    name,length,width,Length\n"
        "                      ^^^^^^\n"
        "Keep one of the two."
    )


def test_a_first_row_that_is_a_part_is_refused_in_one_sentence(tmp_path: Path) -> None:
    assert refused(tmp_path, "Side,600,300,2\nTop,600,300,2\n") == (
        "parts.csv, row 1: the first row has no heading that is known.\n"
        "    Side,600,300,2\n"
        "Write name, length, width and what else is needed of 'name', 'length', 'width', 'count', "
        "'grain', 'material', 'thickness', 'oversize', 'face' and 'match' in it, "
        "with a comma, a semicolon or a tab between them."
    )


EMPTY = (
    "parts.csv: the list is empty.\n"
    "Write the headings name, length, width, count in its first row "
    "and one part in each row below."
)


@pytest.mark.parametrize("text", ["", "\n\n", " , , \n"])
def test_an_empty_list_is_refused(tmp_path: Path, text: str) -> None:
    assert refused(tmp_path, text) == EMPTY


def test_a_list_of_headings_only_is_refused(tmp_path: Path) -> None:
    assert refused(tmp_path, "name,length,width\n,,\n") == (
        "parts.csv: it lists no part.\nWrite one part in each row below the headings."
    )


def test_an_empty_cell_that_must_be_filled_is_asked_for(tmp_path: Path) -> None:
    assert refused(tmp_path, "name,length,width\n,600,\nTop\n") == (
        "parts.csv, row 2: the cell of column 'name' is empty.\n"
        "    ,600,\n"
        "Fill it in.\n"
        "parts.csv, row 2: the cell of column 'width' is empty.\n"
        "    ,600,\n"
        "Fill it in.\n"
        "parts.csv, row 3: the cell of column 'length' is empty.\n"
        "    Top\n"
        "Fill it in.\n"
        "parts.csv, row 3: the cell of column 'width' is empty.\n"
        "    Top\n"
        "Fill it in."
    )


def test_a_cell_under_an_empty_heading_is_refused(tmp_path: Path) -> None:
    assert refused(tmp_path, "name,,length,width\nSide,left,600,300\n") == (
        "parts.csv, row 2: 'left' stands under no heading.\n"
        "    Side,left,600,300\n"
        "         ^^^^\n"
        "Take out what is too much, or write a heading above it. "
        "A number with a decimal comma is two cells here: write a point."
    )


def test_all_faults_of_a_row_are_told(tmp_path: Path) -> None:
    assert refused(tmp_path, "name;count;grain;length;width\nSide;x;across;-600;30 cm\n") == (
        "parts.csv, row 2, column 'length': '-600' is negative.\n"
        "    Side;x;across;-600;30 cm\n"
        "                  ^^^^\n"
        "Write a length of more than 0.\n"
        "parts.csv, row 2, column 'width': '30 cm' is in 'cm'.\n"
        "    Side;x;across;-600;30 cm\n"
        "                       ^^^^^\n"
        "Write millimetres (18 mm) or inches (23/32 in).\n"
        "parts.csv, row 2, column 'count': 'x' is not a whole number.\n"
        "    Side;x;across;-600;30 cm\n"
        "         ^\n"
        "Write a whole number of 1 or more.\n"
        "parts.csv, row 2, column 'grain': 'across' is not one of the choices.\n"
        "    Side;x;across;-600;30 cm\n"
        "           ^^^^^^\n"
        "Write 'length', 'width' or 'any'."
    )


def test_a_name_taken_by_a_part_of_the_job_file_is_refused(tmp_path: Path) -> None:
    write(tmp_path, "name,length,width\nTop,600,300\nShelf,600,300\n", "parts.csv")
    job = SHEET + LIST + '[[part]]\nname = "Shelf"\nlength = 562\nwidth = 300\n'
    assert message(tmp_path, job) == (
        "parts.csv, row 3, column 'name': the name 'Shelf' is taken already (line 10).\n"
        "    Shelf,600,300\n"
        "    ^^^^^\n"
        "Give every part its own name; more of the same part is a higher count."
    )


def test_a_name_taken_in_another_list_names_that_list(tmp_path: Path) -> None:
    write(tmp_path, "name,length,width\nShelf,600,300\n", "parts.csv")
    write(tmp_path, "name,length,width\nShelf,600,300\n", "more.csv")
    assert message(tmp_path, SHEET + LIST + '[[part_list]]\nfile = "more.csv"\n') == (
        "more.csv, row 2, column 'name': "
        "the name 'Shelf' is taken already (parts.csv, row 2).\n"
        "    Shelf,600,300\n"
        "    ^^^^^\n"
        "Give every part its own name; more of the same part is a higher count."
    )


def test_the_row_that_makes_a_job_too_large_is_named(tmp_path: Path) -> None:
    assert refused(tmp_path, "name,length,width,count\na,9,9,20000\nb,9,9,\n") == (
        "parts.csv, row 3: with this part the job comes to 20001 pieces, more than 20000.\n"
        "    b,9,9,\n"
        "Check the counts, or split the job."
    )


def test_parts_of_lists_follow_those_of_the_job_file(tmp_path: Path) -> None:
    write(tmp_path, "name,length,width\nTop,600,300\n", "parts.csv")
    job = SHEET + LIST + '[[part]]\nname = "Shelf"\nlength = 562\nwidth = 300\n'
    assert [part.name for part in read(tmp_path, job).parts] == ["Shelf", "Top"]


def test_a_list_far_too_long_or_too_wide_is_refused_in_one_message(tmp_path: Path) -> None:
    assert refused(tmp_path, "name,length,width\n" + "x\n" * 20_001) == (
        "parts.csv: it has 20002 rows, more than 20000.\n"
        "Check that it is the right one, or split the job."
    )
    assert refused(tmp_path, "name" + ",a" * 600 + "\nx,1,1\n") == (
        "parts.csv, row 1: the first row has 601 cells, more than 500.\n"
        "Check that it is the right one, with one part in each row."
    )
