"""Which real sheet each finished sheet is cut from, where real sheets differ by their defects."""

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from nesting.defects.dodge import dodge, lies_clear
from nesting.defects.leftovers import mark_leftovers
from nesting.job import Job
from nesting.layout import Layout, Node, SheetLayout
from nesting.sheets import Sheet

Alike: TypeAlias = Sheet
"""A sheet without its name, number and defects: what is laid out for one fits all that share it."""

Slot: TypeAlias = tuple[int, int]
"""A real sheet: its kind, and its number among those of its kind."""

MOST_TRIES = 48
"""How often a finished sheet is laid again for one that is not sound."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """Finished sheets on real ones.

    Attributes:
        sheets: Those that keep clear of defects, leftovers judged.
        lost: Those that found no real sheet: their parts have no place.
    """

    sheets: tuple[SheetLayout, ...]
    lost: tuple[SheetLayout, ...]


def take_together(job: Job) -> Job:
    """Return a job in which sheets that differ by defects alone are one kind, the first of them."""
    counts: dict[Alike, int | None] = {}
    for sheet in job.sheets:
        before = counts.get(alike(sheet), 0)
        is_open = before is None or sheet.count is None
        counts[alike(sheet)] = None if is_open else (before or 0) + (sheet.count or 0)
    return replace(
        job,
        sheets=tuple(
            replace(sheet, count=counts.pop(alike(sheet), 0), defects=()) for sheet in job.sheets
        ),
    )


def alike(sheet: Sheet) -> Alike:
    """Return what sheets share that are laid out alike."""
    return replace(sheet, name="", count=None, defects=(), told_from="")


def lay_clear(job: Job, layout: Layout) -> Laid:
    """Return the finished sheets of a job on its real ones, as many of them as can be.

    Args:
        job: The job, each sheet that is not sound a kind of its own.
        layout: A layout of it that knows of no defect, or of the job with these taken together.
    """
    classes: dict[Alike, list[int]] = defaultdict(list)
    for number, tree in enumerate(layout.sheets):
        classes[alike(job.sheets[tree.sheet])].append(number)
    found: dict[int, SheetLayout] = {}
    for shared, numbers in classes.items():
        kinds = [index for index, sheet in enumerate(job.sheets) if alike(sheet) == shared]
        trees = [layout.sheets[number].root for number in numbers]
        for place, kind, root in _match(job, kinds, trees):
            found[numbers[place]] = SheetLayout(sheet=kind, root=root)
    return Laid(
        sheets=tuple(found[number] for number in sorted(found)),
        lost=tuple(tree for number, tree in enumerate(layout.sheets) if number not in found),
    )


def _match(
    job: Job, kinds: Sequence[int], trees: Sequence[Node]
) -> Iterator[tuple[int, int, Node]]:
    """Yield for as many trees as possible its number, its sheet and how it is laid there.

    Unsound sheets that a tree fits as it is are used up first, which spares whole ones; then sound
    sheets; then those on which it has to be laid another way.
    """
    fits: dict[tuple[int, int], tuple[int, Node]] = {}
    for kind in kinds:
        for place, tree in enumerate(trees):
            if not job.sheets[kind].defects:
                fits[place, kind] = (1, tree)
            elif lies_clear(job, job.sheets[kind], tree):
                fits[place, kind] = (0, tree)
    taken = _find_slots(job, kinds, len(trees), fits)
    if len(taken) < len(trees):
        taken = _lay_again(job, kinds, trees, fits)
    for place, kind in sorted((place, kind) for (kind, _), place in taken.items()):
        sheet, root = job.sheets[kind], fits[place, kind][1]
        if sheet.defects:
            root = mark_leftovers(root, sheet, job.keep, job.saw.kerf)
        yield place, kind, root


def _lay_again(
    job: Job,
    kinds: Sequence[int],
    trees: Sequence[Node],
    fits: dict[tuple[int, int], tuple[int, Node]],
) -> Mapping[Slot, int]:
    """Return a matching in which trees are laid again for sheets that are still free.

    Args:
        job: The job.
        kinds: The sheets.
        trees: The trees.
        fits: Rank and tree for every tree and sheet that go together; more are added to it.
    """
    taken = _find_slots(job, kinds, len(trees), fits)
    left = MOST_TRIES
    for kind in kinds:
        if (kind, 0) in taken or not _count(job.sheets[kind], 1):
            continue
        for place, tree in enumerate(trees):
            if left == 0 or len(taken) == len(trees):
                return taken
            left -= 1
            root = dodge(job, job.sheets[kind], tree)
            if root is not None:
                fits[place, kind] = (2, root)
                more = _find_slots(job, kinds, len(trees), fits)
                if len(more) > len(taken):
                    taken = more
                    break
    return taken


def _find_slots(
    job: Job,
    kinds: Sequence[int],
    trees: int,
    fits: Mapping[tuple[int, int], tuple[int, Node]],
) -> Mapping[Slot, int]:
    """Return the largest matching of trees to sheets, those of the lowest rank first."""
    slots = [(kind, copy) for kind in kinds for copy in range(_count(job.sheets[kind], trees))]
    return _find_largest(
        [
            sorted(
                (slot for slot in slots if (place, slot[0]) in fits),
                key=lambda slot: (fits[place, slot[0]][0], slot),
            )
            for place in range(trees)
        ]
    )


def _count(sheet: Sheet, most: int) -> int:
    return most if sheet.count is None else min(sheet.count, most)


def _find_largest(wanted: Sequence[Sequence[Slot]]) -> dict[Slot, int]:
    """Return the largest matching of trees to slots, by augmenting paths.

    Args:
        wanted: For every tree the slots that will do, the best first.

    Returns:
        For every slot that is taken its tree.

    References:
        Kuhn (1955), Naval Research Logistics Quarterly 2, 83-97, and Berge's theorem; from memory.
    """
    taken: dict[Slot, int] = {}
    for tree in range(len(wanted)):
        # Breadth first, so that no chain of exchanges is longer than it has to be.
        came_from: dict[Slot, tuple[int, Slot | None]] = {}
        waiting: list[tuple[int, Slot | None]] = [(tree, None)]
        free: Slot | None = None
        while waiting and free is None:
            here, through = waiting.pop(0)
            for slot in wanted[here]:
                if slot in came_from:
                    continue
                came_from[slot] = (here, through)
                if slot not in taken:
                    free = slot
                    break
                waiting.append((taken[slot], slot))
        while free is not None:
            here, through = came_from[free]
            taken[free] = here
            free = through
    return taken
