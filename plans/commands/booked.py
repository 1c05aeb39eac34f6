"""A plan that may use the book of leftovers."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import AbstractContextManager, contextmanager
from dataclasses import replace
from typing import Any

from plans.outcome import Outcome

MOST_TRIES = 3

Reserving = Callable[[Iterable[str]], AbstractContextManager[None]]
"""Reserves those of some stocks, by name, that are leftovers of the book."""


def plan_with_book(
    job: Any,  # noqa: ANN401
    holder: str,
    make: Callable[[Any, Reserving], Outcome],
    *,
    reserves: bool,
) -> Outcome:
    """Plan a job with the leftovers of the book as sheets that are owned already.

    What the plan uses is reserved before it is written and released if it cannot be written.
    Where another plan was faster, this one is made again without what that one took.

    Args:
        job: The job.
        holder: The job file that leftovers are reserved for.
        make: Plans a job, and writes the plan while what it uses is reserved.
        reserves: False where nothing is written.

    Raises:
        ReservedError: Others were faster every time.
    """
    from plans.book.store import ReservedError, book_path, open_book

    for attempt in range(1, MOST_TRIES + 1):
        with open_book(book_path()) as book:
            entries = _usable(job, book, holder)
            whole = replace(job, sheets=(*(sheet for _, sheet in entries), *job.sheets))
            numbers = {sheet.name: number for number, sheet in entries}
            try:
                return make(whole, _reserver(book, numbers, holder, reserves=reserves))
            except ReservedError:
                if attempt == MOST_TRIES:
                    raise
    raise AssertionError("the last try returns or raises")


def _usable(job: Any, book: Any, holder: str) -> list[tuple[int, Any]]:  # noqa: ANN401
    """Return number and sheet of every free leftover of a material that the job needs."""
    from nesting.reading.sheet_tables import default_trim
    from plans.book.entries import as_sheet
    from plans.book.store import list_entries

    groups = {(part.material, part.thickness) for part in job.parts}
    return [
        (entry.number, as_sheet(entry, default_trim(job.unit)))
        for entry in list_entries(book)
        if entry.holder in ("", holder)
        and (entry.offcut.material, entry.offcut.thickness) in groups
    ]


def _reserver(
    book: Any,  # noqa: ANN401
    numbers: Mapping[str, int],
    holder: str,
    *,
    reserves: bool,
) -> Reserving:
    from plans.book.store import list_entries, reserve_only

    @contextmanager
    def reserving(stocks: Iterable[str]) -> Iterator[None]:
        if not reserves:
            yield
            return
        before = [entry.number for entry in list_entries(book) if entry.holder == holder]
        used = [numbers[stock] for stock in dict.fromkeys(stocks) if stock in numbers]
        reserve_only(book, used, holder)
        try:
            yield
        except BaseException:
            reserve_only(book, before, holder)
            raise

    return reserving
