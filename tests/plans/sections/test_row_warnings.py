"""Every cut of a whole plan carries the warnings that its printed figures ask for, and no others.

What a piece weighs and measures is worked out here from the printed texts alone: 18 mm birch
plywood has 685 kg/m3 by a maker's datasheet, 12 mm has 695.
"""

from fractions import Fraction
from functools import cache
from itertools import pairwise
from pathlib import Path

from nesting.layout import Direction
from nesting.lengths import mm
from nesting.reading.job_toml import read_job_text
from nesting.solve import solve
from plans.plan import Plan, make_plan
from plans.sections.cut_table import CutRow
from plans.sections.sheet_view import CutView

JOB = """
[saw]
guide_length = 1400
lift_limit_kg = 15
[[sheet]]
name = "birch 18"
material = "birch plywood"
thickness = 18
length = 2440
width = 1220
[[sheet]]
name = "birch 12"
material = "birch plywood"
thickness = 12
length = 2440
width = 1220
[[part]]
name = "Side"
length = 900
width = 450
count = 6
thickness = 18
[[part]]
name = "Cleat"
length = 700
width = 44
count = 5
thickness = 18
[[part]]
name = "Panel"
length = 1500
width = 600
count = 2
thickness = 12
[[part]]
name = "Lath"
length = 230
width = 70
count = 9
thickness = 12
"""
DENSITY = {18: 685, 12: 695}
KERF, LEFT, RIGHT, GUIDE, CLAMP, SMALLEST = Fraction("2.4"), 38, 130, 100, 20, 60
LONGEST_FREE = mm(400)  # between two battens; the project's own choice


@cache
def plan() -> Plan:
    job = read_job_text(JOB, Path("job.toml"))
    made = make_plan(job, solve(job, effort=0))
    assert not made.overview.unplaced
    return made


def rows() -> list[tuple[int, CutRow, CutView]]:
    """Return every row with the nominal thickness of its sheet in millimetres and its drawing."""
    return [
        (int(sheet.material.rsplit(" ", 1)[1]), row, cut)
        for sheet in plan().sheets
        for row, cut in zip(sheet.rows, sheet.cuts, strict=True)
    ]


def sides(row: CutRow) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    """Return the extent along a cut, that across, and those before and beyond the kerf."""
    first, second = (Fraction(side) for side in row.hold_size.split(" × "))
    along, across = (first, second) if row.direction is Direction.RIP else (second, first)
    keep = Fraction(row.keep.removeprefix("trim "))
    before = max(keep - KERF, Fraction(0)) if row.keep.startswith("trim") else keep
    beyond = (
        across - keep if row.keep.startswith("trim") else max(across - keep - KERF, Fraction(0))
    )
    return along, across, before, beyond


def test_two_people_are_called_for_where_a_piece_is_heavier_than_the_limit() -> None:
    seen = set()
    for thickness, row, _ in rows():
        along, across, _, _ = sides(row)
        mass = along * across * thickness * DENSITY[thickness] / 10**9
        assert abs(Fraction(row.hold_mass) - mass) <= Fraction("0.05")
        heavy = mass > 15
        assert (row.people == 2) == heavy == ("TWO PEOPLE" in row.remark), row.remark
        seen.add(heavy)
    assert seen == {True, False}


def test_a_piece_narrower_than_can_be_held_is_flagged_on_either_side_of_the_blade() -> None:
    seen = set()
    for _, row, _ in rows():
        along, across, before, beyond = sides(row)
        is_trim = row.keep.startswith("trim")
        kept, freed = (beyond, before) if is_trim else (before, beyond)
        widths = [along, across, *([kept] if row.keep_code != "WASTE" else [])]
        widths += [freed] if row.free_code not in {"WASTE", ""} else []
        narrow = min(widths) < SMALLEST
        assert narrow == ("clamp or cut by hand" in row.remark), row
        seen.add(narrow)
    assert seen == {True, False}


def test_a_cut_longer_than_the_guide_is_flagged() -> None:
    long = [sides(row)[0] > 1400 for _, row, _ in rows()]
    assert long == ["GUIDE TOO SHORT" in row.remark for _, row, _ in rows()]
    assert set(long) == {True, False}


def test_a_board_beside_the_piece_is_called_for_where_the_guide_has_room_on_no_side() -> None:
    lacking = []
    for _, row, _ in rows():
        _, _, before, beyond = sides(row)
        room = before >= LEFT + GUIDE + CLAMP or beyond >= RIGHT + GUIDE + CLAMP
        assert (not room) == ("lay a board of the same thickness beside" in row.remark), row
        lacking.append(room)
    assert set(lacking) == {True, False}


def test_no_batten_crosses_a_kerf_and_no_piece_hangs_free_beyond_the_limit() -> None:
    for _, row, cut in rows():
        is_rip = row.direction is Direction.RIP
        spans = sorted(
            (each.y, each.y + each.width) if is_rip else (each.x, each.x + each.length)
            for each in cut.supports
        )
        low, high = (
            (cut.band.y, cut.band.y + cut.band.width)
            if is_rip
            else (cut.band.x, cut.band.x + cut.band.length)
        )
        assert all(end <= low or start >= high for start, end in spans), row
        for (_, end), (start, _) in pairwise(spans):
            assert start - end <= LONGEST_FREE, row
