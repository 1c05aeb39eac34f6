from dataclasses import replace
from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from nesting.earlier import Earlier
from nesting.garage.edges import find_skew
from nesting.garage.events import PartRead, PieceSpoilt, SheetMissing, SheetRead
from nesting.garage.hand import list_finished, list_in_hand, to_leftover
from nesting.garage.marking import add_marks
from nesting.garage.marks import Marks
from nesting.garage.planned import Planned
from nesting.job import Job
from nesting.layout import Layout, Rect
from nesting.lengths import NM_PER_MM, mm
from nesting.sheets import Trim
from tests.nesting.garage.plans_read import after_cuts, planned
from tests.nesting.hand_made import guillotine_jobs, two_cabinets


@pytest.fixture(scope="module")
def plan() -> Planned:
    return planned(*two_cabinets())


def test_before_the_first_cut_the_whole_sheet_is_in_hand(plan: Planned) -> None:
    (sheet,) = list_in_hand(plan, Marks())
    assert (sheet.code, sheet.length, sheet.width) == ("S1", mm(2440), mm(1220))
    assert sheet.trim == Trim(left=mm(10), right=mm(10), top=mm(10), bottom=mm(10))
    assert list_finished(plan, Marks()) == ()


def test_a_cut_edge_needs_no_trim_and_a_raw_edge_keeps_it(plan: Planned) -> None:
    (piece,) = list_in_hand(plan, after_cuts(plan, 2))
    assert (piece.length, piece.width) == (mm(2430), mm(1210))
    assert piece.trim == Trim(left=0, right=mm(10), top=mm(10), bottom=0)


def test_at_the_end_every_part_is_finished_and_the_offcuts_are_in_hand(plan: Planned) -> None:
    marks = after_cuts(plan, plan.cut_count)
    assert len(list_finished(plan, marks)) == 10
    assert {piece.code[0] for piece in list_in_hand(plan, marks)} == {"L"}


@given(made=guillotine_jobs(most_cuts=12), data=st.data())
def test_at_every_moment_pieces_parts_waste_and_dust_make_up_the_sheet(
    made: tuple[Job, Layout], data: st.DataObject
) -> None:
    plan = planned(*made)
    number = data.draw(st.integers(0, plan.cut_count))
    marks = after_cuts(plan, number)
    (sheet,) = plan.sheets
    in_hand = sum(piece.length * piece.width for piece in list_in_hand(plan, marks))
    codes = {part.code for part in list_finished(plan, marks)}
    free = [piece for piece in sheet.pieces if not piece.made_by or piece.made_by <= number]
    rest = sum(
        piece.rect.length * piece.rect.width
        for piece in free
        if piece.code in codes or (piece.code == "WASTE" and piece.made_by)
    )
    dust = sum(
        cut.removed * (piece.rect.length if cut.direction.value == "rip" else piece.rect.width)
        for cut in sheet.cuts[:number]
        for piece in [sheet.piece_cut_by(cut.number)]
    )
    assert in_hand + rest + dust == sheet.length * sheet.width


def test_what_is_left_of_a_spoilt_part_is_measured_as_the_part_is(plan: Planned) -> None:
    marks = after_cuts(plan, plan.cut_count, PieceSpoilt(code="A1", left=((mm(310), mm(300)),)))
    left = next(piece for piece in list_in_hand(plan, marks) if piece.code == "A1")
    assert (left.length, left.width, left.trim) == (mm(310), mm(300), Trim())
    assert "A1" not in {part.code for part in list_finished(plan, marks)}


def test_a_missing_sheet_is_not_in_hand(plan: Planned) -> None:
    assert list_in_hand(plan, add_marks(plan, Marks(), (SheetMissing(sheet=1),))) == ()


def test_a_part_whose_blank_is_too_small_is_a_piece_again(plan: Planned) -> None:
    marks = after_cuts(plan, plan.cut_count, PartRead(code="A1", size=(mm("562.5"), mm(300))))
    assert "A1" in {piece.code for piece in list_in_hand(plan, marks)}
    smaller = after_cuts(plan, plan.cut_count, PartRead(code="A1", size=(mm(561), mm(299))))
    finished = {part.code: part for part in list_finished(plan, smaller)}
    assert (finished["A1"].length, finished["A1"].width) == (mm(561), mm(299))


@pytest.mark.parametrize("lean_mm", [0, 1, 2.5, 5])
def test_skew_from_the_diagonals_agrees_with_plane_geometry(lean_mm: float) -> None:
    """The corners of a leaning sheet, and Pythagoras for its diagonals."""
    length, width = 2440.0, (1220.0**2 - lean_mm**2) ** 0.5
    diagonals = (hypot(length + lean_mm, width), hypot(length - lean_mm, width))
    first, second = (round(diagonal * 10) * NM_PER_MM // 10 for diagonal in diagonals)
    skew = find_skew(Rect(x=0, y=0, length=mm(2440), width=mm(1220)), (first, second))
    assert abs(skew / NM_PER_MM - lean_mm) < 0.3  # diagonals are read to 0.1 mm


def test_a_leaning_sheet_gets_wider_trims_at_its_ends(plan: Planned) -> None:
    read = SheetRead(sheet=1, diagonals=(mm("2735"), mm("2721")))
    (sheet,) = list_in_hand(plan, add_marks(plan, Marks(), (read,)))
    assert sheet.trim.left > 0
    square = replace(read, diagonals=(mm("2728"), mm("2728")))
    (same,) = list_in_hand(plan, add_marks(plan, Marks(), (square,)))
    assert (same.trim.left, same.origin) == (mm(10), 0)


def test_what_one_plan_does_not_need_is_there_for_the_next() -> None:
    made, layout = two_cabinets()
    plan = planned(made, layout)
    pieces = list_in_hand(plan, after_cuts(plan, plan.cut_count))
    kept = tuple(to_leftover(piece, plan.fingerprint) for piece in pieces)
    later = replace(made, earlier=Earlier(fingerprint=plan.fingerprint, kept=kept, offcuts=40))
    read = planned(later, layout)
    assert read.kept == kept
    again = [piece for piece in list_in_hand(read, Marks()) if piece.sheet == 0]
    assert [(piece.length, piece.width, piece.trim) for piece in again] == [
        (piece.length, piece.width, piece.trim) for piece in pieces
    ]
    code = kept[0].code
    spoilt = add_marks(read, Marks(), (PieceSpoilt(code=code, left=((mm(200), mm(100)),)),))
    (left,) = [piece for piece in list_in_hand(read, spoilt) if piece.code == code]
    assert (left.length, left.width) == (mm(200), mm(100))
