"""Reading one JSON object key by key, gathering every fault instead of stopping at the first."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any, TypeVar

from nesting.errors import Fault
from plans.rehearsal.printed import NM_PER_MM, Nanometres
from plans.rehearsal.records import Rect

REMEDY = "Use a plan file as 'setout plan' wrote it, unchanged."
# Nothing that is cut on a bench is longer, nothing costs more; larger numbers are mistakes.
LONGEST_MM = 1_000_000
LARGEST = 10**12

Read = TypeVar("Read")


@dataclass(frozen=True, slots=True, kw_only=True)
class Fields:
    """One JSON object.

    Whatever is missing or of the wrong kind adds a fault and reads as an empty value, which is
    never used: a plan with faults in its form is not sawn.

    Attributes:
        table: The object.
        where: Its place, in the user's words.
        faults: The faults found so far, shared by all objects of a file.
    """

    table: Mapping[str, Any]
    where: str
    faults: list[Fault]

    def fault(self, what: str) -> None:
        """Add a fault at this place."""
        self.faults.append(Fault(where=self.where, what=what, remedy=REMEDY))

    def value(self, key: str) -> Any:  # noqa: ANN401 - JSON holds anything
        """Return what stands under a key, None with a fault where nothing does."""
        if key not in self.table:
            self.fault(f"'{key}' is missing")
            return None
        value = self.table[key]
        if value is None:
            self.fault(f"'{key}' is empty")
        return value

    def text(self, key: str, *, may_be_empty: bool = False) -> str:
        """Return a text."""
        value = self.value(key)
        if isinstance(value, str) and (value.strip() or may_be_empty):
            return value
        if value is not None:
            self.fault(f"'{key}' is not a text" if not isinstance(value, str) else f"no '{key}'")
        return ""

    def choice(self, key: str, options: tuple[str, ...]) -> str:
        """Return one of a few words."""
        value = self.value(key)
        if value is not None and value not in options:
            shown = [repr(option) for option in options]
            self.fault(f"'{key}' is {_shown(value)}, not {', '.join(shown[:-1])} or {shown[-1]}")
        return value if isinstance(value, str) else ""

    def flag(self, key: str) -> bool:
        """Return true or false."""
        value = self.value(key)
        if value is not None and not isinstance(value, bool):
            self.fault(f"'{key}' is {_shown(value)}, not true or false")
        return value is True

    def whole(self, key: str, least: int = 1) -> int:
        """Return a whole number."""
        number = self.number(key, least)
        if number.denominator != 1:
            self.fault(f"'{key}' is {_shown(self.table[key])}, not a whole number")
        return int(number)

    def number(self, key: str, least: int = 0, most: int = LARGEST) -> Fraction:
        """Return a number, exactly as it is written."""
        value = self.value(key)
        return Fraction(0) if value is None else self._number(key, value, least, most)

    def length(self, key: str, *, may_be_negative: bool = False) -> Nanometres:
        """Return a length written in millimetres."""
        least = -LONGEST_MM if may_be_negative else 0
        return round(self.number(key, least, LONGEST_MM) * NM_PER_MM)

    def optional_length(self, key: str) -> Nanometres | None:
        """Return a length that may be left out."""
        return None if self.table.get(key) is None else self.length(key)

    def pair(self, key: str) -> tuple[Nanometres, Nanometres]:
        """Return two lengths written in millimetres."""
        value = self.value(key)
        if not isinstance(value, list | tuple) or len(value) != 2:  # noqa: PLR2004 - a pair
            if value is not None:
                self.fault(f"'{key}' is {_shown(value)}, not two numbers")
            return 0, 0
        first, second = (
            round(self._number(key, side, 0, LONGEST_MM) * NM_PER_MM) for side in value
        )
        return first, second

    def rect(self) -> Rect:
        """Return the rectangle that this object gives by x, y, length and width."""
        return Rect(
            x=self.length("x", may_be_negative=True),
            y=self.length("y", may_be_negative=True),
            length=self.length("length"),
            width=self.length("width"),
        )

    def printed(self, key: str, read: Callable[[str], Read], default: Read) -> Read:
        """Return what a printed text means.

        Args:
            key: Where the text stands.
            read: Reads it; raises ValueError where it cannot.
            default: Returned with a fault where it cannot.
        """
        text = self.text(key)
        if not text:
            return default
        try:
            return read(text)
        except ValueError as error:
            self.fault(f"the printed '{key}' cannot be read: {error}")
            return default

    def child(self, key: str, where: str = "") -> "Fields":
        """Return an object inside this one."""
        value = self.value(key)
        if value is not None and not isinstance(value, Mapping):
            self.fault(f"'{key}' is {_shown(value)}, not an object")
        known = value if isinstance(value, Mapping) else {}
        # Nothing is missing from an object that is missing itself.
        faults = self.faults if isinstance(value, Mapping) else []
        return Fields(table=known, where=where or f"{self.where}, {key}", faults=faults)

    def children(self, key: str, noun: str) -> Iterator["Fields"]:
        """Yield the objects of a list, each under its noun and its place in the list from 1."""
        value = self.value(key)
        if value is not None and not isinstance(value, list | tuple):
            self.fault(f"'{key}' is {_shown(value)}, not a list")
        for place, item in enumerate(value if isinstance(value, list | tuple) else (), start=1):
            where = f"{self.where}, {noun} {place}" if self.where != "plan" else f"{noun} {place}"
            if isinstance(item, Mapping):
                yield Fields(table=item, where=where, faults=self.faults)
            else:
                self.faults.append(
                    Fault(where=where, what=f"it is {_shown(item)}, not an object", remedy=REMEDY)
                )

    def _number(self, key: str, value: object, least: int, most: int) -> Fraction:
        if isinstance(value, bool) or not isinstance(value, int | float):
            self.fault(f"'{key}' is {_shown(value)}, not a number")
            return Fraction(0)
        if not abs(value) <= most:  # also where it is not a number at all
            self.fault(f"'{key}' is not a number that a plan can hold")
            return Fraction(0)
        if value < least:
            self.fault(f"'{key}' is {_shown(value)}, less than {least}")
            return Fraction(0)
        return Fraction(str(value))


def _shown(value: object) -> str:
    """Return a value as a message can show it, however large it is."""
    match value:
        case str():
            return repr(value if len(value) <= 40 else value[:37] + "...")  # noqa: PLR2004
        case bool():
            return "true" if value else "false"
        case list() | tuple():
            return "a list"
        case Mapping():
            return "an object"
        case int() if abs(value) > LARGEST:
            return "a huge number"
        case _:
            return str(value)
