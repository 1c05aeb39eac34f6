"""`setout resume`: plan again from the garage as it is."""

from collections import Counter
from collections.abc import Iterator
from contextlib import nullcontext
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from nesting.errors import Fault, InputError
from plans.commands.booked import Reserving, plan_with_book
from plans.commands.mark import find_plan_file
from plans.commands.plan import make_rehearsed, plan_status, with_chance
from plans.commands.plan_files import checked_folder, write_plan
from plans.commands.plan_options import PlanOptions, Progress
from plans.outcome import Outcome


def resume(job_file: Path, options: PlanOptions, progress: Progress | None = None) -> Outcome:
    """Plan what is left of a job and write its pages in place of the old ones.

    Args:
        job_file: The job file. Its plan file stands beside it or in the folder of the options.
        options: As for a plan.
        progress: Told how far each search is.

    Raises:
        InputError: The job file, the plan file or the record is wrong, or nothing is marked.
        BusyError: Another command works on the job.
        LayoutError: The plan failed its own rehearsal; nothing is written.
        OSError: A file could not be written; what stood before is whole.
    """
    from plans.locks import hold

    with hold(job_file):
        return _resume(job_file, options, progress)


def _resume(job_file: Path, options: PlanOptions, progress: Progress | None) -> Outcome:
    from nesting.garage.marking import add_marks
    from nesting.garage.marks import Marks
    from nesting.reading.job_toml import read_job
    from plans.book.entries import entry_number
    from plans.plan_reading import read_planned
    from plans.record import marks_of, read_record, record_path
    from plans.rehearsal import read_plan

    job, plan_file = read_job(job_file), find_plan_file(job_file, options.out)
    planned, before = read_planned(plan_file), read_plan(plan_file)
    marked = marks_of(read_record(record_path(job_file)), planned.fingerprint)
    marks = add_marks(planned, Marks(), tuple(event for _, event in marked))
    if marks.is_empty:
        raise InputError([_nothing_marked(job_file, planned.fingerprint)])
    left = Left(before=before, planned=planned, marks=marks)
    stocks = [*(sheet.stock for sheet in planned.sheets), *(stock for stock, _ in planned.used)]
    if not (options.book or job.keep.use_book or any(map(entry_number, stocks))):
        return _go_on(job_file, job, left, options, progress, lambda _: nullcontext())
    return plan_with_book(
        job,
        str(job_file.resolve()),
        lambda job, reserving: _go_on(job_file, job, left, options, progress, reserving),
        reserves=options.writes,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """Where the work was left.

    Attributes:
        before: The content of the plan file.
        planned: The same, read back.
        marks: What has been marked of it.
    """

    before: Any
    planned: Any
    marks: Any


def _go_on(
    job_file: Path,
    job: Any,  # noqa: ANN401
    left: Left,
    options: PlanOptions,
    progress: Progress | None,
    reserving: Reserving,
) -> Outcome:
    """Plan what is left and write it while what it uses of the book is reserved."""
    from nesting.replan import replan
    from nesting.solve import DEFAULT_EFFORT
    from plans.changes import list_changes, list_new_lots
    from plans.plan import Figures
    from plans.plan_file import dump
    from plans.standing import find_standing, say_going_on

    again = replan(
        job,
        left.planned,
        left.marks,
        effort=DEFAULT_EFFORT if options.effort is None else options.effort,
        seed=options.seed,
        seconds=options.seconds,
        progress=progress,
    )
    if not again.remaining.job.parts:
        text = find_standing(left.before, left.planned, left.marks).text
        return Outcome(text=text, data={"done": True})
    changes = (
        *list_changes(left.planned, left.marks, again.remaining),
        *list_new_lots(again.remaining.job, again.layout, job_file.name),
    )
    rest = replace(again.remaining.job, earlier=_earlier(again, left.planned, changes))
    figures = Figures(layout=again.layout, bound=again.bound, groups=again.groups)
    made, document = make_rehearsed(rest, figures)
    made = with_chance(made, document)
    messages = []
    if options.writes:
        folder = checked_folder(options.out or job_file.parent)
        with reserving(_stocks(rest, again.layout)):
            messages.append(write_plan(folder, job_file.stem, made, dump(document), options))
    if again.interrupted:
        messages.append("Interrupted: this is the best plan found so far.")
    needs = list(_say_needs(again, rest))
    return Outcome(
        status=plan_status(
            is_interrupted=again.interrupted, is_complete=not made.overview.unplaced
        ),
        text="\n".join(
            [
                say_going_on(left.before, left.planned, left.marks, document),
                *needs,
                *changes[1:],
                *made.overview.figures,
                *made.overview.unplaced,
            ]
        ),
        data={**document, "needs": needs},
        messages=tuple(messages),
    )


def _earlier(again: Any, planned: Any, changes: tuple[str, ...]) -> Any:  # noqa: ANN401
    """Return what the next plan must know; leftovers of the book not begun go back to the book."""
    from nesting.garage.hand import to_leftover
    from plans.book.entries import entry_number

    taken = {sheet.sheet for sheet in again.layout.sheets}
    kept: list[Any] = []
    returned: list[int] = []
    for index, piece in enumerate(again.remaining.in_hand):
        if index in taken:
            continue
        number = None if piece.is_cut else entry_number(planned.sheets[piece.sheet - 1].stock)
        if number is None:
            kept.append(to_leftover(piece, planned.fingerprint))
        else:
            returned.append(number)
    earlier = again.remaining.job.earlier
    used = tuple(
        (stock, count) for stock, count in earlier.used if entry_number(stock) not in returned
    )
    return replace(earlier, changes=changes, kept=tuple(kept), used=used)


def _stocks(job: Any, layout: Any) -> list[str]:  # noqa: ANN401
    """Return the stocks that a plan uses, with those that earlier plans have begun."""
    return [
        *(stock for stock, _ in job.earlier.used),
        *(job.sheets[sheet.sheet].name for sheet in layout.sheets),
    ]


def _nothing_marked(job_file: Path, fingerprint: str) -> Fault:
    return Fault(
        where=str(job_file),
        what=f"nothing is marked of plan {fingerprint}",
        remedy=f"Mark what has been cut, measured or spoilt first: setout mark {job_file} 1.1-1.7",
    )


def _say_needs(again: Any, job: Any) -> Iterator[str]:  # noqa: ANN401
    """Yield what has to be bought and the smallest piece that would do instead."""
    from plans.sections.numbers import show, show_size, show_with_unit

    unit = job.unit
    if not again.needs:
        yield "Nothing has to be bought."
    for need in again.needs:
        counts: Counter[str] = Counter()
        for part in need.parts:
            counts[part.name] += part.count
        names = ", ".join(f"{count} × {name}" for name, count in counts.items())
        yield f"What is in hand has no room for {names} of {need.material}."
        if not need.pieces:
            yield "That is too much for one leftover piece: buy as the plan says."
            continue
        thick = (
            f"{show(need.between[0], unit)} to {show_with_unit(need.between[1], unit)} thick"
            if need.between
            else f"sold as {show_with_unit(need.thickness, unit)} thick"
        )
        sizes = " or ".join(
            f"{show_size(box.length, box.width, unit)} {unit.value}"
            + (f", grain along the {show(box.length, unit)}" if need.has_grain else "")
            for box in need.pieces[:3]
        )
        yield f"Before buying, look for any piece {thick} of at least {sizes}."
