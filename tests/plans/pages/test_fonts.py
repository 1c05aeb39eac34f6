"""Measured against Pillow's own reading of the same font files."""

import pytest
from PIL import ImageFont

from plans.pages.fonts import BOLD, CAPITAL, REGULAR, printable, text_ink, text_width

SIZE = 2048  # the files' units for the type size, so that Pillow has nothing to round


@pytest.mark.parametrize(("is_bold", "path"), [(False, REGULAR), (True, BOLD)])
@pytest.mark.parametrize("character", "H0694gyÅéß×≠ŐğΩЖ½/")
def test_every_character_is_as_wide_and_as_high_as_another_library_measures_it(
    character: str, *, is_bold: bool, path: object
) -> None:
    font = ImageFont.truetype(str(path), SIZE, layout_engine=ImageFont.Layout.BASIC)
    left, top, right, bottom = font.getbbox(character, anchor="ls")
    assert right > left
    ink = text_ink(character, CAPITAL * SIZE, bold=is_bold)
    assert text_width(character, CAPITAL * SIZE, bold=is_bold) == pytest.approx(
        font.getlength(character), abs=1.5
    )
    assert ink.above == pytest.approx(-top, abs=1.5)
    assert ink.below == pytest.approx(bottom, abs=1.5)


@pytest.mark.parametrize("is_bold", [False, True])
def test_the_height_asked_for_is_the_height_of_a_capital(*, is_bold: bool) -> None:
    assert text_ink("H", 10.0, bold=is_bold).above == pytest.approx(10.0)
    assert text_ink("H", 10.0, bold=is_bold).below == 0.0


@pytest.mark.parametrize("is_bold", [False, True])
def test_all_figures_are_equally_wide(*, is_bold: bool) -> None:
    assert len({text_width(figure, 5.0, bold=is_bold) for figure in "0123456789"}) == 1


def test_names_from_all_over_europe_stay_as_they_are() -> None:
    for name in ("Łódź", "Ærø", "Győr", "Țăndărei", "Ελλάδα", "Ждановка", "Þingvellir", "Ħamrun"):
        assert printable(name) == name


def test_what_the_typeface_lacks_is_seen_to_be_missing() -> None:
    assert printable("棚 A\tB\n") == "□ A B"


def test_an_accent_written_apart_is_joined_to_its_letter() -> None:
    assert printable("Tu\N{COMBINING DIAERESIS}r") == "Tür"
