"""The first of several sheets that are cut alike: measured before the others are cut.

An error in it would come back on every sheet. Later readings tell whether the saw still cuts the
same.
"""

from dataclasses import dataclass

from plans.sections.repeats import Repeat

FEWEST = 3
"""Sheets alike from which on the first is measured; the second of two is its own check."""
EVERY = 5
MOST_READINGS = 4
"""Sheets between two readings at least, and how many are read at most (judgement)."""

RELEASE = (
    "Cut this sheet alone, measure both sides of one part of each kind, and write them down. Go on "
    "when each is right; where one is not, mark it with 'setout mark JOB --first-off CODE SIZE', "
    "and plan the rest again. The later readings show whether the saw still cuts the same."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class KindRead:
    """One kind of part on the sheet: the code of one piece, its name and its size as cut."""

    code: str
    name: str
    size: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FirstOff:
    """What is measured of sheets that are cut alike.

    Attributes:
        title: What the work is called.
        kinds: The kinds of part, in the order of their codes.
        read: Numbers of the sheets that are measured, the first one first.
        sheets: Numbers of all sheets, each to be initialled.
    """

    title: str
    kinds: tuple[KindRead, ...]
    read: tuple[int, ...]
    sheets: tuple[int, ...]


def make_first_off(repeat: Repeat) -> FirstOff | None:
    """Return what is measured; None for sheets that are too few."""
    if repeat.count < FEWEST or not repeat.view.parts:
        return None
    kinds: dict[tuple[str, str], KindRead] = {}
    for part in repeat.view.parts:
        kind = KindRead(code=part.code, name=part.name, size=part.blank)
        kinds.setdefault((part.name, part.blank), kind)
    step = max(EVERY, -(-repeat.count // MOST_READINGS))
    return FirstOff(
        title=f"First of {repeat.count}: measure sheet {repeat.numbers[0]} before the others",
        kinds=tuple(kinds.values()),
        read=repeat.numbers[::step],
        sheets=repeat.numbers,
    )
