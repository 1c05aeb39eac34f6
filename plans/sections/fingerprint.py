"""The fingerprint: a short code that stands on every page of one plan and of no other."""

import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import fields, is_dataclass
from enum import Enum

LETTERS = "ACFJKRTUVY"
FIGURES = "01234578"
"""Three letters and five figures. Read upside-down, a fingerprint would begin with a figure, and
none of these figures then looks like one of the letters; 6 and 9 would look like each other."""

COUNT_LETTERS = 3
COUNT_FIGURES = 5


def make_fingerprint(*printed: object) -> str:
    """Return the code of everything that is printed.

    Equal content gives an equal code on every machine; content that differs in one figure gives
    another code, but for one chance in 32 million.

    Args:
        printed: Texts, whole numbers, enums, and tuples, sets, mappings and records of them.
    """
    digest = hashlib.sha256(_spell(printed).encode()).digest()
    number = int.from_bytes(digest, "big")
    signs = []
    for alphabet in (LETTERS,) * COUNT_LETTERS + (FIGURES,) * COUNT_FIGURES:
        number, place = divmod(number, len(alphabet))
        signs.append(alphabet[place])
    text = "".join(signs)
    return f"{text[:COUNT_LETTERS]}-{text[COUNT_LETTERS:]}"


def _spell(value: object) -> str:
    """Return one text for one value, whatever order sets and mappings are held in."""
    match value:
        case None | str() | int():
            return repr(value)
        case Enum():
            return repr(value.value)
        case Mapping():
            return _list(sorted(f"{_spell(key)}:{_spell(item)}" for key, item in value.items()))
        case frozenset() | set():
            return _list(sorted(map(_spell, value)))
        case tuple() | list():
            return _list(map(_spell, value))
        case _ if is_dataclass(value):
            return _list(_spell(getattr(value, field.name)) for field in fields(value))
        case _:
            raise TypeError(f"{type(value).__name__} is not printed")


def _list(items: Iterable[str]) -> str:
    return f"[{','.join(items)}]"
