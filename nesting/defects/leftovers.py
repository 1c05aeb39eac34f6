"""Leftovers of a sheet that is not sound: what is sound of them is cut free and kept."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Final, TypeAlias

from nesting.job import Job
from nesting.layout import (
    By,
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

Path: TypeAlias = tuple[int, ...]

Straight: TypeAlias = frozenset[Direction]
"""Directions of the cuts that can be measured from a low edge: it is cut at home, or not raw."""

BOTH: Final[Straight] = frozenset(Direction)

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
    straight = _find_straight(root, sheet)
    leaves = {
        place.path: make_leftover(place.rect, sheet, keep, kerf, straight=straight[place.path])
        for place in walk(root, whole)
        if isinstance(place.node, RestLeaf)
    }
    return replace_leaves(root, leaves)


def _find_straight(root: Node, sheet: Sheet) -> dict[Path, Straight]:
    """Return for every piece of a tree which of its low edges a cut can be measured from."""
    trims = ((Direction.CROSSCUT, sheet.trim.left), (Direction.RIP, sheet.trim.bottom))
    found: dict[Path, Straight] = {(): frozenset(way for way, trim in trims if not trim)}
    for place in walk(root, whole_of(sheet)):
        if isinstance(place.node, Cut):
            way, here = place.node.direction, found[place.path]
            found[*place.path, 0] = here
            found[*place.path, 1] = here - {way} if place.node.by is By.YARD else here | {way}
    return found


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
    rect: Rect,
    sheet: Sheet,
    keep: Keep,
    kerf: Length,
    *,
    straight: Straight = BOTH,
    cuts: int = MOST_CUTS,
) -> Node:
    """Return what becomes of a leftover: it is kept, thrown away, or cut once more.

    It is cut again where a piece worth keeping comes clear of its defects, the largest first.

    Args:
        rect: Where it lies on the sheet.
        sheet: The sheet.
        keep: Which leftovers are worth keeping.
        kerf: Width that a cut removes.
        straight: Directions of the cuts for which it has a straight low edge to measure from.
        cuts: How often it may be cut.
    """
    if not is_worth_keeping(rect, sheet, keep):
        return RestLeaf()
    if is_sound(rect, sheet.defects):
        return RestLeaf(is_offcut=True)
    ways = [way for way in _list_ways(rect, sheet, keep, kerf) if cuts and way[1] in straight]
    if not ways:
        return RestLeaf()
    _, direction, at = max(ways, key=lambda way: way[0])
    cut = Cut(direction=direction, at=at, removed=kerf, first=None, second=None)
    first, second = (
        make_leftover(piece, sheet, keep, kerf, straight=edges, cuts=cuts - 1)
        for piece, edges in zip(split(cut, rect), (straight, straight | {direction}), strict=True)
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
