"""Leftovers of a sheet that is not sound: what is sound of them is cut free and kept."""

from collections.abc import Iterator
from dataclasses import replace

from nesting.job import Job
from nesting.layout import (
    Cut,
    Direction,
    Layout,
    Node,
    Rect,
    RestLeaf,
    replace_leaves,
    split,
    walk,
    whole_of,
)
from nesting.lengths import Length
from nesting.saw import Keep
from nesting.sheets import Sheet
from nesting.zones import find_under, is_sound, is_worth_keeping

MOST_CUTS = 3
"""How often a leftover is cut again for the sake of what is sound of it."""


def mark_leftovers(root: Node, sheet: Sheet, keep: Keep, kerf: Length) -> Node:
    """Return a tree of a sheet in which only sound leftovers are offcuts.

    Args:
        root: What is done to the sheet.
        sheet: The sheet.
        keep: Which leftovers are worth keeping.
        kerf: Width that a cut removes.
    """
    whole = whole_of(sheet)
    leaves = {
        place.path: make_leftover(place.rect, sheet, keep, kerf)
        for place in walk(root, whole)
        if isinstance(place.node, RestLeaf)
    }
    return replace_leaves(root, leaves)


def keep_what_is_sound(job: Job, layout: Layout) -> Layout:
    """Return a layout in which only sound leftovers are offcuts, on every sheet with defects."""
    return replace(
        layout,
        sheets=tuple(
            replace(
                tree,
                root=mark_leftovers(tree.root, job.sheets[tree.sheet], job.keep, job.saw.kerf),
            )
            if job.sheets[tree.sheet].defects
            else tree
            for tree in layout.sheets
        ),
    )


def make_leftover(
    rect: Rect, sheet: Sheet, keep: Keep, kerf: Length, *, cuts: int = MOST_CUTS
) -> Node:
    """Return what becomes of a leftover: it is kept, thrown away, or cut once more.

    It is cut again where a piece worth keeping comes clear of its defects, the largest first.

    Args:
        rect: Where it lies on the sheet.
        sheet: The sheet.
        keep: Which leftovers are worth keeping.
        kerf: Width that a cut removes.
        cuts: How often it may be cut.
    """
    if not is_worth_keeping(rect, sheet, keep):
        return RestLeaf()
    if is_sound(rect, sheet.defects):
        return RestLeaf(is_offcut=True)
    ways = list(_list_ways(rect, sheet, keep, kerf)) if cuts else []
    if not ways:
        return RestLeaf()
    _, direction, at = max(ways, key=lambda way: way[0])
    cut = Cut(direction=direction, at=at, removed=kerf, first=None, second=None)
    first, second = (
        make_leftover(piece, sheet, keep, kerf, cuts=cuts - 1) for piece in split(cut, rect)
    )
    return Cut(direction=direction, at=at, removed=kerf, first=first, second=second)


def _list_ways(
    rect: Rect, sheet: Sheet, keep: Keep, kerf: Length
) -> Iterator[tuple[int, Direction, Length]]:
    """Yield the cuts along a side of a defect that free a sound piece, and the piece's area."""
    for defect in find_under(rect, sheet.defects):
        for direction, low, high, extent in (
            (Direction.CROSSCUT, defect.x - rect.x, defect.x + defect.length - rect.x, rect.length),
            (Direction.RIP, defect.y - rect.y, defect.y + defect.width - rect.y, rect.width),
        ):
            for at, side in ((low, 0), (high - kerf, 1)):
                if not 0 < at < extent - kerf:
                    continue
                cut = Cut(direction=direction, at=at, removed=kerf, first=None, second=None)
                piece = split(cut, rect)[side]
                if is_sound(piece, sheet.defects) and is_worth_keeping(piece, sheet, keep):
                    yield piece.length * piece.width, direction, at
