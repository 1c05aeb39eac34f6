from dataclasses import replace

from nesting.first_cuts.split import clean_up, make_row, make_split, whole_sheet
from nesting.layout import Direction, RestLeaf
from nesting.lengths import mm
from nesting.sheets import Trim
from nesting.yard import Yard
from tests.nesting.hand_made import BIRCH

YARD = Yard(kerf=mm(4), rough=mm(3))
KERF = mm("2.4")


def test_a_whole_sheet_keeps_its_own_trims() -> None:
    split = whole_sheet(BIRCH)
    assert (split.cuts, split.pieces[0].trim) == (0, BIRCH.trim)


def test_both_neighbours_of_a_yard_cut_keep_its_roughness_and_what_is_trimmed_again() -> None:
    root = make_row(Direction.CROSSCUT, [mm(1000)], [RestLeaf()] * 2, YARD)
    first, second = make_split(BIRCH, root, YARD, KERF).pieces
    assert (first.rect.length, second.rect.length) == (mm(1000), mm(2440 - 1000 - 4))
    # 3 to trim, and 3 that the piece may be short; the second one is measured from its raw edge.
    assert first.trim == Trim(left=mm(10), right=mm(6), top=mm(10), bottom=mm(10))
    assert second.trim == Trim(left=mm(3), right=mm(13), top=mm(10), bottom=mm(10))
    assert (first.off_length, second.off_length, second.off_width) == (mm(3), mm(3), 0)


def test_what_is_left_of_a_row_may_be_off_by_every_cut_before() -> None:
    root = make_row(Direction.CROSSCUT, [mm(800), mm(800)], [RestLeaf()] * 3, YARD)
    first, second, third = make_split(BIRCH, root, YARD, KERF).pieces
    assert [piece.off_length for piece in (first, second, third)] == [mm(3), mm(3), mm(6)]
    assert (second.trim.left, second.trim.right) == (mm(3), mm(6))
    assert (third.trim.left, third.trim.right) == (mm(3), mm(16))


def test_a_piece_that_is_divided_along_has_raw_edges_both_ways() -> None:
    strips = make_row(Direction.RIP, [mm(500)], [RestLeaf()] * 2, YARD)
    root = make_row(Direction.CROSSCUT, [mm(1000)], [RestLeaf(), strips], YARD)
    split = make_split(BIRCH, root, YARD, KERF)
    assert split.cuts == 2
    assert [piece.path for piece in split.pieces] == [(0,), (1, 0), (1, 1)]
    upper = split.pieces[2]
    assert (upper.rect.x, upper.rect.y) == (mm(1004), mm(504))
    assert upper.trim == Trim(left=mm(3), right=mm(13), bottom=mm(3), top=mm(13))


def test_what_is_trimmed_off_a_yard_edge_is_at_least_a_kerf() -> None:
    assert clean_up(replace(YARD, rough=mm(1)), KERF) == KERF
    assert clean_up(YARD, KERF) == mm(3)
