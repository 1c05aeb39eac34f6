"""The order of work: the sessions as a strip, each with its cuts, minutes and lifts."""

from collections.abc import Iterator, Sequence

from plans.pages.blocks import Block, Section, moved, space
from plans.pages.fonts import printable, text_width
from plans.pages.lettering import FIGURE, NOTE, fit, paragraph
from plans.pages.paper import Paper
from plans.pages.rows import TICK, TICK_COLUMN, dashed, rule
from plans.pages.shapes import Anchor, Line, LineKind, Rectangle, Role, Shape, Text, TickBox
from plans.plan import Plan
from plans.sections.sessions import SessionRow

TITLE = "Order of work"
STRIP = 9.0
STRIP_ROOM = 17.0
CUTS_X = 40.0
WORDS_X = 104.0
INTRODUCTION = (
    "The work in sessions. Each but the last ends at a thick rule in the cut table, where what "
    "lies about is small; the strip shows how long they are beside each other, and the last cut "
    "of each."
)


def work_section(plan: Plan, paper: Paper) -> Section:
    """Return the sessions; empty where the job does not ask for them."""
    rows = plan.workshop.sessions
    if not rows:
        return Section(title=TITLE, blocks=())
    width = paper.body_width
    cautions = [caution.short for caution in plan.cautions if "work" in caution.where]
    return Section(
        title=TITLE,
        blocks=(
            paragraph(INTRODUCTION, width, glued=True),
            _strip(rows, width),
            *(_session(row, width) for row in rows),
            space(1.0),
            *(dashed(line, width, bold=True) for line in cautions),
        ),
    )


def _strip(rows: Sequence[SessionRow], width: float) -> Block:
    """Return the sessions in a row, as long as they take; a number that has no room is left out."""
    minutes = [max(1, int(row.minutes)) for row in rows]
    shapes: list[Shape] = []
    x, last_end = 0.25, -1.0
    room = width - 0.5
    for row, each in zip(rows, minutes, strict=True):
        long = room * each / sum(minutes)
        shapes.append(Rectangle(x=x, y=2.0, width=long, height=STRIP, kind=LineKind.BOX))
        number = Text(
            x=x + long / 2, y=8.6, words=row.number, height=FIGURE, bold=True, anchor=Anchor.MIDDLE
        )
        if text_width(row.number, FIGURE, bold=True) + 2.0 <= long:  # clear of the thick rules
            shapes.append(number)
        x += long
        shapes.append(Line(x1=x, y1=2.0, x2=x, y2=2.0 + STRIP, kind=LineKind.STOP))
        start = x - text_width(row.last, NOTE)
        if start > last_end + 2.0:
            end = Text(x=x, y=STRIP_ROOM - 1.4, words=row.last, height=NOTE, anchor=Anchor.END)
            shapes.append(end)
            last_end = x
    return Block(height=STRIP_ROOM + 1.5, shapes=tuple(shapes))


def _session(row: SessionRow, width: float) -> Block:
    """Return one session: its number, its cuts, how long and how heavy it is."""
    cuts = printable(row.first if row.first == row.last else f"{row.first} to {row.last}")
    height = fit(cuts, WORDS_X - CUTS_X - 3.0, FIGURE, NOTE, bold=True) or NOTE
    words = paragraph(_say(row), width - WORDS_X, x=WORDS_X)
    shapes: tuple[Shape, ...] = (
        rule(width),
        TickBox(x=0.25, y=1.4, size=TICK),
        Text(x=TICK_COLUMN, y=7.0, words=f"session {row.number}", height=NOTE, bold=True),
        Text(x=CUTS_X, y=7.2, words=cuts, height=height, bold=True, role=Role.FIGURE),
        *moved(words.shapes, 0.0, 0.8),
    )
    return Block(height=max(words.height + 1.4, TICK + 2.8), shapes=shapes)


def _say(row: SessionRow) -> str:
    return " ".join(_sentences(row))


def _sentences(row: SessionRow) -> Iterator[str]:
    settings = "1 setting" if row.settings == "1" else f"{row.settings} settings"
    lifts = "no heavy lift" if row.lifts == "0" else f"{row.lifts} for two people"
    yield f"About {row.minutes} minutes, {row.sawn}, {settings}, {lifts}."
    yield row.text
