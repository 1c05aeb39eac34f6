"""The book on disk, also with two commands at it at the same time."""

import subprocess
import sys
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from nesting.errors import InputError
from nesting.lengths import mm
from plans.book.entries import Rule
from plans.book.store import (
    ReservedError,
    add,
    list_entries,
    open_book,
    read_rule,
    release,
    reserve,
    reserve_only,
    take,
    write_rule,
)
from tests.plans.book.test_entries import OFFCUT

ROOT = Path(__file__).parent.parent.parent.parent


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "data" / "offcuts.sqlite3"


def test_what_goes_in_comes_out(path: Path) -> None:
    with open_book(path) as book:
        assert add(book, [OFFCUT, replace(OFFCUT, measured=None, good_edges=())]) == (1, 2)
    with open_book(path) as book:
        first, second = list_entries(book)
    assert (first.offcut, second.offcut.measured, first.holder) == (OFFCUT, None, "")


def test_the_same_leftover_of_a_plan_comes_in_once(path: Path) -> None:
    known = replace(OFFCUT, origin="L1-KAC-01234")
    with open_book(path) as book:
        assert add(book, [known]) == (1,)
        assert add(book, [known, OFFCUT]) == (None, 2)
        take(book, [1], "2026-11-25")
        assert add(book, [known]) == (None,)


def test_reserving_is_all_or_nothing(path: Path) -> None:
    with open_book(path) as book:
        add(book, [OFFCUT] * 3)
        reserve(book, [2], "/jobs/one.toml")
        with pytest.raises(ReservedError, match=r"offcut 2: it is reserved for one\.toml"):
            reserve(book, [1, 2, 3], "/jobs/two.toml")
        assert [entry.holder for entry in list_entries(book)] == ["", "/jobs/one.toml", ""]
        with pytest.raises(ReservedError, match="offcut 9: it is not in the book"):
            reserve_only(book, [1, 9], "/jobs/one.toml")
        assert [entry.holder for entry in list_entries(book)] == ["", "/jobs/one.toml", ""]
        reserve_only(book, [1, 3], "/jobs/one.toml")
        assert [bool(entry.holder) for entry in list_entries(book)] == [True, False, True]
        release(book, [1, 3])
        assert not any(entry.holder for entry in list_entries(book))


def test_what_is_taken_is_gone_and_its_number_is_not_given_again(path: Path) -> None:
    with open_book(path) as book:
        add(book, [OFFCUT] * 2)
        with pytest.raises(InputError, match="offcut 7: it is not in the book"):
            take(book, [2, 7], "2026-11-25")
        take(book, [2], "2026-11-25")
        assert add(book, [OFFCUT]) == (3,)
        assert [entry.number for entry in list_entries(book)] == [1, 3]


def test_the_rule_is_remembered(path: Path) -> None:
    rule = Rule(length=mm(400), width=mm(150), space_m2=Decimal("1.5"))
    with open_book(path) as book:
        assert read_rule(book) == Rule()
        write_rule(book, rule)
    with open_book(path) as book:
        assert read_rule(book) == rule


def test_a_file_that_is_no_book_is_named(path: Path) -> None:
    path.parent.mkdir()
    path.write_text("This is no database, it only pretends to be one. " * 30, "utf-8")
    with pytest.raises(InputError, match="cannot be used as a book of leftovers"), open_book(path):
        pass


def test_two_processes_reserve_every_leftover_once(path: Path) -> None:
    """Both want all forty, one by one and in opposite orders, as fast as they can."""
    with open_book(path) as book:
        add(book, [OFFCUT] * 40)
    code = """
import sys
from pathlib import Path
from plans.book.store import ReservedError, open_book, reserve
holder, step = sys.argv[2], int(sys.argv[3])
print("ready", flush=True)
sys.stdin.readline()
with open_book(Path(sys.argv[1])) as book:
    for number in range(1, 41)[::step]:
        try:
            reserve(book, [number], holder)
            print(number)
        except ReservedError:
            pass
"""
    both = [
        subprocess.Popen(
            [sys.executable, "-c", code, str(path), holder, step],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            cwd=ROOT,
        )
        for holder, step in (("one", "1"), ("two", "-1"))
    ]
    for process in both:
        assert process.stdout is not None
        assert process.stdout.readline() == "ready\n"
    for process in both:
        assert process.stdin is not None
        process.stdin.write("go\n")
        process.stdin.flush()
    got = [set(map(int, process.communicate(timeout=60)[0].split())) for process in both]
    assert got[0] | got[1] == set(range(1, 41))
    assert not got[0] & got[1]
    with open_book(path) as book:
        for entry in list_entries(book):
            assert entry.number in got[0 if entry.holder == "one" else 1]
