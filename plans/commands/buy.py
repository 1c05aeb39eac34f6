"""`setout buy`: ways to buy, priced, and sizes that nearly save a sheet."""

import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from plans.commands.plan import make_rehearsed, plan_status
from plans.commands.plan_options import Progress
from plans.commands.tables import make_table
from plans.outcome import Outcome

HEADINGS = ("", "Sheets", "Price", "Besides", "Total", "Minutes", "Left over")
WEIGHED = ("", "Sheets", "Total", "Layouts", "Settings", "Minutes")
WEIGHED_RIGHT = (False, True, True, True, True, True)
RIGHT = (False, False, True, False, True, True, False)


@dataclass(frozen=True, slots=True, kw_only=True)
class BuyOptions:
    """How to look for ways to buy.

    Attributes:
        seed: Seed of the searches.
        effort: Iterations of each search; None for the default.
        seconds: Cap on the time of all searches together, or None.
        book: Let parts come from the book of leftovers, whatever the job file says.
    """

    seed: int = 1
    effort: int | None = None
    seconds: float | None = None
    book: bool = False


def buy(job_file: Path, options: BuyOptions, progress: Progress | None = None) -> Outcome:
    """Return the ways to buy what a job needs, each of them planned whole and rehearsed.

    Nothing is written. Near misses are looked for among the sizes that the job file calls free,
    each changed job planned like the job itself.

    Args:
        job_file: The job file.
        options: How to search.
        progress: Told how far each search is.

    Raises:
        InputError: The job file is wrong.
        LayoutError: A way failed its rehearsal.
    """
    from nesting.reading.job_toml import read_job
    from plans.commands.booked import plan_with_book

    job = read_job(job_file)
    if not (options.book or job.keep.use_book):
        return _buy(job, options, progress)
    return plan_with_book(
        job,
        str(job_file.resolve()),
        lambda job, _: _buy(job, options, progress),
        reserves=False,
    )


def _buy(job: Any, options: BuyOptions, progress: Progress | None) -> Outcome:  # noqa: ANN401
    from nesting.batches import solve_in_kits
    from nesting.buying import find_ways
    from nesting.first_cuts import solve_with_yard
    from plans.sections.part_words import full_name

    solve = _searcher(solve_with_yard, options, progress)
    ways = find_ways(job, lambda asked: solve_in_kits(asked, solve))
    for way in ways:
        make_rehearsed(way.job, way.result)
    best = ways[0]
    is_stopped = any(way.result.interrupted for way in ways)
    misses: tuple[Any, ...] | None = None
    cheaper: tuple[Any, ...] = ()
    if not is_stopped:
        try:
            cheaper = _cheaper_stock(job, options, progress)
            misses = _near_misses(job, ways, options, progress)
        except KeyboardInterrupt:
            is_stopped = True
    unplaced = [
        f"{gap.count} × {full_name(job.parts[gap.part])}: {gap.reason}"
        for gap in best.result.layout.unplaced
    ]
    return Outcome(
        status=plan_status(is_interrupted=is_stopped, is_complete=not unplaced),
        text="\n".join([*_text(job, ways, misses), *_cheaper_text(cheaper), *unplaced]),
        data={**_data(job, ways, misses, unplaced), "cheaper_stock": _cheaper_data(cheaper)},
        messages=("Interrupted: this is what was found so far.",) if is_stopped else (),
    )


def _searcher(
    solve: Callable[..., Any], options: BuyOptions, progress: Progress | None
) -> Callable[[Any], Any]:
    """Return a search with the options bound; the seconds are for all of its calls together."""
    from nesting.solve import DEFAULT_EFFORT

    deadline_s = None if options.seconds is None else time.monotonic() + options.seconds

    def search(job: Any) -> Any:  # noqa: ANN401
        return solve(
            job,
            effort=DEFAULT_EFFORT if options.effort is None else options.effort,
            seed=options.seed,
            seconds=None if deadline_s is None else max(0.0, deadline_s - time.monotonic()),
            progress=progress,
        )

    return search


def _near_misses(
    job: Any,  # noqa: ANN401
    ways: tuple[Any, ...],
    options: BuyOptions,
    progress: Progress | None,
) -> tuple[Any, ...]:
    from nesting.near_misses import find_near_misses

    if not job.terms.free:
        return ()
    search = _searcher(_pricer(job), options, progress)
    look = _searcher(_pricer(job), replace(options, effort=0), None)
    usual = next(way for way in ways if way.restriction.is_usual)
    base = usual.result if usual.job == job else search(job)
    return find_near_misses(job, base, first_look=look, solve=search)


def _pricer(job: Any) -> Callable[..., Any]:  # noqa: ANN401
    """Return what finds the price of a job: the cheapest sheets, where nothing else decides it.

    With first cuts, defects or a limit of work in progress it is all that `plan` does.
    """
    from nesting.batches import solve_in_kits
    from nesting.first_cuts import solve_with_yard
    from nesting.solve import solve_cheapest

    def solve_in_groups(asked: Any, **how: Any) -> Any:  # noqa: ANN401
        return solve_in_kits(asked, lambda few: solve_with_yard(few, **how))

    if job.terms.most_open is not None:
        return solve_in_groups
    has_more = job.yard is not None or job.car is not None or any(s.defects for s in job.sheets)
    return solve_with_yard if has_more else solve_cheapest


