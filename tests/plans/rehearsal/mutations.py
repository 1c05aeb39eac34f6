"""Slips of the pen: one figure of a plan file changed by 2 mm, everything else left alone."""

import copy
import random
import re
from collections.abc import Iterator
from fractions import Fraction
from typing import Any, NamedTuple

Json = dict[str, Any]
Path = tuple[str | int, ...]

SLIP_MM = 2
SLIP_64THS = 5  # 5/64 in is 1.98 mm, the nearest that can be printed
_FIGURE = re.compile(r"-?(?:[0-9]+ )?[0-9]+/[0-9]+|-?[0-9]+(?:\.[0-9]+)?")
_BOX = ("x", "y", "length", "width")


class Figure(NamedTuple):
    """One figure of a plan file: the value's path, and which figure of a text it is."""

    path: Path
    place: int | None = None


def figures_of(document: Json) -> list[Figure]:
    """Return every printed size, position and guide figure, and every number they are made from.

    Left out is the nominal thickness of a sheet that was measured: nothing is cut by it.
    """
    found = [Figure(("saw", key)) for key in ("kerf", "base_left", "base_right")]
    for number, sheet in enumerate(document["sheets"]):
        for path in (*_drawn(sheet), *_printed(sheet["printed"])):
            value = sheet
            for key in path:
                value = value[key]
            whole = ("sheets", number, *path)
            if isinstance(value, str):
                found.extend(Figure(whole, place) for place, _ in enumerate(_FIGURE.findall(value)))
            else:
                found.append(Figure(whole))
    return found


def _drawn(sheet: Json) -> Iterator[Path]:
    yield from (("length",), ("width",))
    yield ("thickness",) if sheet["measured"] is None else ("measured",)
    yield from (("trim", side) for side in ("left", "right", "top", "bottom"))
    for place, _ in enumerate(sheet["parts"]):
        yield from (("parts", place, key) for key in _BOX)
        yield from (("parts", place, "finished", side) for side in (0, 1))
    for place, _ in enumerate(sheet["cuts"]):
        yield from (("cuts", place, "band", key) for key in _BOX)
        yield ("cuts", place, "kerf")
    for place, _ in enumerate(sheet["offcuts"]):
        yield from (("offcuts", place, key) for key in _BOX)
    for place, _ in enumerate(sheet.get("defects", ())):
        yield from (("defects", place, key) for key in _BOX)


def _printed(printed: Json) -> Iterator[Path]:
    yield from (("printed", "size"), ("printed", "trims"))
    keys = {
        "rows": ("hold_size", "keep", "guide_left", "guide_right"),
        "parts": ("finished", "blank", "thickness"),
        "offcuts": ("size",),
        "defects": ("along", "across", "size"),
        "sums": ("text",),
    }
    for table, columns in keys.items():
        for place, _ in enumerate(printed.get(table, ())):
            yield from (("printed", table, place, column) for column in columns)


def slip(document: Json, figure: Figure, sign: int) -> Json:
    """Return a copy of a document with one figure 2 mm larger or smaller."""
    changed = copy.deepcopy(document)
    holder: Any = changed
    for key in figure.path[:-1]:
        holder = holder[key]
    value = holder[figure.path[-1]]
    if figure.place is None:
        holder[figure.path[-1]] = value + sign * SLIP_MM
    else:
        match = list(_FIGURE.finditer(value))[figure.place]
        slipped = _slip_text(match[0], sign, inches=document["unit"] == "in")
        holder[figure.path[-1]] = value[: match.start()] + slipped + value[match.end() :]
    return changed


def _slip_text(text: str, sign: int, *, inches: bool) -> str:
    if "/" not in text and (not inches or "." in text):
        decimal = Fraction(text) + sign * SLIP_MM / Fraction("25.4" if inches else 1)
        return f"{float(decimal):.3f}".rstrip("0").rstrip(".")
    is_negative = text.startswith("-")
    size = sum((Fraction(figure) for figure in text.lstrip("-").split()), start=Fraction(0))
    amount = (-size if is_negative else size) + sign * Fraction(SLIP_64THS, 64)
    whole, part = divmod(abs(amount), 1)
    figures = [str(whole)] if whole or not part else []
    return ("-" if amount < 0 else "") + " ".join([*figures, *([str(part)] if part else [])])


def random_slips(document: Json, count: int, seed: int) -> Iterator[tuple[Figure, Json]]:
    """Yield a number of random slips of a document, the same for the same seed."""
    chance = random.Random(seed)  # noqa: S311 - chance, not secrecy
    figures = figures_of(document)
    for _ in range(count):
        figure = chance.choice(figures)
        yield figure, slip(document, figure, chance.choice((-1, 1)))
