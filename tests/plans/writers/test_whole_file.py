"""Files are whole or as they were."""

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from plans.writers.whole_file import SUFFIX, write_whole


def test_new_files_are_written_and_old_ones_replaced_by_name(tmp_path: Path) -> None:
    old, new = tmp_path / "old.pdf", tmp_path / "new.json"
    old.write_bytes(b"before")
    assert write_whole({old: b"after", new: b"{}"}) == (old,)
    assert (old.read_bytes(), new.read_bytes()) == (b"after", b"{}")


def test_a_full_disk_leaves_every_earlier_file_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first, second = tmp_path / "a.pdf", tmp_path / "b.json"
    first.write_bytes(b"first before")
    second.write_bytes(b"second before")
    flushed: list[int] = []

    def full_on_the_second(handle: int) -> None:
        flushed.append(handle)
        if len(flushed) == 2:
            raise OSError(28, os.strerror(28))

    monkeypatch.setattr(os, "fsync", full_on_the_second)
    with pytest.raises(OSError, match="No space left"):
        write_whole({first: b"after", second: b"after"})
    assert (first.read_bytes(), second.read_bytes()) == (b"first before", b"second before")
    assert sorted(path.name for path in tmp_path.iterdir()) == ["a.pdf", "b.json"]


def test_files_get_the_permissions_of_any_new_file(tmp_path: Path) -> None:
    ours, plain = tmp_path / "ours", tmp_path / "plain"
    write_whole({ours: b""})
    plain.write_bytes(b"")
    assert ours.stat().st_mode == plain.stat().st_mode


def test_a_folder_in_the_way_is_named_before_anything_is_replaced(tmp_path: Path) -> None:
    first, second = tmp_path / "a.pdf", tmp_path / "b.html"
    first.write_bytes(b"before")
    second.mkdir()
    with pytest.raises(OSError, match="directory") as caught:
        write_whole({first: b"after", second: b"after"})
    assert caught.value.filename == str(second)
    assert first.read_bytes() == b"before"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["a.pdf", "b.html"]


def test_what_cannot_be_written_is_named_as_it_would_have_been_called(tmp_path: Path) -> None:
    target = tmp_path / "missing" / "a.pdf"
    with pytest.raises(OSError, match="No such file") as caught:
        write_whole({target: b""})
    assert caught.value.filename == str(target)


def test_an_interrupt_between_two_files_leaves_no_new_one_beside_an_old_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    files = {tmp_path / "a.pdf": b"after", tmp_path / "b.json": b"after"}
    for path in files:
        path.write_bytes(b"before")
    flush = os.fsync

    def flush_interrupted(handle: int) -> None:
        os.kill(os.getpid(), signal.SIGINT)
        flush(handle)

    handler = signal.getsignal(signal.SIGINT)
    monkeypatch.setattr(os, "fsync", flush_interrupted)
    write_whole(files)
    assert {path: path.read_bytes() for path in tmp_path.iterdir()} == files
    assert signal.getsignal(signal.SIGINT) is handler


def test_what_a_killed_command_left_beside_a_file_is_cleared_away(tmp_path: Path) -> None:
    target, young = tmp_path / "a.pdf", tmp_path / f".a.pdf.1234abcd{SUFFIX}"
    kill_while_writing = (
        "import os, signal, sys; from pathlib import Path; import plans.writers.whole_file as w;"
        "os.fsync = lambda _: os.kill(os.getpid(), signal.SIGKILL);"
        "w.write_whole({Path(sys.argv[1]): b'half'})"
    )
    subprocess.run([sys.executable, "-c", kill_while_writing, str(target)], check=False)
    (left,) = tmp_path.iterdir()
    os.utime(left, (0, 0))
    others = [young, tmp_path / ".a.pdf.mine", tmp_path / f".b.pdf.1234abcd{SUFFIX}"]
    for other in others:
        other.write_bytes(b"")
    os.utime(others[1], (0, 0))
    os.utime(others[2], (0, 0))
    write_whole({target: b"whole"})
    assert sorted(tmp_path.iterdir()) == sorted([target, *others])
