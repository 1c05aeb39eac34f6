"""Sheets that hold the same parts are cut alike."""

from decimal import Decimal

from nesting.search.least_work.alike import cut_alike
from nesting.search.least_work.cutter import FIRST_PART, REST, PlannedCut, PlannedSheet
from nesting.search.least_work.value import Value

LONG, SHORT = FIRST_PART - 0, FIRST_PART - 2  # parts of two kinds, long side along x
TURNED = FIRST_PART - 1


def sheet(kind: int, *cuts: tuple[int, int, int]) -> PlannedSheet:
    planned = tuple(
        PlannedCut(is_rip=False, keep=keep, first=first, second=second)
        for keep, first, second in cuts
    )
    return kind, planned, 0


def count_cuts(planned: PlannedSheet) -> Value:
    minutes = Decimal(len(planned[1]))
    return Value(too_long=0, narrow=0, burden=minutes, leftovers=(), minutes=minutes)


def test_sheets_with_the_same_parts_take_the_cuts_of_the_best() -> None:
    few = sheet(0, (5, LONG, 1), (4, SHORT, REST))
    many = sheet(0, (4, SHORT, 1), (5, TURNED, 2), (1, REST, REST))
    assert cut_alike((many, few, many), count_cuts) == (few, few, few)


def test_sheets_with_other_parts_or_of_another_kind_stay() -> None:
    one = sheet(0, (5, LONG, REST))
    more = sheet(0, (5, LONG, 1), (5, LONG, REST))
    other_kind = sheet(1, (5, LONG, 1), (2, REST, REST))
    assert cut_alike((one, more, other_kind), count_cuts) == (one, more, other_kind)
