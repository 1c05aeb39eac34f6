"""Settings of the guide: cuts said to share one must have every figure in common."""

from collections.abc import Iterator
from itertools import pairwise

from nesting.errors import Fault
from plans.rehearsal.records import Sheet
from plans.rehearsal.row_checks import DO_NOT_CUT


def check_settings(sheet: Sheet) -> Iterator[Fault]:
    """Yield where the settings of a sheet are not counted on, or do not agree in a figure."""
    if sheet.rows and sheet.rows[0].setting != 1:
        yield _fault(sheet, 1, f"its setting is {sheet.rows[0].setting}, the first one is 1")
    for before, row in pairwise(sheet.rows):
        if row.setting not in (before.setting, before.setting + 1):
            what = f"setting {row.setting} follows setting {before.setting}"
            yield _fault(sheet, row.number, what)
        same = (before.is_rip, before.keep, before.guides) == (row.is_rip, row.keep, row.guides)
        if row.setting == before.setting and not same:
            what = f"it differs from cut {before.number}, with which it shares a setting"
            yield _fault(sheet, row.number, what)


def _fault(sheet: Sheet, number: int, what: str) -> Fault:
    return Fault(where=f"sheet {sheet.number}, cut {number}", what=what, remedy=DO_NOT_CUT)
