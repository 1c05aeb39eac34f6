import pytest
from hypothesis import given
from hypothesis import strategies as st

from nesting.reading.excerpts import WIDEST, quote


def test_marks_stand_under_the_fault() -> None:
    assert quote("width = 30 cm  # shelf", 8, 13) == (
        "width = 30 cm  # shelf",
        "        ^^^^^",
    )


def test_indentation_is_not_quoted() -> None:
    assert quote("      width = -5", 14, 16) == ("width = -5", "        ^^")


def test_a_tab_is_as_wide_as_the_space_it_is_quoted_as() -> None:
    assert quote("Shelf\t562\t-3", 10, 12) == ("Shelf 562 -3", "          ^^")


def test_nothing_to_point_at_is_still_one_mark() -> None:
    assert quote("width =", 7, 7) == ("width =", "       ^")


def test_a_long_line_is_shortened_around_the_fault() -> None:
    line = "a" * 200 + "WRONG" + "b" * 200
    shown, marks = quote(line, 200, 205)
    assert shown == "…" + "a" * 24 + "WRONG" + "b" * 43 + "…"
    assert marks == " " * 25 + "^^^^^"


def test_a_long_line_with_an_early_fault_is_shortened_at_its_end() -> None:
    assert quote("WRONG" + "b" * 200, 0, 5) == ("WRONG" + "b" * 67 + "…", "^^^^^")


@pytest.mark.property
@given(
    st.text(st.characters(codec="utf-8"), min_size=1, max_size=300),
    st.integers(0, 300),
    st.integers(1, 50),
)
def test_a_quote_fits_the_line_and_marks_what_it_should(line: str, start: int, width: int) -> None:
    start = min(start, len(line) - 1)
    end = min(start + width, len(line))
    shown, marks = quote(line, start, end)
    assert len(shown) <= WIDEST + 2
    assert marks.strip(" ").strip("^") == ""
    marked = shown[marks.find("^") : len(marks)].rstrip("… ")
    assert "".join(c if c.isprintable() else " " for c in line[start:end]).startswith(marked)
