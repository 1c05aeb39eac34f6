"""One row of a part list, read cell by cell, whatever kind of file it stands in."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, time, timedelta
from decimal import Decimal
from typing import TypeVar

from nesting.errors import Fault, InputError
from nesting.lengths import Length, Unit, mm
from nesting.reading.excerpts import quote
from nesting.reading.tables import Table
from nesting.reading.values import (
    DECIMALS,
    LARGEST,
    LONGEST,
    Choice,
    as_choice,
    as_length,
    as_text,
    as_whole,
    refusal,
    show,
)

_COMMA = re.compile(r"(\d*),(\d+)(?=\D*$)")
_THOUSANDS = re.compile(r"(?<!\d)[1-9]\d{0,2}(,\d{3})+(?!\d)")

Value = TypeVar("Value")


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """One cell of a row.

    Attributes:
        value: Text without blanks around it, a number, or whatever a spreadsheet holds.
        start: First character of it in the row's text.
        end: One beyond its last character.
    """

    value: object
    start: int
    end: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One row of the file as it stands.

    Attributes:
        number: Its number, from 1, as an editor or a spreadsheet counts.
        text: What messages quote.
        cells: Its cells.
    """

    number: int
    text: str
    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ListFile:
    """The part list that rows come from.

    Attributes:
        name: What messages call it.
        table: The [[part_list]] table that names it.
        separator: The sign between its cells; empty for a spreadsheet, where none is needed.
    """

    name: str
    table: Table
    separator: str = ""

    @property
    def has_decimal_comma(self) -> bool:
        """Whether a comma inside a number can only be a decimal comma."""
        return self.separator in (";", "\t")

    def fault(
        self, what: str, remedy: str, *, row: int, column: str = "", excerpt: tuple[str, ...] = ()
    ) -> None:
        """Record a fault of the list, or of a row or a cell of it."""
        words = [self.name, f"row {row}" if row else "", f"column {column!r}" if column else ""]
        where = ", ".join(word for word in words if word)
        fault = Fault(where=where, what=what, remedy=remedy, excerpt=excerpt)
        self.table.faults.add(fault, line=self.table.line, row=row)
        self.table.is_sound = False


@dataclass(slots=True, kw_only=True)
class Row:
    """One part of a part list, read cell by cell.

    Attributes:
        file: The list.
        line: The row as it stands.
        cells: Its cells that hold something, under the names of their columns.
        columns: All columns of the list.
        unit: What bare numbers are in.
        is_sound: True until a fault is found in it.
    """

    file: ListFile
    line: Line
    cells: dict[str, Cell]
    columns: frozenset[str]
    unit: Unit
    is_sound: bool = True

    @property
    def place(self) -> str:
        """What a message elsewhere calls it."""
        return f"{self.file.name}, row {self.line.number}"

    def has(self, key: str) -> bool:
        """Return whether the cell holds something."""
        return key in self.cells

    def text(self, key: str, default: str | None = None) -> str:
        """Return a text; a number in a cell of text is taken as it is written."""
        return self._read(key, default, "?", _text_of)

    def length(
        self,
        key: str,
        default: Length | None = None,
        *,
        may_be_zero: bool = False,
        most: Length = LONGEST,
    ) -> Length:
        """Return a length."""

        def convert(value: object) -> Length:
            if self.file.has_decimal_comma and isinstance(value, str):
                value = _with_point(value)
            is_sane = isinstance(value, Decimal) and abs(value) <= LARGEST
            if isinstance(value, Decimal) and is_sane and value != round(value, DECIMALS):
                raise refusal(
                    f"{show(value)!r} is finer than can be marked",
                    f"Round it to {DECIMALS} decimals in the spreadsheet, "
                    "also where fewer are shown: the result of a sum often has more.",
                )
            return as_length(_not_a_date(value), self.unit, may_be_zero=may_be_zero, most=most)

        return self._read(key, default, mm(100), convert)

    def whole(
        self, key: str, default: int | None = None, *, least: int = 0, most: int = LARGEST
    ) -> int:
        """Return a whole number."""
        return self._read(
            key, default, least, lambda value: as_whole(_whole_of(value), least=least, most=most)
        )

    def choice(self, key: str, kinds: type[Choice], default: Choice | None = None) -> Choice:
        """Return the member of an Enum whose value stands in the cell."""
        return self._read(key, default, next(iter(kinds)), lambda value: as_choice(value, kinds))

    def fault(self, what: str, remedy: str, key: str = "", *, names_key: bool = True) -> None:
        """Record a fault of the row, or of one of its cells."""
        self.is_sound = False
        cell = self.cells.get(key)
        excerpt = quote(self.line.text, cell.start, cell.end) if cell else (self.line.text.strip(),)
        column = key if cell and names_key else ""
        self.file.fault(what, remedy, row=self.line.number, column=column, excerpt=excerpt)

    def _read(
        self,
        key: str,
        default: Value | None,
        stand_in: Value,
        convert: Callable[[object], Value],
    ) -> Value:
        if key in self.cells:
            try:
                return convert(self.cells[key].value)
            except InputError as error:
                self.fault(error.faults[0].what, error.faults[0].remedy, key)
        elif default is None:
            if key in self.columns:
                self.fault(f"the cell of column {key!r} is empty", "Fill it in.")
            self.is_sound = False
        return stand_in if default is None else default


def _text_of(value: object) -> str:
    return as_text(value if isinstance(value, str) else show(_not_a_date(value)))


def _whole_of(value: object) -> object:
    if isinstance(value, str) and re.fullmatch(r"-?[0-9]{1,12}", value):
        return int(value)
    if isinstance(value, Decimal) and value == value.to_integral_value():
        return int(value)
    return _not_a_date(value)


def _not_a_date(value: object) -> object:
    if isinstance(value, date | time | timedelta):
        raise refusal(
            f"the cell holds the date or time {value}",
            "Format it as text or as a plain number and type it again.",
        )
    return value


def _with_point(text: str) -> str:
    """Return a number with a decimal point instead of a decimal comma."""
    if _THOUSANDS.search(text):
        raise refusal(
            f"{text!r} may have a decimal comma or one between thousands",
            "Write it without a comma, or with a decimal point.",
        )
    return _COMMA.sub(r"\1.\2", text)
