"""The book on disk: one database file, every change one transaction.

Two commands may use it at the same time; a change is made whole or not at all, also where the
process is killed in between.
"""

import os
import sqlite3
from collections.abc import Iterable, Iterator
from contextlib import closing, contextmanager
from decimal import Decimal
from pathlib import Path
from typing import Final

import platformdirs

from nesting.errors import Fault, InputError, NestingError
from nesting.sheets import SheetGrain
from plans.book.entries import Entry, Offcut, Rule

PATIENCE_S: Final = 10.0
VERSION: Final = 1

_SCHEMA: Final = """
CREATE TABLE offcut (
    number INTEGER PRIMARY KEY AUTOINCREMENT,
    material TEXT NOT NULL,
    thickness INTEGER NOT NULL,
    measured INTEGER,
    length INTEGER NOT NULL,
    width INTEGER NOT NULL,
    grain TEXT NOT NULL,
    good_edges TEXT NOT NULL,
    added TEXT NOT NULL,
    origin TEXT NOT NULL,
    holder TEXT NOT NULL DEFAULT '',
    gone TEXT NOT NULL DEFAULT ''
);
CREATE UNIQUE INDEX once ON offcut (origin) WHERE origin <> '';
CREATE TABLE rule (length INTEGER NOT NULL, width INTEGER NOT NULL, space_m2 TEXT);
"""
_COLUMNS: Final = "material, thickness, measured, length, width, grain, good_edges, added, origin"


_PRIMARY: Final = 0xFF
"""The bits of a result code that say what kind it is."""
_OUT_OF_REACH: Final = (
    sqlite3.SQLITE_BUSY,
    sqlite3.SQLITE_CANTOPEN,
    sqlite3.SQLITE_FULL,
    sqlite3.SQLITE_IOERR,
    sqlite3.SQLITE_PERM,
    sqlite3.SQLITE_READONLY,
)


class OutOfReachError(NestingError):
    """The book is there or could be, but not for us, or not now."""


class ReservedError(NestingError):
    """An entry is not free: reserved for another job, or gone."""


def book_path() -> Path:
    """Return where the book is: in the folder SETOUT_DATA, else in the user's data folder."""
    folder = os.environ.get("SETOUT_DATA")
    return (Path(folder) if folder else platformdirs.user_data_path("setout")) / "offcuts.sqlite3"


