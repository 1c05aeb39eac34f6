"""Codes: one for every part, piece and offcut of a plan.

S1 is whole sheet 1, P1, P2 ... are pieces on the way, L1 ... offcuts that are kept. Parts carry
the letter of their cabinet, or of their kind, and a figure. A sheet of paper or a board is often
seen upside-down, so no code may then read as another one.
"""

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import count, islice, product

from nesting.cabinets.letters import USABLE_LETTERS, name_cabinets
from nesting.cut_sequence import Path
from nesting.earlier import Earlier
from nesting.job import Job
from nesting.layout import Cut, PartLeaf, Place, RestLeaf
from nesting.parts import Part

WASTE = "WASTE"

_CODE = re.compile(rf"([{USABLE_LETTERS}]{{1,2}}|[SPL])[1-9][0-9]*")
_TURNED = {"0": "0", "1": "1", "2": "2", "3": "E", "5": "5S", "6": "9", "7": "L", "8": "8"}
_TURNED |= {"9": "6", "E": "3", "L": "7", "S": "5S"}
"""How signs may read when the page is upside-down; those not listed read as nothing in use."""


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
    """Return a code for every piece; where a plan goes on from another, one that is still free.

    Args:
        job: The job.
        sheets: For every sheet the pieces in the order in which the cuts make them.
    """
    earlier = job.earlier or Earlier(fingerprint="")
    by_part = earlier.codes or tuple(part_codes(job.parts))
    next_of_part = [iter(codes) for codes in by_part]
    pieces, offcuts = count(1 + earlier.pieces), _offcut_codes(1 + earlier.offcuts)
    by_path: list[dict[Path, str]] = []
    for number, freed in enumerate(sheets, start=1):
        codes: dict[Path, str] = {(): f"S{number}"}
        for piece in freed:
            match piece.place.node:
                case PartLeaf(part=part):
                    code = next(next_of_part[part])
                case RestLeaf(is_offcut=True):
                    code = next(offcuts)
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


def free_codes(job: Job, by_part: Sequence[Sequence[str]], number: int) -> tuple[str, ...]:
    """Return codes for parts that come from no sheet, with a letter that nothing else has.

    Args:
        job: The job.
        by_part: The codes of its parts.
        number: How many are needed.
    """
    earlier = job.earlier or Earlier(fingerprint="")
    known = [*(code for codes in by_part for code in codes), *(p.code for p in earlier.finished)]
    taken = {code.rstrip("0123456789") for code in known}
    taken |= {letter for build in job.cabinets for letter in build.letters}
    letter = next(each for each in _letters() if each not in taken)
    return tuple(islice(_codes_of(letter), number))


def code_order(code: str) -> tuple[int, str, int]:
    """Return what codes are sorted by.

    >>> sorted(["A10", "AA1", "B1", "A2"], key=code_order)
    ['A2', 'A10', 'B1', 'AA1']
    """
    letters = code.rstrip("0123456789")
    return (len(letters), letters, int(code[len(letters) :] or 0))


def turned_readings(code: str) -> tuple[str, ...]:
    """Return the other codes that a code may read as when it is upside-down.

    >>> turned_readings("E7"), turned_readings("A16"), turned_readings("E3")
    (('L3',), (), ())
    """
    signs = product(*(_TURNED.get(sign, "?") for sign in reversed(code)))
    texts = ("".join(reading) for reading in signs)
    return tuple(text for text in texts if text != code and _CODE.fullmatch(text))


def _letters() -> Iterator[str]:
    """Yield A, B ... Y, AA, AB and so on without end."""
    for number in count():
        yield from name_cabinets(1, already=number)


def _codes_of(letter: str) -> Iterator[str]:
    """Yield the codes of parts of one letter that read as no other code."""
    for figure in count(1):
        code = f"{letter}{figure}"
        if not turned_readings(code):
            yield code


def _offcut_codes(first: int) -> Iterator[str]:
    """Yield L1, L2 and so on from a figure, without those that read as a sheet or another offcut.

    Parts are not looked at: those that would read as an offcut have left the figure out.
    """
    for figure in count(first):
        code = f"L{figure}"
        if not any(other[0] in "SL" for other in turned_readings(code)):
            yield code
