"""Smallest pieces, against trying out every first cut on a millimetre grid."""

from functools import cache
from itertools import compress, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from nesting.lengths import NM_PER_MM, mm
from nesting.parts import Grain, Part
from nesting.replan.smallest_piece import MOST_PARTS, find_smallest_pieces
from tests.nesting.hand_made import part

LARGEST = 30


def fits(sides: tuple[tuple[int, int, str], ...], length: int, width: int, kerf: int) -> bool:
    """Return whether parts can be cut from a piece, by trying every cut at every millimetre."""

    @cache
    def fits_in(chosen: frozenset[int], length: int, width: int) -> bool:
        if not chosen or length <= 0 or width <= 0:
            return not chosen
        if len(chosen) == 1:
            return lies_in(sides[next(iter(chosen))], length, width)
        members = sorted(chosen)
        halves = (
            frozenset(compress(members, flags))
            for flags in product((False, True), repeat=len(members))
        )
        return any(
            fits_in(some, at, width) and fits_in(chosen - some, length - at - kerf, width)
            if is_across
            else fits_in(some, length, at) and fits_in(chosen - some, length, width - at - kerf)
            for some in halves
            if some and some != chosen
            for is_across, extent in ((True, length), (False, width))
            for at in range(1, extent)
        )

    return fits_in(frozenset(range(len(sides))), length, width)


def lies_in(part: tuple[int, int, str], length: int, width: int) -> bool:
    """Return whether one part lies in a piece whose grain runs along its length."""
    along, across, grain = part
    plain = grain != "width" and along <= length and across <= width
    return plain or (grain != "length" and across <= length and along <= width)


@settings(max_examples=40, deadline=None)
@given(
    sides=st.lists(
        st.tuples(st.integers(1, 8), st.integers(1, 8), st.sampled_from(["length", "any"])),
        min_size=1,
        max_size=3,
    ),
    kerf=st.integers(0, 2),
)
def test_each_is_the_smallest_and_none_is_forgotten(
    sides: list[tuple[int, int, str]], kerf: int
) -> None:
    parts = [
        Part(
            name=f"Part {number}",
            length=mm(along),
            width=mm(across),
            grain=Grain(grain),
            material="birch",
            thickness=mm(18),
        )
        for number, (along, across, grain) in enumerate(sides)
    ]
    boxes = [
        (box.length // NM_PER_MM, box.width // NM_PER_MM)
        for box in find_smallest_pieces(parts, mm(kerf), has_grain=True)
    ]
    known = tuple(sides)
    for length, width in boxes:
        assert fits(known, length, width, kerf)
        assert not fits(known, length - 1, width, kerf)
        assert not fits(known, length, width - 1, kerf)
    for length, width in product(range(1, LARGEST), repeat=2):
        holds_one = any(length >= one and width >= other for one, other in boxes)
        assert fits(known, length, width, kerf) == holds_one


def test_one_part_with_grain_needs_just_its_own_size() -> None:
    missing = Part(
        name="Side",
        length=mm(410),
        width=mm(300),
        grain=Grain.LENGTH,
        material="birch",
        thickness=mm(18),
    )
    (box,) = find_smallest_pieces([missing], mm("2.4"), has_grain=True)
    assert (box.length, box.width) == (mm(410), mm(300))


@pytest.mark.parametrize("count", [0, MOST_PARTS + 1])
def test_nothing_is_said_of_none_and_of_too_many(count: int) -> None:
    parts = [part("Rail", 400, 80, count)] if count else []
    assert find_smallest_pieces(parts, 0, has_grain=True) == ()
