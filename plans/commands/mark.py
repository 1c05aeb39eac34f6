"""`setout mark`: record what was cut, measured or spoilt."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from nesting.errors import Fault, InputError
from plans.outcome import Outcome


@dataclass(frozen=True, slots=True, kw_only=True)
class MarkOptions:
    """What to mark; texts as typed.

    Attributes:
        cuts: Cuts made, such as "1.7", "1.1-1.7" or "1.all".
        reading: Code and size of a part measured from the work, or None.
        first_off: Code and size of the first part of its kind as cut, or None.
        spoilt: Code of what has gone wrong, or None.
        left: Sizes of what is left of it.
        missing: Number of a sheet that is not there, or None.
        sheet: Number of the sheet that the next five belong to, or None.
        measured: Its size.
        diagonals: Its diagonals.
        thickness: Readings of its thickness.
        defects: Places that are not sound, "410,260,120x90".
        stains: Places that hidden parts may lie on.
        undo: Take back the last entry.
        out: Folder of the plan file; None for beside the job file.
    """

    cuts: tuple[str, ...] = ()
    reading: tuple[str, str] | None = None
    first_off: tuple[str, str] | None = None
    spoilt: str | None = None
    left: tuple[str, ...] = ()
    missing: int | None = None
    sheet: int | None = None
    measured: str | None = None
    diagonals: str | None = None
    thickness: str | None = None
    defects: tuple[str, ...] = ()
    stains: tuple[str, ...] = ()
    undo: bool = False
    out: Path | None = None


def mark(job_file: Path, options: MarkOptions) -> Outcome:
    """Record marks and say where the work stands; without options only say it.

    Raises:
        InputError: A mark is not possible, or there is no plan. Nothing is recorded then.
        BusyError: Another command works on the job.
        OSError: The record could not be written; the marks before the one that failed stand.
    """
    from nesting.garage.events import CutMade
    from nesting.garage.marking import add_mark, add_marks
    from nesting.garage.marks import Marks
    from plans.locks import hold
    from plans.plan_reading import read_planned
    from plans.record import append, marks_of, read_record, record_path
    from plans.rehearsal import read_plan
    from plans.standing import find_standing
    from plans.writers.whole_file import uninterrupted

    _check(options)
    with hold(job_file):
        plan_file = find_plan_file(job_file, options.out)
        planned, record = read_planned(plan_file), record_path(job_file)
        standing_marks = marks_of(read_record(record), planned.fingerprint)
        marks = add_marks(planned, Marks(), tuple(event for _, event in standing_marks))
        said: list[str] = []
        if options.undo:
            marks, text = _undo(record, planned, standing_marks)
            said.append(text)
        else:
            fresh = []
            for event in _events(options, planned):
                if isinstance(event, CutMade) and (event.sheet, event.cut) in marks.cuts:
                    said.append(f"Cut {event.sheet}.{event.cut} was marked already.")
                    continue
                marks = add_mark(planned, marks, event)
                fresh.append(event)
            if fresh:
                with uninterrupted():
                    append(record, planned.fingerprint, fresh)
                said.append(f"Recorded in {record.name}: {_count(fresh)}.")
        standing = find_standing(read_plan(plan_file), planned, marks)
    return Outcome(
        text="\n".join([*said, *_advice(planned, marks, options), standing.text]),
        data={
            "fingerprint": planned.fingerprint,
            "made": standing.made,
            "total": standing.total,
            "last": standing.last,
            "next": standing.following,
            "spoilt": sorted(marks.spoilt),
            "missing": sorted(marks.missing),
            "text": standing.text,
        },
    )


def find_plan_file(job_file: Path, folder: Path | None) -> Path:
    """Return the plan file of a job.

    Raises:
        InputError: There is none yet.
    """
    plan_file = (folder or job_file.parent) / f"{job_file.stem}.plan.json"
    if not plan_file.exists():
        raise InputError(
            [
                Fault(
                    where=str(plan_file),
                    what="there is no plan yet",
                    remedy=f"Make one with 'setout plan {job_file}', "
                    "or name its folder with --out.",
                )
            ]
        )
    return plan_file


def _check(options: MarkOptions) -> None:
    sizes = (options.measured, options.diagonals, options.thickness)
    readings = (*sizes, options.defects, options.stains)
    if options.spoilt is not None and not options.spoilt.strip():
        raise _usage("--spoilt", "the code is empty", "Give the code on the piece, such as A3.")
    if options.left and not options.spoilt:
        raise _usage("--left", "it says what is left, but not of what", "Add --spoilt CODE.")
    if any(readings) and options.sheet is None:
        option = "--measured" if any(sizes) else "--defect"
        raise _usage(option, "no sheet is named", "Add --sheet with its number.")
    if options.sheet is not None and not any(readings):
        raise _usage(
            "--sheet",
            "no reading is given",
            "Add --measured, --diagonals, --thickness, --defect or --stain.",
        )
    others = (
        options.cuts,
        options.reading,
        options.first_off,
        options.spoilt,
        options.missing,
        options.sheet,
    )
    if options.undo and any(other not in (None, ()) for other in others):
        raise _usage("--undo", "it stands with other marks", "Take back first, then mark.")


def _events(options: MarkOptions, planned: Any) -> Iterator[Any]:  # noqa: ANN401
    """Yield the marks asked for, cuts first."""
    from nesting.garage.events import FirstOff, PartRead, PieceSpoilt, SheetMissing
    from plans.mark_words import read_cuts, read_size

    unit = planned.unit
    for text in options.cuts:
        yield from read_cuts(text, planned)
    if options.sheet is not None:
        yield _sheet_reading(options, options.sheet, unit)
    if options.reading is not None:
        code, size = options.reading
        yield PartRead(code=code.upper(), size=read_size(size, unit, "--reading"))
    if options.first_off is not None:
        code, size = options.first_off
        yield FirstOff(code=code.upper(), size=read_size(size, unit, "--first-off"))
    if options.spoilt is not None:
        yield PieceSpoilt(
            code=options.spoilt.upper(),
            left=tuple(read_size(text, unit, "--left") for text in options.left),
        )
    if options.missing is not None:
        yield SheetMissing(sheet=options.missing)


def _sheet_reading(options: MarkOptions, sheet: int, unit: Any) -> Any:  # noqa: ANN401
    """Return all that was read of one sheet."""
    from nesting.garage.events import SheetRead
    from nesting.sheets import Use
    from plans.mark_words import read_defect, read_lengths, read_size

    diagonals = read_lengths(options.diagonals, unit, "--diagonals") if options.diagonals else ()
    if len(diagonals) not in (0, 2):
        raise _usage("--diagonals", "a sheet has two", "Write them such as 2727.1,2728.4.")
    return SheetRead(
        sheet=sheet,
        size=read_size(options.measured, unit, "--measured") if options.measured else None,
        diagonals=(diagonals[0], diagonals[1]) if diagonals else None,
        thickness=read_lengths(options.thickness, unit, "--thickness") if options.thickness else (),
        defects=(
            *(read_defect(text, unit, Use.NOTHING) for text in options.defects),
            *(read_defect(text, unit, Use.HIDDEN_PARTS) for text in options.stains),
        ),
    )


def _undo(record: Path, planned: Any, standing: Any) -> tuple[Any, str]:  # noqa: ANN401
    """Take back the last entry; return the marks that are left and what was done."""
    from nesting.garage.marking import add_marks
    from nesting.garage.marks import Marks
    from plans.record import Undone, append

    if not standing:
        raise _usage("--undo", "nothing is marked", "There is nothing to take back.")
    last = standing[-1][0]
    append(record, planned.fingerprint, [Undone(entry=last)])
    left = tuple(event for entry, event in standing if entry != last)
    taken = [event for entry, event in standing if entry == last]
    return add_marks(planned, Marks(), left), f"Taken back: {_count(taken)}."


def _advice(planned: Any, marks: Any, options: MarkOptions) -> Iterator[str]:  # noqa: ANN401
    """Yield what follows from a mark, where that is not plain."""
    from nesting.garage.hand import piece_reaches

    if options.reading is not None:
        code = options.reading[0].upper()
        piece = next(piece for _, piece in planned.pieces() if piece.code == code)
        if not piece_reaches(piece, marks.readings.get(code)):
            yield (
                f"{code}: its blank is smaller than that. 'setout resume' plans it again "
                "in the size read."
            )
    if options.first_off is not None:
        from plans.first_offs import say_first_off

        yield say_first_off(planned, marks, options.first_off[0].upper())
    if options.spoilt is not None:
        yield from _fallbacks(planned, marks, options.spoilt.upper())
    if options.spoilt or options.missing or options.sheet:
        yield "Plan the rest with 'setout resume'."


def _fallbacks(planned: Any, marks: Any, code: str) -> Iterator[str]:  # noqa: ANN401
    """Yield what the spoilt piece, or what is left of it, can still become."""
    from nesting.fallbacks import find_fallbacks
    from plans.sections.fallbacks import make_blank, say_fallbacks

    place = next((pair for pair in planned.pieces() if pair[1].code == code), None)
    if place is None:
        return
    sheet, spoilt = place
    blanks = {
        make_blank(
            piece.part.name.partition(", cabinet ")[0],
            *_own_sides(piece, (piece.rect.length, piece.rect.width)),
            piece.part.grain,
            planned.unit,
        )
        for other, piece in planned.pieces()
        if piece.part is not None
        and piece.code != code
        and (other.material, other.thickness) == (sheet.material, sheet.thickness)
        and (other.number, piece.made_by) not in marks.cuts
    }
    whole = (spoilt.rect.length, spoilt.rect.width)
    sizes = [_own_sides(spoilt, size) for size in marks.spoilt.get(code, ())] or [whole]
    for length, width in sizes:
        becomes = find_fallbacks(
            length,
            width,
            sheet.grain,
            blanks,
            kerf=planned.kerf,
            is_spoilt=not marks.spoilt.get(code),
        )
        if becomes and marks.spoilt.get(code):
            yield f"What is left of {code} can still become {say_fallbacks(becomes)}."
        elif becomes:
            yield (
                f"{code} can still become {say_fallbacks(becomes)}, if so much of it is sound: "
                "take this back with --undo and mark it with --left and what is left."
            )


def _own_sides(piece: Any, size: tuple[int, int]) -> tuple[int, int]:  # noqa: ANN401
    """Return a size along and across the part from one along x and y, or the other way round."""
    is_turned = piece.part is not None and piece.part.turned
    return (size[1], size[0]) if is_turned else size


def _count(events: list[Any]) -> str:
    from nesting.garage.events import CutMade
    from plans.sections.numbers import count_of

    cuts = [event for event in events if isinstance(event, CutMade)]
    others = len(events) - len(cuts)
    words = []
    if len(cuts) == 1:
        words.append(f"cut {cuts[0].sheet}.{cuts[0].cut}")
    elif cuts:
        words.append(count_of(len(cuts), "cut"))
    if others:
        words.append(count_of(others, "other mark" if cuts else "mark"))
    return " and ".join(words)


def _usage(where: str, what: str, remedy: str) -> InputError:
    return InputError([Fault(where=where, what=what, remedy=remedy)])
