"""Hidden stretches of an edge, against looking along the rays one by one."""

from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from plans.pages.hidden_lines import SKIN, Body, Vector, dot, seen_pieces

EYE: Vector = (0.35, -1.0, 0.35)
SPOTS = 20
AXES: tuple[Vector, ...] = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
PLACES = st.integers(-30, 60).map(float)


def block(low: Vector, high: Vector) -> Body:
    """Return a block; its faces are not needed to hide anything."""
    planes = []
    for axis, (least, most) in zip(AXES, zip(low, high, strict=True), strict=True):
        x, y, z = axis
        planes += [((x, y, z), most), ((-x, -y, -z), -least)]
    return Body(planes=tuple(planes), faces=())


def is_hidden(point: Vector, body: Body) -> bool:
    """Return whether a ray from a point towards the eye enters a block, by trying its length."""
    return any(
        all(
            dot(normal, tuple(p + 0.2 * step * e for p, e in zip(point, EYE, strict=True)))  # type: ignore[arg-type]
            < distance - SKIN
            for normal, distance in body.planes
        )
        for step in range(1, 600)
    )


def test_an_edge_with_nothing_before_it_is_seen_whole() -> None:
    assert seen_pieces((0.0, 0.0, 0.0), (10.0, 0.0, 0.0), EYE, []) == [(0.0, 1.0)]


def test_a_block_before_the_middle_of_an_edge_hides_its_middle() -> None:
    # seen straight from the front, the shadow of a block is the block
    front: Vector = (0.0, -1.0, 0.0)
    body = block((4.0, -8.0, -5.0), (6.0, -2.0, 5.0))
    pieces = seen_pieces((0.0, 0.0, 0.0), (10.0, 0.0, 0.0), front, [body])
    assert len(pieces) == 2
    assert pieces[0] == pytest.approx((0.0, 0.4 + SKIN / 10))
    assert pieces[1] == pytest.approx((0.6 - SKIN / 10, 1.0))


def test_a_block_behind_an_edge_or_touching_it_hides_nothing() -> None:
    front: Vector = (0.0, -1.0, 0.0)
    behind = block((4.0, 2.0, -5.0), (6.0, 8.0, 5.0))
    touching = block((0.0, -8.0, -5.0), (10.0, 4.0, 0.0))  # the edge lies on its upper face
    for body in (behind, touching):
        assert seen_pieces((0.0, 0.0, 0.0), (10.0, 0.0, 0.0), front, [body]) == [(0.0, 1.0)]


def test_two_blocks_that_overlap_hide_one_stretch() -> None:
    front: Vector = (0.0, -1.0, 0.0)
    bodies = [block((x, -8.0, -5.0), (x + 3.0, -2.0, 5.0)) for x in (2.0, 4.0)]
    pieces = seen_pieces((0.0, 0.0, 0.0), (10.0, 0.0, 0.0), front, bodies)
    assert [round(end, 2) for piece in pieces for end in piece] == [0.0, 0.2, 0.7, 1.0]


@pytest.mark.slow
@settings(deadline=None, max_examples=80)
@given(
    low=st.tuples(PLACES, PLACES, PLACES),
    sides=st.tuples(*[st.integers(3, 30)] * 3),
    start=st.tuples(PLACES, PLACES, PLACES),
    end=st.tuples(PLACES, PLACES, PLACES),
)
def test_any_edge_before_or_behind_any_block_is_seen_where_its_rays_are_free(
    low: Vector, sides: tuple[int, int, int], start: Vector, end: Vector
) -> None:
    high = tuple(at + side for at, side in zip(low, sides, strict=True))
    body = block(low, high)  # type: ignore[arg-type]
    pieces = seen_pieces(start, end, EYE, [body])
    ends = [end for piece in pieces for end in piece]
    for spot in range(SPOTS + 1):
        share = spot / SPOTS
        if any(abs(share - end) < 0.05 for end in ends):
            continue  # at the very end of a shadow either answer is right
        point = tuple(a + share * (b - a) for a, b in zip(start, end, strict=True))
        is_seen = any(first <= share <= last for first, last in pieces)
        deep = [
            distance - dot(normal, point)  # type: ignore[arg-type]
            for normal, distance in body.planes
        ]
        if min(abs(value) for value in deep) > 2.0:  # not along the skin of the block
            assert is_seen is not is_hidden(point, body), (share, pieces)  # type: ignore[arg-type]


def test_the_inner_product_is_that_of_the_axes() -> None:
    for one, other in product(AXES, AXES):
        assert dot(one, other) == (1.0 if one == other else 0.0)
