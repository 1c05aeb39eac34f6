"""Files are whole or as they were."""

import os
from pathlib import Path

import pytest

from plans.writers import whole_file
from plans.writers.whole_file import write_whole


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

    monkeypatch.setattr(whole_file.os, "fsync", full_on_the_second)
    with pytest.raises(OSError, match="No space left"):
        write_whole({first: b"after", second: b"after"})
    assert (first.read_bytes(), second.read_bytes()) == (b"first before", b"second before")
    assert sorted(path.name for path in tmp_path.iterdir()) == ["a.pdf", "b.json"]


def test_files_get_the_permissions_of_any_new_file(tmp_path: Path) -> None:
    ours, plain = tmp_path / "ours", tmp_path / "plain"
    write_whole({ours: b""})
    plain.write_bytes(b"")
    assert ours.stat().st_mode == plain.stat().st_mode
