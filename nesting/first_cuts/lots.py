"""Which sheets to buy, and how the yard cuts each of them: the lots to try, cheapest first."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from itertools import combinations, islice, product

from nesting.first_cuts.assembly import Lot
from nesting.first_cuts.split import Split
from nesting.job import Job

Purchase = tuple[tuple[int, int], ...]
"""Sheets to buy: index into `Job.sheets` and how many, for every kind."""

MOST_EXTRA = 3
"""How many sheets more than without a car are tried."""

MOST_ALIKE = 24
MOST_MIXED = 8


def list_purchases(
    job: Job, kinds: Sequence[int], fewest: Mapping[int, int]
) -> tuple[Purchase, ...]:
    """Return what may be bought, from what would do without a car to some sheets more.

    Args:
        job: The job.
        kinds: Kinds of sheet that get home, whole or split: indices into `Job.sheets`.
        fewest: How many of each kind the plan without a car buys.

    Returns:
        The cheapest first. Where a kind does not get home, others stand in for it.
    """
    base = Counter({kind: fewest[kind] for kind in kinds if fewest.get(kind)})
    lost = sum(count for kind, count in fewest.items() if kind not in kinds)
    found: set[Purchase] = set()
    for extra in range(lost, lost + MOST_EXTRA + 1):
        for more in _spread(kinds, extra):
            bought = base + more
            if all(_there_are(job, kind, count) for kind, count in bought.items()):
                found.add(tuple(sorted(bought.items())))
    found.update(_exchange(job, kinds, fewest))
    found.discard(())
    return tuple(
        sorted(
            found,
            key=lambda purchase: (
                price_of(job, purchase),
                sum(count for _, count in purchase),
                purchase,
            ),
        )
    )


def _exchange(job: Job, kinds: Sequence[int], fewest: Mapping[int, int]) -> Iterator[Purchase]:
    """Yield what may be bought where one kind of sheet stands in for another, by area."""
    for old, count in fewest.items():
        for new in kinds:
            if new == old:
                continue
            area, each = (job.sheets[kind].length * job.sheets[kind].width for kind in (old, new))
            least = -(-area * count // each)
            for number in (least, least + 1):
                kept = {kind: many for kind, many in fewest.items() if kind != old}
                bought = Counter(kept) + Counter({new: number})
                if all(
                    kind in kinds and _there_are(job, kind, many) for kind, many in bought.items()
                ):
                    yield tuple(sorted(bought.items()))


def price_of(job: Job, purchase: Purchase) -> Decimal:
    """Return what the sheets of a purchase cost."""
    return sum((job.sheets[kind].price * count for kind, count in purchase), Decimal(0))


def _spread(kinds: Sequence[int], extra: int) -> Iterator[Counter[int]]:
    """Yield the ways to buy some sheets more: all of one kind, or of two kinds."""
    if extra == 0:
        yield Counter()
    for kind in kinds:
        yield Counter({kind: extra})
    for one, other in combinations(kinds, 2):
        for count in range(1, extra):
            yield Counter({one: count, other: extra - count})


def _there_are(job: Job, kind: int, count: int) -> bool:
    limit = job.sheets[kind].count
    return limit is None or count <= limit


def list_lots(purchase: Purchase, splits: Mapping[int, Sequence[Split]]) -> tuple[list[Lot], ...]:
    """Return the ways in which the yard may cut a purchase: sheets of a kind alike, then mixed.

    The fewest cuts come first, among equals those whose splits promise the least waste.
    """
    choices = [range(len(splits[kind])) for kind, _ in purchase]
    alike = sorted(islice(product(*choices), 40 * MOST_ALIKE), key=lambda row: (sum(row), row))
    ways = [
        [
            Lot(sheet=kind, split=splits[kind][number], count=count)
            for (kind, count), number in zip(purchase, numbers, strict=True)
        ]
        for numbers in alike[:MOST_ALIKE]
    ]
    for place, (kind, count) in enumerate(purchase):
        others = [
            Lot(sheet=other, split=splits[other][0], count=many)
            for index, (other, many) in enumerate(purchase)
            if index != place
        ]
        for one, two in combinations(splits[kind][:MOST_MIXED], 2):
            for part in range(1, count):
                mixed = [
                    Lot(sheet=kind, split=one, count=part),
                    Lot(sheet=kind, split=two, count=count - part),
                ]
                ways.append([*others, *mixed])
    return tuple(sorted(ways, key=count_cuts))


def count_cuts(lots: Sequence[Lot]) -> int:
    """Return how many cuts the yard makes in all."""
    return sum(lot.split.cuts * lot.count for lot in lots)
