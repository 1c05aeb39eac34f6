"""What of a sheet can be used: clear of its trims and of the places that are not sound."""

from collections.abc import Iterable

from nesting.layout import Rect
from nesting.parts import Part
from nesting.saw import Keep
from nesting.sheets import Defect, Sheet, Trim, Use


def meets(rect: Rect, defect: Defect) -> bool:
    """Return whether a rectangle lies on a defect, be it by a hair; touching it is not enough."""
    return (
        rect.x < defect.x + defect.length
        and defect.x < rect.x + rect.length
        and rect.y < defect.y + defect.width
        and defect.y < rect.y + rect.width
    )


def find_under(rect: Rect, defects: Iterable[Defect]) -> tuple[Defect, ...]:
    """Return the defects that a rectangle of their sheet lies on."""
    return tuple(defect for defect in defects if meets(rect, defect))


def is_sound(rect: Rect, defects: Iterable[Defect]) -> bool:
    """Return whether a rectangle of a sheet lies on no defect."""
    return not any(meets(rect, defect) for defect in defects)


def list_barred(part: Part, defects: Iterable[Defect]) -> tuple[Defect, ...]:
    """Return the defects that a part must not lie on: a hidden one may lie on some."""
    return tuple(defect for defect in defects if defect.use is Use.NOTHING or not part.is_hidden)


def cut_out(defects: Iterable[Defect], rect: Rect) -> tuple[Defect, ...]:
    """Return the defects of a piece of a sheet, measured from the piece's own low corner."""
    found = []
    for defect in find_under(rect, defects):
        left, low = max(defect.x, rect.x), max(defect.y, rect.y)
        found.append(
            Defect(
                what=defect.what,
                x=left - rect.x,
                y=low - rect.y,
                length=min(defect.x + defect.length, rect.x + rect.length) - left,
                width=min(defect.y + defect.width, rect.y + rect.width) - low,
                use=defect.use,
            )
        )
    return tuple(found)


def usable_of(rect: Rect, sheet: Sheet) -> Rect:
    """Return what of a rectangle lies within the trims of its sheet; its sides may be negative."""
    left, low = max(rect.x, sheet.trim.left), max(rect.y, sheet.trim.bottom)
    return Rect(
        x=left,
        y=low,
        length=min(rect.x + rect.length, sheet.length - sheet.trim.right) - left,
        width=min(rect.y + rect.width, sheet.width - sheet.trim.top) - low,
    )


def trim_of(rect: Rect, sheet: Sheet) -> Trim:
    """Return how much of each edge of a rectangle lies in the trims of its sheet."""
    return Trim(
        left=max(0, sheet.trim.left - rect.x),
        right=max(0, rect.x + rect.length - (sheet.length - sheet.trim.right)),
        bottom=max(0, sheet.trim.bottom - rect.y),
        top=max(0, rect.y + rect.width - (sheet.width - sheet.trim.top)),
    )


def is_worth_keeping(rect: Rect, sheet: Sheet, keep: Keep) -> bool:
    """Return whether a leftover is large enough to keep, its trims left out; sound or not."""
    usable = usable_of(rect, sheet)
    sides = sorted((usable.length, usable.width))
    return sides[0] >= keep.width and sides[1] >= keep.length
