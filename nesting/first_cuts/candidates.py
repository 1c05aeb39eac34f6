"""The splits that are worth trying for one kind of sheet: few cuts, crosswise first."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import partial
from itertools import islice

from nesting.first_cuts.needs import gets_home
from nesting.first_cuts.rows import RowSide, list_rows, list_sums
from nesting.first_cuts.split import Split, make_row, make_split, whole_sheet
from nesting.job import Job
from nesting.layout import Direction, Node, RestLeaf
from nesting.lengths import Length
from nesting.parts import Grain, Part
from nesting.sheets import Sheet, SheetGrain
from nesting.yard import Yard

MOST_ROWS = 16
MOST_RIPS = 2
MOST_SPLITS = 24
ACROSS = {True: Direction.CROSSCUT, False: Direction.RIP}


def list_splits(job: Job, sheet: Sheet, parts: Iterable[Part]) -> tuple[Split, ...]:
    """Return the splits to try, fewest cuts first, then the least waste by a rough look.

    Sheets that get home whole are not split. Otherwise cuts across the longer side are tried
    first; pieces that are then still too wide are divided once more along it. Every piece gets
    home, even if the yard cuts it too large by `Yard.rough`.

    Args:
        job: The job; it has a yard.
        sheet: A kind of sheet that is bought.
        parts: The parts that may come from it.
    """
    yard = job.yard
    assert yard is not None, "splits need a yard"
    if gets_home(job, sheet, sheet.length, sheet.width):
        return (whole_sheet(sheet),)
    found: list[Split] = []
    sums = _list_part_sums(job, sheet, parts)
    fewest = None
    for crosscuts in range(yard.max_cuts + 1):
        for root, cuts in _list_roots(job, sheet, yard, sums, crosscuts):
            if cuts <= yard.max_cuts:
                found.append(make_split(sheet, root, yard, job.saw.kerf))
        if found and fewest is None:
            fewest = crosscuts
        if fewest is not None and crosscuts > fewest:
            break
    found.sort(key=lambda split: split.cuts)
    return tuple(found[:MOST_SPLITS])


def _list_part_sums(
    job: Job, sheet: Sheet, parts: Iterable[Part]
) -> tuple[tuple[Length, ...], tuple[Length, ...]]:
    """Return what rows of parts take up along x and along y."""
    along_x: list[Length] = []
    along_y: list[Length] = []
    for part in parts:
        sides = (part.blank_length, part.blank_width)
        for is_turned in (False, True):
            if (
                part.grain is Grain.ANY
                or sheet.grain is SheetGrain.NONE
                or (
                    ((part.grain is Grain.LENGTH) is (sheet.grain is SheetGrain.WIDTH)) is is_turned
                )
            ):
                along_x.append(sides[is_turned])
                along_y.append(sides[not is_turned])
    kerf = job.saw.kerf
    return (
        list_sums(along_x, kerf, sheet.usable_length),
        list_sums(along_y, kerf, sheet.usable_width),
    )


def _list_roots(
    job: Job,
    sheet: Sheet,
    yard: Yard,
    sums: tuple[tuple[Length, ...], tuple[Length, ...]],
    crosscuts: int,
) -> Iterator[tuple[Node, int]]:
    """Yield trees with a number of cuts across the longer side, and how many cuts each has."""
    is_x = sheet.length >= sheet.width
    long, short = _make_sides(sheet, yard, sums, job.saw.kerf)

    def goes(extent: Length, across: Length) -> bool:
        return gets_home(job, sheet, *((extent, across) if is_x else (across, extent)))

    # A piece that is too wide as it is may still be divided along.
    least = max(yard.min_piece, 1) if crosscuts < yard.max_cuts else short.extent
    long = replace(long, is_good=lambda extent: goes(extent, least))
    whole = 0
    for row in islice(list_rows(long, crosscuts), 4 * MOST_ROWS):
        last = long.extent - sum(row) - crosscuts * yard.kerf
        extents = [*(size + yard.rough for size in row), last + crosscuts * yard.rough]
        wide = [not goes(extent, short.extent) for extent in extents]
        if not any(wide):
            whole += 1
            if whole <= MOST_ROWS:
                leaves = [RestLeaf()] * (crosscuts + 1)
                yield make_row(ACROSS[is_x], row, leaves, yard), crosscuts
            continue
        widest = max(extent for extent, is_wide in zip(extents, wide, strict=True) if is_wide)
        most = (yard.max_cuts - crosscuts) // sum(wide)
        for rip in _list_rips(replace(short, is_good=partial(goes, widest)), most):
            strips = make_row(ACROSS[not is_x], rip, [RestLeaf()] * (len(rip) + 1), yard)
            nodes: list[Node] = [strips if is_wide else RestLeaf() for is_wide in wide]
            yield make_row(ACROSS[is_x], row, nodes, yard), crosscuts + len(rip) * sum(wide)


def _make_sides(
    sheet: Sheet,
    yard: Yard,
    sums: tuple[tuple[Length, ...], tuple[Length, ...]],
    kerf: Length,
) -> tuple[RowSide, RowSide]:
    """Return the longer and the shorter side of a sheet, where every piece is good."""
    trim = sheet.trim
    along_x, along_y = (
        RowSide(
            extent=extent,
            low=low,
            high=high,
            sums=rows,
            yard=yard,
            kerf=kerf,
            is_good=lambda _: True,
        )
        for extent, low, high, rows in (
            (sheet.length, trim.left, trim.right, sums[0]),
            (sheet.width, trim.bottom, trim.top, sums[1]),
        )
    )
    return (along_x, along_y) if sheet.length >= sheet.width else (along_y, along_x)


def _list_rips(side: RowSide, most: int) -> list[tuple[Length, ...]]:
    """Return the best ways to divide a piece along, with the fewest cuts that do."""
    for rips in range(1, most + 1):
        if found := list(islice(list_rows(side, rips), MOST_RIPS)):
            return found
    return []
