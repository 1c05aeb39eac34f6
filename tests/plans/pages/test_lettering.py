from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from plans.pages.boxes import text_box
from plans.pages.fonts import printable, text_width
from plans.pages.lettering import BIG, FIGURE, NOTE, centred, fit, paragraph, shorten, wrap
from plans.pages.shapes import Role, Text

TEXTS = st.text(st.characters(codec="utf-8", exclude_categories=["Cs"]), max_size=120)


@pytest.mark.parametrize(("height", "distance"), [(NOTE, 400), (FIGURE, 700), (BIG, 1400)])
def test_lettering_is_as_high_as_its_reading_distance_asks(height: float, distance: float) -> None:
    # 0.007 rad reaches practically everybody: Human Factors 21(6), 1979, letter size and
    # legibility. The third is the 10 mm of the contract, for 1.4 m.
    assert height / distance >= 0.007
    # 20 minutes of arc preferred: NUREG-0700 rev. 3, 11.4.1.5-1, 0.006 of the distance.
    assert height / distance >= 0.006


@given(words=TEXTS, width=st.floats(8, 200))
def test_wrapped_lines_fit_and_lose_nothing(words: str, width: float) -> None:
    lines = wrap(words, width, NOTE)
    assert all(text_width(line, NOTE) <= width for line in lines)
    assert "".join(lines).replace(" ", "") == printable(words).replace(" ", "")


@given(words=TEXTS, width=st.floats(8, 200))
def test_a_shortened_text_fits_and_says_that_it_is_shortened(words: str, width: float) -> None:
    short = shorten(words, width, NOTE)
    assert text_width(short, NOTE) <= width
    assert short == printable(words) or short.endswith("…")


def test_fitting_takes_the_greatest_height_between_two_bounds() -> None:
    width = text_width("2440 × 1220", 5.0)
    assert fit("2440 × 1220", width + 1, 5.0, 3.0) == 5.0
    assert fit("2440 × 1220", width * 0.8, 5.0, 3.0) == pytest.approx(4.0)
    assert fit("2440 × 1220", width * 0.5, 5.0, 3.0) is None


@pytest.mark.parametrize("is_upright", [False, True])
def test_a_centred_text_has_its_ink_about_the_point(*, is_upright: bool) -> None:
    text = Text(x=7, y=7, words="19", height=10, role=Role.CUT_NUMBER, is_upright=is_upright)
    box = text_box(centred(50.0, 60.0, text))
    assert (box.left + box.right) / 2 == pytest.approx(50.0)
    assert (box.top + box.bottom) / 2 == pytest.approx(60.0)


def test_a_paragraph_is_as_high_as_its_lines() -> None:
    one = paragraph("A short line.", 188.0)
    many = paragraph("A line that is longer than the paper is wide. " * 6, 188.0)
    assert many.height == pytest.approx(len(many.shapes) * one.height)
    boxes = [text_box(shape) for shape in many.shapes if isinstance(shape, Text)]
    assert all(box.top >= 0 and box.bottom <= many.height for box in boxes)
    assert not any(one.meets(two) for one, two in pairwise(boxes))
