"""Parts from holes: whether what a hole leaves is large enough, and whether its panel is there."""

from collections.abc import Iterable, Iterator
from functools import partial
from itertools import product

from nesting.errors import Fault
from plans.rehearsal.fields import Fields
from plans.rehearsal.printed import PrintedUnit, read_figure, read_size
from plans.rehearsal.records import HolePart, PlanFile
from plans.rehearsal.row_checks import DO_NOT_CUT

_NO_SIZE = (0, 0)


def read_hole_parts(fields: Fields, unit: PrintedUnit) -> Iterator[HolePart]:
    """Yield the parts from holes; most plans have none."""
    if fields.table.get("from_holes") is None:
        return
    size = partial(read_size, unit=unit)
    for entry in fields.children("from_holes", "part from a hole"):
        entry.text("name")
        entry.text("hole")
        printed = entry.child("printed")
        yield HolePart(
            code=entry.text("code"),
            panel=entry.text("panel"),
            opening=entry.pair("opening"),
            is_round=entry.flag("is_round"),
            kerf=entry.length("kerf"),
            pivot=entry.length("pivot"),
            blank=entry.pair("blank"),
            printed_finished=printed.printed("finished", size, _NO_SIZE),
            printed_blank=printed.printed("blank", size, _NO_SIZE),
            printed_thickness=printed.printed("thickness", partial(read_figure, unit=unit), 0),
        )


def check_hole_parts(plan: PlanFile) -> Iterator[Fault]:
    """Yield what is wrong with the parts from holes."""
    sheets = {part.code: part for sheet in plan.sheets for part in sheet.parts}
    seen: set[str] = set()
    for part in plan.hole_parts:
        if part.code in sheets or part.code in seen:
            yield _fault(part, "something else of this plan carries this code")
        seen.add(part.code)
        off = [
            abs(printed - side)
            for printed, side in zip(part.printed_blank, part.blank, strict=True)
        ]
        if max(off) > plan.unit.half_step:
            yield _fault(part, "its printed size is not the one that was planned")
        if any(a > b for a, b in zip(part.printed_finished, part.printed_blank, strict=True)):
            yield _fault(part, "it is larger when finished than as it is cut")
        if not _comes_out(part):
            yield _fault(part, "it does not come out of its hole")
        panel = sheets.get(part.panel)
        if panel is not None and panel.printed_thickness != part.printed_thickness:
            yield _fault(part, f"it is not as thick as {part.panel}, which it comes out of")
        is_there = panel is not None or part.panel in plan.finished
        if not is_there and plan.is_complete:
            yield _fault(part, f"there is no {part.panel} with a hole that it could come out of")


def _comes_out(part: HolePart) -> bool:
    """Return whether a rectangle lies in what the cutter leaves, clear of the pivot's hole.

    Corner by corner, with the rectangle beside the pivot, whichever way round it lies.
    """
    if not part.is_round:
        room = sorted(side - 2 * part.kerf for side in part.opening)
        return all(
            side <= most for side, most in zip(sorted(part.printed_blank), room, strict=True)
        )
    twice = min(part.opening) - 2 * part.kerf
    return twice > 0 and any(
        all(x**2 + y**2 <= twice**2 for x, y in _list_corners(along, across, part.pivot))
        for along, across in (part.printed_blank, part.printed_blank[::-1])
    )


def _list_corners(along: int, across: int, pivot: int) -> Iterable[tuple[int, int]]:
    """Return the corners from the middle of the disc, twice as far as they are."""
    low, high = (pivot, pivot + 2 * across) if pivot else (-across, across)
    return product((-along, along), (low, high))


def _fault(part: HolePart, what: str) -> Fault:
    return Fault(where=part.code, what=what, remedy=DO_NOT_CUT)
