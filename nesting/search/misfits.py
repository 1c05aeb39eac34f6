"""Why a part cannot be placed, and the nearest thing that would fit it."""

from collections.abc import Iterable, Sequence

from nesting.job import Job
from nesting.layout import Unplaced
from nesting.lengths import Length, format_length
from nesting.parts import Grain, Part
from nesting.search.grid import fits, fits_turned, list_ways
from nesting.sheets import Sheet, SheetGrain


def find_misfits(job: Job) -> tuple[Unplaced, ...]:
    """Return the parts that fit no sheet of the job, in the order of the job."""
    misfits = []
    for index, part in enumerate(job.parts):
        reason = explain_misfit(job, part)
        if reason:
            misfits.append(Unplaced(part=index, count=part.count, reason=reason))
    return tuple(misfits)


def explain_misfit(job: Job, part: Part) -> str:
    """Return why a part fits no sheet, empty where it fits one."""
    same_material = [sheet for sheet in job.sheets if sheet.material == part.material]
    if not same_material:
        return _explain_material(job, part)
    sheets = [sheet for sheet in same_material if sheet.thickness == part.thickness]
    if not sheets:
        there = _list(_say(job, size) for size in sorted({s.thickness for s in same_material}))
        return f"no {part.material} {_say(job, part.thickness)} thick is listed; there is {there}"
    stocked = [sheet for sheet in sheets if sheet.count != 0]
    if any(fits(part, sheet) for sheet in stocked):
        return ""
    for sheet in sheets:
        if sheet.count == 0 and fits(part, sheet):
            return f"it would fit {sheet.name!r}, of which there is none left"
    against = [
        sheet
        for sheet in stocked
        if any(fits_turned(part, sheet, turned=turned) for turned in (False, True))
    ]
    if against:
        return _explain_grain(job, part, against[0])
    return _explain_size(job, part, stocked or sheets)


def explain_shortage(job: Job, part: Part) -> str:
    """Return why copies of a part are left over though it fits a sheet: too few sheets."""
    limited = [
        sheet
        for sheet in job.sheets
        if (sheet.material, sheet.thickness) == (part.material, part.thickness)
        and fits(part, sheet)
        and sheet.count
    ]
    there = _list(f"{sheet.count} of {sheet.name!r}" for sheet in limited)
    return f"no room was found on the sheets there are: {there}; one sheet more would do"


def _explain_material(job: Job, part: Part) -> str:
    stocks = dict.fromkeys((sheet.material, sheet.thickness) for sheet in job.sheets)
    there = _list(f"{material} {_say(job, thickness)}" for material, thickness in stocks)
    return f"no sheet of {part.material!r} is listed; there is {there or 'none at all'}"


def _explain_grain(job: Job, part: Part, sheet: Sheet) -> str:
    along = sheet.length if sheet.grain is SheetGrain.LENGTH else sheet.width
    side = "length" if part.grain is Grain.LENGTH else "width"
    return (
        f"{_size(job, part)} would fit {sheet.name!r} only with its {side} across the grain, "
        f"which runs along the {_say(job, along)}; it fits if its grain may be 'any'"
    )


def _explain_size(job: Job, part: Part, sheets: Sequence[Sheet]) -> str:
    """Return by how much a part is too large for the sheet that comes nearest."""
    excess, sheet, _ = min(
        (
            (_measure_excess(part, sheet, turned=turned), number, turned)
            for number, sheet in enumerate(sheets)
            for turned in list_ways(part, sheet)
        ),
        key=lambda found: (sum(found[0]), found[1], found[2]),
    )
    nearest = sheets[sheet]
    words = []
    if excess[0] > 0:
        words.append(
            f"{_say(job, excess[0])} too long for the usable {_say(job, nearest.usable_length)}"
        )
    if excess[1] > 0:
        words.append(
            f"{_say(job, excess[1])} too wide for the usable {_say(job, nearest.usable_width)}"
        )
    needed = (nearest.length + excess[0], nearest.width + excess[1])
    return (
        f"{_size(job, part)} is {' and '.join(words)} of {nearest.name!r}; with the same trims it "
        f"needs a sheet of at least {_say(job, needed[0])} × {_say(job, needed[1])}"
    )


def _measure_excess(part: Part, sheet: Sheet, *, turned: bool) -> tuple[Length, Length]:
    along_x, along_y = part.blank_length, part.blank_width
    if turned:
        along_x, along_y = along_y, along_x
    return (max(0, along_x - sheet.usable_length), max(0, along_y - sheet.usable_width))


def _size(job: Job, part: Part) -> str:
    return f"{_say(job, part.blank_length)} × {_say(job, part.blank_width)}"


def _say(job: Job, length: Length) -> str:
    return f"{format_length(length, job.unit)} {job.unit.value}"


def _list(words: Iterable[str]) -> str:
    """Return some words as a person lists them."""
    items = list(words)
    return (
        items[0] if len(items) == 1 else f"{', '.join(items[:-1])} and {items[-1]}" if items else ""
    )
