"""Room for the readings of the first of several sheets alike, and a box to initial for each."""

from collections.abc import Iterator, Sequence

from plans.pages.blocks import Block, moved, space
from plans.pages.fonts import text_width
from plans.pages.lettering import NOTE, heading, paragraph
from plans.pages.rows import blank, rule
from plans.pages.shapes import LineKind, Rectangle, Shape, Text
from plans.sections.first_off import RELEASE, FirstOff, KindRead

KIND = 62.0  # width of the words for a kind of part
ROW = 11.0
HEAD = 5.4
INITIALS = 16.0
BOX = 9.0
MAY_BE_CUT = "the others may be cut:"


def first_off_blocks(first: FirstOff, width: float) -> list[Block]:
    """Return the readings to write down, the release, and the initials."""
    return [
        space(3.0),
        heading(first.title, width),
        paragraph(RELEASE, width, glued=True),
        _head(first.read, width),
        *(_kind(kind, len(first.read), width) for kind in first.kinds),
        _release(width),
        *_initials(first.sheets, width),
    ]


def _columns(count: int, width: float) -> list[tuple[float, float]]:
    """Return where the readings of each sheet begin, and how wide they are."""
    each = (width - KIND) / max(count, 2)
    return [(KIND + place * each, each) for place in range(count)]


def _head(read: Sequence[int], width: float) -> Block:
    columns = _columns(len(read), width)
    return Block(
        height=HEAD,
        shapes=tuple(
            Text(x=x, y=4.0, words=f"sheet {number}", height=NOTE, bold=True)
            for number, (x, _) in zip(read, columns, strict=True)
        ),
        is_glued=True,
    )


def _kind(kind: KindRead, count: int, width: float) -> Block:
    words = paragraph(f"{kind.code} {kind.name}, {kind.size}", KIND - 3.0)
    shapes: list[Shape] = [rule(width), *moved(words.shapes, 0.0, 0.6)]
    for x, each in _columns(count, width):
        half = (each - 5.0) / 2
        shapes += [
            blank(x, ROW - 2.0, half - 2.0),
            Text(x=x + half - 0.8, y=ROW - 2.4, words="×", height=NOTE),
            blank(x + half + 2.6, ROW - 2.0, half - 2.0),
        ]
    return Block(height=max(ROW, words.height + 1.6), shapes=tuple(shapes))


def _release(width: float) -> Block:
    half = width / 2
    start = text_width(MAY_BE_CUT, NOTE, bold=True) + 2.0
    return Block(
        height=ROW + 1.0,
        shapes=(
            rule(width),
            Text(x=0.0, y=ROW - 2.4, words=MAY_BE_CUT, height=NOTE, bold=True),
            blank(start, ROW - 2.0, half - start - 4.0),
            Text(x=half, y=ROW - 2.4, words="day", height=NOTE),
            blank(half + 10.0, ROW - 2.0, half - 10.0),
        ),
    )


def _initials(numbers: Sequence[int], width: float) -> Iterator[Block]:
    """Yield the boxes to initial, one for every sheet, as many in a row as fit."""
    yield paragraph("Initials, sheet by sheet, once all its parts are labelled:", width, glued=True)
    each = int(width // (INITIALS + 2.0))
    for start in range(0, len(numbers), each):
        shapes: list[Shape] = []
        for place, number in enumerate(numbers[start : start + each]):
            x = place * (INITIALS + 2.0) + 0.25
            shapes += [
                Rectangle(x=x, y=0.8, width=INITIALS, height=BOX, kind=LineKind.BOX),
                Text(x=x + 1.2, y=4.8, words=str(number), height=NOTE),
            ]
        yield Block(height=BOX + 2.4, shapes=tuple(shapes))
