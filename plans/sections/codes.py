"""Codes: one for every part, piece and offcut of a plan.

S1 is whole sheet 1, P1, P2 ... are pieces on the way, L1 ... offcuts that are kept. Parts carry
the letter of their cabinet, or of their kind, and a figure. A sheet of paper or a board is often
seen upside-down, so no code may then read as another one.
"""

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import count, islice

from nesting.cabinets.letters import USABLE_LETTERS, name_cabinets
from nesting.cut_sequence import Path
from nesting.job import Job
from nesting.layout import Cut, PartLeaf, Place, RestLeaf
from nesting.parts import Part

WASTE = "WASTE"

_CODE = re.compile(rf"([{USABLE_LETTERS}]{{1,2}}|[SPL])[1-9][0-9]*")
_TURNED = dict(zip("0125869SE3L7", "0125896S3E7L", strict=True))
"""How signs read when the page is upside-down; those not listed read as nothing in use."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Freed:
    """A piece that a cut makes.

    Attributes:
        cut: Number of the cut on its sheet, 0 where the whole sheet is the part.
        place: The piece.
    """

    cut: int
    place: Place


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Codes:
    """All codes of a plan.

    Attributes:
        by_path: For every sheet the code of every piece, by its path in the tree.
        by_part: For every part of the job the codes of its copies, placed ones in the order of
            cutting, then those that were not placed.
    """

    by_path: tuple[Mapping[Path, str], ...]
    by_part: tuple[tuple[str, ...], ...]


def assign_codes(job: Job, sheets: Sequence[Sequence[Freed]]) -> Codes:
    """Return a code for every piece.

    Args:
        job: The job.
        sheets: For every sheet the pieces in the order in which the cuts make them.
    """
    by_part = tuple(part_codes(job.parts))
    next_of_part = [iter(codes) for codes in by_part]
    pieces, offcuts = count(1), count(1)
    by_path: list[dict[Path, str]] = []
    for number, freed in enumerate(sheets, start=1):
        codes: dict[Path, str] = {(): f"S{number}"}
        for piece in freed:
            match piece.place.node:
                case PartLeaf(part=part):
                    code = next(next_of_part[part])
                case RestLeaf(is_offcut=True):
                    code = f"L{next(offcuts)}"
                case RestLeaf():
                    code = WASTE
                case Cut():
                    code = f"P{next(pieces)}"
            codes[piece.place.path] = code
        by_path.append(codes)
    return Codes(by_path=tuple(by_path), by_part=by_part)


def part_codes(parts: Sequence[Part]) -> Iterator[tuple[str, ...]]:
    """Yield for every kind of part the codes of its copies.

    The parts of a cabinet share its letter and run on; every plain kind has a letter of its own
    that is no cabinet's. Figures that would read as another code upside-down are left out.
    """
    taken = {part.cabinet for part in parts if part.cabinet}
    free = (letter for letter in _letters() if letter not in taken)
    used: Counter[str] = Counter()
    for part in parts:
        letter = part.cabinet or next(free)
        start = used[letter]
        used[letter] += part.count
        yield tuple(islice(_codes_of(letter), start, start + part.count))


def reads_as(code: str) -> str | None:
    """Return the other code that a code reads as when it is upside-down, None where none.

    >>> reads_as("E7"), reads_as("A16"), reads_as("E3")
    ('L3', None, None)
    """
    turned = "".join(_TURNED.get(sign, "?") for sign in reversed(code))
    return turned if turned != code and _CODE.fullmatch(turned) else None


def _letters() -> Iterator[str]:
    """Yield A, B ... Y, AA, AB and so on without end."""
    for number in count():
        yield from name_cabinets(1, already=number)


def _codes_of(letter: str) -> Iterator[str]:
    for figure in count(1):
        code = f"{letter}{figure}"
        if reads_as(code) is None:
            yield code
