"""Planning with a yard and a car: the plan without them first, then the same with first cuts.

Where every sheet bought gets home whole, that plan stands. Otherwise the sheets are split: for
some ways of splitting them, the job is solved on the pieces, a bought sheet giving all of its
pieces at once. Sheets and yard cuts are paid for first, minutes at home count second.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from nesting.defects import solve_clear
from nesting.first_cuts.candidates import list_splits
from nesting.first_cuts.needs import is_handled_whole
from nesting.first_cuts.split import Split
from nesting.first_cuts.ways import Group, Way, find_way
from nesting.first_cuts.words import say_dearer, say_not_found, say_stays_outside, say_too_large
from nesting.job import Job
from nesting.layout import Layout, SheetLayout, Unplaced
from nesting.parts import Part
from nesting.search.effort import Effort, begin
from nesting.search.grid import fits
from nesting.search.result import GroupResult, Progress, Result
from nesting.solve import DEFAULT_EFFORT
from nesting.strips import bind_strips, loosen


def solve_with_yard(
    job: Job,
    *,
    effort: int = DEFAULT_EFFORT,
    seed: int = 1,
    seconds: float | None = None,
    progress: Callable[[Progress], None] | None = None,
) -> Result:
    """Return the best layout found in which what is bought gets home.

    With `job.yard` the sheets bought are split by the yard's cuts, which come first in their
    trees. With a car and no yard, it is said which sheets do not go in. Without either this is
    `nesting.solve.solve`. What the person must be told stands in `Layout.notes`. The cost is that
    of the sheets; the yard's cuts are paid for besides.

    Args:
        job: Parts, sheets and saw, and a yard or a car or both.
        effort: As for `solve`; all searches together take a few times as long.
        seed: As there.
        seconds: Cap on the time of all searches together; None for none.
        progress: Told how far the first search is.
    """
    if bound := bind_strips(job):
        found = solve_with_yard(
            bound.job, effort=effort, seed=seed, seconds=seconds, progress=progress
        )
        return replace(found, layout=loosen(bound, found.layout))
    how = begin(effort, seed, seconds)
    base = solve_clear(job, effort=effort, seed=seed, seconds=seconds, progress=progress)
    if job.yard is None and job.car is None:
        return base
    planned: list[_Planned] = []
    is_stopped = base.interrupted
    for known in base.groups:
        group = _group_of(job, base.layout, known)
        planned.append(_plan_group(job, group, known, None if is_stopped else how))
        is_stopped |= planned[-1].is_interrupted
    sheets = tuple(sheet for each in planned for sheet in each.sheets)
    return replace(
        base,
        layout=replace(
            base.layout,
            sheets=sheets,
            notes=(*base.layout.notes, *(note for each in planned for note in each.notes)),
        ),
        cost=_cost(job, sheets),
        bound=sum((each.known.cost_bound for each in planned), Decimal(0)),
        groups=tuple(each.known for each in planned),
        interrupted=is_stopped,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Planned:
    """One material and thickness, with its first cuts where there are any.

    Attributes:
        sheets: Its sheets.
        notes: What to say about them.
        known: What is known of it.
        is_interrupted: True where the user stopped the search.
    """

    sheets: tuple[SheetLayout, ...]
    notes: tuple[str, ...]
    known: GroupResult
    is_interrupted: bool = False


def _group_of(job: Job, layout: Layout, known: GroupResult) -> Group:
    kind = (known.material, known.thickness)
    parts = tuple(
        index for index, part in enumerate(job.parts) if (part.material, part.thickness) == kind
    )
    return Group(
        parts=parts,
        sheets=tuple(
            sheet
            for sheet in layout.sheets
            if (job.sheets[sheet.sheet].material, job.sheets[sheet.sheet].thickness) == kind
        ),
        gaps=_gaps(layout.unplaced, parts),
    )


def _gaps(unplaced: Iterable[Unplaced], parts: Sequence[int]) -> frozenset[tuple[int, int]]:
    return frozenset((gap.part, gap.count) for gap in unplaced if gap.part in parts)


def _cost(job: Job, sheets: Iterable[SheetLayout]) -> Decimal:
    return sum((job.sheets[sheet.sheet].price for sheet in sheets), Decimal(0))


def _plan_group(job: Job, group: Group, known: GroupResult, effort: Effort | None) -> _Planned:
    """Return one group with its first cuts; as it was, and why, where there can be none.

    Args:
        job: The job.
        group: The group without first cuts.
        known: What is known of it.
        effort: How hard to search; None where the user has stopped already.
    """
    outside = [kind for kind in group.bought(job) if not is_handled_whole(job, job.sheets[kind])]
    if not outside:
        return _Planned(sheets=group.sheets, notes=(), known=known)
    if job.yard is None:
        notes = tuple(say_stays_outside(job, job.sheets[kind]) for kind in outside)
        return _Planned(sheets=group.sheets, notes=notes, known=known)
    splits = _list_splits(job, group, known)
    too_large = _list_too_large(job, group, splits)
    way = find_way(job, group, splits, effort) if effort and splits and not too_large else None
    if way is None:
        notes = (
            *(say_too_large(job, part) for part in too_large),
            *(say_not_found(job, job.sheets[kind]) for kind in outside if not too_large),
        )
        return _Planned(sheets=group.sheets, notes=notes, known=known)
    return _take(job, group, known, way)


def _list_splits(job: Job, group: Group, known: GroupResult) -> dict[int, tuple[Split, ...]]:
    """Return the ways to split every kind of sheet that can be bought for a group."""
    parts = [job.parts[index] for index in group.parts]
    found = {
        kind: list_splits(job, sheet, parts)
        for kind, sheet in enumerate(job.sheets)
        if not sheet.owned
        and sheet.count != 0
        and (sheet.material, sheet.thickness) == (known.material, known.thickness)
    }
    return {kind: splits for kind, splits in found.items() if splits}


def _list_too_large(
    job: Job, group: Group, splits: Mapping[int, Sequence[Split]]
) -> tuple[Part, ...]:
    """Return the parts that have a place, but in no piece that gets home."""
    gaps = dict(group.gaps)
    stock = [
        replace(
            job.sheets[kind],
            length=piece.rect.length,
            width=piece.rect.width,
            trim=piece.trim,
        )
        for kind, ways in splits.items()
        for split in ways
        for piece in split.pieces
    ]
    stock += [sheet for sheet in job.sheets if sheet.owned]
    placed = (job.parts[i] for i in group.parts if job.parts[i].count > gaps.get(i, 0))
    return tuple(
        part
        for part in placed
        if splits
        and not any(
            fits(part, sheet)
            for sheet in stock
            if (sheet.material, sheet.thickness) == (part.material, part.thickness)
        )
    )


def _take(job: Job, group: Group, known: GroupResult, way: Way) -> _Planned:
    """Return a group with the first cuts of a way."""
    sheets = way.layout.sheets
    before, after = _cost(job, group.sheets), _cost(job, sheets)
    notes = []
    if after > before or (after == before and len(sheets) > len(group.sheets)):
        notes.append(say_dearer(known.material, (len(group.sheets), before), (len(sheets), after)))
    return _Planned(
        sheets=sheets,
        notes=tuple(notes),
        known=replace(
            known,
            sheets=len(sheets),
            sheet_bound=min(known.sheet_bound, len(sheets)),
            cost=after,
            cost_bound=min(known.cost_bound, after),
            is_proven=after <= known.cost_bound,
        ),
        is_interrupted=way.is_interrupted,
    )
