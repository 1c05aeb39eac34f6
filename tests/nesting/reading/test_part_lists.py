from pathlib import Path

import pytest

from tests.nesting.reading.job_files import SHEET, message, read, write

ROWS = "name,length,width\nSide,600,300\n"


def job(name: str) -> str:
    return f'{SHEET}[[part_list]]\nfile = "{name}"\n'


def test_a_list_is_looked_for_beside_the_job_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "lists").mkdir()
    (tmp_path / "elsewhere").mkdir()
    write(tmp_path / "lists", ROWS, "parts.csv")
    monkeypatch.chdir(tmp_path / "elsewhere")
    assert [part.name for part in read(tmp_path, job("lists/parts.csv")).parts] == ["Side"]


def test_a_list_may_be_named_by_its_whole_path(tmp_path: Path) -> None:
    path = write(tmp_path, ROWS, "parts.csv")
    assert len(read(tmp_path, job(path.as_posix())).parts) == 1


@pytest.mark.parametrize("name", ["parts.CSV", "parts.tsv", "parts.txt"])
def test_text_may_have_other_endings(tmp_path: Path, name: str) -> None:
    write(tmp_path, ROWS, name)
    assert len(read(tmp_path, job(name)).parts) == 1


def place(name: str) -> tuple[str, str]:
    return (
        "job.toml, line 9, [[part_list]] 1, key 'file': ",
        f'    file = "{name}"\n           {"^" * (len(name) + 2)}\n',
    )


def test_a_list_that_is_not_there_is_named_at_its_line(tmp_path: Path) -> None:
    where, excerpt = place("none.csv")
    assert message(tmp_path, job("none.csv")) == (
        f"{where}'none.csv': there is no such file.\n{excerpt}Check the name and the folder."
    )


def test_a_folder_is_no_list(tmp_path: Path) -> None:
    (tmp_path / "folder.csv").mkdir()
    where, excerpt = place("folder.csv")
    assert message(tmp_path, job("folder.csv")) == (
        f"{where}'folder.csv': this is a folder.\n{excerpt}Name a file in it."
    )


@pytest.mark.parametrize("name", ["parts.pdf", "parts.xls", "parts"])
def test_another_kind_of_file_is_refused(tmp_path: Path, name: str) -> None:
    where, excerpt = place(name)
    assert message(tmp_path, job(name)) == (
        f"{where}'{name}' is not a kind of part list that can be read.\n"
        f"{excerpt}"
        "Save it as one of .csv, .tsv, .xlsx, .ods."
    )


def test_a_list_without_a_file_is_asked_for_one(tmp_path: Path) -> None:
    assert message(tmp_path, SHEET + "[[part_list]]\nflie = 3\n") == (
        "job.toml, line 8, [[part_list]] 1: 'file' is missing.\n"
        'Add a line such as file = "...".\n'
        "job.toml, line 9, [[part_list]] 1: 'flie' is not known here.\n"
        "    flie = 3\n"
        "    ^^^^\n"
        "Did you mean 'file'? Known here: 'file'."
    )


def test_faults_of_several_lists_come_in_the_order_of_the_job_file(tmp_path: Path) -> None:
    write(tmp_path, "name,length,width\nSide,x,y\n", "b.csv")
    write(tmp_path, "name,length,width\nTop,x,300\n", "a.csv")
    text = (
        '[[part_list]]\nfile = "b.csv"\n[saw]\nkerf = -1\n[[part_list]]\nfile = "a.csv"\n' + SHEET
    )
    places = [line for line in message(tmp_path, text).split("\n") if ": " in line]
    assert [line.partition(":")[0] for line in places] == [
        "b.csv, row 2, column 'length'",
        "b.csv, row 2, column 'width'",
        "job.toml, line 4, [saw], key 'kerf'",
        "a.csv, row 2, column 'length'",
    ]
