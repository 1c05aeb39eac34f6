"""Batches: cabinets cut in groups, so that never more parts lie about than there is room for.

The whole job is planned first, its sheets in the order that completes cabinets soonest. Where too
many parts would still wait for the rest of their cabinet, the cabinets are planned in two groups,
one after the other, then in three and so on. That may cost sheets; the plan says how much.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from decimal import Decimal
from typing import Final

from nesting.buying import Solve, count_layouts, count_repeats, solve_repeated
from nesting.cut_sequence import minutes, order_cuts
from nesting.job import Job
from nesting.kits import find_most_open, order_for_kits, without_first_whole
from nesting.layout import Layout, Node, SheetLayout, Unplaced, map_leaves
from nesting.search.result import Result
from nesting.solve import count_again

FIRST_OFF_MINUTES: Final = 5
"""To measure the first parts of a sheet that is cut in a way of its own (judgement)."""
MANY_SHEETS: Final = 4
"""From so many sheets on it is tried whether they can be cut alike."""


def solve_in_kits(job: Job, solve: Solve) -> Result:
    """Return the plan of a job in an order that completes cabinets, within the limit if any.

    Without `Job.terms.most_open` it is the plan that the search finds, its sheets reordered. With
    it, the fewest groups are taken that keep the limit. Where even single cabinets have more
    parts than that, each is a group of its own, and the notes of the layout say so.

    Args:
        job: The job.
        solve: How a job is planned.
    """
    whole = _ordered(job, _solve_alike(without_first_whole(job), solve))
    limit = job.terms.most_open
    letters = sorted(
        dict.fromkeys(part.cabinet for part in job.parts if part.cabinet),
        key=lambda letter: letter != job.terms.first_whole,
    )
    if limit is None or not letters or whole.interrupted:
        return whole
    best, most, groups = whole, _most_open(job, whole.layout), 1
    while most > limit and groups < len(letters) and not best.interrupted:
        groups += 1
        tried = _solve_groups(job, list(_divide(job, letters, groups)), whole, solve)
        lie_about = _most_open(job, tried.layout)
        if lie_about < most and len(tried.layout.unplaced) <= len(whole.layout.unplaced):
            best, most = tried, lie_about
    notes = tuple(_notes(most, limit, best.cost - whole.cost, is_whole=best is whole))
    return replace(best, layout=replace(best.layout, notes=(*best.layout.notes, *notes)))


def _solve_alike(job: Job, solve: Solve) -> Result:
    """Return the plan of a job, with its sheets cut alike where that costs no more and is quicker.

    The search looks at every sheet for itself; an equal part of a large batch, cut over and over,
    may take less work.
    """
    whole = solve(job)
    times = count_repeats(job, len(whole.layout.sheets))
    if times == 1 or whole.interrupted or len(whole.layout.sheets) < MANY_SHEETS:
        return whole
    alike = solve_repeated(job, times, solve)
    if alike is None or alike.interrupted or alike.cost > whole.cost:
        return whole
    if not whole.layout.unplaced and _work(job, whole.layout) <= _work(job, alike.layout):
        return whole
    return replace(
        whole,
        layout=alike.layout,
        cost=alike.cost,
        groups=count_again(job, alike.layout, whole.groups),
        iterations=whole.iterations + alike.iterations,
    )


def _work(job: Job, layout: Layout) -> Decimal:
    """Return the minutes at the saw, and those for measuring the first parts of every layout."""
    sawing = sum((minutes(job, order_cuts(job, sheet)) for sheet in layout.sheets), Decimal(0))
    return sawing + FIRST_OFF_MINUTES * count_layouts(job, layout)


def _ordered(job: Job, result: Result) -> Result:
    return replace(result, layout=order_for_kits(job, result.layout))


def _most_open(job: Job, layout: Layout) -> int:
    return find_most_open(job, layout, [order_cuts(job, sheet) for sheet in layout.sheets])


def _divide(job: Job, letters: Sequence[str], groups: int) -> Iterator[frozenset[str]]:
    """Yield the cabinets in groups of about as many parts each, in their order."""
    sizes = dict.fromkeys(letters, 0)
    for part in job.parts:
        if part.cabinet:
            sizes[part.cabinet] += part.count
    total, before = sum(sizes.values()), 0
    members: dict[int, set[str]] = {}
    for letter in letters:
        middle = before + sizes[letter] // 2
        members.setdefault(min(groups - 1, middle * groups // total), set()).add(letter)
        before += sizes[letter]
    for number in sorted(members):
        yield frozenset(members[number])


def _solve_groups(
    job: Job, groups: Sequence[frozenset[str]], whole: Result, solve: Solve
) -> Result:
    """Return the plans of groups of cabinets one after the other; plain parts come last."""
    sheets: list[SheetLayout] = []
    unplaced: list[Unplaced] = []
    notes: list[str] = []
    iterations, is_interrupted = whole.iterations, False
    for number, group in enumerate(groups):
        wanted = group | {""} if number == len(groups) - 1 else group
        kept = [index for index, part in enumerate(job.parts) if part.cabinet in wanted]
        few = replace(
            _without(job, sheets),
            parts=tuple(job.parts[index] for index in kept),
            cabinets=(),
        )
        result = _ordered(few, _solve_alike(without_first_whole(few), solve))
        sheets += [
            replace(sheet, root=_renumber(sheet.root, kept)) for sheet in result.layout.sheets
        ]
        unplaced += [replace(gap, part=kept[gap.part]) for gap in result.layout.unplaced]
        notes += [note for note in result.layout.notes if note not in notes]
        iterations += result.iterations
        is_interrupted |= result.interrupted
    layout = Layout(sheets=tuple(sheets), unplaced=tuple(unplaced), notes=tuple(notes))
    return replace(
        whole,
        layout=layout,
        cost=sum((job.sheets[sheet.sheet].price for sheet in sheets), Decimal(0)),
        groups=count_again(job, layout, whole.groups),
        iterations=iterations,
        interrupted=is_interrupted,
    )


def _without(job: Job, used: Sequence[SheetLayout]) -> Job:
    """Return the job with the sheets that are used up taken from the stock."""
    taken = [sheet.sheet for sheet in used]
    return replace(
        job,
        sheets=tuple(
            sheet if sheet.count is None else replace(sheet, count=sheet.count - taken.count(index))
            for index, sheet in enumerate(job.sheets)
        ),
    )


def _renumber(root: Node, kept: Sequence[int]) -> Node:
    return map_leaves(root, lambda leaf: replace(leaf, part=kept[leaf.part]))


def _notes(most: int, limit: int, dearer: Decimal, *, is_whole: bool) -> Iterator[str]:
    """Yield what the person must be told about the limit."""
    if most > limit:
        yield (
            f"Up to {most} parts lie about before their cabinet is complete, more than the limit "
            f"of {limit}. Make room for them, or cut the cabinets as jobs of their own."
        )
    if not is_whole and dearer > 0:
        yield (
            f"The cabinets are cut in groups, so that at most {most} parts lie about unfinished. "
            f"Sheets cost {dearer:.2f} more than without the limit of {limit}."
        )
