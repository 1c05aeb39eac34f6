from math import cos, hypot, pi, sin

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from nesting.cabinets.discs import find_square, fits_in_disc
from nesting.cabinets.fittings import Fittings
from nesting.lengths import mm
from tests.nesting.cabinets.fit_samples import FRAMED, fit, woofer


def test_a_disc_of_283_offers_at_most_a_square_of_200() -> None:
    """Acceptance: 283 / sqrt(2) = 200.1. With a kerf, a margin or a pivot it is less."""
    disc = mm(283)
    assert find_square(disc, kerf=0, pivot=0, margin=0) == mm(200)
    assert find_square(disc, kerf=mm(8), pivot=0, margin=mm(3)) == mm(184)
    assert find_square(disc, kerf=mm(8), pivot=mm(6), margin=mm(3)) < mm(120)


@pytest.mark.property
@settings(max_examples=200, deadline=None)
@given(st.integers(10, 300), st.integers(10, 300), st.integers(100, 400), st.integers(0, 12))
def test_a_part_lies_inside_the_disc_and_beside_the_pivot(
    length: int, width: int, disc: int, pivot: int
) -> None:
    """Laid out again with corners: kerf 8 and margin 3 from the rim, margin 3 from the pivot."""
    fits = fits_in_disc((length, width), disc, kerf=8, pivot=pivot, margin=3)
    radius = disc / 2 - 8 - 3
    corners = []
    for long, across in ((length, width), (width, length)):
        near = pivot / 2 + 3 if pivot else -across / 2
        corners.append([(long / 2, near), (long / 2, near + across)])
    inside = [all(hypot(x, y) <= radius for x, y in pair) for pair in corners]
    assert fits is any(inside)
    # Turning about the pivot changes nothing: the disc is round.
    turned = [
        (x * cos(pi / 7) - y * sin(pi / 7), x * sin(pi / 7) + y * cos(pi / 7))
        for x, y in corners[0]
    ]
    assert all(
        hypot(*a) == pytest.approx(hypot(*b)) for a, b in zip(turned, corners[0], strict=True)
    )


def test_what_a_disc_leaves_is_said_where_it_is_worth_it() -> None:
    (advice,) = fit(FRAMED, Fittings(), woofer()).discs
    assert advice.square == find_square(mm(278), kerf=mm(8), pivot=mm(6), margin=mm(3))
    assert advice.text == (
        f"The disc of the woofer gives a square of {advice.square // mm(1)} mm beside its pivot, "
        "once the hole is cut."
    )
    assert fit(FRAMED, Fittings(), woofer(cut_out=mm(60))).discs == ()
