"""One whole cabinet first: whether the cuts named for it free all of its parts."""

import re
from collections.abc import Iterator
from typing import Final

from nesting.errors import Fault
from plans.rehearsal.records import PlanFile
from plans.rehearsal.row_checks import DO_NOT_CUT

_RANGE: Final = re.compile(r"([1-9][0-9]*)\.1(?:-\1\.([1-9][0-9]*))?")


def check_whole_first(plan: PlanFile) -> Iterator[Fault]:
    """Yield which parts of the first cabinet are not there when its cuts are made."""
    first = plan.whole_first
    if first is None:
        return
    where = f"cabinet {first.cabinet}"
    ranges = [_RANGE.fullmatch(each) for each in first.cuts.split(" ")]
    named = {int(each[1]): int(each[2] or 1) for each in ranges if each}
    if None in ranges or len(named) < len(ranges) or named != dict(first.pauses):
        what = f"its cuts are printed as {first.cuts!r}, and the sheets are put aside elsewhere"
        yield Fault(where=where, what=what, remedy=DO_NOT_CUT)
        return
    there = {
        code
        for sheet in plan.sheets
        for row in sheet.rows[: named.get(sheet.number, 0)]
        for code in (row.keep_code, row.free_code)
    }
    for sheet in plan.sheets:
        for part in sheet.parts:
            if part.name.endswith(f", cabinet {first.cabinet}") and part.code not in there:
                what = f"{part.code} is not cut by then"
                yield Fault(where=where, what=what, remedy=DO_NOT_CUT)
