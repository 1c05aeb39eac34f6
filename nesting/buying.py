"""Ways to buy: whole plans for the same job, each from less than all the stock there is.

A shop is often out of one kind of sheet, or has only one. So the job is planned from all that is
listed, without each kind in turn, with one kind alone and without the pieces in the garage, each
time in full. Ways that cost no less than another one that asks for nothing else are left out.
"""

from collections import Counter
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from nesting.cut_sequence import minutes, order_cuts
from nesting.job import Job
from nesting.layout import By, Cut, Layout, Rect, RestLeaf, walk
from nesting.lengths import Length
from nesting.search.result import Result

Solve = Callable[[Job], Result]
"""Plans a job: `nesting.solve.solve` with its effort and seed bound, say."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Restriction:
    """What the shop, or the garage, is taken not to have.

    Attributes:
        title: What it is called, such as "without birch 18 half".
        sheets: Indices into `Job.sheets` of the kinds that may be used, increasing.
        is_delivered: Whether everything is brought, so that neither yard nor car matters.
    """

    title: str
    sheets: tuple[int, ...]
    is_delivered: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """Sheets of one kind in a way to buy.

    Attributes:
        stock: Name of the kind.
        count: How many.
        each: Price of one; 0 where it is owned.
        owned: Whether it stands in the garage already.
    """

    stock: str
    count: int
    each: Decimal
    owned: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Left:
    """A leftover worth keeping.

    Attributes:
        stock: Name of the kind of sheet it comes from.
        length: Extent along the length of that sheet.
        width: Extent along its width.
    """

    stock: str
    length: Length
    width: Length


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
    for restriction in list_restrictions(job):
        found.append(_plan(job, restriction, solve))
        if found[-1].result.interrupted:
            break
    whole = [way for way in found if _missing(way) <= _missing(found[0])]
    best = sorted(_drop_dominated(whole), key=_worth)
    cheapest = next(n for n, way in enumerate(best) if not way.restriction.is_delivered)
    best[cheapest] = _from_all(best[cheapest], found[0])
    return tuple(replace(way, label=_letter(number)) for number, way in enumerate(best))


def _from_all(way: Way, whole: Way) -> Way:
    """Return the cheapest way as the one from all the stock, whatever it was found without."""
    restriction = replace(way.restriction, title=whole.restriction.title)
    return replace(way, restriction=restriction, bound=min(whole.bound, way.sheets_cost))


def list_restrictions(job: Job) -> tuple[Restriction, ...]:
    """Return what is tried, all the stock first, each choice of sheets once."""
    every = tuple(range(len(job.sheets)))
    choices = [Restriction(title="all kinds", sheets=every)]
    if job.terms.delivery is not None and (job.yard is not None or job.car is not None):
        choices.append(Restriction(title="all kinds, delivered", sheets=every, is_delivered=True))
    for bought in _groups_of_bought(job):
        choices += [
            Restriction(
                title=f"without {job.sheets[kind].name}",
                sheets=tuple(other for other in every if other != kind),
            )
            for kind in bought
        ]
        choices += [
            Restriction(
                title=f"only {job.sheets[kind].name}",
                sheets=tuple(other for other in every if other == kind or other not in bought),
            )
            for kind in bought
        ]
    choices += _without_own(job, every)
    distinct: dict[tuple[tuple[int, ...], bool], Restriction] = {}
    for choice in choices:
        distinct.setdefault((choice.sheets, choice.is_delivered), choice)
    return tuple(distinct.values())


def _groups_of_bought(job: Job) -> Iterator[tuple[int, ...]]:
    """Yield the kinds that can be bought of every board of which there are several."""
    groups: dict[tuple[str, Length], list[int]] = {}
    for index, sheet in enumerate(job.sheets):
        if not sheet.owned and sheet.count != 0:
            groups.setdefault((sheet.material, sheet.thickness), []).append(index)
    for members in groups.values():
        if len(members) > 1:
            yield tuple(members)


def _without_own(job: Job, every: tuple[int, ...]) -> Iterator[Restriction]:
    """Yield the stock without the pieces in the garage, where it can do without some of them."""
    sold = {(sheet.material, sheet.thickness) for sheet in job.sheets if not sheet.owned}
    kept = tuple(
        index
        for index in every
        if not job.sheets[index].owned
        or (job.sheets[index].material, job.sheets[index].thickness) not in sold
    )
    if len(kept) < len(every):
        yield Restriction(title="without your own pieces", sheets=kept)


def _plan(job: Job, restriction: Restriction, solve: Solve) -> Way:
    allowed = replace(job, sheets=tuple(job.sheets[index] for index in restriction.sheets))
    if restriction.is_delivered:
        allowed = replace(allowed, yard=None, car=None)
    result = solve(allowed)
    layout = result.layout
    return Way(
        restriction=restriction,
        job=allowed,
        result=result,
        lots=tuple(_lots(allowed, layout)),
        sheets_cost=result.cost,
        bound=result.bound,
        extra_cost=_extra_cost(allowed, layout, is_delivered=restriction.is_delivered),
        minutes=sum(
            (minutes(allowed, order_cuts(allowed, sheet)) for sheet in layout.sheets), Decimal(0)
        ),
        left=tuple(sorted(_left(allowed, layout), key=lambda left: -left.length * left.width)),
    )


def _lots(job: Job, layout: Layout) -> Iterator[Lot]:
    counts = Counter(sheet.sheet for sheet in layout.sheets)
    for index in sorted(counts, key=lambda index: (job.sheets[index].owned, index)):
        sheet = job.sheets[index]
        yield Lot(
            stock=sheet.name,
            count=counts[index],
            each=Decimal(0) if sheet.owned else sheet.price,
            owned=sheet.owned,
        )


def _extra_cost(job: Job, layout: Layout, *, is_delivered: bool) -> Decimal:
    """Return what is paid besides the sheets: the yard's cuts, or delivery of what is bought."""
    if is_delivered:
        is_bought = any(not job.sheets[sheet.sheet].owned for sheet in layout.sheets)
        return job.terms.delivery or Decimal(0) if is_bought else Decimal(0)
    if job.yard is None:
        return Decimal(0)
    anywhere = Rect(x=0, y=0, length=0, width=0)
    cuts = sum(
        isinstance(place.node, Cut) and place.node.by is By.YARD
        for sheet in layout.sheets
        for place in walk(sheet.root, anywhere)
    )
    return job.yard.price_per_cut * cuts


def _left(job: Job, layout: Layout) -> Iterator[Left]:
    for used in layout.sheets:
        sheet = job.sheets[used.sheet]
        whole = Rect(x=0, y=0, length=sheet.length, width=sheet.width)
        for place in walk(used.root, whole):
            if isinstance(place.node, RestLeaf) and place.node.is_offcut:
                yield Left(stock=sheet.name, length=place.rect.length, width=place.rect.width)


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
            and other.restriction.is_delivered is way.restriction.is_delivered
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
