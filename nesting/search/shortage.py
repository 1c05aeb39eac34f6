"""What cannot be placed where there are too few sheets, by areas alone."""

from collections.abc import Iterable

from nesting.search.problem import PartKind, Problem

MOST_SUMS = 20_000  # where more sums of areas are possible, nothing finer than the area is said
MOST_ADDITIONS = 2_000_000  # the same where finding them takes longer


def bound_missing(problem: Problem) -> int:
    """Return an area such that every plan leaves as much or more unplaced.

    No sheet holds more than the largest sum of the areas of parts that is no more than its own, and
    all sheets together hold a sum of areas of parts as well. So of three shelves that take half a
    sheet and a little each, one sheet never holds more than one.
    """
    if all(sheet.count == problem.copies for sheet in problem.sheets):
        return 0
    room = sum(
        sheet.count * _fill(sheet.area, (kind for kind in problem.kinds if kind.ways[number]))
        for number, sheet in enumerate(problem.sheets)
    )
    return problem.area - _fill(min(room, problem.area), problem.kinds)


def _fill(room: int, kinds: Iterable[PartKind]) -> int:
    """Return the largest sum of areas of parts that a room holds, the room where that is open."""
    sums, additions = {0}, 0
    for kind in kinds:
        for _ in range(min(kind.copies, room // kind.area)):
            longer = {one + kind.area for one in sums if one + kind.area <= room} - sums
            if not longer:
                break
            additions += len(sums)
            sums |= longer
            if len(sums) > MOST_SUMS or additions > MOST_ADDITIONS:
                return room
    return max(sums)
