"""Ways to buy: whole plans for the same job, each from less than all the stock there is.

A shop is often out of one kind of sheet, or has only one. So the job is planned from all that is
listed, without each kind in turn, with one kind alone, without the pieces in the garage, and with
the sawing shared out otherwise, each time in full. Ways that cost no less than another one that
asks for nothing else are left out.
"""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Final

from nesting.buying.counts import (
    Left,
    Lot,
    count_layouts,
    count_yard_cuts,
    list_left,
    list_lots,
    price_yard_cuts,
)
from nesting.buying.repeated import list_repeats, solve_repeated
from nesting.buying.restrictions import Restriction, list_restrictions
from nesting.buying.sawing import (
    Sawing,
    change_sawing,
    count_cuts,
    list_recut,
    recut_minutes,
    say_hindrance,
)
from nesting.cut_sequence import minutes, order_cuts
from nesting.job import Job
from nesting.layout import Layout
from nesting.parts import Part
from nesting.search.result import Result

Solve = Callable[[Job], Result]
"""Plans a job: `nesting.solve.solve` with its effort and seed bound, say."""


MOST_REPEATS: Final = 4
"""Into so many numbers of equal batches a job is divided: the fewest, and the most."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """One way to buy.

    Attributes:
        label: "A" for the cheapest, then "B" and so on.
        restriction: What it does without.
        job: The job with only the sheets that may be used; the layout's indices belong to it.
        result: Its plan, and what is known of it.
        lots: Its sheets, bought ones first, in the order of the job.
        sheets_cost: Price of its sheets.
        bound: What any plan from the same stock pays for sheets at least.
        extra_cost: Price of the yard's cuts, or of delivery.
        minutes: Estimated minutes at the saw at home.
        settings: Settings of the guide, at home and at the yard.
        layouts: How many different ways of cutting a sheet there are.
        recut: Parts that come from the yard too large and are cut to size at home, with how many.
        left: Leftovers worth keeping, the largest first.
    """

    label: str = ""
    restriction: Restriction
    job: Job
    result: Result
    lots: tuple[Lot, ...]
    sheets_cost: Decimal
    bound: Decimal
    extra_cost: Decimal
    minutes: Decimal
    settings: int
    layouts: int
    recut: tuple[tuple[Part, int], ...] = ()
    left: tuple[Left, ...]

    @property
    def cost(self) -> Decimal:
        """All that is paid."""
        return self.sheets_cost + self.extra_cost

    @property
    def is_proven(self) -> bool:
        """Whether no plan from the same stock has cheaper sheets."""
        return self.sheets_cost <= self.bound

    @property
    def kinds(self) -> frozenset[str]:
        """Names of the kinds of sheet that it uses."""
        return frozenset(lot.stock for lot in self.lots)


def find_ways(job: Job, solve: Solve) -> tuple[Way, ...]:
    """Return the ways to buy, cheapest first; the first is the best found from all the stock.

    Each places all that the plan from all the stock places. Where sheets cost the same, what needs
    less bought stock comes first, then what takes less work. A search stopped by the user ends
    with the ways found until then.

    Args:
        job: Parts, sheets and saw, with `Job.terms.delivery` where it is known.
        solve: How a job is planned.
    """
    found: list[Way] = []
    is_stopped = False
    for restriction in list_restrictions(job):
        if found and not _is_worth_planning(job, restriction.sawing, found[0].result.layout):
            continue
        way = _plan(job, restriction, solve)
        if _is_as_called(job, way):
            found.append(way)
        if way.result.interrupted:
            is_stopped = True
            break
    if not is_stopped:
        found += _repeat(job, found[0], solve)
    whole = [way for way in found if _missing(way) <= _missing(found[0])]
    best = sorted(_drop_dominated(whole), key=_worth)
    cheapest = next(n for n, way in enumerate(best) if way.restriction.is_usual)
    best[cheapest] = _from_all(best[cheapest], found[0])
    return tuple(replace(way, label=_letter(number)) for number, way in enumerate(best))


def list_compromises(ways: Iterable[Way]) -> tuple[Way, ...]:
    """Return the ways than which no other one is as good in cost, in layouts and in settings.

    Fewer settings and fewer first parts to measure may be worth a sheet; that is for the person to
    say. Where two are equal in all, the first stands. Ways in which others saw are not compared.
    """
    listed = [way for way in ways if way.restriction.sawing is Sawing.AS_ASKED]
    costs = [(way.cost, way.layouts, way.settings) for way in listed]

    def is_beaten(place: int) -> bool:
        own = costs[place]
        return any(
            (other[0] <= own[0] and other[1] <= own[1] and other[2] <= own[2])
            and (other != own or number < place)
            for number, other in enumerate(costs)
        )

    return tuple(way for place, way in enumerate(listed) if not is_beaten(place))


def _is_worth_planning(job: Job, sawing: Sawing, usual: Layout) -> bool:
    """Return whether sharing out the sawing otherwise would change anything, and can be done."""
    match sawing:
        case Sawing.ALL_AT_HOME:
            return count_yard_cuts(usual) > 0
        case Sawing.STRIPS_AT_YARD:
            return count_yard_cuts(usual) == 0
        case Sawing.ALL_AT_YARD:
            return not say_hindrance(job, usual)
    return True


def _is_as_called(job: Job, way: Way) -> bool:
    """Return whether the yard cuts as much as the way says, and may."""
    match way.restriction.sawing:
        case Sawing.STRIPS_AT_YARD:
            return count_yard_cuts(way.result.layout) > 0
        case Sawing.ALL_AT_YARD:
            return not say_hindrance(job, way.result.layout)
    return True


def _from_all(way: Way, whole: Way) -> Way:
    """Return the cheapest way as the one from all the stock, whatever it was found without."""
    restriction = replace(way.restriction, title=whole.restriction.title)
    return replace(way, restriction=restriction, bound=min(whole.bound, way.sheets_cost))


def _plan(job: Job, restriction: Restriction, solve: Solve) -> Way:
    allowed = replace(job, sheets=tuple(job.sheets[index] for index in restriction.sheets))
    changed = change_sawing(allowed, restriction.sawing)
    return _describe(allowed, changed, restriction, solve(changed))


def _repeat(job: Job, usual: Way, solve: Solve) -> Iterator[Way]:
    """Yield ways with the same sheets over and over, each with fewer layouts than those before."""
    possible = list_repeats(job, len(usual.result.layout.sheets))[1:]
    layouts = usual.layouts
    for times in sorted({*possible[: MOST_REPEATS - 1], *possible[-1:]}):
        result = solve_repeated(job, times, solve) if layouts > 1 else None
        if result is None:
            continue
        restriction = Restriction(
            title=f"all kinds, every sheet cut {times} times",
            sheets=tuple(range(len(job.sheets))),
            times=times,
        )
        way = _describe(job, job, restriction, result)
        if way.layouts < layouts:
            layouts = way.layouts
            yield replace(way, bound=min(usual.bound, way.sheets_cost))
        if result.interrupted:
            return


def _describe(allowed: Job, changed: Job, restriction: Restriction, result: Result) -> Way:
    """Return a way with all that is told of it.

    Args:
        allowed: The job with only the sheets that may be used.
        changed: The same with its sawing shared out as the way has it.
        restriction: What it does without.
        result: Its plan.
    """
    layout = result.layout
    sequences = [order_cuts(allowed, sheet) for sheet in layout.sheets]
    recut = list_recut(allowed) if restriction.sawing is Sawing.ALL_AT_YARD else ()
    return Way(
        restriction=restriction,
        job=changed,
        result=result,
        lots=tuple(list_lots(allowed, layout)),
        sheets_cost=result.cost,
        bound=result.bound,
        extra_cost=_extra_cost(allowed, layout, restriction.sawing),
        minutes=recut_minutes(allowed, recut)
        if restriction.sawing is Sawing.ALL_AT_YARD
        else sum((minutes(allowed, sequence) for sequence in sequences), Decimal(0)),
        settings=sum(sequence.settings for sequence in sequences),
        layouts=count_layouts(allowed, layout),
        recut=recut,
        left=tuple(sorted(list_left(allowed, layout), key=lambda left: -left.length * left.width)),
    )


def _extra_cost(job: Job, layout: Layout, sawing: Sawing) -> Decimal:
    """Return what is paid besides the sheets: the yard's cuts, or delivery of what is bought."""
    if sawing is Sawing.DELIVERED:
        is_bought = any(not job.sheets[sheet.sheet].owned for sheet in layout.sheets)
        return job.terms.delivery or Decimal(0) if is_bought else Decimal(0)
    if sawing is Sawing.ALL_AT_YARD and job.yard is not None:
        return job.yard.price_per_cut * sum(map(count_cuts, layout.sheets))
    return price_yard_cuts(job, layout)


def _missing(way: Way) -> int:
    """Return the area of the parts without a place."""
    parts = way.job.parts
    return sum(
        parts[gap.part].blank_length * parts[gap.part].blank_width * gap.count
        for gap in way.result.layout.unplaced
    )


def _drop_dominated(ways: Iterable[Way]) -> list[Way]:
    """Return the ways that nobody would leave for another that asks for nothing else."""
    kept: list[Way] = []
    for way in sorted(ways, key=_worth):
        if not any(
            other.kinds <= way.kinds
            and (other.restriction.sawing, other.restriction.times)
            == (way.restriction.sawing, way.restriction.times)
            for other in kept
        ):
            kept.append(way)
    return kept


def _worth(way: Way) -> tuple[Decimal, int, Decimal]:
    """Return what is compared, the least being the best."""
    bought = sum(lot.count for lot in way.lots if not lot.owned)
    return way.cost, bought, way.minutes


def _letter(number: int) -> str:
    """Return A for 0, B for 1, and AA after Z."""
    letters = ""
    number += 1
    while number:
        number, place = divmod(number - 1, 26)
        letters = chr(ord("A") + place) + letters
    return letters
