"""`setout offcuts`: the book of leftovers."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import Any

from nesting.errors import Fault, InputError
from plans.outcome import Outcome


@dataclass(frozen=True, slots=True, kw_only=True)
class AddOptions:
    """A leftover as typed.

    Attributes:
        material: What it is made of.
        size: Two sides, "600x300".
        thickness: Nominal thickness.
        measured: Measured thickness, or None.
        grain: The side that the grain runs along: "length", "width" or "none".
        good: Edges to measure from, separated by commas, or "all".
        units: What bare numbers are in.
        day: The day, or None for today.
    """

    material: str
    size: str
    thickness: str
    measured: str | None = None
    grain: str = "length"
    good: str = ""
    units: str = "mm"
    day: str | None = None


def list_all(units: str, day: str | None) -> Outcome:
    """List the leftovers, the keep rule and what to throw."""
    from plans.book.entries import list_to_throw
    from plans.book.store import book_path, list_entries, open_book, read_rule

    unit, today = _unit(units), _day(day)
    with open_book(book_path()) as book:
        entries, rule = list_entries(book), read_rule(book)
    throw = list_to_throw(rule, entries)
    return Outcome(
        text="\n".join(
            [
                *(_line(entry, unit, today) for entry in entries),
                _say_rule(rule, entries, unit),
                *_say_throw(throw),
            ]
        ),
        data={
            "offcuts": [_row(entry, unit) for entry in entries],
            "throw": [entry.number for entry in throw],
        },
    )


def add_one(options: AddOptions) -> Outcome:
    """Write a leftover into the book.

    Raises:
        InputError: It is not described rightly, or the rule does not keep it.
    """
    from nesting.sheets import SheetGrain
    from plans.book.entries import SIDES, Offcut
    from plans.mark_words import read_length, read_size

    unit = _unit(options.units)
    grains = {grain.value: grain for grain in SheetGrain}
    if options.grain not in grains:
        raise _refused("--grain", f"{options.grain!r} is no side", "Write length, width or none.")
    good = SIDES if options.good == "all" else tuple(options.good.replace(",", " ").split())
    if unknown := [edge for edge in good if edge not in SIDES]:
        raise _refused(
            "--good", f"{unknown[0]!r} is no edge", "Write left, right, top and bottom, or all."
        )
    length, width = read_size(options.size, unit, "SIZE")
    offcut = Offcut(
        material=_material(options.material),
        thickness=read_length(options.thickness, unit, "--thickness"),
        measured=read_length(options.measured, unit, "--measured") if options.measured else None,
        length=length,
        width=width,
        grain=grains[options.grain],
        good_edges=good,
        added=_day(options.day).isoformat(),
    )
    return _add([offcut], unit, refuses=True)


def take_over(plan_file: Path, day: str | None) -> Outcome:
    """Take over the leftovers of a plan that has been cut; strike out those that it has cut up.

    Raises:
        InputError: The plan file or the record beside it is wrong.
    """
    from nesting.garage.marking import add_marks
    from nesting.garage.marks import Marks
    from plans.book.from_plan import cut_up_entries, offcuts_of
    from plans.plan_reading import read_planned
    from plans.record import marks_of, read_record

    planned = read_planned(plan_file)
    stem = plan_file.name.removesuffix(".json").removesuffix(".plan")
    marked = marks_of(read_record(plan_file.with_name(f"{stem}.record")), planned.fingerprint)
    marks = add_marks(planned, Marks(), tuple(event for _, event in marked))
    outcome = _add(offcuts_of(planned, marks, _day(day).isoformat()), planned.unit, refuses=False)
    struck = _strike_out(cut_up_entries(planned, marks), stem, day)
    if struck:
        said = f"Struck out, because this job has cut them up: {_names(struck)}."
        outcome = replace(outcome, text=f"{outcome.text}\n{said}")
    left = planned.cut_count - len(marks.cuts)
    if not marks.cuts:
        note = "No cut of this plan is marked: it was taken to be finished."
    elif left:
        note = f"{left} cuts are not marked yet; what they free was left out."
    else:
        return outcome
    return Outcome(status=outcome.status, text=outcome.text, data=outcome.data, messages=(note,))


def _strike_out(numbers: Sequence[int], stem: str, day: str | None) -> list[int]:
    """Strike out those of some leftovers that are reserved for a job file; return which."""
    from plans.book.store import book_path, list_entries, open_book, take

    with open_book(book_path()) as book:
        held = [
            entry.number
            for entry in list_entries(book)
            if entry.number in numbers and Path(entry.holder).stem == stem
        ]
        take(book, held, _day(day).isoformat())
    return held


def reserve_some(numbers: Sequence[int], job_file: Path) -> Outcome:
    """Reserve leftovers for a job, all or none.

    Raises:
        InputError: There is no such job file.
        ReservedError: One of them is not free.
    """
    from plans.book.store import book_path, open_book, reserve

    if not job_file.is_file():
        raise _refused(str(job_file), "there is no such file", "Name the job file.")
    with open_book(book_path()) as book:
        reserve(book, numbers, str(job_file.resolve()))
    return Outcome(text=f"Reserved for {job_file.name}: {_names(numbers)}.")


def release_some(numbers: Sequence[int]) -> Outcome:
    """Let other jobs have leftovers that were reserved."""
    from plans.book.store import book_path, open_book, release

    with open_book(book_path()) as book:
        release(book, numbers)
    return Outcome(text=f"Released: {_names(numbers)}.")


def take_some(numbers: Sequence[int], day: str | None) -> Outcome:
    """Strike leftovers out of the book."""
    from plans.book.store import book_path, open_book, take

    with open_book(book_path()) as book:
        take(book, numbers, _day(day).isoformat())
    return Outcome(text=f"Struck out: {_names(numbers)}.")


def set_rule(smallest: str | None, space: str | None, units: str) -> Outcome:
    """Set the keep rule as far as it is given, and say what it is."""
    from plans.book.entries import list_to_throw
    from plans.book.store import book_path, list_entries, open_book, read_rule, write_rule
    from plans.mark_words import read_size

    unit = _unit(units)
    with open_book(book_path()) as book:
        rule = read_rule(book)
        if smallest is not None:
            sides = sorted(read_size(smallest, unit, "--smallest"))
            rule = replace(rule, length=sides[1], width=sides[0])
        if space is not None:
            rule = replace(rule, space_m2=_square_metres(space))
        if smallest is not None or space is not None:
            write_rule(book, rule)
        entries = list_entries(book)
    throw = list_to_throw(rule, entries)
    return Outcome(text="\n".join([_say_rule(rule, entries, unit), *_say_throw(throw)]))


def export(file: Path, units: str) -> Outcome:
    """Write the book as a table of comma-separated values."""
    import csv
    import io

    from plans.book.store import book_path, list_entries, open_book
    from plans.writers.whole_file import write_whole

    unit = _unit(units)
    with open_book(book_path()) as book:
        entries = list_entries(book)
    text = io.StringIO()
    writer = csv.DictWriter(text, _COLUMNS)
    writer.writeheader()
    writer.writerows(_row(entry, unit) for entry in entries)
    replaced = write_whole({file: text.getvalue().encode()})
    return Outcome(text=f"{'Replaced' if replaced else 'Wrote'} {file} ({len(entries)} offcuts)")


_COLUMNS = (
    "number",
    "material",
    "thickness",
    "measured",
    "length",
    "width",
    "unit",
    "grain",
    "good_edges",
    "added",
    "origin",
    "reserved_for",
)


def _add(offcuts: Sequence[Any], unit: Any, *, refuses: bool) -> Outcome:  # noqa: ANN401
    """Add what the rule keeps; say what was added, what was not and what to throw."""
    from plans.book.entries import is_worth_keeping, list_to_throw
    from plans.book.store import add, book_path, list_entries, open_book, read_rule
    from plans.sections.numbers import show_size

    with open_book(book_path()) as book:
        rule = read_rule(book)
        kept = [offcut for offcut in offcuts if is_worth_keeping(rule, offcut.length, offcut.width)]
        small = [offcut for offcut in offcuts if offcut not in kept]
        if small and refuses:
            raise _refused(
                show_size(small[0].length, small[0].width, unit),
                "the rule of the book does not keep so small a piece",
                "Use it now, or change the rule with 'setout offcuts rule --smallest SIZE'.",
            )
        numbers = add(book, kept)
        throw = list_to_throw(rule, list_entries(book))
    lines = [
        f"Offcut {number}: {show_size(offcut.length, offcut.width, unit)} {unit.value}, "
        f"{offcut.material}. Write the number on it."
        if number is not None
        else f"{offcut.origin} is in the book already."
        for number, offcut in zip(numbers, kept, strict=True)
    ]
    lines += [f"{offcut.origin} is too small for the rule of the book." for offcut in small]
    return Outcome(
        text="\n".join([*(lines or ["There is nothing to keep."]), *_say_throw(throw)]),
        data={
            "added": [number for number in numbers if number is not None],
            "throw": [entry.number for entry in throw],
        },
    )


def _line(entry: Any, unit: Any, today: date) -> str:  # noqa: ANN401
    from plans.sections.numbers import show, show_size

    offcut = entry.offcut
    thick = show(offcut.thickness if offcut.measured is None else offcut.measured, unit)
    grain = {"length": "grain along the first", "width": "grain along the second"}.get(
        offcut.grain.value, "no grain"
    )
    edges = ", ".join(offcut.good_edges) or "none"
    days = (today - date.fromisoformat(offcut.added)).days
    held = f"; reserved for {Path(entry.holder).name}" if entry.holder else ""
    origin = f"; {offcut.origin}" if offcut.origin else ""
    return (
        f"{entry.number}: {show_size(offcut.length, offcut.width, unit)} × {thick} {unit.value}"
        f"{'' if offcut.measured is not None else ' (not measured)'}, {offcut.material}, {grain}; "
        f"good edges: {edges}; {days} days{origin}{held}"
    )


def _row(entry: Any, unit: Any) -> dict[str, Any]:  # noqa: ANN401
    from nesting.lengths import format_length

    offcut = entry.offcut
    return {
        "number": entry.number,
        "material": offcut.material,
        "thickness": format_length(offcut.thickness, unit),
        "measured": "" if offcut.measured is None else format_length(offcut.measured, unit),
        "length": format_length(offcut.length, unit),
        "width": format_length(offcut.width, unit),
        "unit": unit.value,
        "grain": offcut.grain.value,
        "good_edges": " ".join(offcut.good_edges),
        "added": offcut.added,
        "origin": offcut.origin,
        "reserved_for": entry.holder,
    }


def _say_rule(rule: Any, entries: Sequence[Any], unit: Any) -> str:  # noqa: ANN401
    from nesting.lengths import mm
    from plans.sections.numbers import count_of, show_size

    area = sum(entry.area for entry in entries)
    hundredths = round(area * 100 / mm(1000) ** 2)
    room = "" if rule.space_m2 is None else f" of {rule.space_m2} m²"
    return (
        f"{count_of(len(entries), 'offcut')}, {hundredths // 100}.{hundredths % 100:02d}"
        f"{room or ' m²'}; kept is what measures {show_size(rule.length, rule.width, unit)} "
        f"{unit.value} or more."
    )


def _say_throw(throw: Sequence[Any]) -> Iterator[str]:
    if throw:
        yield (
            "There is more than there is room for. Throw out, the oldest and smallest first: "
            f"{_names([entry.number for entry in throw])}. Then 'setout offcuts take' them."
        )


def _names(numbers: Sequence[int]) -> str:
    return ", ".join(map(str, numbers))


def _material(text: str) -> str:
    from nesting.reading.values import as_text

    try:
        return as_text(text)
    except InputError as error:
        raise _refused("MATERIAL", error.faults[0].what, "Write what it is made of.") from None


def _unit(text: str) -> Any:  # noqa: ANN401
    from nesting.lengths import Unit

    try:
        return Unit(text)
    except ValueError:
        raise _refused("--units", f"{text!r} is no unit here", "Write mm or in.") from None


def _day(text: str | None) -> date:
    if text is None:
        return datetime.now(tz=UTC).astimezone().date()
    try:
        return date.fromisoformat(text)
    except ValueError:
        raise _refused("--date", f"{text!r} is no day", "Write it such as 2026-11-25.") from None


def _square_metres(text: str) -> Decimal | None:
    if text == "none":
        return None
    try:
        space = Decimal(text)
    except InvalidOperation:
        space = Decimal(-1)
    if not space.is_finite() or not 0 <= space <= 1_000_000:  # noqa: PLR2004 - a square kilometre
        raise _refused(
            "--space", f"{text!r} is no area", "Write square metres such as 1.5, or none."
        )
    return space


def _refused(where: str, what: str, remedy: str) -> InputError:
    return InputError([Fault(where=where, what=what, remedy=remedy)])
