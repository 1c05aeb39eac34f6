"""All trees of cuts of a tiny job, for comparing the search with the truth.

Written apart from the search: every way to divide a piece and the parts to be cut from it is tried,
with every first piece as large as some of its parts in a row.
"""

from collections.abc import Iterator
from itertools import combinations

from nesting.job import Job
from nesting.layout import Cut, Direction, Node, PartLeaf, RestLeaf, SheetLayout
from nesting.lengths import Length
from nesting.parts import Grain, Part

Copies = tuple[int, ...]


def list_layouts(job: Job, sheet: int = 0) -> Iterator[SheetLayout]:
    """Yield every layout of one sheet without trims that holds one copy of every part."""
    stock = job.sheets[sheet]
    for root in _list_nodes(job, stock.length, stock.width, tuple(range(len(job.parts)))):
        yield SheetLayout(sheet=sheet, root=root)


def _list_nodes(job: Job, length: Length, width: Length, parts: Copies) -> Iterator[Node]:
    if not parts:
        sides = sorted((length, width))
        yield RestLeaf(is_offcut=sides[0] >= job.keep.width and sides[1] >= job.keep.length)
        return
    if not all(
        any(x <= length and y <= width for x, y in _list_ways(job.parts[part])) for part in parts
    ):
        return
    if len(parts) == 1:
        part = job.parts[parts[0]]
        for way, turned in zip(_list_ways(part), (False, True), strict=False):
            if way == (length, width):
                yield PartLeaf(part=parts[0], copy=0, turned=turned)
                return
    for direction in Direction:
        extent = width if direction is Direction.RIP else length
        for first in _list_subsets(parts):
            second = tuple(part for part in parts if part not in first)
            for at in sorted(_list_sizes(job, first, direction)):
                if at < extent:
                    yield from _list_cuts(job, (length, width), direction, at, (first, second))


def _list_cuts(
    job: Job,
    sides: tuple[Length, Length],
    direction: Direction,
    at: Length,
    parts: tuple[Copies, Copies],
) -> Iterator[Node]:
    length, width = sides
    extent = width if direction is Direction.RIP else length
    removed = min(job.saw.kerf, extent - at)
    beyond = extent - at - removed
    if beyond == 0 and parts[1]:
        return
    one = (length, at) if direction is Direction.RIP else (at, width)
    two = (length, beyond) if direction is Direction.RIP else (beyond, width)
    for first in _list_nodes(job, *one, parts[0]):
        for second in _list_nodes(job, *two, parts[1]) if beyond else [None]:
            yield Cut(direction=direction, at=at, removed=removed, first=first, second=second)


def _list_subsets(parts: Copies) -> Iterator[Copies]:
    """Yield every set of some or all of the parts."""
    for count in range(1, len(parts) + 1):
        yield from combinations(parts, count)


def _list_sizes(job: Job, parts: Copies, direction: Direction) -> set[Length]:
    """Return every extent that some of the parts have in a row, in any way they may lie."""
    sizes = {0}
    for part in parts:
        ways = _list_ways(job.parts[part])
        sides = [length if direction is Direction.CROSSCUT else width for length, width in ways]
        sizes |= {size + side + job.saw.kerf for size in sizes for side in sides}
    return {size - job.saw.kerf for size in sizes if size}


def _list_ways(part: Part) -> list[tuple[Length, Length]]:
    """Return the extents of a part along x and y, as it lies plainly and turned."""
    sides = (part.length, part.width)
    return [sides] if part.grain is Grain.LENGTH else [sides, sides[::-1]]
