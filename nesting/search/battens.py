"""Battens: cutting stock in one dimension, proven cheapest for jobs of home size.

Every way to fill a stick that leaves no room for another piece is a pattern. A job of home size
has few of them, so the patterns are listed in full and a covering model over them is solved
exactly. Kerf: with every piece and the stick lengthened by one kerf, k pieces need k - 1 cuts
and the rest is cutting without kerf.

References:
    Kantorovich (1960), Management Science 6(4), 366-422, for the model;
    Gilmore and Gomory (1961), Operations Research 9(6), 849-859, for patterns.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from itertools import islice

import highspy
import numpy as np

from nesting.lengths import Length
from nesting.search.solver import make_solver
from nesting.timber import Timber

MOST_PATTERNS = 60_000  # beyond this the list is cut off and nothing is called proven


@dataclass(frozen=True, slots=True, kw_only=True)
class Stick:
    """One stick, cut up.

    Attributes:
        timber: Index of its stock.
        lengths: The pieces cut from it, longest first.
        left: What is left over at the end, 0 or more.
    """

    timber: int
    lengths: tuple[Length, ...]
    left: Length


@dataclass(frozen=True, slots=True, kw_only=True)
class BattenCutting:
    """How the battens of one section are cut.

    Attributes:
        sticks: The sticks, equal ones together.
        cost: Price of all of them.
        is_proven: True where no other way costs less, nor as much with fewer sticks.
        unplaced: Pieces that are longer than every stick, or for which the stock is too small.
    """

    sticks: tuple[Stick, ...]
    cost: Decimal
    is_proven: bool
    unplaced: tuple[Length, ...] = ()


@dataclass(frozen=True, slots=True)
class _Pattern:
    timber: int
    counts: tuple[int, ...]


def cut_battens(
    pieces: tuple[Length, ...], stock: tuple[Timber, ...], kerf: Length
) -> BattenCutting:
    """Return the cheapest way to cut pieces from stock, with the fewest sticks at that price.

    Args:
        pieces: Finished lengths, one entry a piece. All of one section.
        stock: The lengths that can be had, all of that section.
        kerf: Width that a cut removes.

    Returns:
        The cutting; proven unless there are too many patterns or the solver ran out of time.
    """
    longest = max((timber.usable for timber in stock), default=0)
    demand = Counter(length for length in pieces if length <= longest)
    too_long = tuple(sorted((length for length in pieces if length > longest), reverse=True))
    lengths = sorted(demand, reverse=True)
    listed = list(islice(_patterns(lengths, demand, stock, kerf), MOST_PATTERNS + 1))
    patterns = listed[:MOST_PATTERNS]
    if not lengths:
        return BattenCutting(sticks=(), cost=Decimal(0), is_proven=True, unplaced=too_long)
    uses, missing, is_optimal = _fewest(lengths, demand, stock, patterns)
    sticks = _sticks(lengths, demand - missing, stock, patterns, uses, kerf)
    return BattenCutting(
        sticks=sticks,
        cost=sum((stock[stick.timber].price for stick in sticks), Decimal(0)),
        is_proven=is_optimal and len(listed) <= MOST_PATTERNS,
        unplaced=too_long + tuple(sorted(missing.elements(), reverse=True)),
    )


def _patterns(
    lengths: list[Length], demand: Counter[Length], stock: tuple[Timber, ...], kerf: Length
) -> Iterator[_Pattern]:
    """Yield the maximal patterns of every stock length, fullest first in each."""
    for index, timber in enumerate(stock):
        for counts in _fillings(lengths, demand, timber.usable + kerf, kerf):
            yield _Pattern(index, counts)


def _fillings(
    lengths: list[Length], demand: Counter[Length], room: Length, kerf: Length
) -> Iterator[tuple[int, ...]]:
    """Yield the count vectors to which no further piece can be added.

    Depth first over the lengths, longest first, as many as fit first; iterative, since a stick
    may hold a hundred pieces of as many lengths.
    """
    waiting: list[tuple[tuple[int, ...], Length]] = [((), room)]
    while waiting:
        counts, free = waiting.pop()
        at = len(counts)
        if at == len(lengths):
            is_maximal = all(
                free < length + kerf or counts[kind] == demand[length]
                for kind, length in enumerate(lengths)
            )
            if is_maximal and any(counts):
                yield counts
            continue
        most = min(demand[lengths[at]], free // (lengths[at] + kerf))
        waiting += [
            ((*counts, number), free - number * (lengths[at] + kerf)) for number in range(most + 1)
        ]


def _fewest(
    lengths: list[Length],
    demand: Counter[Length],
    stock: tuple[Timber, ...],
    patterns: list[_Pattern],
) -> tuple[list[int], Counter[Length], bool]:
    """Choose how often to use each pattern.

    Covering rather than exact: surplus pieces are simply not cut. A column per length stands
    for pieces that cannot be had because counts are limited; it costs more than any stick.

    Returns:
        Uses of each pattern, the pieces missing, and whether this is proven best.
    """
    prices = [int(timber.price.scaleb(4)) for timber in stock]  # price before number of sticks
    sticks = sum(demand.values()) + 1
    costs = [prices[pattern.timber] * sticks + 1 for pattern in patterns]
    dear = 2 * max(costs) + 1
    solver = make_solver()
    scale = max(costs)
    solver.setOptionValue("mip_abs_gap", 0.5 / scale)
    for cost in costs:
        solver.addVar(0, float(sticks))
        solver.changeColCost(solver.getNumCol() - 1, cost / scale)
    for length in lengths:
        solver.addVar(0, float(demand[length]))
        solver.changeColCost(solver.getNumCol() - 1, dear / scale)
    columns = solver.getNumCol()
    solver.changeColsIntegrality(
        columns,
        np.arange(columns, dtype=np.int32),
        np.full(columns, int(highspy.HighsVarType.kInteger), dtype=np.uint8),
    )
    _add_rows(solver, lengths, demand, stock, patterns)
    solver.run()
    values = [round(value) for value in solver.getSolution().col_value]
    missing = Counter({length: values[len(patterns) + kind] for kind, length in enumerate(lengths)})
    is_optimal = solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
    return values[: len(patterns)], +missing, is_optimal


def _add_rows(
    solver: highspy.Highs,
    lengths: list[Length],
    demand: Counter[Length],
    stock: tuple[Timber, ...],
    patterns: list[_Pattern],
) -> None:
    for kind, length in enumerate(lengths):
        used = [(index, p.counts[kind]) for index, p in enumerate(patterns) if p.counts[kind]]
        columns = [index for index, _ in used] + [len(patterns) + kind]
        values = [float(count) for _, count in used] + [1.0]
        _add_row(solver, float(demand[length]), highspy.kHighsInf, columns, values)
    for index, timber in enumerate(stock):
        if timber.count is not None:
            columns = [at for at, pattern in enumerate(patterns) if pattern.timber == index]
            _add_row(solver, 0.0, float(timber.count), columns, [1.0] * len(columns))


def _add_row(
    solver: highspy.Highs, least: float, most: float, columns: list[int], values: list[float]
) -> None:
    solver.addRow(
        least, most, len(columns), np.array(columns, dtype=np.int32), np.array(values, dtype=float)
    )


def _sticks(
    lengths: list[Length],
    demand: Counter[Length],
    stock: tuple[Timber, ...],
    patterns: list[_Pattern],
    uses: list[int],
    kerf: Length,
) -> tuple[Stick, ...]:
    """Turn the chosen patterns into sticks, cutting no piece that is not needed."""
    wanted = Counter(demand)
    sticks = []
    for pattern, use in zip(patterns, uses, strict=True):
        for _ in range(use):
            cut = []
            for kind, length in enumerate(lengths):
                number = min(pattern.counts[kind], wanted[length])
                wanted[length] -= number
                cut += [length] * number
            if cut:
                room = stock[pattern.timber].usable + kerf - sum(cut) - kerf * len(cut)
                sticks.append(
                    Stick(timber=pattern.timber, lengths=tuple(cut), left=max(room - kerf, 0))
                )
    return tuple(sorted(sticks, key=lambda stick: (stick.timber, [-one for one in stick.lengths])))
