"""Code, size and name of a part or an offcut inside its rectangle of the drawing.

The code comes first: it is made as large as the rectangle allows, then size and name are added in
the largest lettering that still goes with it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from plans.pages.boxes import Box, find_room, text_box
from plans.pages.fonts import printable, text_ink, text_width
from plans.pages.leaders import Label, find_leader
from plans.pages.lettering import BIG, FIGURE, NOTE, wrap
from plans.pages.shapes import Role, Text

EDGE = 1.1  # white between lettering and the lines round it
BETWEEN = 1.7  # white between lines of lettering
APART = 1.0  # more white to what else stands in the piece, so that no two are read as one
CODE_HEIGHTS = (BIG, 8.0, 6.5, FIGURE, 4.0, NOTE)
SIZE_HEIGHTS = (FIGURE, 4.0, NOTE)
NAME_LINES = 2
SHARES = (0.5, 0.35, 0.65, 0.2, 0.8, 0.07, 0.93)
ARROW_ROOM = 2.0  # lettering stands this much above the middle, and the grain arrow below it


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """What is to be lettered.

    Attributes:
        code: Its code.
        size: Its size, "" for none.
        name: Its name, "" for none.
        box: Its rectangle on paper.
        tallest: Greatest height of its code.
        least: Smallest height of its code.
    """

    code: str
    size: str
    name: str
    box: Box
    tallest: float = BIG
    least: float = FIGURE


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    """One line of lettering: texts one after the other, with its extent from the baseline."""

    texts: tuple[Text, ...]
    width: float
    above: float
    below: float


@lru_cache(maxsize=1 << 12)
def _row(*texts: Text) -> _Row:
    return _Row(
        texts=texts,
        width=sum(_width(text) for text in texts) + FIGURE / 2 * (len(texts) - 1),
        above=max(text_ink(text.words, text.height, bold=text.bold).above for text in texts),
        below=max(text_box(text).bottom for text in texts),
    )


def letter_piece(piece: Piece, taken: Sequence[Box]) -> tuple[Label, ...]:
    """Return the lettering of a piece, or nothing where its code finds no room."""
    room = piece.box.grown(-EDGE)
    middle = ((room.left + room.right) / 2, (room.top + room.bottom) / 2 - ARROW_ROOM)
    near = [wide for box in taken if (wide := box.grown(APART)).meets(room)]
    for rows, is_upright in _choices(piece, room):
        width = max(row.width for row in rows)
        height = sum(row.above + row.below for row in rows) + BETWEEN * (len(rows) - 1)
        if is_upright:
            width, height = height, width
        place = find_room(room, width, height, near, middle)
        if place is not None:
            return _set(rows, place, is_upright=is_upright)
    return ()


def lead_to_piece(
    piece: Piece, within: Box, taken: Sequence[Box], lines: Sequence[Box], others: Sequence[Box]
) -> Label | None:
    """Return the code of a piece beside it, with a leader; None where there is no room at all.

    Args:
        piece: The piece.
        within: The drawing with the white round it.
        taken: Where something stands already.
        lines: Lines, as thin boxes.
        others: All parts; a code inside one would be read as that one's, so they are kept out
            as long as there is room elsewhere.
    """
    box = piece.box
    starts = [
        (box.left + across * box.width, box.top + down * box.height)
        for down in SHARES
        for across in SHARES
    ]
    for height, areas in ((FIGURE, others), (NOTE, others), (FIGURE, [box]), (NOTE, [box])):
        label = find_leader(_code(piece, height), starts, within, taken, lines, areas)
        if label is not None:
            return label
    return None


def _choices(piece: Piece, room: Box) -> Iterator[tuple[tuple[_Row, ...], bool]]:
    """Yield what might be lettered, best first; each level, and then upright."""
    for height in CODE_HEIGHTS:
        if not piece.least <= height <= min(piece.tallest, room.width, room.height):
            continue
        for is_named in (True, False) if piece.name else (False,):
            for size_height in SIZE_HEIGHTS if piece.size else ():
                for is_upright in (False, True):
                    run = room.height if is_upright else room.width
                    for share in (1.0, 0.7) if is_named else (1.0,):
                        rows = _stacked(piece, height, size_height, share * run * is_named)
                        if rows:
                            yield rows, is_upright
                if not is_named and size_height <= height:
                    in_line = _row(_code(piece, height), _size(piece, size_height))
                    yield (in_line,), False
                    yield (in_line,), True
        yield (_row(_code(piece, height)),), False
        yield (_row(_code(piece, height)),), True


def _stacked(
    piece: Piece, height: float, size_height: float, name_width: float
) -> tuple[_Row, ...]:
    """Return code, size and name below each other; nothing where the name needs too many lines.

    Args:
        piece: The piece.
        height: Of its code.
        size_height: Of its size.
        name_width: Width for the name, 0 to leave it out.
    """
    rows = [_row(_code(piece, height)), _row(_size(piece, size_height))]
    if name_width:
        lines = wrap(piece.name, name_width, NOTE)
        if len(lines) > NAME_LINES:
            return ()
        rows += [_row(Text(x=0, y=0, words=line, height=NOTE)) for line in lines]
    return tuple(rows)


def _code(piece: Piece, height: float) -> Text:
    return Text(x=0, y=0, words=printable(piece.code), height=height, role=Role.CODE, bold=True)


def _size(piece: Piece, height: float) -> Text:
    return Text(x=0, y=0, words=printable(piece.size), height=height)


def _width(text: Text) -> float:
    return text_width(text.words, text.height, bold=text.bold)


def _set(rows: Sequence[_Row], place: Box, *, is_upright: bool) -> tuple[Label, ...]:
    """Return the rows centred in a place of just their size."""
    labels = []
    across = 0.0
    for row in rows:
        baseline = across + row.above
        run = ((place.height if is_upright else place.width) - row.width) / 2
        for text in row.texts:
            x, y = place.left + run, place.top + baseline
            if is_upright:
                x, y = place.left + baseline, place.bottom - run
            here = replace(text, x=x, y=y, is_upright=is_upright)
            labels.append(Label(text=here, taken=(text_box(here).grown(0.6),)))
            run += _width(text) + FIGURE / 2
        across = baseline + row.below + BETWEEN
    return tuple(labels)
