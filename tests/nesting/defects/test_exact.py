"""Planning round defects against answers from outside the search, on sheets small enough for them.

Of 240 such sheets, filled to between 75 and 100 % of what is sound, 6 that can be cut were missed
(seeds 0 to 259, effort 1). Where one is missed the plan asks for a sheet more than it needs.
"""

import pytest

from nesting.checks import check_layout
from nesting.defects import solve_clear
from tests.nesting.defects.exhaustive import can_be_cut, has_room, make_job, make_small

QUICK = range(100, 105)
MANY = range(100)
MISSED_AT_MOST = 0.05


@pytest.mark.parametrize("seed", QUICK)
def test_no_sheet_is_filled_that_cannot_be(seed: int) -> None:
    small = make_small(seed)
    job = make_job(small)
    result = solve_clear(job, effort=1)
    assert check_layout(job, result.layout) == ()
    if not result.layout.unplaced:
        assert has_room(small)
        assert can_be_cut(small)


@pytest.mark.slow
def test_few_sheets_that_can_be_cut_are_missed() -> None:
    jobs = [small for small in map(make_small, MANY) if can_be_cut(small)]
    assert len(jobs) > len(MANY) / 2
    missed = [small for small in jobs if solve_clear(make_job(small), effort=1).layout.unplaced]
    assert len(missed) <= MISSED_AT_MOST * len(jobs), missed
