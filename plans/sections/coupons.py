"""Test pieces: one from every sheet, for trying the router and the saw on the same stock."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.layout import RestLeaf
from nesting.lengths import Length, Unit, inch, mm
from nesting.zones import is_sound, usable_of
from plans.sections.codes import Freed
from plans.sections.numbers import show_size
from plans.sections.worked import Worked, WorkedSheet

COUPON_SIZE: dict[Unit, tuple[Length, Length]] = {
    Unit.MM: (mm(250), mm(80)),
    Unit.INCH: (inch(10), inch("3 1/8")),
}
"""Enough for a kerf, a groove and a threaded insert or two (judgement)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Coupon:
    """A test piece.

    Attributes:
        mark: What is written on it at once, "TEST S1".
        sheet: Number of the sheet it comes from.
        stock: Name of that sheet's stock.
        size: Its size, "250 × 80".
        source: "waste" or the code of the offcut that it comes out of, last.
        source_size: Size of that piece.
        cut: Number of the cut that frees that piece, "-" where none does.
    """

    mark: str
    sheet: str
    stock: str
    size: str
    source: str
    source_size: str
    cut: str


def make_coupons(worked: Worked) -> tuple[Coupon, ...]:
    """Return a test piece for every sheet that leaves enough over.

    Waste is taken where it will do, the piece that is freed first; else the smallest offcut. No
    part moves for it, so it never costs a sheet.
    """
    return tuple(coupon for sheet in worked.sheets for coupon in _coupons(worked, sheet))


def _coupons(worked: Worked, sheet: WorkedSheet) -> Iterator[Coupon]:
    """Yield the test piece of a sheet, nothing where there is none."""
    unit = worked.job.unit
    size = COUPON_SIZE[unit]
    rests = [freed for freed in sheet.freed if _holds(sheet, freed, size)]
    waste = [freed for freed in rests if not _is_offcut(freed)]
    offcuts = sorted(rests, key=lambda freed: freed.place.rect.length * freed.place.rect.width)
    for freed in (waste or offcuts)[:1]:
        rect = freed.place.rect
        yield Coupon(
            mark=f"TEST S{sheet.number}",
            sheet=str(sheet.number),
            stock=sheet.sheet.name,
            size=show_size(*size, unit),
            source=sheet.codes[freed.place.path] if _is_offcut(freed) else "waste",
            source_size=show_size(rect.length, rect.width, unit),
            cut=str(freed.cut) if freed.cut else "-",
        )


def _is_offcut(freed: Freed) -> bool:
    return isinstance(freed.place.node, RestLeaf) and freed.place.node.is_offcut


def _holds(sheet: WorkedSheet, freed: Freed, size: tuple[Length, Length]) -> bool:
    """Return whether a sound leftover holds a test piece within the trims, either way round.

    Where more is left than the piece, a cut takes a kerf; it may run off the edge.
    """
    if not isinstance(freed.place.node, RestLeaf):
        return False
    usable = usable_of(freed.place.rect, sheet.sheet)
    along, across = usable.length, usable.width
    is_large = min(along, across) >= min(size) and max(along, across) >= max(size)
    return is_large and is_sound(freed.place.rect, sheet.sheet.defects)
