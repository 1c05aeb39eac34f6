"""The one typeface, measured from the font files that the writers embed.

DejaVu Sans Condensed has the letters of every European language and its figures are all equally
wide. Text is sized by the height of its capitals, because that is what legibility is stated in.
"""

import struct
import unicodedata
from dataclasses import dataclass
from functools import cache, lru_cache
from pathlib import Path

from reportlab.pdfbase.ttfonts import TTFontFile

FOLDER = Path(__file__).parent / "fonts"
REGULAR = FOLDER / "DejaVuSansCondensed.ttf"
BOLD = FOLDER / "DejaVuSansCondensed-Bold.ttf"
CAPITAL = 1493 / 2048  # height of H in both files, of the type size


@dataclass(frozen=True, slots=True, kw_only=True)
class Ink:
    """How far the ink of a text reaches above and below its baseline, in millimetres."""

    above: float
    below: float


@dataclass(frozen=True, slots=True)
class _Glyphs:
    """Advance width, top and bottom of every character, as fractions of the type size."""

    advances: dict[int, float]
    tops: dict[int, float]
    bottoms: dict[int, float]


def type_size(height: float) -> float:
    """Return the type size, in millimetres, whose capitals have a height."""
    return height / CAPITAL


def text_width(words: str, height: float, *, bold: bool = False) -> float:
    """Return how wide a text runs."""
    return _width_of_capital_one(words, bold=bold) * height


def text_ink(words: str, height: float, *, bold: bool = False) -> Ink:
    """Return how far a text's ink reaches from its baseline, accents and tails included."""
    above, below = _ink_of_capital_one(words, bold=bold)
    return Ink(above=above * height, below=below * height)


@lru_cache(maxsize=1 << 14)
def printable(words: str) -> str:
    """Return a text in characters that the typeface has.

    Accents are joined to their letters, white space becomes single spaces, and what the typeface
    lacks becomes a white square, so that it is seen to be missing.
    """
    regular, heavy = _glyphs(bold=False).advances, _glyphs(bold=True).advances
    joined = " ".join(unicodedata.normalize("NFC", words).split())
    return "".join(
        character if ord(character) in regular and ord(character) in heavy else "\N{WHITE SQUARE}"
        for character in joined
    )


@lru_cache(maxsize=1 << 14)
def _width_of_capital_one(words: str, *, bold: bool) -> float:
    advances = _glyphs(bold=bold).advances
    return sum(advances[ord(character)] for character in words) / CAPITAL


@lru_cache(maxsize=1 << 14)
def _ink_of_capital_one(words: str, *, bold: bool) -> tuple[float, float]:
    glyphs = _glyphs(bold=bold)
    codes = [ord(character) for character in words if not character.isspace()]
    above = max(0.0, *(glyphs.tops[code] for code in codes), 0.0)
    below = max(0.0, *(-glyphs.bottoms[code] for code in codes), 0.0)
    return above / CAPITAL, below / CAPITAL


@cache
def _glyphs(*, bold: bool) -> _Glyphs:
    font = TTFontFile(str(BOLD if bold else REGULAR))
    per_em = font.unitsPerEm
    has_long_offsets = struct.unpack(">h", font.get_table("head")[50:52])[0]
    offsets, outlines = font.get_table("loca"), font.get_table("glyf")
    advances, tops, bottoms = {}, {}, {}
    for code, glyph in font.charToGlyph.items():
        advances[code] = font.charWidths[code] / 1000
        if has_long_offsets:
            start, end = struct.unpack_from(">2L", offsets, 4 * glyph)
        else:
            start, end = (2 * half for half in struct.unpack_from(">2H", offsets, 2 * glyph))
        low, high = struct.unpack_from(">4xh2xh", outlines, start) if end > start else (0, 0)
        tops[code], bottoms[code] = high / per_em, low / per_em
    return _Glyphs(advances, tops, bottoms)
