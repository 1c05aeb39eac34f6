"""Spares: what they can stand in for, and where they come from."""

from collections.abc import Iterator

from nesting.layout import PartLeaf
from nesting.parts import Part
from plans.sections.worked import Worked

MOST_CODES = 4
"""How many parts that a spare can stand in for are named; the others are counted."""


def count_spares(worked: Worked) -> int:
    """Return how many parts of a plan are spares."""
    return sum(part.count for part in worked.job.parts if part.spare_of)


def say_spares(worked: Worked) -> Iterator[str]:
    """Yield a line for each spare: "D1, a spare of A3, comes out of what is left of sheet 2"."""
    parts = worked.job.parts
    for sheet in worked.sheets:
        for freed in sheet.freed:
            node = freed.place.node
            if isinstance(node, PartLeaf) and parts[node.part].spare_of:
                code = sheet.codes[freed.place.path]
                of = say_spare_of(worked, parts[node.part])
                yield f"{code}, a {of}, comes out of what is left of sheet {sheet.number}"


def say_spare_of(worked: Worked, part: Part) -> str:
    """Return "spare of A3, B3"; "" for a part that is needed."""
    if not part.spare_of:
        return ""
    codes = [code for index in part.spare_of for code in worked.part_codes[index]]
    more = len(codes) - MOST_CODES
    rest = f" and {more} more" if more > 0 else ""
    return f"spare of {', '.join(codes[:MOST_CODES])}{rest}"