def _cheaper_stock(job: Any, options: BuyOptions, progress: Progress | None) -> tuple[Any, ...]:  # noqa: ANN401
    from functools import partial

    from nesting.grades import find_cheaper, list_swaps
    from nesting.solve import solve_cheapest

    if not any(list_swaps(job)):
        return ()
    search = _searcher(solve_cheapest, options, progress)
    look = partial(solve_cheapest, effort=0, seed=options.seed)
    return find_cheaper(job, search(job), first_look=look, solve=search)


def _cheaper_text(cheaper: tuple[Any, ...]) -> Iterator[str]:
    from plans.sections.ways import say_cheaper_stock

    if cheaper:
        yield ""
        yield "Not seen when the work is done, so that cheaper stock would do"
        yield from map(say_cheaper_stock, cheaper)


def _cheaper_data(cheaper: tuple[Any, ...]) -> list[dict[str, Any]]:
    from plans.plan_file import to_number
    from plans.sections.ways import say_cheaper_stock

    return [
        {
            "swaps": [
                {"of": swap.of, "what": swap.what, "parts": list(swap.parts), "to": swap.material}
                for swap in each.swaps
            ],
            "price": to_number(each.cost),
            "price_before": to_number(each.cost_before),
            "text": say_cheaper_stock(each),
        }
        for each in cheaper
    ]


def _text(job: Any, ways: tuple[Any, ...], misses: tuple[Any, ...] | None) -> Iterator[str]:  # noqa: ANN401
    """Yield the result for a person; without near misses where the search for them was stopped."""
    from nesting.buying import say_hindrance
    from plans.sections.numbers import show_money
    from plans.sections.ways import make_compromise_lines, make_way_lines, say_near_miss

    rows = [
        (
            (
                line.label,
                line.sheets,
                line.price,
                line.besides,
                line.total,
                line.minutes,
                line.left,
            ),
            [f"{line.title}; {line.verdict}"],
        )
        for line in make_way_lines(ways)
    ]
    yield "Ways to buy, each planned whole and rehearsed"
    yield from make_table(HEADINGS, RIGHT, rows)
    if compromises := make_compromise_lines(ways):
        yield ""
        yield "Weigh up: price against layouts, each with a first part to measure, and settings"
        yield from make_table(WEIGHED, WEIGHED_RIGHT, [(line, []) for line in compromises])
    if hindrance := say_hindrance(job, ways[0].result.layout):
        yield hindrance
    delivery = job.terms.delivery
    if delivery is not None and job.yard is None and job.car is None:
        yield f"Delivery would be {show_money(delivery)} besides."
    if misses:
        yield ""
        yield "Nearly: one size changed a little, or two at once"
        yield from (say_near_miss(miss, job.unit) for miss in misses)
    elif job.terms.free and misses is not None:
        yield ""
        yield "No change of the sizes that are free was found to save anything."


def _data(
    job: Any,  # noqa: ANN401
    ways: tuple[Any, ...],
    misses: tuple[Any, ...] | None,
    unplaced: list[str],
) -> dict[str, Any]:
    from nesting.buying import list_compromises

    compromises = list_compromises(ways)
    return {
        "job": job.name,
        "ways": [_way_row(way, is_compromise=way in compromises) for way in ways],
        "near_misses": [_miss_row(miss, job.unit) for miss in misses or ()],
        "unplaced": unplaced,
    }


def _way_row(way: Any, *, is_compromise: bool) -> dict[str, Any]:  # noqa: ANN401
    from nesting.buying import Sawing
    from plans.plan_file import to_mm, to_number
    from plans.sections.numbers import to_whole
    from plans.sections.part_words import full_name

    return {
        "label": way.label,
        "title": way.restriction.title,
        "delivered": way.restriction.sawing is Sawing.DELIVERED,
        "sawing": way.restriction.sawing.value,
        "layouts": way.layouts,
        "settings": way.settings,
        "is_compromise": is_compromise,
        "recut": [{"name": full_name(part), "count": count} for part, count in way.recut],
        "sheets": [
            {
                "stock": lot.stock,
                "count": lot.count,
                "each": to_number(lot.each),
                "owned": lot.owned,
            }
            for lot in way.lots
        ],
        "price": to_number(way.sheets_cost),
        "besides": to_number(way.extra_cost),
        "total": to_number(way.cost),
        "bound": to_number(way.bound),
        "proven": way.is_proven,
        "minutes": to_whole(way.minutes),
        "left": [
            {
                "stock": left.stock,
                "length": to_mm(left.length),
                "width": to_mm(left.width),
            }
            for left in way.left
        ],
    }


def _miss_row(miss: Any, unit: Any) -> dict[str, Any]:  # noqa: ANN401
    from plans.plan_file import to_mm, to_number
    from plans.sections.ways import say_near_miss

    return {
        "changes": [
            {
                "of": change.free.of,
                "size": change.free.dimension.value,
                "before": to_mm(change.before),
                "after": to_mm(change.after),
            }
            for change in miss.changes
        ],
        "price": to_number(miss.cost),
        "price_before": to_number(miss.cost_before),
        "sheets": miss.sheets,
        "sheets_before": miss.sheets_before,
        "text": say_near_miss(miss, unit),
    }
