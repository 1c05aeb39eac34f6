"""Sheets of one lot for the parts of one joint, where it costs nothing.

Sheets of the same size and price differ only by their lot: which finished sheet is cut from which
of them is free. They are exchanged as long as fewer joints then span two lots. No cut changes, no
sheet is added, and a sheet with defects keeps what was laid round them.
"""

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from nesting.job import Job
from nesting.layout import Layout, list_parts
from nesting.lots.mixed_joints import are_of_one_lot, list_joints
from nesting.sheets import Sheet

MOST_TREES = 60
"""Finished sheets; with more of them the lots stay as they are."""

Name = tuple[str, str]
"""Cabinet and name of a part."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Question:
    """What the exchange needs to know.

    Attributes:
        job: The job.
        holders: For every joint the finished sheets that its two parts come from.
        kinds: For every finished sheet the kinds of sheet that it may come from.
    """

    job: Job
    holders: tuple[tuple[tuple[int, ...], tuple[int, ...]], ...]
    kinds: tuple[tuple[int, ...], ...]

    def count_mixed(self, chosen: Sequence[int]) -> int:
        """Return how many joints span two lots, given the kind of each finished sheet."""
        sheets = [self.job.sheets[kind] for kind in chosen]
        return sum(
            any(not are_of_one_lot(sheets[one], sheets[other]) for one in first for other in second)
            for first, second in self.holders
        )


def prefer_one_lot(job: Job, layout: Layout) -> Layout:
    """Return a layout in which no more joints span two lots, and fewer where that was found."""
    if len({sheet.measured for sheet in job.sheets if sheet.measured}) <= 1:
        return layout
    question = _ask(job, layout)
    chosen = [tree.sheet for tree in layout.sheets]
    if len(chosen) > MOST_TREES:
        return layout
    mixed = question.count_mixed(chosen)
    while mixed:
        better = min(_list_changes(question, chosen), key=question.count_mixed, default=chosen)
        if question.count_mixed(better) >= mixed:
            break
        chosen, mixed = better, question.count_mixed(better)
    return replace(
        layout,
        sheets=tuple(
            replace(tree, sheet=kind) for tree, kind in zip(layout.sheets, chosen, strict=True)
        ),
    )


def _ask(job: Job, layout: Layout) -> _Question:
    sources: defaultdict[Name, dict[int, None]] = defaultdict(dict)
    for number, tree in enumerate(layout.sheets):
        for leaf in list_parts(tree.root):
            part = job.parts[leaf.part]
            sources[part.cabinet, part.name][number] = None
    shared = [_shared(sheet) for sheet in job.sheets]
    return _Question(
        job=job,
        holders=tuple(
            (tuple(sources[letter, first]), tuple(sources[letter, second]))
            for build in job.cabinets
            for letter in build.letters
            for first, second in list_joints(build)
        ),
        kinds=tuple(
            tuple(kind for kind, each in enumerate(shared) if each == shared[tree.sheet])
            for tree in layout.sheets
        ),
    )


def _shared(sheet: Sheet) -> Sheet:
    """Return what sheets share that differ by their lot alone."""
    return replace(sheet, name="", count=None, measured=(), told_from="")


def _list_changes(question: _Question, chosen: Sequence[int]) -> Iterator[list[int]]:
    """Yield what comes of giving one finished sheet another kind, or of exchanging two."""
    used = Counter(chosen)
    for number, kind in enumerate(chosen):
        for other in question.kinds[number]:
            count = question.job.sheets[other].count
            if other != kind and (count is None or used[other] < count):
                yield [*chosen[:number], other, *chosen[number + 1 :]]
        for partner in range(number):
            if chosen[partner] != kind and chosen[partner] in question.kinds[number]:
                swapped = list(chosen)
                swapped[number], swapped[partner] = chosen[partner], kind
                yield swapped
