"""A plan file is read strictly, and what is wrong with the file is said."""

import json
import os
from pathlib import Path

import pytest

from nesting.errors import InputError
from plans.rehearsal import read_plan
from tests.plans.rehearsal.samples import metric

NOT_JSON = (
    "it is not a whole JSON file.\nName a plan file, or make the plan again with 'setout plan'."
)


def refusal(path: Path) -> str:
    with pytest.raises(InputError) as caught:
        read_plan(path)
    return str(caught.value).removeprefix(f"{path}: ")


@pytest.mark.parametrize("start", [b"", b"\xef\xbb\xbf"], ids=["plain", "with a byte order mark"])
def test_a_plan_file_is_read(tmp_path: Path, start: bytes) -> None:
    path = tmp_path / "hall.plan.json"
    path.write_bytes(start + json.dumps(metric(), ensure_ascii=False).encode())
    assert read_plan(path) == metric()


def test_a_missing_file_and_a_folder_are_told_apart(tmp_path: Path) -> None:
    assert refusal(tmp_path / "none.json") == ("there is no such file.\nCheck its name and folder.")
    assert refusal(tmp_path) == "it is a folder.\nName a plan file."


@pytest.mark.skipif(
    not hasattr(os, "geteuid") or os.geteuid() == 0, reason="the superuser may read anything"
)
def test_a_file_that_may_not_be_read_is_told(tmp_path: Path) -> None:
    path = tmp_path / "locked.json"
    path.write_text("{}")
    path.chmod(0)
    assert refusal(path).startswith("it cannot be read (")


@pytest.mark.parametrize(
    ("content", "message"),
    [
        (b"\xff\xfe{", "it is not a text file in UTF-8.\nName a plan file."),
        (b"", NOT_JSON),
        (b'{"format": "setout plan", ', NOT_JSON),
        (b"%PDF-1.4", NOT_JSON),
        (b"[" * 100_000, NOT_JSON),
        (b'{"number": ' + b"9" * 5000 + b"}", NOT_JSON),
        (b"[]", "it is not a plan file of setout.\nName a plan."),
        (b'{"format": "another", "version": 1}', "it is not a plan file of setout.\nName a plan."),
        (
            b'{"format": "setout plan", "version": 2}',
            (
                "it is not of version 1, which this program reads.\n"
                "Make the plan again with 'setout plan'."
            ),
        ),
    ],
    ids=["not UTF-8", "empty", "cut off", "PDF", "deep", "long", "list", "other", "version"],
)
def test_what_is_no_plan_file_is_refused(tmp_path: Path, content: bytes, message: str) -> None:
    path = tmp_path / "plan.json"
    path.write_bytes(content)
    assert refusal(path) == message
