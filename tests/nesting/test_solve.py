from decimal import Decimal

import pytest

from nesting.checks import check_layout
from nesting.job import Job
from nesting.layout import PartLeaf, Rect, walk
from nesting.lengths import Unit, mm
from nesting.parts import Grain
from nesting.saw import Saw
from nesting.sheets import SheetGrain
from nesting.solve import Progress, solve
from tests.nesting.search.drawings import draw_sheet
from tests.nesting.search.jobs import make_job, make_part, make_random_job, make_sheet

NO_KERF = Saw(kerf=0)


def list_part_names(job: Job, seed: int = 1) -> list[str]:
    result = solve(job, effort=1, seed=seed)
    return [
        job.parts[place.node.part].name
        for sheet in result.layout.sheets
        for place in walk(sheet.root, Rect(x=0, y=0, length=0, width=0))
        if isinstance(place.node, PartLeaf)
    ]


def test_a_part_of_the_sheets_size_needs_no_cut() -> None:
    job = make_job([make_part("all", 2440, 1220)], [make_sheet()])
    (sheet,) = solve(job).layout.sheets
    assert sheet.root == PartLeaf(part=0, copy=0)


def test_four_quarters_fill_a_sheet_with_two_kinds_of_cut() -> None:
    job = make_job([make_part("quarter", 15, 5, 4)], [make_sheet(length=31, width=11)])
    job = make_job(list(job.parts), list(job.sheets), saw=Saw(kerf=mm(1)))
    result = solve(job)
    assert check_layout(job, result.layout) == ()
    assert draw_sheet(job, result.layout.sheets[0], mm(1)) == "\n".join(
        [
            *["AAAAAAAAAAAAAAA AAAAAAAAAAAAAAA"] * 5,
            "",
            *["AAAAAAAAAAAAAAA AAAAAAAAAAAAAAA"] * 5,
        ]
    )


def test_parts_that_fit_without_kerf_only_need_a_second_sheet() -> None:
    parts = [make_part("shelf", 610, 305, 16)]
    assert len(solve(make_job(parts, [make_sheet()], saw=NO_KERF)).layout.sheets) == 1
    assert len(solve(make_job(parts, [make_sheet()])).layout.sheets) == 2


@pytest.mark.parametrize(
    ("sheet_grain", "part_grain", "turned"),
    [
        (SheetGrain.LENGTH, Grain.LENGTH, False),
        (SheetGrain.LENGTH, Grain.WIDTH, True),
        (SheetGrain.WIDTH, Grain.LENGTH, True),
        (SheetGrain.WIDTH, Grain.WIDTH, False),
    ],
)
def test_a_square_part_is_turned_as_its_grain_asks(
    sheet_grain: SheetGrain, part_grain: Grain, *, turned: bool
) -> None:
    job = make_job(
        [make_part("square", 300, 300, grain=part_grain)], [make_sheet(grain=sheet_grain)]
    )
    layout = solve(job).layout
    places = walk(layout.sheets[0].root, Rect(x=0, y=0, length=mm(2440), width=mm(1220)))
    leaves = [place.node for place in places if isinstance(place.node, PartLeaf)]
    assert leaves == [PartLeaf(part=0, copy=0, turned=turned)]


def test_own_offcuts_come_before_bought_stock_where_the_money_is_equal() -> None:
    sheets = [
        make_sheet("bought", price=Decimal(0)),
        make_sheet("own", 800, 600, price=Decimal(0), owned=True, count=1),
    ]
    job = make_job([make_part("shelf", 562, 300, 2)], sheets)
    assert [sheet.sheet for sheet in solve(job, effort=1).layout.sheets] == [1]


def test_the_cheaper_of_two_sheets_is_bought() -> None:
    sheets = [
        make_sheet("large", price=Decimal("62.00")),
        make_sheet("half", 1220, 1220, price=Decimal("30.50")),
    ]
    job = make_job([make_part("side", 600, 420, 3)], sheets)
    result = solve(job, effort=1)
    assert result.cost == Decimal("30.50")
    assert [job.sheets[sheet.sheet].name for sheet in result.layout.sheets] == ["half"]


def test_what_finds_no_room_on_a_limited_stock_is_reported_the_smallest_first() -> None:
    parts = [make_part("large", 500, 400), make_part("small", 300, 200, 3)]
    job = make_job(parts, [make_sheet("own offcut", 600, 420, count=1, owned=True)])
    layout = solve(job, effort=1).layout
    assert [(item.part, item.count) for item in layout.unplaced] == [(1, 3)]
    assert layout.unplaced[0].reason == (
        "no room was found on the sheets there are: 1 of 'own offcut'; one sheet more would do"
    )


def test_a_job_without_a_fitting_sheet_gives_an_empty_layout_and_reasons() -> None:
    job = make_job([make_part("door", 2000, 1300)], [make_sheet()])
    result = solve(job)
    assert result.layout.sheets == ()
    assert result.cost == result.bound == 0
    assert check_layout(job, result.layout) == ()
    assert [item.count for item in result.layout.unplaced] == [1]


def test_an_interrupt_returns_the_best_so_far() -> None:
    def interrupt(progress: Progress) -> None:
        if not progress.is_preparing:
            raise KeyboardInterrupt

    job = make_random_job(1)
    result = solve(job, progress=interrupt)
    assert result.interrupted
    assert check_layout(job, result.layout) == ()


def test_progress_never_goes_back_and_never_passes_its_bound() -> None:
    seen: list[Progress] = []
    solve(make_random_job(12), effort=1, progress=seen.append)
    done = [record.done for record in seen if not record.is_preparing]
    assert done == sorted(done)
    assert all(0 <= value <= 1 for value in done)


def test_the_same_seed_gives_the_same_layout() -> None:
    job = make_random_job(7)
    assert solve(job, effort=1, seed=3) == solve(job, effort=1, seed=3)


def test_inches_and_millimetres_of_equal_size_give_the_same_layout() -> None:
    job = make_random_job(9)
    other = make_job(list(job.parts), list(job.sheets), saw=job.saw, unit=Unit.INCH, step=job.step)
    first, second = solve(job, effort=1), solve(other, effort=1)
    assert first.layout.sheets == second.layout.sheets


@pytest.mark.property
@pytest.mark.parametrize("block", range(30))
def test_random_jobs_keep_every_rule_and_the_bound(block: int) -> None:
    for number in range(10 * block, 10 * block + 10):
        job = make_random_job(number)
        result = solve(job, effort=number % 2, seed=number)
        assert check_layout(job, result.layout) == ()
        assert result.bound <= result.cost
        for group in result.groups:
            assert group.sheet_bound <= group.sheets
