"""The cuts of one sheet as bare tasks: which must come before which, and which share a setting.

The order search looks at nothing else, so it works on small integers.
"""

from dataclasses import dataclass
from typing import TypeAlias

from nesting.cut_sequence.sequence import Path
from nesting.layout import By, Cut, Direction, Place, SheetLayout, walk, whole_of
from nesting.lengths import Length
from nesting.sheets import Sheet

Setting: TypeAlias = tuple[By, Direction, bool, Length]


@dataclass(frozen=True, slots=True, kw_only=True)
class Tasks:
    """The cuts of one sheet, numbered from 0 with every parent before its children.

    Attributes:
        places: Where each cut is in the tree, and the piece it crosses.
        children: For every cut the cuts of the two pieces that it makes.
        settings: For every cut the number of its setting, from 0; cuts that can share a setting
            have the same.
        is_rip: For every setting whether it is a rip.
        forced: How many of the first tasks are done first, in their order: the yard's cuts, then
            the trims of the whole sheet.
    """

    places: tuple[Place, ...]
    children: tuple[tuple[int, ...], ...]
    settings: tuple[int, ...]
    is_rip: tuple[bool, ...]
    forced: int


def list_tasks(sheet: Sheet, layout: SheetLayout) -> Tasks:
    """Return the cuts of a sheet as tasks.

    The yard's cuts come first, in the order of the tree; where there are none, the trims of the
    whole sheet do: one straight edge, then the square corner.
    """
    whole = whole_of(sheet)
    cuts = [
        (place, place.node) for place in walk(layout.root, whole) if isinstance(place.node, Cut)
    ]
    ranks = _ranks(cuts)
    cuts.sort(key=lambda item: ranks[item[0].path])
    numbers = {place.path: number for number, (place, _) in enumerate(cuts)}
    kinds: dict[Setting, int] = {}
    for _, cut in sorted(cuts, key=lambda item: _size_order(item[1])):
        kinds.setdefault(setting_of(cut), len(kinds))
    return Tasks(
        places=tuple(place for place, _ in cuts),
        children=tuple(
            tuple(numbers[(*place.path, side)] for side in (0, 1) if (*place.path, side) in numbers)
            for place, _ in cuts
        ),
        settings=tuple(kinds[setting_of(cut)] for _, cut in cuts),
        is_rip=tuple(direction is Direction.RIP for _, direction, _, _ in kinds),
        forced=sum(rank < 2 for rank in ranks.values()),  # noqa: PLR2004 - the ranks of _ranks
    )


def keep_size(cut: Cut) -> Length:
    """Return the distance from the edge measured from to the fresh edge."""
    return cut.at + cut.removed if cut.is_trim else cut.at


def setting_of(cut: Cut) -> Setting:
    """Return what two cuts must agree in to share a setting of the guide."""
    return (cut.by, cut.direction, cut.is_trim, keep_size(cut))


def _ranks(cuts: list[tuple[Place, Cut]]) -> dict[Path, int]:
    """Return for every cut 0 for the yard's, 1 for a trim of the whole sheet, 2 for the rest."""
    ranks: dict[Path, int] = {}
    for place, cut in cuts:
        before = ranks[place.path[:-1]] if place.path else None
        if cut.by is By.YARD and before in (None, 0):
            ranks[place.path] = 0
        elif cut.is_trim and before in (None, 1):
            ranks[place.path] = 1
        else:
            ranks[place.path] = 2
    return ranks


def _size_order(cut: Cut) -> tuple[bool, bool, Length]:
    """Order settings by yard before home, rip before crosscut, large before small."""
    return (cut.by is By.HOME, cut.direction is Direction.CROSSCUT, -keep_size(cut))
