"""Labels in the order of cutting: equal cards, to cut out or to copy on to masking tape.

A label is stuck on before the cut that frees its part, on the face that ends up hidden, with its
arrow up as the part stands in the finished work.
"""

from collections.abc import Iterator, Sequence

from plans.pages.blocks import Block, moved
from plans.pages.boxes import Box
from plans.pages.fonts import printable, text_width
from plans.pages.frame import Draft, body_room
from plans.pages.lettering import BIG, FIGURE, LINE_STEP, NOTE, fit, shorten, wrap
from plans.pages.paper import Paper
from plans.pages.rows import blank
from plans.pages.shapes import Anchor, Line, LineKind, Role, Shape, Text, TickBox
from plans.pages.sheet_marks import grain_arrow
from plans.pages.strokes import arrow_head
from plans.plan import Plan
from plans.sections.labels import Label

COLUMNS = 2
LEAST_HEIGHT = 50.0
CODE = 11.0
NAME = 3.6
INSET = 3.0
SIDE = 29.0  # width of the column with the arrows at the right of a card
SIDE_END = 27.0  # and how far down it reaches
STEP = LINE_STEP * NOTE
LEAST_STEP = 1.3 * NOTE  # to the last line, which stands apart anyway
ARROW = 9.0


def labels_pages(plan: Plan, paper: Paper) -> tuple[Draft, ...]:
    """Return pages of labels, as many cards on each as keep their height."""
    room = body_room(paper)
    rows = int(room // LEAST_HEIGHT)
    width, height = paper.body_width / COLUMNS, room / rows
    each = rows * COLUMNS
    return tuple(
        Draft(
            title="Labels",
            beside="on the hidden face, before the freeing cut",
            paper=paper,
            body=_cards(plan.labels[start : start + each], plan.fingerprint, width, height),
        )
        for start in range(0, len(plan.labels), each)
    )


def _cards(labels: Sequence[Label], fingerprint: str, width: float, height: float) -> Block:
    shapes: list[Shape] = []
    for place, label in enumerate(labels):
        down, over = divmod(place, COLUMNS)
        shapes += moved(_card(label, fingerprint, width, height), over * width, down * height)
    used = -(-len(labels) // COLUMNS)
    for y in (height * line for line in range(used + 1)):
        shapes.append(Line(x1=0, y1=y, x2=COLUMNS * width, y2=y, kind=LineKind.SCISSORS))
    for x in (width * line for line in range(COLUMNS + 1)):
        shapes.append(Line(x1=x, y1=0, x2=x, y2=used * height, kind=LineKind.SCISSORS))
    return Block(height=used * height, shapes=tuple(shapes))


def _card(label: Label, fingerprint: str, width: float, height: float) -> tuple[Shape, ...]:
    upper = width - 2 * INSET - SIDE
    foot = height - 1.6
    name, size = printable(label.name), printable(label.size)
    name_height = fit(name, upper, NAME, NOTE, bold=True) or NOTE
    size_height = fit(size, upper, FIGURE, NOTE, bold=True) or NOTE
    return (
        *_head(label, upper),
        *(_date(width - INSET) if _is_offcut(label) else _directions(width - INSET)),
        Text(
            x=INSET,
            y=20.6,
            words=shorten(name, upper, name_height, bold=True),
            height=name_height,
            bold=True,
        ),
        Text(
            x=INSET,
            y=27.2,
            words=shorten(size, upper, size_height, bold=True),
            height=size_height,
            bold=True,
        ),
        *_lower(label, 27.2 + STEP, foot - LEAST_STEP, width - 2 * INSET),
        Text(x=INSET, y=foot, words=shorten(label.origin, width / 2, NOTE), height=NOTE),
        Text(
            x=width - INSET,
            y=foot,
            words=printable(f"plan {fingerprint}"),
            height=NOTE,
            anchor=Anchor.END,
        ),
    )


def _head(label: Label, room: float) -> tuple[Text, ...]:
    """Return the code, and beside it which copy it is and how far its size can be trusted."""
    code = printable(label.code)
    height = fit(code, room, CODE, BIG, bold=True) or BIG
    beside = INSET + text_width(code, height, bold=True) + 3.0
    baseline = INSET - 0.6 + CODE
    rest = INSET + room + 3.0 - beside
    status = wrap(label.status.upper(), rest, NOTE, bold=True)[:2]
    texts = [Text(x=INSET, y=baseline, words=code, height=height, role=Role.CODE, bold=True)]
    for number, line in enumerate(reversed(status)):
        y = baseline - STEP * number
        texts.append(Text(x=beside, y=y, words=line, height=NOTE, bold=True))
    if label.copy:
        y = baseline - STEP * max(1, len(status))
        texts.append(Text(x=beside, y=y, words=printable(label.copy), height=NOTE))
    return tuple(texts)


def _lower(label: Label, first: float, last: float, width: float) -> Iterator[Shape]:
    """Yield the lines below the size, the most needed first, as far as there is room."""
    grain = printable(label.grain)
    yield Text(x=INSET, y=first, words=grain, height=NOTE)
    used = text_width(grain, NOTE) + 3.0
    if label.grain_along_length is not None:
        yield from _grain(label, INSET + used, first - NOTE / 2)
        used += ARROW + 2.5
    lines = []
    if label.face:
        face = printable(label.face)
        if used + text_width(face, NOTE) <= width:
            yield Text(x=INSET + width, y=first, words=face, height=NOTE, anchor=Anchor.END)
        else:
            lines.append((face, False))
    marks = [f"blank {label.blank}"] if label.blank else []
    marks += label.allowances
    marks += [f"≠ {', '.join(label.look_alikes)}"] if label.look_alikes else []
    if marks:
        lines.append((";  ".join(marks), True))
    rest = "; ".join([*([label.note] if label.note else []), *label.to_do])
    room = int((last - first) / STEP) - len(lines)
    wrapped = wrap(rest, width, NOTE) if rest else ()
    if len(wrapped) > room > 0:
        wrapped = (*wrapped[: room - 1], shorten(" ".join(wrapped[room - 1 :]), width, NOTE))
    lines += [(line, False) for line in wrapped[: max(room, 0)]]
    for number, (words, is_bold) in enumerate(lines, start=1):
        text = shorten(words, width, NOTE, bold=is_bold)
        yield Text(x=INSET, y=first + STEP * number, words=text, height=NOTE, bold=is_bold)


def _is_offcut(label: Label) -> bool:
    return not label.copy


def _grain(label: Label, x: float, y: float) -> tuple[Shape, ...]:
    """Return the grain arrow: level along the part's length, upright across it."""
    if label.grain_along_length:
        return grain_arrow(Box(x, y - 0.9, x + ARROW, y + 0.9))
    return grain_arrow(Box(x, y - 2.1, x + 1.8, y + 2.1))


def _directions(right: float) -> tuple[Shape, ...]:
    """Return an arrow for the way up, and boxes to tick for the side that faces the front."""
    middle, top = right - SIDE / 2 + 1.0, INSET
    return (
        arrow_head(middle - 3.0, top, (0, -1), 6.0),
        Line(x1=middle - 3.0, y1=top + 5.0, x2=middle - 3.0, y2=top + 10.0, kind=LineKind.CUT),
        Text(x=middle + 1.5, y=top + 9.5, words="UP", height=NOTE, bold=True),
        Text(x=middle, y=top + 15.5, words="front", height=NOTE, anchor=Anchor.MIDDLE),
        TickBox(x=middle - 8.0, y=top + 17.5, size=6.0),
        arrow_head(middle - 12.0, top + 20.5, (-1, 0), 3.0),
        TickBox(x=middle + 2.0, y=top + 17.5, size=6.0),
        arrow_head(middle + 12.0, top + 20.5, (1, 0), 3.0),
    )


def _date(right: float) -> tuple[Shape, ...]:
    """Return a blank for the day on which an offcut was put by."""
    left = right - SIDE + 4.0
    return (
        Text(x=left, y=INSET + NOTE, words="date", height=NOTE),
        blank(left, INSET + 12.0, SIDE - 4.0),
    )
