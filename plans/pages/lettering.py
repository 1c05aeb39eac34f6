"""Setting text: the heights used, lines that fit a width, and paragraphs.

Smallest heights of capitals and figures: 3 mm for what is read in the hand, 5 mm for every number
used at the saw, 10 mm for part codes, cut numbers and the keep size. They follow from 0.007 rad at
0.4 m, 0.7 m and 1.5 m (Human Factors 21(6), 1979, on letter size and legibility).
"""

from plans.pages.blocks import Block
from plans.pages.boxes import text_box
from plans.pages.fonts import printable, text_width
from plans.pages.shapes import Anchor, Role, Text

NOTE = 3.0
LEAD = 4.0  # a line that opens a section
FIGURE = 5.0
BIG = 10.0
LINE_STEP = 1.62  # from baseline to baseline, of the height
FIRST_LINE = 1.26  # from the top of a paragraph to its first baseline, of the height


def note(x: float, y: float, words: str, *, bold: bool = False, height: float = NOTE) -> Text:
    """Return a text to be read in the hand."""
    return Text(x=x, y=y, words=printable(words), height=height, bold=bold)


def wrap(words: str, width: float, height: float, *, bold: bool = False) -> tuple[str, ...]:
    """Return a text as lines that fit a width.

    Lines break at spaces; a word that is wider than the whole line breaks where it must.
    """
    lines: list[str] = []
    line = ""
    for word in printable(words).split(" "):
        longer = f"{line} {word}" if line else word
        if text_width(longer, height, bold=bold) <= width:
            line = longer
            continue
        if line:
            lines.append(line)
        line = word
        while text_width(line, height, bold=bold) > width and len(line) > 1:
            fits = _characters_that_fit(line, width, height, bold=bold)
            lines.append(line[:fits])
            line = line[fits:]
    return (*lines, line) if line else tuple(lines)


def _characters_that_fit(word: str, width: float, height: float, *, bold: bool) -> int:
    fits = 1
    while text_width(word[: fits + 1], height, bold=bold) <= width:
        fits += 1
    return fits


def shorten(words: str, width: float, height: float, *, bold: bool = False) -> str:
    """Return a text, cut off with an ellipsis where it is wider than a width."""
    text = printable(words)
    if text_width(text, height, bold=bold) <= width:
        return text
    while text and text_width(f"{text}…", height, bold=bold) > width:
        text = text[:-1].rstrip()
    return f"{text}…"


def fit(
    words: str, width: float, tallest: float, least: float, *, bold: bool = False
) -> float | None:
    """Return the greatest height at which a text fits a width, None where that is below least."""
    at_one = text_width(words, 1.0, bold=bold)
    height = tallest if at_one * tallest <= width else width / at_one
    return height if height >= least else None


def paragraph(
    words: str,
    width: float,
    *,
    height: float = NOTE,
    bold: bool = False,
    x: float = 0.0,
    role: Role = Role.NOTE,
    glued: bool = False,
) -> Block:
    """Return a text as a block of as many lines as it needs."""
    step = LINE_STEP * height
    lines = wrap(words, width, height, bold=bold)
    return Block(
        height=step * len(lines),
        shapes=tuple(
            Text(
                x=x,
                y=step * place + FIRST_LINE * height,
                words=line,
                height=height,
                bold=bold,
                role=role,
            )
            for place, line in enumerate(lines)
        ),
        is_glued=glued,
    )


def heading(words: str, width: float, *, height: float = LEAD) -> Block:
    """Return a line that opens a section, glued to what follows."""
    lines = paragraph(words, width, height=height, bold=True)
    return Block(height=lines.height + 1.0, shapes=lines.shapes, is_glued=True)


def centred(x: float, y: float, text: Text) -> Text:
    """Return a text with its ink centred on a point; its own place is forgotten."""
    middle = Text(
        x=0.0,
        y=0.0,
        words=text.words,
        height=text.height,
        role=text.role,
        bold=text.bold,
        anchor=Anchor.MIDDLE,
        is_upright=text.is_upright,
    )
    box = text_box(middle)
    return Text(
        x=x - (box.left + box.right) / 2,
        y=y - (box.top + box.bottom) / 2,
        words=text.words,
        height=text.height,
        role=text.role,
        bold=text.bold,
        anchor=Anchor.MIDDLE,
        is_upright=text.is_upright,
    )
