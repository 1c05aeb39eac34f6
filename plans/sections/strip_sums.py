"""The sum of every piece that is cut into a row, and how much slack is left at its end."""

from collections.abc import Mapping

from nesting.cut_sequence import Path, Step
from nesting.job import Job
from nesting.layout import Cut, Direction, PartLeaf, Rect, split
from nesting.lengths import Length, mm
from nesting.sheets import Sheet
from plans.sections.cut_table import StripSum, extent_across
from plans.sections.numbers import show, show_all
from plans.sections.worked import WorkedSheet

SLACK_PER_CUT = mm(1)
SLACK_PER_STRIP = mm(2)
"""Less slack than this at the end of a row is tight (judgement: a kerf read 1 mm too small)."""


def make_sums(job: Job, worked: WorkedSheet) -> tuple[StripSum, ...]:
    """Return the sum of every row of cuts, in the order of cutting.

    A row is all cuts of one direction by one saw, one after the other, along one piece. Every
    figure comes from its exact value.
    """
    needs = _needs(worked)
    return tuple(
        _make_sum(job, worked, step, needs)
        for step in worked.sequence.steps
        if _begins(worked, step)
    )


def _begins(worked: WorkedSheet, step: Step) -> bool:
    """Return whether a cut is the first of its row, and the row more than one trim."""
    if step.path and step.path[-1] == 1:
        before = worked.places[step.path[:-1]].node
        assert isinstance(before, Cut)
        if (before.direction, before.by) == (step.direction, step.by):
            return False
    return any(not cut.is_trim for cut in _row(worked, step.path)[0])


def _row(worked: WorkedSheet, path: Path) -> tuple[list[Cut], Path]:
    """Return the cuts of a row and the path of what is left at its end, if anything."""
    cuts: list[Cut] = []
    while True:
        place = worked.places.get(path)
        node = place.node if place else None
        if not isinstance(node, Cut) or (
            cuts and (node.direction, node.by) != (cuts[0].direction, cuts[0].by)
        ):
            return cuts, path
        cuts.append(node)
        path = (*path, 1)


def _make_sum(
    job: Job, worked: WorkedSheet, step: Step, needs: Mapping[Path, tuple[Length, Length]]
) -> StripSum:
    cuts, end = _row(worked, step.path)
    extent = extent_across(step.direction, step.piece)
    left = extent_across(step.direction, worked.places[end].rect) if end in worked.places else 0
    lengths, words = [extent], [""]
    for cut in cuts:
        if cut.is_trim:
            lengths.append(cut.at + cut.removed)
            words.append(" trim")
        else:
            made = [cut.at, cut.removed] if cut.removed else [cut.at]
            lengths += made
            words += [""] * len(made)
    figures = show_all([*lengths, left], job.unit)
    terms = [f"{figure}{word}" for figure, word in zip(figures, [*words, " left"], strict=True)]
    slack = _slack(worked.sheet, step, needs)
    count = sum(not cut.is_trim for cut in cuts)
    return StripSum(
        piece=worked.codes[step.path],
        text=f"{terms[0]} = {' + '.join(terms[1:])}",
        slack=show(slack, job.unit),
        is_tight=slack < count * SLACK_PER_CUT + SLACK_PER_STRIP,
    )


def _slack(sheet: Sheet, step: Step, needs: Mapping[Path, tuple[Length, Length]]) -> Length:
    """Return how much longer the row could get before a part comes out short.

    The far trim, where the piece has it, is not slack.
    """
    piece = step.piece
    along_x = step.direction is Direction.CROSSCUT
    extent = piece.length if along_x else piece.width
    end = (piece.x if along_x else piece.y) + extent
    size = sheet.length if along_x else sheet.width
    trim = sheet.trim.right if along_x else sheet.trim.top
    usable = extent - max(0, end - (size - trim))
    return max(0, usable - needs[step.path][0 if along_x else 1])


def _needs(worked: WorkedSheet) -> dict[Path, tuple[Length, Length]]:
    """Return for every piece the least extent along x and y that its parts and cuts need."""
    needs: dict[Path, tuple[Length, Length]] = {}
    # `walk` yields parents first, so backwards every piece comes after what is cut from it.
    for path, place in reversed(list(worked.places.items())):
        match place.node:
            case PartLeaf():
                needs[path] = (place.rect.length, place.rect.width)
            case Cut() as cut:
                needs[path] = _needs_of_cut(
                    cut, place.rect, [needs.get((*path, i)) for i in (0, 1)]
                )
            case _:
                needs[path] = (0, 0)
    return needs


def _needs_of_cut(
    cut: Cut, rect: Rect, inner: list[tuple[Length, Length] | None]
) -> tuple[Length, Length]:
    first, second = (need or (0, 0) for need in inner)
    kept = split(cut, rect)[0]
    if cut.direction is Direction.CROSSCUT:
        return kept.length + cut.removed + second[0], max(first[1], second[1])
    return max(first[0], second[0]), kept.width + cut.removed + second[1]
