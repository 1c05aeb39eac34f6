"""What the book holds of a leftover, and which leftovers it holds."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal

from nesting.lengths import Length, mm
from nesting.sheets import Sheet, SheetGrain, Trim

_STOCK = re.compile(r"offcut ([1-9][0-9]*) of the book$")
"""What the sheet of an entry is called; a plan that goes on puts words before it."""

SIDES = ("left", "right", "top", "bottom")
MM2_PER_M2 = 1_000_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Offcut:
    """A leftover.

    Attributes:
        material: What it is made of.
        thickness: Nominal thickness.
        measured: Measured thickness, None where it was not measured.
        length: Extent along the length of the sheet that it came from.
        width: Extent along the width of that sheet.
        grain: The side that the face grain runs along.
        good_edges: Edges that were cut and can be measured from, of `SIDES`.
        added: Day on which it came in, "2026-11-25".
        origin: Where it came from, code and plan such as "L1-KAC-01234"; "" where nobody said.
    """

    material: str
    thickness: Length
    measured: Length | None = None
    length: Length
    width: Length
    grain: SheetGrain
    good_edges: tuple[str, ...] = ()
    added: str
    origin: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A leftover in the book.

    Attributes:
        number: Its number in the book, written on it.
        offcut: The leftover.
        holder: The job file that it is reserved for, "" where it is free.
    """

    number: int
    offcut: Offcut
    holder: str = ""

    @property
    def area(self) -> int:
        """Area in square nanometres."""
        return self.offcut.length * self.offcut.width


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """Which leftovers are worth keeping, and how much room there is for them.

    Attributes:
        length: Smallest longer side.
        width: Smallest shorter side.
        space_m2: Square metres of board that there is room for, None for no limit.
    """

    length: Length = mm(300)
    width: Length = mm(100)
    space_m2: Decimal | None = None


def is_worth_keeping(rule: Rule, length: Length, width: Length) -> bool:
    """Return whether the rule keeps a piece of this size."""
    return min(length, width) >= rule.width and max(length, width) >= rule.length


def list_to_throw(rule: Rule, entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """Return what to throw out so that the rest has room: the oldest first, then the smallest.

    What is reserved stays, even where it alone is too much.
    """
    entries = tuple(entries)
    if rule.space_m2 is None:
        return ()
    room = int(rule.space_m2 * MM2_PER_M2) * mm(1) ** 2
    over = sum(entry.area for entry in entries) - room
    thrown = []
    free = (entry for entry in entries if not entry.holder)
    for entry in sorted(free, key=lambda entry: (entry.offcut.added, entry.area, entry.number)):
        if over <= 0:
            break
        thrown.append(entry)
        over -= entry.area
    return tuple(thrown)


def entry_number(stock: str) -> int | None:
    """Return the number of the entry that a stock of a plan is, None where it is none.

    >>> entry_number("sheet 3, offcut 5 of the book"), entry_number("birch 18")
    (5, None)
    """
    found = _STOCK.search(stock)
    return int(found[1]) if found else None


def as_sheet(entry: Entry, raw_trim: Length) -> Sheet:
    """Return an entry as a sheet that a job can be cut from.

    Args:
        entry: The entry.
        raw_trim: What is not used along each edge that is not good.
    """
    offcut = entry.offcut
    trims = {side: 0 if side in offcut.good_edges else raw_trim for side in SIDES}
    return Sheet(
        name=f"offcut {entry.number} of the book",
        material=offcut.material,
        thickness=offcut.thickness,
        measured=() if offcut.measured is None else (offcut.measured,),
        length=offcut.length,
        width=offcut.width,
        grain=offcut.grain,
        count=1,
        owned=True,
        trim=Trim(**trims),
    )
