"""Random job files, the same for the same seed: sheets, saws and parts as people have them.

Kerfs and trims of 0, trims thinner than the kerf, sizes that fill a sheet exactly, parts larger
than any sheet, stock that runs out, both faces, both units and both mixed are all among them.
A part's size is one that its page can print exactly, unless fine sizes are asked for.
"""

import random
from decimal import Decimal
from fractions import Fraction
from typing import Any, NamedTuple

Json = dict[str, Any]

_NAMES = ("Side", "Top", "Shelf", "Door", "Rail", "Back", "Tread", "Kicker")
_STOCK = {
    # Two common sizes and a small one, in millimetres and in inches.
    "mm": ("2440", "1220", "1525", "800", "600"),
    "in": ("96", "48", "60", "30 1/2", "24"),
}
_KERFS = {"mm": ("0", "1.6", "2.4", "3.2"), "in": ("0", "3/32", "1/8", "2.4 mm")}
_TRIMS = {"mm": ("0", "2", "10", "12.5"), "in": ("0", "1/16", "3/8", "10 mm")}


class _Maker(NamedTuple):
    """What the pieces of one random job have in common."""

    chance: random.Random
    unit: str
    is_fine: bool


def random_job(seed: int, *, is_fine: bool = False) -> Json:
    """Return the content of a job file; lengths are texts with their unit."""
    chance = random.Random(seed)  # noqa: S311 - chance, not secrecy
    maker = _Maker(chance, chance.choice(("mm", "mm", "in")), is_fine)
    sheets = [_sheet(maker, number) for number in range(chance.choice((1, 1, 2)))]
    kerf = _length(chance.choice(_KERFS[maker.unit]), maker.unit)
    kinds = chance.randint(1, len(_NAMES))
    return {
        "job": {"name": f"Random job {seed}", "units": maker.unit},
        "saw": {"kerf": kerf, "marked_face": chance.choice(("back", "front"))},
        "sheet": sheets,
        "part": [_part(maker, name, sheets, kerf) for name in _NAMES[:kinds]],
    }


def toml_text(job: Json) -> str:
    """Return a job as the text of its file."""
    lines = []
    for table in ("job", "saw"):
        lines += [f"[{table}]", *(f"{key} = {_toml(job[table][key])}" for key in job[table])]
    for table in ("sheet", "part"):
        for entry in job[table]:
            lines += [f"[[{table}]]", *(f"{key} = {_toml(entry[key])}" for key in entry)]
    return "\n".join(lines) + "\n"


def _toml(value: object) -> str:
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{key} = {_toml(item)}" for key, item in value.items()) + " }"
    if isinstance(value, bool):
        return "true" if value else "false"
    return f"'{value}'" if isinstance(value, str) else str(value)


def _sheet(maker: _Maker, number: int) -> Json:
    chance, unit, _ = maker
    length, width = chance.sample(_STOCK[unit], 2)
    entry: Json = {
        "name": f"stock {number + 1}",
        "material": "lime plywood",
        "thickness": "18 mm",
        "length": _length(length, unit),
        "width": _length(width, unit),
        "grain": chance.choice(("length", "length", "width", "none")),
        "price": chance.choice((0, 18, 44.5, 62)),
        "trim": {
            side: _length(chance.choice(_TRIMS[unit]), unit)
            for side in ("left", "right", "top", "bottom")
        },
    }
    if chance.random() < 0.3:
        entry["count"] = chance.randint(1, 2)
    if chance.random() < 0.5:
        entry["measured"] = ["17.6 mm", "17.75 mm"]
    return entry


def _part(maker: _Maker, name: str, sheets: list[Json], kerf: str) -> Json:
    chance, unit, _ = maker
    part = {
        "name": name,
        "length": _side(maker, sheets, kerf, "length"),
        "width": _side(maker, sheets, kerf, "width"),
        "count": chance.choice((1, 1, 2, 3, 5)),
        "grain": chance.choice(("any", "length", "width")),
    }
    if chance.random() < 0.2:
        part["oversize"] = _length(chance.choice(("3", "5.5") if unit == "mm" else ("1/8",)), unit)
    return part


def _side(maker: _Maker, sheets: list[Json], kerf: str, side: str) -> str:
    """Return one side of a part: mostly any size, at times one that fills a sheet exactly."""
    chance, unit, is_fine = maker
    printed = Fraction(254, 640) if unit == "in" else Fraction(1, 10)
    step = Fraction(1, 1000) if is_fine else printed
    if chance.random() < 0.25:
        sheet, pieces = chance.choice(sheets), chance.randint(1, 5)
        trims = ("left", "right") if side == "length" else ("top", "bottom")
        usable = _mm(sheet[side]) - sum(_mm(sheet["trim"][trim]) for trim in trims)
        exact = (usable - (pieces - 1) * _mm(kerf)) / pieces
        if exact % step == 0:
            return _tape(exact, unit)
    return _tape(step * int(chance.randint(60, 900) / step), unit)


def _tape(size: Fraction, unit: str) -> str:
    """Return a size in millimetres as text, in 64ths of an inch where it is whole in them."""
    in_64ths = size * 640 / 254
    if unit == "in" and in_64ths.denominator == 1:
        return f"{in_64ths.numerator}/64 in"
    return f"{Decimal(size.numerator) / size.denominator} mm"


def _length(figure: str, unit: str) -> str:
    return figure if figure.endswith("mm") else f"{figure} {unit}"


def _mm(length: str) -> Fraction:
    *figures, unit = length.split()
    amount = sum((Fraction(figure) for figure in figures), start=Fraction(0))
    return amount * Fraction(254, 10) if unit == "in" else amount
