"""How large things must be on a phone's screen, in CSS pixels.

A CSS pixel is 1/96 in on a desk's screen. On a phone it is about 1/160 in, because pages are laid
out there as for 390 pixels on 62 mm (common practice, no source). The smaller one counts here.
"""

from math import ceil

PIXELS_PER_MM = 160 / 25.4
CAPITAL = 0.7  # height of a capital as a share of the type size, in the narrowest usual faces

TARGET = ceil(15 * PIXELS_PER_MM)
"""Side of whatever is touched: 15 mm, for the side of a finger (from memory of touch guidance)."""

LEAST_TYPE = ceil(0.007 * 500 * PIXELS_PER_MM / CAPITAL)
"""Type size of every text: 0.007 rad at 0.5 m are capitals of 3.5 mm, as on paper."""

KEEP_TYPES = (112, 100, 88, 78, 70, 62, 52, 44)
"""Type sizes of the keep size, largest first."""

WIDTH = 390  # of the usual phone
MARGIN = 12
LINE = WIDTH - 2 * MARGIN

_WIDTHS = {".": 0.4, " ": 0.35, "-": 0.45, "/": 0.42}
_WIDEST_FIGURE = 0.7  # of a bold face that is not narrow
SMALLER = 0.7  # a fraction is set this much smaller than the figure before it


def keep_type(keep: str) -> int:
    """Return the type size of a keep size: the largest at which it fits on one line.

    >>> keep_type("450"), keep_type("2175.3"), keep_type("trim 10"), keep_type("23 63/64")
    (112, 88, 112, 88)
    """
    words = keep.split(" ")
    fixed = sum(44 * 0.65 * len(word) + 12 for word in words if word.isalpha())
    ems = sum(
        _ems(word) * (SMALLER if "/" in word else 1) + 0.2 for word in words if not word.isalpha()
    )
    for size in KEEP_TYPES:
        if fixed + ems * size <= LINE:
            return size
    return KEEP_TYPES[-1]


def text_width(words: str, size: float) -> float:
    """Return how wide a code in bold runs at most."""
    return _ems(words) * size


def _ems(words: str) -> float:
    return sum(_WIDTHS.get(sign, _WIDEST_FIGURE) for sign in words)
