"""One table of the job file, read key by key.

Every reading function records a fault where the value will not do and returns a stand-in, so that
one pass finds all faults. Nothing made of stand-ins leaves the reader: whoever starts it raises
the faults before it uses what was read. Within the reader, `is_sound` tells whether a table's
values are real, for checks that compare them.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Any, TypeVar

from nesting.errors import Fault, InputError
from nesting.lengths import Length, Unit, mm
from nesting.reading.excerpts import Spot, quote
from nesting.reading.faults import Faults
from nesting.reading.toml_lines import Path, Spots
from nesting.reading.values import (
    LARGEST,
    LONGEST,
    LONGEST_TEXT,
    Choice,
    as_choice,
    as_flag,
    as_length,
    as_number,
    as_text,
    as_whole,
    did_you_mean,
    listed,
)

Value = TypeVar("Value")

_EXAMPLES = {
    (False, Unit.MM): "600",
    (False, Unit.INCH): '"23 5/8"',
    (True, Unit.MM): "18",
    (True, Unit.INCH): '"3/4"',
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """The job file that the tables come from.

    Attributes:
        name: The file's name, as messages give it.
        lines: Its lines.
        spots: Where its tables and keys stand, as far as that is known.
    """

    name: str
    lines: tuple[str, ...]
    spots: Spots


@dataclass(slots=True, kw_only=True)
class Table:
    """One table of the job file, and what has been read from it so far.

    Attributes:
        source: The file.
        path: Keys and indices that lead here, such as ("sheet", 1).
        label: What messages call it, such as "[[sheet]] 2 'birch 18'"; empty for the whole file.
        values: Its content, with decimals as `Decimal`.
        unit: What bare numbers are in.
        faults: Where faults go, shared by all tables of the file.
        parent: The table that this one lies in.
        is_absent: True where the file does not have it, or has something else in its place.
        is_sound: True until a fault is found in it or in a table inside it.
        asked: The keys that were read: all others are unknown.
    """

    source: Source
    path: Path = ()
    label: str = ""
    values: Mapping[str, Any]
    unit: Unit
    faults: Faults
    parent: "Table | None" = None
    is_absent: bool = False
    is_sound: bool = True
    asked: dict[str, None] = field(default_factory=dict)

    @property
    def line(self) -> int:
        """Number of the line it begins on, from 1; 0 where that is not known."""
        return self._spot("")[0].line

    @property
    def place(self) -> str:
        """What a message elsewhere calls it, such as "line 12"."""
        return f"line {self.line}" if self.line else self.label

    def has(self, key: str) -> bool:
        """Return whether the key is there. Counts as reading it."""
        self.asked[key] = None
        return key in self.values

    def text(self, key: str, default: str | None = None) -> str:
        """Return a text on one line; without a default the key must be there."""
        return self._read(key, default, "?", '"..."', as_text)

    def length(
        self,
        key: str,
        default: Length | None = None,
        *,
        may_be_zero: bool = False,
        most: Length = LONGEST,
    ) -> Length:
        """Return a length; without a default the key must be there.

        Args:
            key: Its key. The value is a number in the table's unit, or text with its own unit.
            default: What it is where the key is left out; None where it must be there.
            may_be_zero: True where 0 makes sense.
            most: The longest that makes sense.
        """
        return self._read(
            key,
            default,
            mm(100),
            _EXAMPLES[key == "thickness", self.unit],
            lambda value: as_length(value, self.unit, may_be_zero=may_be_zero, most=most),
        )

    def lengths(self, key: str, *, most: Length = LONGEST) -> tuple[Length, ...]:
        """Return the lengths of a list, none where the key is left out. A lone value will do."""
        if not self.has(key):
            return ()
        found = []
        value = self.values[key]
        for each in value if isinstance(value, list) else [value]:
            try:
                found.append(as_length(each, self.unit, most=most))
            except InputError as error:
                self.fault(error.faults[0].what, error.faults[0].remedy, key)
        return tuple(found)

    def whole(
        self, key: str, default: int | None = None, *, least: int = 0, most: int = LARGEST
    ) -> int:
        """Return a whole number between two limits; without a default the key must be there."""
        return self._read(
            key,
            default,
            least,
            str(max(least, 1)),
            lambda value: as_whole(value, least=least, most=most),
        )

    def number(
        self,
        key: str,
        default: Decimal | None = None,
        *,
        least: Decimal = Decimal(0),
        most: Decimal = Decimal(LARGEST),
    ) -> Decimal:
        """Return a number between two limits; without a default the key must be there."""
        return self._read(
            key,
            default,
            least,
            str(max(least, Decimal(1))),
            lambda value: as_number(value, least=least, most=most),
        )

    def flag(self, key: str, *, default: bool = False) -> bool:
        """Return true or false."""
        return self._read(key, default, default, "true", as_flag)

    def choice(self, key: str, kinds: type[Choice], default: Choice | None = None) -> Choice:
        """Return the member of an Enum whose value stands there."""
        first = next(iter(kinds))
        return self._read(
            key, default, first, f'"{first.value}"', lambda value: as_choice(value, kinds)
        )

    def table(self, key: str) -> "Table":
        """Return the table under a key; where the file has none, an absent one with no values."""
        here = self.has(key)
        value = self.values.get(key)
        label = f"{self.label}, {key}" if self.label else f"[{key}]"
        if isinstance(value, dict):
            return self._inner((key,), label, value, is_absent=False)
        if here:
            wanted = f"[{'.'.join([*self._names(), key])}]"
            self.fault(
                f"{wanted} must be one table",
                f"Write {wanted} on a line of its own, in single brackets, and its keys below it.",
                key,
                names_key=False,
            )
        return self._inner((key,), label, {}, is_absent=True)

    def tables(self, key: str) -> tuple["Table", ...]:
        """Return the tables of an array of tables, none where the file has none."""
        if not self.has(key):
            return ()
        value = self.values[key]
        if not isinstance(value, list) or not all(isinstance(each, dict) for each in value):
            wanted = f"[[{'.'.join([*self._names(), key])}]]"
            self.fault(
                f"each {key} must be a table of its own",
                f"Write {wanted} on a line of its own, in double brackets, and its keys below it.",
                key,
                names_key=False,
            )
            return ()
        before = f"{self.label}, {key}" if self.label else f"[[{key}]]"
        return tuple(
            self._inner((key, index), f"{before} {index + 1}{_named(each)}", each, is_absent=False)
            for index, each in enumerate(value)
        )

    def finish(self) -> None:
        """Report every key that was not read, naming the nearest known one."""
        for key in self.values:
            if key not in self.asked:
                known = list(self.asked)
                self.fault(
                    f"{key!r} is not known here",
                    f"{did_you_mean(key, known)}Known here: {listed(known, 'and')}.",
                    key,
                    names_key=False,
                )

    def fault(self, what: str, remedy: str, key: str = "", *, names_key: bool = True) -> None:
        """Record a fault of this table, or of one of its keys.

        Args:
            what: What is wrong, a clause without a full stop.
            remedy: What to do, one or more sentences.
            key: The key whose value is wrong; empty where it is the table.
            names_key: False where `what` names the key already.
        """
        spot, is_exact = self._spot(key)
        place = [
            self.source.name,
            f"line {spot.line}" if spot.line else "",
            self.label,
            f"key {key!r}" if key and names_key else "",
        ]
        fault = Fault(
            where=", ".join(word for word in place if word),
            what=what,
            remedy=remedy,
            excerpt=self._excerpt(spot, key, names_key=names_key) if key and is_exact else (),
        )
        self.faults.add(fault, line=spot.line)
        table: Table | None = self
        while table is not None:
            table.is_sound = False
            table = table.parent

    def _read(
        self,
        key: str,
        default: Value | None,
        stand_in: Value,
        example: str,
        convert: Callable[[object], Value],
    ) -> Value:
        """Return a converted value, its default, or a stand-in after recording a fault."""
        if self.has(key):
            try:
                return convert(self.values[key])
            except InputError as error:
                self.fault(error.faults[0].what, error.faults[0].remedy, key)
        elif default is None and not self.is_absent:
            self.fault(f"{key!r} is missing", f"Add a line such as {key} = {example}.")
        return stand_in if default is None else default

    def _inner(
        self, keys: Path, label: str, values: Mapping[str, Any], *, is_absent: bool
    ) -> "Table":
        return Table(
            source=self.source,
            path=(*self.path, *keys),
            label=label,
            values=values,
            unit=self.unit,
            faults=self.faults,
            parent=self,
            is_absent=is_absent,
        )

    def _names(self) -> list[str]:
        return [name for name in self.path if isinstance(name, str)]

    def _spot(self, key: str) -> tuple[Spot, bool]:
        """Return where a key stands, or the nearest thing around it, and whether it is the key."""
        path = (*self.path, key) if key else self.path
        for end in range(len(path), 0, -1):
            if path[:end] in self.source.spots:
                return self.source.spots[path[:end]], end == len(path)
        return self.source.spots.get((*path, 0), Spot(line=0)), False

    def _excerpt(self, spot: Spot, key: str, *, names_key: bool) -> tuple[str, ...]:
        """Quote a line with marks under the value, or under the key where that is the fault."""
        line = self.source.lines[spot.line - 1]
        start = -1 if names_key else line.find(key)
        return quote(line, *((spot.start, spot.end) if start < 0 else (start, start + len(key))))


def _named(values: Mapping[str, Any]) -> str:
    name = values.get("name")
    if not isinstance(name, str) or len(name) > LONGEST_TEXT:
        return ""
    return f" {name!r}" if name.isprintable() and name.strip() else ""
