"""What is left of a job: the parts still to be cut, and what they can be cut from."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from itertools import count

from nesting.cabinets.letters import USABLE_LETTERS
from nesting.earlier import Earlier, FinishedPart
from nesting.garage.hand import InHand, list_finished, list_in_hand
from nesting.garage.marks import Marks
from nesting.garage.planned import Planned
from nesting.garage.refusal import refuse
from nesting.job import Job
from nesting.parts import Part, Status, is_spare
from nesting.sheets import Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class Remaining:
    """What is left of a job.

    Attributes:
        job: The parts still to be cut and the sheets for them: first one for every piece in hand,
            in their order, then what is left of the stock of the job file. Its `earlier` holds
            the codes of the copies and all that is finished; its changes are not filled in.
        in_hand: The pieces in hand.
        misfits: Finished parts that the job file no longer asks for in this size or number. Spares
            are none: it never asked for them.
    """

    job: Job
    in_hand: tuple[InHand, ...]
    misfits: tuple[FinishedPart, ...]


def find_remaining(job: Job, planned: Planned, marks: Marks) -> Remaining:
    """Return what is left of a job.

    Args:
        job: The job as the job file tells it now.
        planned: The plan that the marks belong to.
        marks: What has been marked.

    Raises:
        InputError: The job file has a defect of a sheet that is being cut without it.
    """
    in_hand = list_in_hand(planned, marks)
    finished = list_finished(planned, marks)
    sizes = {name_of(part): (part.length, part.width) for part in job.parts}
    wanted = Counter({name_of(part): part.count for part in job.parts})
    done: Counter[str] = Counter()
    misfits = []
    for part in finished:
        done[part.name] += 1
        if is_spare(part.name):
            continue
        is_read = part.code in marks.readings
        if done[part.name] > wanted[part.name] or (
            not is_read and sizes[part.name] != (part.length, part.width)
        ):
            misfits.append(part)
    parts, codes = _parts_left(job, planned, marks, done)
    return Remaining(
        job=replace(
            job,
            parts=parts,
            sheets=(*map(_as_sheet, in_hand), *_stock_left(job, planned, marks)),
            cabinets=tuple(replace(build, battens=()) for build in job.cabinets),
            earlier=Earlier(
                fingerprint=planned.fingerprint,
                finished=finished,
                used=tuple(sorted(_used(job, planned, marks).items())),
                codes=codes,
                pieces=_highest(planned, "P", planned.figures[0]),
                offcuts=_highest(planned, "L", planned.figures[1]),
            ),
        ),
        in_hand=in_hand,
        misfits=tuple(misfits),
    )


def name_of(part: Part) -> str:
    """Return the name of a part with its cabinet, as a plan file gives it."""
    return f"{part.name}, cabinet {part.cabinet}" if part.cabinet else part.name


def _parts_left(
    job: Job, planned: Planned, marks: Marks, done: Counter[str]
) -> tuple[tuple[Part, ...], tuple[tuple[str, ...], ...]]:
    """Return the parts still to be cut and the codes of their copies."""
    cut = {part.code for part in list_finished(planned, marks)}
    taken = {part.code for part in planned.finished} | {piece.code for _, piece in planned.pieces()}
    parts: list[Part] = []
    codes: list[tuple[str, ...]] = []
    for part in job.parts:
        name = name_of(part)
        left = max(0, part.count - done[name])
        known = [
            piece.code
            for _, piece in planned.pieces()
            if piece.part is not None and piece.part.name == name and piece.code not in cut
        ]
        own = [*known, *(p.code for p in planned.finished if p.name == name and p.code not in cut)]
        own = own[:left] + list(_new_codes(own, part, left - len(own), taken))
        taken.update(own)
        read = [code for code in own if code in marks.readings]
        for code in read:
            length, width = marks.readings[code]
            parts.append(
                replace(
                    part,
                    length=length,
                    width=width,
                    oversize=0,
                    extra_length=0,
                    extra_width=0,
                    allowances=(),
                    status=Status.FINAL,
                    sums=(),
                    count=1,
                )
            )
            codes.append((code,))
        others = tuple(code for code in own if code not in marks.readings)
        if others:
            parts.append(replace(part, count=len(others)))
            codes.append(others)
    return tuple(parts), tuple(codes)


def _new_codes(known: list[str], part: Part, number: int, taken: set[str]) -> Iterator[str]:
    """Yield codes that nothing has had yet, with the letters that the part has."""
    if number <= 0:
        return
    letters = {code.rstrip("0123456789") for code in taken}
    letter = part.cabinet or (known[0].rstrip("0123456789") if known else "")
    if not letter:
        # A part that came into the job file later: the first pair of letters not yet in use.
        letter = next(
            pair
            for first in USABLE_LETTERS
            for pair in (f"{first}{second}" for second in USABLE_LETTERS)
            if pair not in letters
        )
    given = 0
    for figure in count(1):
        if given == number:
            return
        # Upside-down, E3, E5 and E7 read as E3, S3 and L3.
        is_clear = not letter.endswith("E") or str(figure)[-1] not in "357"
        if is_clear and f"{letter}{figure}" not in taken:
            given += 1
            yield f"{letter}{figure}"


def _as_sheet(piece: InHand) -> Sheet:
    return Sheet(
        name=piece.name,
        material=piece.material,
        thickness=piece.thickness,
        measured=piece.measured,
        length=piece.length,
        width=piece.width,
        grain=piece.grain,
        price=Decimal(0),
        count=1,
        owned=True,
        trim=piece.trim,
        defects=piece.defects,
    )


def _used(job: Job, planned: Planned, marks: Marks) -> Counter[str]:
    """Return how many sheets of each stock are used up or in hand."""
    used = Counter(dict(planned.used))
    stocks = {sheet.name for sheet in job.sheets}
    used.update(
        sheet.stock
        for sheet in planned.sheets
        if sheet.stock in stocks and sheet.number not in marks.missing
    )
    return used


def _stock_left(job: Job, planned: Planned, marks: Marks) -> Iterator[Sheet]:
    used = _used(job, planned, marks)
    known = {*planned.unsound, *used}
    for sheet in job.sheets:
        if sheet.told_from and used[sheet.told_from] and sheet.name not in known:
            raise refuse(
                f"sheet {sheet.name!r}",
                f"plan {planned.fingerprint} knows of no defect of it, and it may be one of those "
                "that are being cut",
                "Take the defect out of the job file and mark it on the sheet by its number in the "
                "plan: setout mark JOB --sheet 2 --defect 410,260,120x90",
            )
        if sheet.count is None:
            yield sheet
        elif sheet.count > used[sheet.name]:
            yield replace(sheet, count=sheet.count - used[sheet.name])


def _highest(planned: Planned, letter: str, before: int) -> int:
    figures = (
        int(piece.code[1:])
        for _, piece in planned.pieces()
        if piece.code[0] == letter and piece.code[1:].isdigit()
    )
    return max((before, *figures))
