from dataclasses import replace
from decimal import Decimal

from nesting.checks import check_layout
from nesting.job import Job
from nesting.layout import Cut, Direction, Layout, PartLeaf, RestLeaf
from nesting.lengths import mm
from nesting.parts import Grain
from nesting.saw import Saw
from nesting.search.grid import make_problem
from nesting.search.problem import SIDE_BY_SIDE, STACKED, Codes, SheetPlan
from nesting.search.realise import realise
from nesting.sheets import Trim
from tests.nesting.search.drawings import draw_sheet
from tests.nesting.search.jobs import BIRCH, make_job, make_part, make_sheet

KERF_1 = Saw(kerf=mm(1))


def lay_out(job: Job, *trees: Codes) -> Layout:
    problem = make_problem(job, BIRCH, mm(18))
    assert problem is not None
    plan = tuple(SheetPlan(kind=0, codes=codes) for codes in trees)
    layout = Layout(sheets=realise(job, problem, plan))
    assert check_layout(job, layout) == ()
    return layout


def test_the_waste_above_a_row_is_one_piece() -> None:
    job = make_job(
        [make_part("a", 9, 6), make_part("b", 5, 4, 2)],
        [make_sheet(length=24, width=10)],
        saw=KERF_1,
    )
    (sheet,) = lay_out(job, (0, 2, SIDE_BY_SIDE, 2, SIDE_BY_SIDE)).sheets
    assert draw_sheet(job, sheet, mm(1)) == "\n".join(
        [
            "-" * 24,
            "-" * 24,
            "-" * 24,
            "",
            "AAAAAAAAA ----------- --",
            "AAAAAAAAA             --",
            "AAAAAAAAA BBBBB BBBBB --",
            "AAAAAAAAA BBBBB BBBBB --",
            "AAAAAAAAA BBBBB BBBBB --",
            "AAAAAAAAA BBBBB BBBBB --",
        ]
    )


def test_a_remainder_of_less_than_a_kerf_is_sawn_away() -> None:
    job = make_job([make_part("a", 9, 6)], [make_sheet(length=10, width=6)], saw=Saw(kerf=mm(3)))
    (sheet,) = lay_out(job, (0,)).sheets
    assert sheet.root == Cut(
        direction=Direction.CROSSCUT,
        at=mm(9),
        removed=mm(1),
        first=PartLeaf(part=0, copy=0),
        second=None,
    )


def test_the_long_home_edge_is_trimmed_first_then_the_other() -> None:
    trim = Trim(left=mm(2), bottom=mm(5), right=mm(4), top=mm(4))
    job = make_job(
        [make_part("a", 9, 6)], [make_sheet(length=15, width=15, trim=trim)], saw=Saw(kerf=mm(3))
    )
    (sheet,) = lay_out(job, (0,)).sheets
    root = sheet.root
    assert isinstance(root, Cut)
    assert (root.direction, root.at, root.removed, root.first, root.is_trim) == (
        Direction.RIP,
        mm(2),
        mm(3),
        RestLeaf(),
        True,
    )
    left = root.second
    assert isinstance(left, Cut)
    assert (left.direction, left.at, left.removed, left.first, left.is_trim) == (
        Direction.CROSSCUT,
        0,
        mm(2),
        None,
        True,
    )
    part = left.second
    assert isinstance(part, Cut)
    # To the raw edge: what is cut off above, 1 mm, lies in the trim there; the kerf does as well.
    assert (part.direction, part.at, part.removed, part.second) == (
        Direction.RIP,
        mm(6),
        mm(3),
        RestLeaf(),
    )


def test_only_what_can_be_used_decides_whether_a_leftover_is_kept() -> None:
    part = make_part("a", 2000, 1220)
    kept = make_job([part], [make_sheet(length=2500, width=1220)])
    (sheet,) = lay_out(kept, (0,)).sheets
    assert isinstance(sheet.root, Cut)
    assert sheet.root.second == RestLeaf(is_offcut=True)
    raw = replace(kept.sheets[0], trim=Trim(right=mm(450)))
    (sheet,) = lay_out(replace(kept, sheets=(raw,)), (0,)).sheets
    assert isinstance(sheet.root, Cut)
    assert sheet.root.second == RestLeaf(is_offcut=False)


def test_copies_are_numbered_as_they_come_off_the_sheets() -> None:
    job = make_job([make_part("a", 9, 6, 3)], [make_sheet(length=19, width=6)], saw=KERF_1)
    layout = lay_out(job, (0,), (0, 0, SIDE_BY_SIDE))
    full, half = (sheet.root for sheet in layout.sheets)
    assert isinstance(full, Cut)
    assert (full.first, full.second) == (PartLeaf(part=0, copy=0), PartLeaf(part=0, copy=1))
    assert isinstance(half, Cut)
    assert half.first == PartLeaf(part=0, copy=2)


def test_parts_of_equal_size_share_a_kind_and_keep_their_names() -> None:
    parts = [make_part("side", 9, 6), make_part("top", 6, 9)]
    job = make_job(parts, [make_sheet(length=9, width=13, price=Decimal(1))], saw=KERF_1)
    (sheet,) = lay_out(job, (0, 0, STACKED)).sheets
    root = sheet.root
    assert isinstance(root, Cut)
    assert root.first == PartLeaf(part=0, copy=0)
    assert root.second == PartLeaf(part=1, copy=0, turned=True)


def test_a_guide_too_short_for_the_sheet_asks_for_a_crosscut_first() -> None:
    job = make_job([make_part("a", 2300, 700)], [make_sheet()])
    (sheet,) = lay_out(job, (0,)).sheets
    assert isinstance(sheet.root, Cut)
    assert sheet.root.direction is Direction.RIP
    short = replace(job, saw=replace(job.saw, guide_length=mm(1370)))
    (sheet,) = lay_out(short, (0,)).sheets
    assert isinstance(sheet.root, Cut)
    assert sheet.root.direction is Direction.CROSSCUT


def test_a_strip_of_thousands_of_parts_of_every_height_is_cut() -> None:
    count = 5000
    parts = [make_part(f"{n}", 10, 200 + n, grain=Grain.LENGTH) for n in range(count)]
    job = make_job(parts, [make_sheet(length=60_000, width=6000)], saw=KERF_1)
    strip = [1] + [code for kind in range(1, count) for code in (2 * kind + 1, SIDE_BY_SIDE)]
    assert len(lay_out(job, tuple(strip)).sheets) == 1


def test_a_spiral_of_a_thousand_parts_is_cut() -> None:
    count = 1000  # each lies along all that lies inside it; the largest is kind 0
    parts = [make_part(f"{turn}", 12 * turn + 10, 10) for turn in range(count)]
    job = make_job(parts, [make_sheet(length=14_000, width=14_000)], saw=KERF_1)
    spiral = [2 * (count - 1)]
    for turn in range(1, count):
        kind = count - 1 - turn
        spiral += [2 * kind, STACKED] if turn % 2 else [2 * kind + 1, SIDE_BY_SIDE]
    assert len(lay_out(job, tuple(spiral)).sheets) == 1
