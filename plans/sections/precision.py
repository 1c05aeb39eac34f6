"""How finely the figures of a cut table must be printed, so that rounding does not add up.

A part that is freed by a cut of its own takes over the rounding of one figure. One that is left
over at the end of a row takes over that of all figures of the row, and of the rows around it.
"""

from nesting.cut_sequence import Path
from nesting.job import Job
from nesting.layout import Cut, Direction, PartLeaf, Rect
from nesting.lengths import Length, Unit, format_length, mm, round_to
from plans.sections.numbers import PRINTED_STEP, show
from plans.sections.worked import WorkedSheet

MOST_DRIFT = mm("0.1")
"""How far a part may come off its printed size because figures are rounded."""


def needs_fine_figures(job: Job, worked: WorkedSheet) -> bool:
    """Return whether sawing by the usual rounded figures would bring a part off its size."""
    step = PRINTED_STEP[job.unit]
    sawn = _saw_by_rounded_figures(job, worked)
    return any(
        abs(mine - round_to(planned, step)) > MOST_DRIFT
        for path, place in worked.places.items()
        if isinstance(place.node, PartLeaf)
        for mine, planned in zip(sawn[path], _extents(place.rect), strict=True)
    )


def show_keep(length: Length, unit: Unit, *, is_fine: bool) -> str:
    """Return a figure that is set at the saw, as usual or as exactly as the unit allows.

    That is to 0.001 of the unit; a figure that needs no more than the usual step looks as usual.

    >>> show_keep(mm("1803.475"), Unit.MM, is_fine=False)
    '1803.5'
    >>> show_keep(mm("1803.475"), Unit.MM, is_fine=True)
    '1803.475'
    """
    return format_length(length, unit) if is_fine else show(length, unit)


def _extents(rect: Rect) -> tuple[Length, Length]:
    return rect.length, rect.width


def _saw_by_rounded_figures(job: Job, worked: WorkedSheet) -> dict[Path, tuple[Length, Length]]:
    """Return what every piece measures along x and y if the figures are rounded as usual."""
    step = PRINTED_STEP[job.unit]
    length, width = _extents(worked.places[()].rect)
    sawn: dict[Path, tuple[Length, Length]] = {(): (round_to(length, step), round_to(width, step))}
    for path, place in worked.places.items():  # parents first
        if not isinstance(place.node, Cut):
            continue
        cut, (length, width) = place.node, sawn[path]
        axis_extent = width if cut.direction is Direction.RIP else length
        if cut.is_trim:
            fresh = round_to(cut.at + cut.removed, step)
            sizes = (cut.at, axis_extent - fresh)
        else:
            keep = round_to(cut.at, step)
            sizes = (min(keep, axis_extent), axis_extent - keep - cut.removed)
        for side, size in enumerate(sizes):
            sawn[(*path, side)] = (
                (length, size) if cut.direction is Direction.RIP else (size, width)
            )
    return sawn