@contextmanager
def open_book(path: Path) -> Iterator[sqlite3.Connection]:
    """Open the book, made if need be.

    Raises:
        InputError: The file is no book of this version.
        OutOfReachError: It cannot be read or written, now or while it is used.
        OSError: Its folder cannot be made.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    try:
        with closing(sqlite3.connect(path, timeout=PATIENCE_S, isolation_level=None)) as book:
            version = _prepare(book)
            if version not in (0, VERSION):
                raise _no_book(path, f"it is of version {version}")
            yield book
    except sqlite3.DatabaseError as error:
        code = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_ERROR) & _PRIMARY
        if code in _OUT_OF_REACH:
            raise OutOfReachError(
                f"{path}: the book of leftovers cannot be read or written ({error}).\n"
                "Look whether the folder may be written to and has room, then try again."
            ) from error
        raise _no_book(path, str(error)) from error


def _prepare(book: sqlite3.Connection) -> int:
    """Make the tables where there are none; return the version that was found."""
    book.execute("PRAGMA synchronous = FULL")
    with _change(book):
        version = int(book.execute("PRAGMA user_version").fetchone()[0])
        if version == 0:
            for statement in _SCHEMA.split(";"):
                book.execute(statement)
            book.execute(f"PRAGMA user_version = {VERSION}")
    return version


def list_entries(book: sqlite3.Connection) -> tuple[Entry, ...]:
    """Return every leftover that is there, in the order of the numbers."""
    rows = book.execute(
        f"SELECT number, holder, {_COLUMNS} FROM offcut WHERE gone = '' ORDER BY number"  # noqa: S608 - fixed text
    )
    return tuple(_entry(row) for row in rows)


def add(book: sqlite3.Connection, offcuts: Iterable[Offcut]) -> tuple[int | None, ...]:
    """Add leftovers; return the number of each, None where its origin is in the book already."""
    numbers: list[int | None] = []
    with _change(book):
        for offcut in offcuts:
            known = "SELECT 1 FROM offcut WHERE origin = ? AND origin <> ''"
            if book.execute(known, (offcut.origin,)).fetchone():
                numbers.append(None)
                continue
            cursor = book.execute(
                f"INSERT INTO offcut ({_COLUMNS}) VALUES (?,?,?,?,?,?,?,?,?)",  # noqa: S608 - fixed text
                (
                    offcut.material,
                    offcut.thickness,
                    offcut.measured,
                    offcut.length,
                    offcut.width,
                    offcut.grain.value,
                    " ".join(offcut.good_edges),
                    offcut.added,
                    offcut.origin,
                ),
            )
            numbers.append(cursor.lastrowid)
    return tuple(numbers)


def reserve(book: sqlite3.Connection, numbers: Iterable[int], holder: str) -> None:
    """Reserve entries for a job, all of them or none.

    Raises:
        ReservedError: One of them is gone or reserved for another job.
    """
    with _change(book):
        _reserve(book, numbers, holder)


def reserve_only(book: sqlite3.Connection, numbers: Iterable[int], holder: str) -> None:
    """Reserve entries for a job and release what else it held, in one step.

    Raises:
        ReservedError: One of them is gone or reserved for another job. All stays as it was.
    """
    with _change(book):
        book.execute("UPDATE offcut SET holder = '' WHERE holder = ?", (holder,))
        _reserve(book, numbers, holder)


def release(book: sqlite3.Connection, numbers: Iterable[int]) -> None:
    """Release entries, whoever holds them.

    Raises:
        InputError: One of them is not in the book. None is released then.
    """
    with _change(book):
        for number in numbers:
            _must_be_there(book, number)
            book.execute("UPDATE offcut SET holder = '' WHERE number = ?", (number,))


def take(book: sqlite3.Connection, numbers: Iterable[int], day: str) -> None:
    """Take entries out of the book: used up or thrown out. They stay on file as gone.

    Raises:
        InputError: One of them is not in the book. None is taken then.
    """
    with _change(book):
        for number in numbers:
            _must_be_there(book, number)
            book.execute("UPDATE offcut SET gone = ?, holder = '' WHERE number = ?", (day, number))


def read_rule(book: sqlite3.Connection) -> Rule:
    """Return the keep rule."""
    row = book.execute("SELECT length, width, space_m2 FROM rule").fetchone()
    if row is None:
        return Rule()
    return Rule(length=row[0], width=row[1], space_m2=None if row[2] is None else Decimal(row[2]))


def write_rule(book: sqlite3.Connection, rule: Rule) -> None:
    """Set the keep rule."""
    space = None if rule.space_m2 is None else str(rule.space_m2)
    with _change(book):
        book.execute("DELETE FROM rule")
        book.execute("INSERT INTO rule VALUES (?,?,?)", (rule.length, rule.width, space))


@contextmanager
def _change(book: sqlite3.Connection) -> Iterator[None]:
    """Make one change whole or not at all, alone with the book."""
    book.execute("BEGIN IMMEDIATE")
    try:
        yield
        book.execute("COMMIT")
    except BaseException:
        if book.in_transaction:  # some failures, such as a full disk, end it by themselves
            book.execute("ROLLBACK")
        raise


def _reserve(book: sqlite3.Connection, numbers: Iterable[int], holder: str) -> None:
    for number in numbers:
        row = book.execute(
            "SELECT holder FROM offcut WHERE number = ? AND gone = ''", (number,)
        ).fetchone()
        if row is None:
            raise ReservedError(
                f"offcut {number}: it is not in the book.\nLook with 'setout offcuts list'."
            )
        if row[0] not in ("", holder):
            raise ReservedError(
                f"offcut {number}: it is reserved for {Path(row[0]).name}.\n"
                f"Take another, or release it with 'setout offcuts release {number}'."
            )
        book.execute("UPDATE offcut SET holder = ? WHERE number = ?", (holder, number))


def _must_be_there(book: sqlite3.Connection, number: int) -> None:
    row = book.execute("SELECT 1 FROM offcut WHERE number = ? AND gone = ''", (number,)).fetchone()
    if row is None:
        raise InputError(
            [
                Fault(
                    where=f"offcut {number}",
                    what="it is not in the book",
                    remedy="Look with 'setout offcuts list'.",
                )
            ]
        )


def _entry(row: tuple[int, str, str, int, int | None, int, int, str, str, str, str]) -> Entry:
    number, holder, material, thickness, measured, length, width, grain, edges, added, origin = row
    return Entry(
        number=number,
        holder=holder,
        offcut=Offcut(
            material=material,
            thickness=thickness,
            measured=measured,
            length=length,
            width=width,
            grain=SheetGrain(grain),
            good_edges=tuple(edges.split()),
            added=added,
            origin=origin,
        ),
    )


def _no_book(path: Path, reason: str) -> InputError:
    return InputError(
        [
            Fault(
                where=str(path),
                what=f"it cannot be used as a book of leftovers ({reason})",
                remedy="Move the file away, or name another folder in SETOUT_DATA.",
            )
        ]
    )
