"""The cheapest way to split the sheets of one material and thickness."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from nesting.cut_sequence import minutes, order_cuts
from nesting.defects import solve_clear
from nesting.first_cuts.assembly import Lot, PieceJob, make_piece_job, put_together
from nesting.first_cuts.lots import Purchase, count_cuts, list_lots, list_purchases, price_of
from nesting.first_cuts.split import Split
from nesting.job import Job
from nesting.layout import Layout, SheetLayout
from nesting.search.effort import Effort
from nesting.solve import measure_gaps

MOST_WAYS = 60
MANY_PARTS = 200
FEW_WAYS = 12
"""How many ways are looked at for one purchase; with many parts each look takes longer."""

MOST_FEASIBLE = 12
MOST_RETRIES = 6
RETRY_SHARE = 4
POLISH_SHARE = 2
MANY_SHEETS = 20
"""With more sheets the minutes of each way are not worked out; the first one is taken."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Group:
    """One material and thickness of the plan without first cuts.

    Attributes:
        parts: Indices of its parts into `Job.parts`.
        sheets: Its sheets.
        gaps: Its parts that found no place: index and how many.
    """

    parts: tuple[int, ...]
    sheets: tuple[SheetLayout, ...]
    gaps: frozenset[tuple[int, int]]

    def bought(self, job: Job) -> Counter[int]:
        """Return how many of each kind of sheet are bought."""
        return Counter(s.sheet for s in self.sheets if not job.sheets[s.sheet].owned)


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """One way to split the sheets of a group, and what comes of it.

    Attributes:
        lots: The sheets and their splits.
        layout: The layout of the group.
        missing: Area of the parts that found no place.
        gaps: Those parts: index and how many.
        is_interrupted: True where the user stopped the search.
    """

    lots: tuple[Lot, ...]
    layout: Layout
    missing: int
    gaps: frozenset[tuple[int, int]]
    is_interrupted: bool


def find_way(
    job: Job, group: Group, splits: Mapping[int, Sequence[Split]], effort: Effort
) -> Way | None:
    """Return the cheapest way found to split the sheets, None where no way places all parts.

    Sheets and yard cuts are paid for; of equal ones the way with fewer yard cuts, then with fewer
    cuts longer than the guide, then with fewer minutes at home is taken. More or dearer sheets
    than without first cuts are bought only for a car: one too heavy for one person is a matter
    for two.

    Args:
        job: The job; it has a yard.
        group: What is planned without first cuts.
        splits: The ways to split each kind of sheet: indices into `Job.sheets`.
        effort: How hard to search.
    """
    assert job.yard is not None, "ways to split need a yard"
    price = job.yard.price_per_cut
    fewest = group.bought(job)
    without = price_of(job, tuple(fewest.items()))
    best: tuple[tuple[Decimal, int], Way] | None = None
    for purchase in list_purchases(job, list(splits), fewest):
        sheets_price = price_of(job, purchase)
        if best is not None and sheets_price >= best[0][0]:
            break
        sheets = sum(count for _, count in purchase)
        if job.car is None and (sheets_price > without or sheets > fewest.total()):
            continue
        way = _try_purchase(job, group, purchase, splits, effort)
        if way is not None:
            cuts = count_cuts(way.lots)
            cost = (sheets_price + cuts * price, cuts)
            if best is None or cost < best[0]:
                best = cost, way
            if way.is_interrupted:
                break
    return None if best is None else best[1]


def _try_purchase(
    job: Job,
    group: Group,
    purchase: Purchase,
    splits: Mapping[int, Sequence[Split]],
    effort: Effort,
) -> Way | None:
    """Return the best way to split one purchase: a quick look at all ways, then a longer one."""
    ways: list[Way] = []
    feasible: list[Way] = []
    for lots in _worth_trying(job, group, list_lots(purchase, splits)):
        if feasible and count_cuts(lots) > count_cuts(feasible[0].lots):
            break
        way = _lay_out(job, group, lots, effort, share=0)
        (feasible if way.gaps == group.gaps else ways).append(way)
        if way.is_interrupted or len(feasible) == MOST_FEASIBLE:
            break
    if not feasible and effort.effort:
        ways.sort(key=lambda way: way.missing)
        for tried in ways[:MOST_RETRIES]:
            way = _lay_out(job, group, tried.lots, effort, share=RETRY_SHARE)
            if way.gaps == group.gaps:
                feasible.append(way)
            if way.is_interrupted or feasible:
                break
    if not feasible:
        return None
    best = min(feasible, key=lambda way: (count_cuts(way.lots), _work(job, way.layout)))
    if best.is_interrupted or not effort.effort:
        return best
    polished = _lay_out(job, group, best.lots, effort, share=POLISH_SHARE)
    return polished if polished.gaps == group.gaps else best


def _worth_trying(job: Job, group: Group, ways: Sequence[list[Lot]]) -> Iterator[tuple[Lot, ...]]:
    """Yield the ways whose pieces have room for the area of the parts, a limited number."""
    parts = [job.parts[index] for index in group.parts]
    gaps = dict(group.gaps)
    needed = sum(
        part.blank_length * part.blank_width * (part.count - gaps.get(index, 0))
        for index, part in zip(group.parts, parts, strict=True)
    )
    copies = sum(part.count for part in parts)
    left = MOST_WAYS if copies <= MANY_PARTS else FEW_WAYS
    for lots in ways:
        sheets = make_piece_job(job, group.parts, lots).job.sheets
        room = sum(
            sheet.usable_length * sheet.usable_width * (sheet.count or 0) for sheet in sheets
        )
        if room >= needed:
            yield tuple(lots)
            left -= 1
        if not left:
            return


def _lay_out(job: Job, group: Group, lots: tuple[Lot, ...], effort: Effort, *, share: int) -> Way:
    """Return what comes of one way, found with the effort divided by a share, 0 for none."""
    asked: PieceJob = make_piece_job(job, group.parts, lots)
    found = solve_clear(
        asked.job,
        effort=max(1, effort.effort // share) if share else 0,
        seed=effort.seed,
        seconds=effort.left_s(),
    )
    layout = put_together(job, asked, lots, found.layout)
    return Way(
        lots=lots,
        layout=layout,
        missing=measure_gaps(job, layout.unplaced),
        gaps=frozenset((gap.part, gap.count) for gap in layout.unplaced),
        is_interrupted=found.interrupted,
    )


def _work(job: Job, layout: Layout) -> tuple[int, Decimal]:
    """Return how many cuts are longer than the guide and the minutes at home.

    Nothing is counted where there are too many sheets.
    """
    if len(layout.sheets) > MANY_SHEETS:
        return 0, Decimal(0)
    sequences = [order_cuts(job, sheet) for sheet in layout.sheets]
    return (
        sum(len(sequence.too_long) for sequence in sequences),
        sum((minutes(job, sequence) for sequence in sequences), Decimal(0)),
    )
