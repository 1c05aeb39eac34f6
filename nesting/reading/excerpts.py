"""Quoting a line of a file with marks under the fault."""

from dataclasses import dataclass

WIDEST = 72
LEAD = 24


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """Where something stands in a text.

    Attributes:
        line: Number of the line, from 1.
        start: First character of it in that line, from 0.
        end: One beyond its last character; equal to start where there is nothing to point at.
    """

    line: int
    start: int = 0
    end: int = 0


def quote(line: str, start: int, end: int) -> tuple[str, str]:
    """Return a line and a second one with marks under the characters from start to end.

    A long line is shortened to what surrounds the fault. Tabs become single spaces, so that the
    marks stand where they should.

    >>> quote("width = -5", 8, 10)
    ('width = -5', '        ^^')
    """
    flat = "".join(character if character.isprintable() else " " for character in line)
    first = 0 if end <= WIDEST else max(0, start - LEAD)
    indent = len(flat[first:]) - len(flat[first:].lstrip())
    first += min(indent, max(0, start - first))
    shown = flat[first : first + WIDEST].rstrip()
    marks = min(max(1, end - start), max(1, WIDEST - (start - first)))
    dots = "…" if first and flat[:first].strip() else ""
    more = "…" if len(flat.rstrip()) > first + WIDEST else ""
    return dots + shown + more, " " * (len(dots) + start - first) + "^" * marks
