"""The leftovers of a plan, for the book."""

from collections.abc import Iterator

from nesting.garage.edges import raw_edges
from nesting.garage.hand import find_defects, find_thickness
from nesting.garage.marks import Marks, is_there
from nesting.garage.planned import Planned
from nesting.sheets import Trim, mean_reading
from nesting.zones import is_sound
from plans.book.entries import SIDES, Offcut, entry_number


def offcuts_of(planned: Planned, marks: Marks, day: str) -> tuple[Offcut, ...]:
    """Return the sound leftovers that a plan has made, with those of the plans before it.

    Args:
        planned: The plan.
        marks: What has been marked of it; where no cut is, it is taken to be finished.
        day: The day on which they come into the book.
    """
    return tuple(_offcuts(planned, marks, day))


def cut_up_entries(planned: Planned, marks: Marks) -> tuple[int, ...]:
    """Return the numbers of the entries of the book that are cut up, under this plan or before.

    Args:
        planned: The plan.
        marks: What has been marked of it; where no cut is, it is taken to be finished.
    """
    begun = {sheet.number for sheet in planned.sheets} - {
        sheet.number
        for sheet, piece in planned.pieces()
        if piece.made_by == 0 and marks.cuts and is_there(sheet, piece, marks)
    }
    whole = {entry_number(sheet.stock) for sheet in planned.sheets if sheet.number not in begun}
    stocks = [stock for stock, _ in planned.used]
    stocks += [sheet.stock for sheet in planned.sheets if sheet.number in begun]
    numbers = {number for stock in stocks if (number := entry_number(stock)) is not None}
    return tuple(sorted(numbers - whole))


def _offcuts(planned: Planned, marks: Marks, day: str) -> Iterator[Offcut]:
    for piece in planned.kept:
        if piece.code not in marks.spoilt and not piece.defects:
            yield Offcut(
                material=piece.material,
                thickness=piece.thickness,
                measured=mean_reading(piece.measured) if piece.measured else None,
                length=piece.length,
                width=piece.width,
                grain=piece.grain,
                good_edges=_good_edges(piece.trim),
                added=day,
                origin=piece.code,
            )
    for sheet, found in planned.pieces():
        is_free = is_there(sheet, found, marks) if marks.cuts else found.code not in marks.spoilt
        if found.is_offcut and is_free and is_sound(found.rect, find_defects(sheet, marks)):
            readings = find_thickness(sheet, marks)
            yield Offcut(
                material=sheet.material,
                thickness=sheet.thickness,
                measured=mean_reading(readings) if readings else None,
                length=found.rect.length,
                width=found.rect.width,
                grain=sheet.grain,
                good_edges=_good_edges(raw_edges(sheet, found.rect)),
                added=day,
                origin=f"{found.code}-{planned.fingerprint}",
            )


def _good_edges(raw: Trim) -> tuple[str, ...]:
    return tuple(side for side in SIDES if getattr(raw, side) == 0)
