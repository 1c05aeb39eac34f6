import os
from pathlib import Path

import pytest

from nesting.errors import InputError
from nesting.reading.text_files import LARGEST_FILE, decode, read_bytes


def refused_file(path: Path) -> str:
    with pytest.raises(InputError) as error:
        read_bytes(path)
    return str(error.value)


def refused_text(content: bytes) -> str:
    with pytest.raises(InputError) as error:
        decode(content, "parts.csv")
    return str(error.value)


def test_a_file_is_read_whole(tmp_path: Path) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"abc\r\n")
    assert read_bytes(path) == b"abc\r\n"


def test_a_missing_file_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "none.toml"
    assert refused_file(path) == f"{path}: there is no such file.\nCheck the name and the folder."


def test_a_file_below_a_file_is_refused(tmp_path: Path) -> None:
    (tmp_path / "a").write_bytes(b"")
    path = tmp_path / "a" / "job.toml"
    assert refused_file(path) == f"{path}: there is no such file.\nCheck the name and the folder."


def test_a_folder_is_refused(tmp_path: Path) -> None:
    assert refused_file(tmp_path) == f"{tmp_path}: this is a folder.\nName a file in it."


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes on this system")
def test_a_pipe_is_refused_instead_of_waited_for(tmp_path: Path) -> None:
    path = tmp_path / "pipe"
    os.mkfifo(path)
    assert refused_file(path) == (
        f"{path}: this is not an ordinary file.\nName a file on the disk."
    )


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="root may read everything")
def test_a_file_that_may_not_be_read_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "secret"
    path.write_bytes(b"")
    path.chmod(0)
    assert refused_file(path) == f"{path}: you may not read it.\nChange its permissions."


def test_a_refusal_by_the_system_is_told_in_plain_words(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "secret"
    path.write_bytes(b"")

    def refuse(_path: Path) -> bytes:
        raise PermissionError

    monkeypatch.setattr(Path, "read_bytes", refuse)
    assert refused_file(path) == f"{path}: you may not read it.\nChange its permissions."


def test_a_link_to_itself_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "loop"
    path.symlink_to(path)
    assert refused_file(path) == f"{path}: it cannot be read.\nCheck the name and the disk."


def test_a_name_that_no_file_can_have_is_refused() -> None:
    assert refused_file(Path("a\0b")).endswith(": it cannot be read.\nCheck the name and the disk.")


def test_a_very_large_file_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "large"
    with path.open("wb") as file:
        file.truncate(LARGEST_FILE + 1)
    assert refused_file(path) == (
        f"{path}: the file is larger than 5 MB.\nCheck that it is the right one."
    )


def test_a_byte_order_mark_and_line_ends_of_any_kind_are_tolerated() -> None:
    assert decode(b"\xef\xbb\xbfa\r\nb\rc\n", "job.toml") == "a\nb\nc\n"


def test_a_letter_that_is_not_utf_8_is_named_with_its_line() -> None:
    assert refused_text("name\nTür\n".encode("latin-1")) == (
        "parts.csv, line 2: a letter is not written in UTF-8.\n"
        "    T�r\n"
        "     ^\n"
        "Save the file again with the encoding UTF-8."
    )


def test_a_file_in_utf_16_is_refused_at_its_first_line() -> None:
    assert refused_text("name\n".encode("utf-16")).startswith(
        "parts.csv, line 1: a letter is not written in UTF-8.\n"
    )
