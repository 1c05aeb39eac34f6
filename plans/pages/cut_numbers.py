"""Where the number of each cut stands in the drawing.

It stands in a gap of its line, like the height of a contour on a map, or at the end of a leader
where the line has no room for it.
"""

from collections.abc import Sequence

from plans.pages.boxes import Box, text_box
from plans.pages.fonts import text_width
from plans.pages.leaders import Label, find_leader
from plans.pages.lettering import BIG, FIGURE, NOTE, centred
from plans.pages.shapes import Role, Text
from plans.pages.sheet_scale import CutLine

CLEAR = 0.8  # white round a number
LINE_HALF = 0.7
HEIGHTS = (BIG, 8.0, 6.5, FIGURE)
SHARE = 0.10  # of the drawing that all numbers together may take
STEP = 1.0
END = 3.0  # a number stands this far from the end of its line, where it can
SHARES = tuple(place / 20 for place in (10, 7, 13, 4, 16, 2, 18, 9, 11, 5, 15, 1, 19))


def place_numbers(
    lines: Sequence[CutLine],
    numbered: frozenset[str],
    within: Box,
    taken: Sequence[Box],
    pieces: Sequence[Box],
) -> tuple[Label, ...]:
    """Return the number of every cut, as large as the drawing and the place allow.

    Args:
        lines: All cuts of the drawing.
        numbered: The numbers to be placed.
        within: The drawing with the white round it.
        taken: Where something stands already.
        pieces: Parts and offcuts, whose codes need room as well.

    Returns:
        A label for each number that found room, the shortest lines first, because they have the
        fewest places to choose from.
    """
    wanted = sorted(
        (line for line in lines if line.number in numbered),
        key=lambda line: (line.end - line.start, len(line.number), line.number),
    )
    heights = _heights(wanted, within)
    walls = [(line, line.box(LINE_HALF)) for line in lines]
    full = list(taken)
    labels = []
    for line in wanted:
        others = [wall for other, wall in walls if other is not line]
        label = _place(line, _fair_heights(line, heights, pieces), within, full, others)
        if label is not None:
            labels.append(label)
            full += label.taken
    return tuple(labels)


def _heights(lines: Sequence[CutLine], within: Box) -> tuple[float, ...]:
    """Return the heights to try: none so large that the numbers crowd out the parts."""
    room = SHARE * within.width * within.height
    area_of_one = sum(
        (text_width(line.number, 1.0, bold=True) + 2 * CLEAR / FIGURE) for line in lines
    )
    fitting = tuple(height for height in HEIGHTS if area_of_one * height * height <= room)
    return fitting or (FIGURE,)


def _fair_heights(
    line: CutLine, heights: Sequence[float], pieces: Sequence[Box]
) -> Sequence[float]:
    """Return the heights at which a number leaves half of every piece beside it free."""
    beside = [piece for piece in pieces if piece.meets(line.box(2 * LINE_HALF))]
    narrowest = min((min(piece.width, piece.height) for piece in beside), default=FIGURE)
    fair = [height for height in heights if height + 2 * CLEAR <= narrowest]
    return fair or [FIGURE]


def _place(
    line: CutLine,
    heights: Sequence[float],
    within: Box,
    taken: Sequence[Box],
    others: Sequence[Box],
) -> Label | None:
    for height in heights:
        label = _in_the_line(line, height, within, taken, others)
        if label is not None:
            return label
    starts = [line.point(line.start + share * (line.end - line.start)) for share in SHARES]
    text = _text(line, FIGURE)
    led = find_leader(text, starts, within, taken, [*others, line.box(LINE_HALF)])
    return led or _in_the_line(line, NOTE, within, taken, others)


def _in_the_line(
    line: CutLine, height: float, within: Box, taken: Sequence[Box], others: Sequence[Box]
) -> Label | None:
    plain = _text(line, height)
    size = text_box(plain).grown(CLEAR)
    half = (size.height if line.is_upright else size.width) / 2
    near = [box for box in (*taken, *others) if box.meets(line.box(max(size.width, size.height)))]
    first, last = line.start + half, line.end - half
    along = min(END, (last - first) / 2)
    while first + along <= last:
        # A trim's number stands at its far end, away from the marks of the home corner.
        at = last - along if line.is_trim else first + along
        text = centred(*line.point(at), plain)
        box = text_box(text).grown(CLEAR)
        if within.holds(box) and not any(box.meets(other) for other in near):
            return Label(text=text, taken=(box,), is_open=True)
        along += STEP
    return None


def _text(line: CutLine, height: float) -> Text:
    return Text(x=0, y=0, words=line.number, height=height, role=Role.CUT_NUMBER, bold=True)
