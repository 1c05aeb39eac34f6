"""One table of the job file, read key by key.

Every reading function records a fault where the value will not do and returns a stand-in, so that
one pass finds all faults. Nothing made of stand-ins leaves the reader: whoever starts it raises
the faults before it uses what was read. Within the reader, `is_sound` tells whether a table's
values are real, for checks that compare them.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from difflib import get_close_matches
from enum import Enum
from typing import Any, TypeVar

from nesting.errors import Fault, InputError
from nesting.lengths import Length, Unit, format_length, mm, parse_length
from nesting.reading.excerpts import Spot, quote
from nesting.reading.faults import Faults
from nesting.reading.toml_lines import Path, Spots

LONGEST = mm(20_000)  # longer than any sheet, guide or part that one person saws
LONGEST_TEXT = 80
STAND_IN = mm(100)

Choice = TypeVar("Choice", bound=Enum)


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

    def has(self, key: str) -> bool:
        """Return whether the key is there. Counts as reading it."""
        self.asked[key] = None
        return key in self.values

    def text(self, key: str, default: str | None = None) -> str:
        """Return a text on one line; without a default the key must be there."""
        value = self._value(key, default, '"..."')
        if value is None:
            return default or "?"
        if not isinstance(value, str):
            self.fault(f"{_show(value)} is not text", f'Write {key} = "..." in quotes.', key)
        elif not value.strip() or not value.isprintable():
            self.fault("the text is empty or has a line break", "Write it on one line.", key)
        elif len(value) > LONGEST_TEXT:
            remedy = f"Write at most {LONGEST_TEXT} characters."
            self.fault(f"the text has {len(value)} characters", remedy, key)
        else:
            return value.strip()
        return default or "?"

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
        example = "600" if self.unit is Unit.MM else '"23 5/8"'
        value = self._value(key, None if default is None else str(default), example)
        stand_in = STAND_IN if default is None else default
        if value is None:
            return stand_in
        length = self._length_of(value, key, may_be_zero=may_be_zero, most=most)
        return stand_in if length is None else length

    def lengths(self, key: str) -> tuple[Length, ...]:
        """Return the lengths of a list, none where the key is left out. A lone value will do."""
        if not self.has(key):
            return ()
        value = self.values[key]
        elements = value if isinstance(value, list) else [value]
        found = [self._length_of(e, key, may_be_zero=False, most=LONGEST) for e in elements]
        return tuple(length for length in found if length is not None)

    def whole(self, key: str, default: int | None = None, *, least: int = 0) -> int:
        """Return a whole number of at least `least`; without a default the key must be there."""
        value = self._value(key, None if default is None else str(default), str(max(least, 1)))
        stand_in = least if default is None else default
        if value is None:
            return stand_in
        if isinstance(value, bool) or not isinstance(value, int):
            self.fault(
                f"{_show(value)} is not a whole number",
                f"Write a whole number of {least} or more.",
                key,
            )
        elif value < least:
            self.fault(
                f"{value} is less than {least}", f"Write a whole number of {least} or more.", key
            )
        else:
            return value
        return stand_in

    def number(
        self, key: str, default: Decimal | None = None, *, least: Decimal = Decimal(0)
    ) -> Decimal:
        """Return a number of at least `least`; without a default the key must be there."""
        value = self._value(key, None if default is None else str(default), str(max(least, 1)))
        stand_in = least if default is None else default
        if value is None:
            return stand_in
        if isinstance(value, bool) or not isinstance(value, int | Decimal):
            remedy = f"Write a number of {least} or more, without quotes."
            self.fault(f"{_show(value)} is not a number", remedy, key)
        elif not Decimal(value).is_finite():
            self.fault(
                f"{_show(value)} is not a number", f"Write a number of {least} or more.", key
            )
        elif value < least:
            self.fault(
                f"{_show(value)} is less than {least}", f"Write a number of {least} or more.", key
            )
        else:
            return Decimal(value)
        return stand_in

    def flag(self, key: str, *, default: bool = False) -> bool:
        """Return true or false."""
        if not self.has(key):
            return default
        value = self.values[key]
        if isinstance(value, bool):
            return value
        self.fault(
            f"{_show(value)} is neither true nor false",
            f"Write {key} = true or {key} = false, without quotes.",
            key,
        )
        return default

    def choice(self, key: str, kinds: type[Choice], default: Choice | None = None) -> Choice:
        """Return the member of an Enum whose value stands there."""
        known = [str(kind.value) for kind in kinds]
        value = self._value(key, None if default is None else "", f'"{known[0]}"')
        stand_in = next(iter(kinds)) if default is None else default
        if value is None:
            return stand_in
        for kind in kinds:
            if isinstance(value, str) and value.strip().lower() == kind.value:
                return kind
        self.fault(
            f"{_show(value)} is not one of the choices",
            did_you_mean(value, known) + f"Write {_either(known)}.",
            key,
        )
        return stand_in

    def table(self, key: str) -> "Table":
        """Return the table under a key; where the file has none, an absent one with no values."""
        here = self.has(key)
        value = self.values.get(key)
        if here and not isinstance(value, dict):
            wanted = f"[{'.'.join([*self._names(), key])}]"
            self.fault(
                f"{wanted} must be one table",
                f"Write {wanted} on a line of its own, in single brackets, and its keys below it.",
                key,
            )
        label = f"{self.label}, {key}" if self.label else f"[{key}]"
        if isinstance(value, dict):
            return self._inner((key,), label, value, is_absent=False)
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
                kind = "table or key" if not self.path else "key"
                self.fault(
                    f"the {kind} {key!r} is not known here",
                    did_you_mean(key, known) + f"Known here: {', '.join(known)}.",
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
        self.faults.add(
            Fault(
                where=", ".join(word for word in place if word),
                what=what,
                remedy=remedy,
                excerpt=self._excerpt(spot, key, names_key=names_key) if is_exact else (),
            ),
            line=spot.line,
        )
        table: Table | None = self
        while table is not None:
            table.is_sound = False
            table = table.parent

    def _value(self, key: str, default: str | None, example: str) -> Any:  # noqa: ANN401 - TOML
        """Return the value of a key, or None, with a fault where there must be one."""
        if self.has(key):
            return self.values[key]
        if default is None and not self.is_absent:
            self.fault(f"{key!r} is missing", f"Add a line such as {key} = {example}.")
        return None

    def _length_of(
        self,
        value: Any,  # noqa: ANN401 - whatever TOML holds
        key: str,
        *,
        may_be_zero: bool,
        most: Length,
    ) -> Length | None:
        if isinstance(value, bool) or not isinstance(value, int | Decimal | str):
            self.fault(
                f"{_show(value)} is not a length",
                "Write a number, such as 464.6, or text with a unit, such as "
                '"18 mm" or "23/32 in".',
                key,
            )
            return None
        try:
            length = parse_length(value if isinstance(value, str) else _plain(value), self.unit)
        except InputError as error:
            self.fault(error.faults[0].what, error.faults[0].remedy, key)
            return None
        if length == 0 and not may_be_zero:
            self.fault("it must be more than 0", "Write a length of more than 0.", key)
            return None
        if length > most:
            limit = f"{format_length(most, self.unit)} {self.unit.value}"
            self.fault(
                f"{format_length(length, self.unit)} {self.unit.value} is more than {limit}",
                f"Check the unit: bare numbers in this file are in {self.unit.value}.",
                key,
            )
            return None
        return length

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

    def _excerpt(self, spot: Spot, key: str, *, names_key: bool) -> tuple[str, ...]:
        """Quote a line with marks under the value, or under the key where that is the fault."""
        line = self.source.lines[spot.line - 1]
        start = -1 if names_key else line.find(key, 0, spot.start)
        return (
            quote(line, spot.start, spot.end) if start < 0 else quote(line, start, start + len(key))
        )

    def _names(self) -> list[str]:
        return [name for name in self.path if isinstance(name, str)]

    def _spot(self, key: str) -> tuple[Spot, bool]:
        """Return where a key stands, or the nearest thing around it, and whether it is the key."""
        path = (*self.path, key) if key else self.path
        for end in range(len(path), 0, -1):
            if path[:end] in self.source.spots:
                return self.source.spots[path[:end]], bool(key) and end == len(path)
        first = (key, 0)
        return self.source.spots.get(first, Spot(line=0)), False


def did_you_mean(word: object, known: list[str]) -> str:
    """Return "Did you mean 'width'? " for a word close to a known one, else nothing."""
    near = get_close_matches(str(word).strip().lower(), known, n=1, cutoff=0.5)
    return f"Did you mean {near[0]!r}? " if near else ""


def _named(values: Mapping[str, Any]) -> str:
    name = values.get("name")
    return f" {name!r}" if isinstance(name, str) and name.isprintable() and name.strip() else ""


def _either(words: list[str]) -> str:
    quoted = [f'"{word}"' for word in words]
    return " or ".join([", ".join(quoted[:-1]), quoted[-1]] if quoted[1:] else quoted)


def _plain(number: int | Decimal) -> str:
    return f"{number:f}" if isinstance(number, Decimal) else str(number)


def _show(value: object) -> str:
    """Return a value as the user wrote it, near enough."""
    match value:
        case bool():
            return str(value).lower()
        case int() | Decimal():
            return _plain(value)
        case str():
            return repr(value)
        case list():
            return "a list"
        case dict():
            return "a table"
        case _:
            return str(value)
