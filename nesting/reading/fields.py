"""What a table of the job file and a row of a part list have in common."""

from typing import Protocol

from nesting.lengths import Length, Unit
from nesting.reading.values import LARGEST, LONGEST, Choice


class Fields(Protocol):
    """Named values that describe one thing, read one by one.

    Each function records a fault and returns a stand-in where the value will not do.
    """

    unit: Unit
    is_sound: bool

    @property
    def place(self) -> str:
        """What a message elsewhere calls it, such as "parts.csv, row 7"."""

    def has(self, key: str) -> bool:
        """Return whether there is a value."""

    def text(self, key: str, default: str | None = None) -> str:
        """Return a text on one line."""

    def length(
        self,
        key: str,
        default: Length | None = None,
        *,
        may_be_zero: bool = False,
        most: Length = LONGEST,
    ) -> Length:
        """Return a length."""

    def whole(
        self, key: str, default: int | None = None, *, least: int = 0, most: int = LARGEST
    ) -> int:
        """Return a whole number."""

    def choice(self, key: str, kinds: type[Choice], default: Choice | None = None) -> Choice:
        """Return the member of an Enum whose value it is."""

    def fault(self, what: str, remedy: str, key: str = "", *, names_key: bool = True) -> None:
        """Record a fault of the whole, or of one value."""
