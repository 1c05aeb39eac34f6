"""The first part of a kind, measured before the others are cut: whether to cut on."""

from collections.abc import Iterator

from nesting.garage.marks import FIRST_OFF, Marks, find_deviation, is_there
from nesting.garage.planned import Piece, Planned
from nesting.lengths import Length, Unit
from plans.sections.numbers import show_with_unit


def say_first_off(planned: Planned, marks: Marks, code: str) -> str:
    """Return how far a first part is off its size, and whether the others may be cut like it.

    Args:
        planned: The plan.
        marks: What has been marked; the size of the part is among it.
        code: The code of the part.
    """
    piece = next(piece for _, piece in planned.pieces() if piece.code == code)
    limit = show_with_unit(FIRST_OFF, planned.unit)
    off = say_off(piece, marks.first_offs[code], planned.unit)
    others = sum(1 for _ in _waiting_like(planned, marks, piece))
    if code in marks.spoilt:
        return (
            f"{code} is {off}, more than {limit}: it counts as spoilt, and what is left of it is "
            "in hand. Find out why before you cut on: the setting, the kerf, the edge measured "
            "from. If the kerf is another one, correct it in the job file. Then plan the rest with "
            "'setout resume'."
        )
    if max(find_deviation(piece, marks.first_offs[code])) > FIRST_OFF:
        return (
            f"{code} is {off}, more than {limit}: cut it to size. Find out why before you cut on: "
            "the setting, the kerf, the edge measured from."
        )
    if others:
        return f"{code} is {off}, within {limit}: cut the other {others} of its kind like it."
    return f"{code} is {off}, within {limit}; it was the last of its kind."


def say_off(piece: Piece, size: tuple[Length, Length], unit: Unit) -> str:
    """Return by how much a part is off its size as planned, in words."""
    longer, wider = find_deviation(piece, size)
    words = [
        f"{show_with_unit(abs(off), unit)} {more if off > 0 else less}"
        for off, more, less in ((longer, "longer", "shorter"), (wider, "wider", "narrower"))
        if off
    ]
    return f"{' and '.join(words)} than planned" if words else "as planned"


def _waiting_like(planned: Planned, marks: Marks, piece: Piece) -> Iterator[Piece]:
    """Yield the parts of the same finished size that are not cut yet."""
    assert piece.part is not None
    for sheet, other in planned.pieces():
        is_alike = other.part is not None and other.part.finished == piece.part.finished
        if is_alike and not is_there(sheet, other, marks) and other.code not in marks.spoilt:
            yield other
