"""Sheets that hold the same parts are cut alike."""

from collections.abc import Callable

from nesting.search.least_work.cutter import FIRST_PART, PlannedSheet
from nesting.search.least_work.value import Value


def cut_alike(
    sheets: tuple[PlannedSheet, ...], weigh: Callable[[PlannedSheet], Value]
) -> tuple[PlannedSheet, ...]:
    """Return sheets of which those that hold the same parts are all cut like the best of them.

    The search changes every sheet by itself, and of many sheets it does not find the best way for
    each.

    Args:
        sheets: The sheets of a plan.
        weigh: Finds the value of one sheet; asked only where there is a choice.
    """
    ways: dict[tuple[int, ...], list[PlannedSheet]] = {}
    for sheet in dict.fromkeys(sheets):
        ways.setdefault(_list_parts(sheet), []).append(sheet)
    best = {
        parts: min(found, key=weigh) if len(found) > 1 else found[0]
        for parts, found in ways.items()
    }
    return tuple(best[_list_parts(sheet)] for sheet in sheets)


def _list_parts(sheet: PlannedSheet) -> tuple[int, ...]:
    """Return the kind of a sheet, and then the kinds of the parts on it in order."""
    kind, cuts, whole = sheet
    ends = [whole, *(end for cut in cuts for end in (cut.first, cut.second))]
    return kind, *sorted((FIRST_PART - end) // 2 for end in ends if end <= FIRST_PART)
