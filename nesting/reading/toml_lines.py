"""Finding the lines of a TOML file that its keys stand on.

The standard library reads the values but does not say where they stood. This light scan finds
the headers and the `key = value` lines, so that a message can name the line and quote it. Where
it does not recognise something, the message goes without: no value is ever taken from here.
"""

import re
from typing import TypeAlias

from nesting.reading.excerpts import Spot

Path: TypeAlias = tuple[str | int, ...]
Spots: TypeAlias = dict[Path, Spot]

_NAME = r"""(?:[A-Za-z0-9_-]+|"[^"]*"|'[^']*')"""
_DOTTED = rf"{_NAME}(?:\s*\.\s*{_NAME})*"
_HEADER = re.compile(rf"\s*(?P<open>\[\[?)\s*(?P<names>{_DOTTED})\s*\]\]?\s*(?:#.*)?")
_KEY = re.compile(rf"\s*(?P<names>{_DOTTED})\s*=\s*(?P<value>.*)")
_INNER_KEY = re.compile(rf"(?P<names>{_DOTTED})\s*=\s*(?P<value>[^,}}\s][^,}}]*)")
STRING = re.compile(r'"(?:[^"\\]|\\.)*"|\'[^\']*\'')


def find_lines(text: str) -> Spots:
    """Return where each table and each value of a TOML text stands.

    A path is a tuple of keys, with the index of the table after the key of an array of tables:
    ("sheet", 1, "width"). The spot of a table is its header, that of a key is its value.
    """
    spots: Spots = {}
    counts: dict[Path, int] = {}
    table: Path = ()
    lines = iter(enumerate(text.split("\n"), start=1))
    for number, line in lines:
        header = _HEADER.fullmatch(line)
        if header:
            table = _table_path(_split(header["names"]), counts, is_array=header["open"] == "[[")
            spots.setdefault(table, Spot(line=number, start=header.start("open"), end=len(line)))
            continue
        key = _KEY.fullmatch(line)
        if key:
            value = key["value"]
            path = (*table, *_split(key["names"]))
            start = key.start("value")
            spots[path] = Spot(line=number, start=start, end=start + _value_end(value))
            spots |= _inner_spots(path, value, number, start)
            rest = _opened(value)
            while rest and (following := next(lines, None)):
                rest = _opened(following[1], rest)
    return spots


def _table_path(names: tuple[str, ...], counts: dict[Path, int], *, is_array: bool) -> Path:
    path: Path = ()
    for position, name in enumerate(names):
        path = (*path, name)
        if is_array and position == len(names) - 1:
            counts[path] = counts.get(path, 0) + 1
        if path in counts:
            path = (*path, counts[path] - 1)
    return path


def _split(dotted: str) -> tuple[str, ...]:
    return tuple(name.strip("\"'") for name in re.findall(_NAME, dotted))


def _value_end(value: str) -> int:
    string = STRING.match(value)
    if string:
        return string.end()
    return len(STRING.sub(lambda found: "x" * len(found[0]), value).split("#")[0].rstrip())


def _inner_spots(path: Path, value: str, number: int, start: int) -> Spots:
    """Return the spots of the keys of an inline table on one line."""
    if not value.startswith("{"):
        return {}
    return {
        (*path, *_split(found["names"])): Spot(
            line=number,
            start=start + found.start("value"),
            end=start + found.start("value") + len(found["value"].rstrip()),
        )
        for found in _INNER_KEY.finditer(value)
    }


def _opened(line: str, opened: str = "") -> str:
    """Return what is still open after a line: a long string's quotes, or brackets, or nothing."""
    if opened in ('"""', "'''"):
        return "" if opened in line else opened
    for quotes in ('"""', "'''"):
        if line.count(quotes) % 2 and not opened:
            return quotes
    plain = STRING.sub("", line).split("#")[0]
    depth = len(opened) + sum(plain.count(sign) for sign in "[{")
    return "[" * max(0, depth - sum(plain.count(sign) for sign in "]}"))
