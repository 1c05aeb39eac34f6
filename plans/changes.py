"""What has changed since the plan before: lines for the first page of the plan after it."""

from collections.abc import Iterable, Iterator

from nesting.garage.edges import find_skew, widen_for_skew
from nesting.garage.marks import Marks
from nesting.garage.planned import Planned
from nesting.garage.remaining import Remaining, name_of
from nesting.job import Job
from nesting.layout import Layout, Rect
from nesting.lengths import Length
from nesting.lots import SAME_LOT
from nesting.parts import Part, is_spare
from nesting.sheets import mean_reading
from plans.first_offs import say_off
from plans.sections.numbers import show, show_size, show_with_unit

MOST_CODES = 12
"""More codes than this in one line are counted instead of listed."""


def list_changes(planned: Planned, marks: Marks, remaining: Remaining) -> tuple[str, ...]:
    """Return what has changed since the plan before, a sentence each."""
    return tuple(_changes(planned, marks, remaining))


def list_replanned(planned: Planned, job: Job) -> tuple[str, ...]:
    """Return what is new in a plan that takes the place of one of which nothing is cut yet.

    Args:
        planned: The plan that stood there.
        job: What is planned now.
    """
    return tuple(_replanned(planned, job))


def _replanned(planned: Planned, job: Job) -> Iterator[str]:
    yield f"Takes the place of plan {planned.fingerprint}, whose pages and labels no longer hold."
    yield from _kerf_change(planned, job)
    parts = [part for part in job.parts if not part.spare_of]
    sizes = list(_size_changes(planned, parts))
    yield from sizes[:MOST_CODES]
    if len(sizes) > MOST_CODES:
        yield f"{len(sizes) - MOST_CODES} more sizes are others: compare the parts lists."
    before = {
        piece.part.name
        for _, piece in planned.pieces()
        if piece.part is not None and not is_spare(piece.part.name)
    }
    now = set(map(name_of, parts))
    if now - before:
        yield f"Not in that plan: {_codes(sorted(now - before))}."
    if before - now:
        yield f"No longer cut: {_codes(sorted(before - now))}."


def list_new_lots(job: Job, layout: Layout, job_file: str) -> tuple[str, ...]:
    """Return for every kind of sheet that is bought now that it must be measured, and how.

    The readings that are known are of sheets that were bought before; another lot may be thicker.

    Args:
        job: What is left, with what is in hand among its sheets.
        layout: Its layout.
        job_file: Name of the job file, for the command to type.
    """
    bought: dict[int, list[int]] = {}
    for number, laid in enumerate(layout.sheets, start=1):
        sheet = job.sheets[laid.sheet]
        if sheet.measured and not sheet.owned:
            bought.setdefault(laid.sheet, []).append(number)
    return tuple(
        f"{job.sheets[index].name} is bought again, and may be of another lot than the "
        f"{show_with_unit(job.sheets[index].real_thickness, job.unit)} reckoned with. Measure it "
        f"before its first cut: setout mark {job_file} --sheet {numbers[0]} --thickness READINGS"
        for index, numbers in bought.items()
    )


def _changes(planned: Planned, marks: Marks, remaining: Remaining) -> Iterator[str]:
    unit = planned.unit
    earlier = remaining.job.earlier
    assert earlier is not None
    last = marks.last_cut
    after = f" after cut {last[0]}.{last[1]}" if last else ""
    yield (
        f"Goes on from plan {planned.fingerprint}{after}; {len(marks.cuts)} of its "
        f"{planned.cut_count} cuts are made. Its pages no longer hold."
    )
    if earlier.finished:
        yield f"Finished: {_codes([part.code for part in earlier.finished])}."
    wanted = {code for codes in earlier.codes for code in codes}
    for code, left in marks.spoilt.items():
        sizes = " and ".join(f"{show_size(*size, unit)} {unit.value}" for size in left)
        again = " It is cut again." if code in wanted else ""
        yield f"Spoilt: {code}; {sizes or 'nothing'} is left of it.{again}"
    for number in sorted(marks.missing):
        yield f"Sheet {number} of that plan is not there."
    for code, size in marks.readings.items():
        yield f"{code} was measured: {show_size(*size, unit)} {unit.value} finished."
    yield from _first_offs(planned, marks)
    yield from _kerf_change(planned, remaining.job)
    yield from _sheet_changes(planned, marks)
    yield from _size_changes(planned, remaining.job.parts)
    for part in remaining.misfits:
        yield (
            f"{part.code} {part.name} was cut as {show_size(part.length, part.width, unit)}; the "
            "job file no longer asks for that. It counts as cut unless it is marked as spoilt."
        )


def _first_offs(planned: Planned, marks: Marks) -> Iterator[str]:
    pieces = {piece.code: piece for _, piece in planned.pieces()}
    for code, size in marks.first_offs.items():
        yield f"{code}, the first of its kind, is {say_off(pieces[code], size, planned.unit)}."


def _sheet_changes(planned: Planned, marks: Marks) -> Iterator[str]:
    unit = planned.unit
    for number, read in sorted(marks.sheets.items()):
        sheet = planned.sheets[number - 1]
        length, width = read.size or (sheet.length, sheet.width)
        if read.size:
            yield f"Sheet {number} measures {show_size(length, width, unit)} {unit.value}."
        for defect in read.defects:
            place = f"{show(defect.x, unit)} / {show(defect.y, unit)}"
            size = show_size(defect.length, defect.width, unit)
            yield (
                f"Sheet {number} has a {defect.what} of {size} {unit.value} at {place}, from the "
                "home corner along its length / along its width."
            )
        skew = find_skew(Rect(x=0, y=0, length=length, width=width), read.diagonals)
        if skew and widen_for_skew(sheet.trim, skew) != sheet.trim:
            yield (
                f"Sheet {number} leans {show_with_unit(skew, unit)} over its width, more than the "
                "trim of its ends, which is widened to that."
            )
        if read.thickness:
            yield from _thickness_change(number, sheet.measured, read.thickness, planned)


def _thickness_change(
    number: int, before: Length | None, readings: tuple[Length, ...], planned: Planned
) -> Iterator[str]:
    mean, unit = mean_reading(readings), planned.unit
    yield f"Sheet {number} is {show_with_unit(mean, unit)} thick."
    if before is not None and abs(mean - before) > SAME_LOT:
        yield (
            f"That is {show_with_unit(abs(mean - before), unit)} off the "
            f"{show(before, unit)} it was planned with: correct the readings in the job file, and "
            "check every joint between its parts and others."
        )


def _kerf_change(planned: Planned, job: Job) -> Iterator[str]:
    if planned.kerf != job.saw.kerf:
        kerf = show_with_unit(job.saw.kerf, planned.unit)
        yield f"The kerf is {kerf}, before {show_with_unit(planned.kerf, planned.unit)}."


def _size_changes(planned: Planned, parts: Iterable[Part]) -> Iterator[str]:
    """Yield every part whose finished size is another one than planned."""
    unit = planned.unit
    before = {
        piece.part.name: piece.part.finished
        for _, piece in planned.pieces()
        if piece.part is not None
    }
    for part in parts:
        name, size = name_of(part), (part.length, part.width)
        if name in before and before[name] != size:
            yield f"{name}: {show_size(*size, unit)}, before {show_size(*before[name], unit)}."


def _codes(codes: list[str]) -> str:
    if len(codes) > MOST_CODES:
        return f"{len(codes)} parts, {codes[0]} to {codes[-1]}"
    return ", ".join(codes)
