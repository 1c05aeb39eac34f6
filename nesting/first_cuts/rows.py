"""Where a row of yard cuts may lie along one side of a sheet.

Positions are suggested by the parts: a piece is worth cutting where a row of parts just fits it.
Every size is a whole number of the yard's steps (1 mm or 1/8 in), so that what stands on the
yard's page is what is planned.
"""

from bisect import bisect_right
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations_with_replacement, product

from nesting.first_cuts.split import clean_up
from nesting.lengths import Length, Unit, inch, mm
from nesting.yard import Yard

YARD_STEP = {Unit.MM: mm(1), Unit.INCH: inch("1/8")}
"""What the yard's sizes are whole numbers of."""

MOST_IN_ROW = 4
MOST_SUMS = 3000
MOST_SIZES = 30
"""How many sizes of a piece are combined with each other."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowSide:
    """One side of a sheet that a row of yard cuts goes along.

    Attributes:
        extent: The side.
        low: Trim at its low end.
        high: Trim at its high end.
        sums: What rows of parts take up along it, kerfs between them, rising.
        yard: The yard.
        kerf: The kerf at home.
        is_good: Whether a piece may have this extent at most.
    """

    extent: Length
    low: Length
    high: Length
    sums: tuple[Length, ...]
    yard: Yard
    kerf: Length
    is_good: Callable[[Length], bool]


def list_sums(sizes: Iterable[Length], kerf: Length, most: Length) -> tuple[Length, ...]:
    """Return what up to a few sizes take up in a row, none longer than a length, rising."""
    small = sorted({size for size in sizes if size <= most}, reverse=True)
    found: set[Length] = set()
    for number in range(1, MOST_IN_ROW + 1):
        for row in combinations_with_replacement(small, number):
            total = sum(row) + kerf * (number - 1)
            if total <= most:
                found.add(total)
            if len(found) >= MOST_SUMS:
                return tuple(sorted(found))
    return tuple(sorted(found))


def list_rows(side: RowSide, cuts: int) -> Iterator[tuple[Length, ...]]:
    """Yield the sizes of all pieces but the last, the least waste first.

    Every piece has at least the yard's smallest size and is good even if it comes out too large.
    """
    ranked = sorted({row for row in _list_all(side, cuts) if _is_allowed(side, row)})
    ranked.sort(key=lambda row: _waste(side, row))
    yield from ranked


def _list_all(side: RowSide, cuts: int) -> Iterator[tuple[Length, ...]]:
    if cuts == 0:
        yield ()
        return
    yard, step = side.yard, YARD_STEP[side.yard.unit]
    clean = clean_up(yard, side.kerf)
    first = {_round_up(side.low + total + clean + yard.rough, step) for total in side.sums}
    middle = {_round_up(clean + total + clean + yard.rough, step) for total in side.sums}
    if cuts == 1:
        last = (clean + total + side.high + yard.rough for total in side.sums)
        rest = {(side.extent - yard.kerf - size) // step * step for size in last}
        half = (side.extent - yard.kerf) // 2 // step * step
        yield from ((size,) for size in first | rest | {half})
        return
    equal = (side.extent - cuts * yard.kerf) // (cuts + 1) // step * step
    pools = [_pick(side, first | {equal})]
    pools += [_pick(side, middle | {equal})] * (cuts - 1)
    if len(pools[0]) ** cuts > MOST_SIZES**3:
        pools = [pool[:8] for pool in pools]
    yield from product(*pools)


def _pick(side: RowSide, sizes: Iterable[Length]) -> list[Length]:
    """Return the largest sizes that are good, largest first."""
    good = [
        size
        for size in sorted(sizes, reverse=True)
        if size >= side.yard.min_piece and side.is_good(size + side.yard.rough)
    ]
    return good[:MOST_SIZES]


def _is_allowed(side: RowSide, row: Sequence[Length]) -> bool:
    rough = side.yard.rough
    last = _last(side, row)
    return (
        min((*row, last)) >= max(side.yard.min_piece, 1)
        and all(side.is_good(size + rough) for size in row)
        and side.is_good(last + len(row) * rough)
    )


def _last(side: RowSide, row: Sequence[Length]) -> Length:
    return side.extent - sum(row) - len(row) * side.yard.kerf


def _waste(side: RowSide, row: Sequence[Length]) -> Length:
    """Return how much of the side no row of parts fills."""
    clean, rough = clean_up(side.yard, side.kerf), side.yard.rough
    lows = [side.low, *[clean] * len(row)]
    usable = [size - low - clean - rough for low, size in zip(lows, row, strict=False)]
    usable.append(_last(side, row) - clean - side.high - len(row) * rough)
    return sum(room - _fill(side.sums, room) for room in usable)


def _fill(sums: Sequence[Length], room: Length) -> Length:
    """Return the longest row of parts that fits, 0 where none does."""
    place = bisect_right(sums, room)
    return sums[place - 1] if place else 0


def _round_up(length: Length, step: Length) -> Length:
    return -(-length // step) * step
