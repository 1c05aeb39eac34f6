"""The front door of planning round defects: first as if all sheets were sound, then round them.

A layout for sound sheets costs no more than any for the real ones, and its bound holds for them
too. Where its finished sheets can be laid clear of all defects, it is as cheap as it can be.
Otherwise the unsound sheets are taken apart into sound pieces, as a person would do who cuts the
defect out first, and the search is asked again on these.
"""

from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal

from nesting.defects.matching import lay_clear, take_together
from nesting.defects.pieces_search import find_on_pieces
from nesting.defects.words import say_dearer, say_no_room
from nesting.job import Job
from nesting.layout import Layout, PartLeaf, SheetLayout, Unplaced, list_parts, map_leaves
from nesting.search.effort import Effort, begin
from nesting.search.result import GroupResult, Progress, Result
from nesting.solve import DEFAULT_EFFORT, count_again, measure_gaps, solve
from nesting.strips import bind_strips, loosen


def solve_clear(
    job: Job,
    *,
    effort: int = DEFAULT_EFFORT,
    seed: int = 1,
    seconds: float | None = None,
    progress: Callable[[Progress], None] | None = None,
) -> Result:
    """Return the best layout found in which no part lies on a defect that it must not lie on.

    Without defects this is `nesting.solve.solve`, and so are its arguments. With them all searches
    together take at most twice as long.
    """
    if all(not sheet.defects or sheet.count == 0 for sheet in job.sheets):
        return solve(job, effort=effort, seed=seed, seconds=seconds, progress=progress)
    if bound := bind_strips(job):
        found = solve_clear(bound.job, effort=effort, seed=seed, seconds=seconds, progress=progress)
        return replace(found, layout=loosen(bound, found.layout))
    how = begin(effort, seed, seconds)
    sound = solve(take_together(job), effort=effort, seed=seed, seconds=seconds, progress=progress)
    laid = lay_clear(job, sound.layout)
    found = replace(sound, layout=replace(sound.layout, sheets=laid.sheets))
    for known in sound.groups:
        lost = [tree for tree in laid.lost if _is_of(job, tree, known)]
        if lost and not found.interrupted:
            found = _take_apart(job, sound, found, known, how)
    return _settle(job, sound, found)


def _is_of(job: Job, tree: SheetLayout, known: GroupResult) -> bool:
    sheet = job.sheets[tree.sheet]
    return (sheet.material, sheet.thickness) == (known.material, known.thickness)


def _take_apart(
    job: Job, sound: Result, found: Result, known: GroupResult, effort: Effort
) -> Result:
    """Return a result in which one material is laid out on pieces of its unsound sheets."""
    group = (known.material, known.thickness)
    kept = [
        index for index, part in enumerate(job.parts) if (part.material, part.thickness) == group
    ]
    few = replace(job, parts=tuple(job.parts[index] for index in kept), cabinets=())
    unsound = [
        index
        for index, sheet in enumerate(job.sheets)
        if (sheet.material, sheet.thickness) == group and sheet.defects and sheet.count != 0
    ]
    least_missing = measure_gaps(job, (gap for gap in sound.layout.unplaced if gap.part in kept))
    pieced = find_on_pieces(few, unsound, (least_missing, known.cost), effort)
    sheets = (
        replace(tree, root=map_leaves(tree.root, lambda leaf: replace(leaf, part=kept[leaf.part])))
        for tree in pieced.sheets
    )
    others = (tree for tree in found.layout.sheets if not _is_of(job, tree, known))
    notes = list(found.layout.notes)
    if not pieced.missing and pieced.cost > known.cost:
        notes.append(say_dearer(known, len(pieced.sheets), pieced.cost))
    return replace(
        found,
        layout=replace(found.layout, sheets=(*others, *sheets), notes=tuple(notes)),
        iterations=found.iterations + pieced.iterations,
        interrupted=found.interrupted or pieced.is_interrupted,
    )


def _settle(job: Job, sound: Result, found: Result) -> Result:
    """Return a result with its copies numbered, its gaps said, and its sheets counted again."""
    layout = _number_copies(found.layout)
    placed = Counter(leaf.part for tree in layout.sheets for leaf in list_parts(tree.root))
    known = {gap.part: gap for gap in sound.layout.unplaced}
    unplaced = []
    for index, part in enumerate(job.parts):
        missing = part.count - placed[index]
        if missing and index in known and known[index].count == missing:
            unplaced.append(known[index])
        elif missing:
            reason = say_no_room(job, part)
            unplaced.append(Unplaced(part=index, count=missing, reason=reason))
    layout = replace(layout, unplaced=tuple(unplaced))
    groups = tuple(
        _without_bound(group) if _has_more_gaps(job, sound.layout, layout, group) else group
        for group in sound.groups
    )
    groups = count_again(job, layout, groups)
    return replace(
        found,
        layout=layout,
        cost=sum((group.cost for group in groups), Decimal(0)),
        bound=sum((group.cost_bound for group in groups), Decimal(0)),
        groups=groups,
    )


def _number_copies(layout: Layout) -> Layout:
    """Return a layout whose copies are numbered in the order of its sheets."""
    handed: Counter[int] = Counter()

    def number(leaf: PartLeaf) -> PartLeaf:
        handed[leaf.part] += 1
        return replace(leaf, copy=handed[leaf.part] - 1)

    return replace(
        layout,
        sheets=tuple(replace(tree, root=map_leaves(tree.root, number)) for tree in layout.sheets),
    )


def _has_more_gaps(job: Job, before: Layout, after: Layout, group: GroupResult) -> bool:
    """Return whether parts of a material have no place that had one on sound sheets."""

    def gaps(layout: Layout) -> set[tuple[int, int]]:
        return {
            (gap.part, gap.count)
            for gap in layout.unplaced
            if (job.parts[gap.part].material, job.parts[gap.part].thickness)
            == (group.material, group.thickness)
        }

    return gaps(before) != gaps(after)


def _without_bound(group: GroupResult) -> GroupResult:
    """Return what is known of a material of which fewer parts are placed than the bound is for."""
    return replace(group, sheet_bound=0, cost_bound=Decimal(0))
