"""Places of a sheet that are not sound: does anything that is wanted come to lie on them?"""

from collections.abc import Iterator
from functools import partial

from shapely import Polygon, box

from nesting.errors import Fault
from plans.rehearsal.fields import Fields
from plans.rehearsal.leavings import MOST_DRIFT
from plans.rehearsal.printed import Nanometres, PrintedUnit, read_figure, read_size
from plans.rehearsal.records import WRITTEN, Defect, Rect, Sheet
from plans.rehearsal.row_checks import DO_NOT_CUT
from plans.rehearsal.sawing import Sawn

USES = ("nothing", "hidden parts")


def read_defects(fields: Fields, printed: Fields, unit: PrintedUnit) -> Iterator[Defect]:
    """Yield the defects of a sheet, each with its printed line; most sheets have none."""
    if "defects" not in fields.table and "defects" not in printed.table:
        return
    drawn = list(fields.children("defects", "defect"))
    lines = list(printed.children("defects", "printed defect"))
    if len(drawn) != len(lines):
        fields.fault(f"{len(drawn)} defects are on it, and {len(lines)} are printed")
    for defect, line in zip(drawn, lines, strict=False):
        defect.text("what")
        figure = partial(read_figure, unit=unit)
        along, across = (line.printed(key, figure, 0) for key in ("along", "across"))
        length, width = line.printed("size", partial(read_size, unit=unit), (0, 0))
        codes = line.text("parts", may_be_empty=True)
        yield Defect(
            rect=defect.rect(),
            is_for_hidden=defect.choice("use", USES) == USES[1],
            printed=Rect(x=along, y=across, length=length, width=width),
            printed_for_hidden=line.choice("use", USES) == USES[1],
            printed_parts=tuple(codes.split(", ")) if codes else (),
        )


def check_defects(sheet: Sheet, sawn: Sawn, unit: PrintedUnit) -> Iterator[Fault]:
    """Yield where a part or an offcut lies on a defect, or a defect is not printed as it is."""
    wood = {piece.code: piece.wood for piece in sawn.pieces}
    for number, defect in enumerate(sheet.defects, start=1):
        where = f"sheet {sheet.number}, defect {number}"
        for what in (
            *_printed(defect, unit),
            *_on_it(sheet, defect, wood),
            *_named(sheet, defect),
        ):
            yield Fault(where=where, what=what, remedy=DO_NOT_CUT)


def _printed(defect: Defect, unit: PrintedUnit) -> Iterator[str]:
    """Yield where a defect is printed elsewhere, or for another use, than it is."""
    if defect.is_for_hidden is not defect.printed_for_hidden:
        yield "the page says otherwise what may lie on it"
    for name, printed, real in (
        ("first reading", defect.printed.x, defect.rect.x),
        ("second reading", defect.printed.y, defect.rect.y),
        ("length", defect.printed.length, defect.rect.length),
        ("width", defect.printed.width, defect.rect.width),
    ):
        if abs(printed - real) > unit.half_step + WRITTEN:
            yield f"its {name} is printed {unit.show(printed)}, but is {unit.show(real)}"


def _on_it(sheet: Sheet, defect: Defect, wood: dict[str, Polygon]) -> Iterator[str]:
    """Yield what lies on a defect that must not."""
    for part in sheet.parts:
        if _lies_on(part.rect, wood.get(part.code), defect):
            if not defect.is_for_hidden:
                yield f"{part.code} lies on it, and nothing may"
            elif not part.is_hidden:
                yield f"{part.code} lies on it and shows, and only hidden parts may"
    for offcut in sheet.offcuts:
        if _lies_on(offcut.rect, wood.get(offcut.code), defect):
            yield f"{offcut.code} is kept as an offcut and has it"


def _named(sheet: Sheet, defect: Defect) -> Iterator[str]:
    """Yield where the parts that lie on a defect are not those that the page names."""
    there = {part.code for part in sheet.parts if _meet(part.rect, defect.rect, WRITTEN)}
    if there != set(defect.printed_parts):
        yield (
            f"the page names {', '.join(defect.printed_parts) or 'no part'} on it, and "
            f"{', '.join(sorted(there)) or 'none'} lies there"
        )


def _lies_on(rect: Rect, wood: Polygon | None, defect: Defect) -> bool:
    """Return whether something lies on a defect, as it is planned or as it is sawn.

    What is sawn by rounded figures may drift a little; a slip is larger.
    """
    if _meet(rect, defect.rect, WRITTEN):
        return True
    if wood is None or wood.is_empty:
        return False
    place, drift = defect.printed, MOST_DRIFT
    if min(place.length, place.width) <= 2 * drift:
        return False
    core = box(place.x + drift, place.y + drift, place.x_end - drift, place.y_end - drift)
    return bool(wood.intersection(core).area > 0)


def _meet(one: Rect, other: Rect, least: Nanometres) -> bool:
    """Return whether two rectangles have more in common than a rounded edge."""
    return (
        min(one.x_end, other.x_end) - max(one.x, other.x) > least
        and min(one.y_end, other.y_end) - max(one.y, other.y) > least
    )
