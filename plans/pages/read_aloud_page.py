"""The cuts in words, for one person who reads and another who measures and saws.

Every 6 and 9 is underlined, as in the drawings, so that the page may be held either way up.
"""

from plans.pages.blocks import Block, flow, moved, space
from plans.pages.frame import Draft, body_room
from plans.pages.lettering import FIGURE, LEAD, paragraph
from plans.pages.paper import Paper
from plans.pages.rows import TICK, TICK_COLUMN, rule
from plans.pages.shapes import Role, Shape, TickBox
from plans.sections.read_aloud import SpokenCut, make_spoken
from plans.sections.sheet_view import SheetView

HOLD_X = 52.0
INTRODUCTION = (
    "One reads a line aloud; the other says it again, does it, and says “done”. Then tick, and "
    "read the next. Figures are read sign by sign."
)


def read_aloud_pages(view: SheetView, paper: Paper) -> tuple[Draft, ...]:
    """Return the cuts of one sheet in words."""
    width = paper.body_width
    blocks = [paragraph(INTRODUCTION, width), space(2.0)]
    blocks += [_cut(cut, width) for cut in make_spoken(view)]
    return tuple(
        Draft(title=f"Read aloud, sheet {view.number}", paper=paper, body=body)
        for body in flow(blocks, body_room(paper))
    )


def _cut(cut: SpokenCut, width: float) -> Block:
    """Return one cut: its number and the piece to hold, then a line for each thing to say."""
    room = width - TICK_COLUMN
    number = paragraph(
        cut.number, HOLD_X - TICK_COLUMN, height=FIGURE, bold=True, x=TICK_COLUMN, role=Role.CODE
    )
    hold = paragraph(cut.hold, width - HOLD_X, height=FIGURE, x=HOLD_X, role=Role.CODE)
    shapes: list[Shape] = [
        rule(width),
        TickBox(x=0.25, y=1.6, size=TICK),
        *moved((*number.shapes, *hold.shapes), 0.0, 0.8),
    ]
    height = max(number.height, hold.height) + 0.8
    for words, lettering, is_bold in (
        (cut.keep, FIGURE, True),
        (cut.guide, FIGURE, False),
        (cut.gives, LEAD, False),
        (cut.remark, LEAD, True),
    ):
        if words:
            line = paragraph(
                words, room, height=lettering, bold=is_bold, x=TICK_COLUMN, role=Role.CODE
            )
            shapes += moved(line.shapes, 0.0, height)
            height += line.height
    return Block(height=height + 2.0, shapes=tuple(shapes))
