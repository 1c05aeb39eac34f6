"""Covering and cloth on the roll; a general-purpose geometry library looks for overlaps."""

from dataclasses import replace
from itertools import combinations

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from nesting.cabinets.closing_design import Closing, Fit
from nesting.cabinets.design import BoxDesign
from nesting.cabinets.fittings import BandFace, Fittings, Pattern, Roll
from nesting.cabinets.wrapping import WrapPiece, WrapPlan, lay_on_roll
from nesting.errors import InputError
from nesting.lengths import inch, mm
from tests.nesting.cabinets.fit_samples import COVERED, FRAMED, fit

ROLL = Roll(width=mm(1370))


def wrap(wanted: BoxDesign = COVERED, roll: Roll = ROLL) -> WrapPlan:
    return fit(wanted, Fittings(roll=roll)).wraps[0]


def check_laid(pieces: tuple[WrapPiece, ...], roll: Roll, used: int) -> None:
    boxes = [
        shapely.box(
            piece.from_edge,
            piece.from_end,
            piece.from_edge + piece.across,
            piece.from_end + piece.along,
        )
        for piece in pieces
    ]
    cloth = shapely.box(0, 0, roll.width, used)
    assert all(cloth.covers(box) for box in boxes)
    assert all(a.intersection(b).area == 0 for a, b in combinations(boxes, 2))


def test_every_face_is_covered_once_with_the_seam_underneath() -> None:
    """Acceptance: every face covered once; declared no-seam faces have none."""
    plan = wrap()
    faces = [face for piece in plan.pieces for face in piece.faces]
    assert sorted(faces) == ["back", "bottom", "left side", "right side", "top"]
    assert {piece.seam_face for piece in plan.pieces} == {"bottom", ""}


@pytest.mark.parametrize(
    ("no_seam", "seam_face"),
    [
        ((BandFace.TOP,), "bottom"),
        ((BandFace.BOTTOM,), "left side"),
        ((BandFace.BOTTOM, BandFace.LEFT), "right side"),
        ((BandFace.BOTTOM, BandFace.LEFT, BandFace.RIGHT), "top"),
    ],
)
def test_the_seam_lies_in_no_face_that_must_have_none(
    no_seam: tuple[BandFace, ...], seam_face: str
) -> None:
    """Acceptance: declared no-seam faces have none."""
    plan = wrap(roll=replace(ROLL, no_seam=no_seam))
    assert {piece.seam_face for piece in plan.pieces} == {seam_face, ""}


def test_without_a_face_for_the_seam_every_panel_has_a_piece_of_its_own() -> None:
    plan = wrap(roll=replace(ROLL, no_seam=tuple(BandFace)))
    assert {piece.seam_face for piece in plan.pieces} == {""}
    faces = [face for piece in plan.pieces for face in piece.faces]
    assert sorted(faces) == ["back", "bottom", "left side", "right side", "top"]


def test_the_band_goes_round_the_covered_box_and_overlaps() -> None:
    """2 x (500 + 600) + 8 layers of 1 mm + 30; 350 deep and 50 turned in on both sides."""
    band = next(piece for piece in wrap().pieces if piece.seam_face)
    assert {band.across, band.along} == {mm(2238), mm(450)}


def test_a_panel_that_is_wrapped_itself_has_its_own_piece() -> None:
    """464.6 - 2 x (1 covering + 1 own + 1 clearance), 50 turned over on both sides."""
    back = next(piece for piece in wrap().pieces if piece.faces == ("back",))
    assert {back.across, back.along} == {mm("558.6"), mm("658.6")}
    bare = replace(COVERED, back=Closing(fit=Fit.INSET, wrapped=False))
    assert all("back" not in piece.faces for piece in wrap(bare).pieces)


def test_what_is_ordered_is_what_is_laid_out_and_the_spare_rounded_up() -> None:
    """Acceptance: laid-out length <= ordered, rounded to how it is sold."""
    plan = wrap()
    assert plan.order % ROLL.sold_by == 0
    assert plan.laid_out + ROLL.spare <= plan.order < plan.laid_out + ROLL.spare + ROLL.sold_by
    check_laid(plan.pieces, ROLL, plan.laid_out)
    assert plan.text == (
        "Covering: 2500 mm of a roll 1370 mm wide (laid out 2238, spare 100, sold by 500)."
    )


def test_two_cabinets_lie_beside_each_other_on_the_roll() -> None:
    two = wrap(replace(COVERED, count=2))
    assert {piece.cabinet for piece in two.pieces} == {"A", "B"}
    assert two.laid_out < 2 * wrap().laid_out
    check_laid(two.pieces, ROLL, two.laid_out)


def test_a_pattern_gets_a_piece_for_each_panel_all_one_way_and_no_seam_in_a_face() -> None:
    roll = replace(ROLL, pattern=Pattern.ALONG)
    plan = wrap(roll=roll)
    assert not any(piece.is_turned or piece.seam_face for piece in plan.pieces)
    faces = [face for piece in plan.pieces for face in piece.faces]
    assert sorted(faces) == ["back", "bottom", "left side", "right side", "top"]
    check_laid(plan.pieces, roll, plan.laid_out)


def test_a_roll_that_is_too_narrow_is_refused() -> None:
    with pytest.raises(InputError) as error:
        wrap(roll=replace(ROLL, width=mm(400)))
    assert "the left side is 450 mm wide, and the roll 400 mm" in str(error.value)


def test_a_roll_of_54_inches_covers_the_box_in_one_row_of_bands() -> None:
    """Covering is commonly sold 54 in wide (an upholstery page): 3 x 450 mm lie in it."""
    plan = wrap(replace(COVERED, count=3), Roll(width=inch(54)))
    bands = [piece for piece in plan.pieces if piece.seam_face]
    assert len({piece.from_end for piece in bands}) == 1


@pytest.mark.property
@settings(max_examples=200, deadline=None)
@given(
    st.lists(st.tuples(st.integers(10, 900), st.integers(10, 900)), min_size=1, max_size=12),
    st.sampled_from(Pattern),
)
def test_pieces_never_overlap_on_the_roll(sizes: list[tuple[int, int]], pattern: Pattern) -> None:
    roll = Roll(width=1000, pattern=pattern)
    pieces = [
        WrapPiece(name="piece", cabinet="A", faces=(), seam="", across=across, along=along)
        for across, along in sizes
    ]
    laid, used = lay_on_roll(pieces, roll)
    check_laid(laid, roll, used)
    assert len(laid) == len(pieces)
    if pattern is Pattern.ALONG:
        assert sorted((each.across, each.along) for each in laid) == sorted(sizes)


def test_cloth_for_a_grille_is_the_baffle_and_what_is_turned_over() -> None:
    """An upholstery page and a guitar magazine: 2 in spare all round; the window and about 1 in."""
    cloth = Roll(width=mm(1400), turn_in=inch(2))
    (plan,) = fit(FRAMED, Fittings(cloth=cloth)).wraps
    (piece,) = plan.pieces
    assert (plan.what, {piece.across, piece.along}) == (
        "cloth",
        {mm("464.6") + 2 * inch(2), mm("564.6") + 2 * inch(2)},
    )
