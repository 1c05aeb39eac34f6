"""How far a spreadsheet reaches, for files written by a general library."""

import io
import zipfile

import openpyxl
import pytest

from nesting.reading.spreadsheet_size import MOST_CELLS, is_too_large


def write(*cells: str) -> bytes:
    workbook = openpyxl.Workbook()
    for cell in cells:
        workbook.active[cell] = 1
    content = io.BytesIO()
    workbook.save(content)
    return content.getvalue()


@pytest.mark.parametrize("cell", ["A1", "H20001", "Z5000", "A1048576"])
def test_a_list_of_any_sensible_length_is_read(cell: str) -> None:
    assert not is_too_large(write("A1", cell))


@pytest.mark.parametrize("cells", [("XFD1048576",), ("B1048576", "C1"), ("A1048576", "ZZ1")])
def test_the_farthest_row_and_the_farthest_column_count_together(cells: tuple[str, ...]) -> None:
    assert is_too_large(write("A1", *cells))
    assert MOST_CELLS < 3 * 1_048_576


def test_an_archive_that_unpacks_without_end_is_not_unpacked() -> None:
    content = io.BytesIO()
    with zipfile.ZipFile(content, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("content.xml", b" " * 100_000_001)
    assert len(content.getvalue()) < 200_000
    assert is_too_large(content.getvalue())


@pytest.mark.parametrize("content", [b"", b"junk", b"PK\x03\x04junk"])
def test_what_is_no_archive_is_left_to_the_reader(content: bytes) -> None:
    assert not is_too_large(content)
