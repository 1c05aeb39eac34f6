"""The last page: what should be left over, and lines for what went wrong."""

from collections.abc import Sequence

from plans.pages.blocks import Block, flow, moved, space, stack
from plans.pages.fonts import printable
from plans.pages.frame import Draft, body_room
from plans.pages.lettering import FIGURE, NOTE, fit, heading, paragraph
from plans.pages.paper import Paper
from plans.pages.rows import TICK, TICK_COLUMN, blank, rule
from plans.pages.shapes import Role, Shape, Text, TickBox
from plans.plan import Plan
from plans.sections.fallbacks import FallbackRow
from plans.sections.offcuts import OffcutRow

CODE = 7.0
SIZE_X = 34.0
REST_X = 101.0
LOG_STEP = 10.0
LEAST_LINES = 4
MOST_LINES = 14
MOST_FALLBACKS = 12  # kinds of part, the largest; smaller ones are soon cut again
MOST_NAMED = 4  # codes of one kind
MOST_CODES = 24  # of parts that could be cut again; a big job has hundreds that are alike


def offcuts_pages(plan: Plan, paper: Paper) -> tuple[Draft, ...]:
    """Return the offcuts and the log."""
    width, room = paper.body_width, body_room(paper)
    blocks: list[Block] = [heading("What should be left", width)]
    if plan.offcuts:
        blocks += [_offcut(row, width) for row in plan.offcuts]
    else:
        blocks.append(paragraph("Nothing worth keeping.", width))
    blocks += [space(3.0), *_fallbacks(plan.workshop.fallbacks, width)]
    pages = list(flow(blocks, room))
    log_head = stack([space(3.0), heading("What went wrong", width), _log_head()])
    lines = int((room - pages[-1].height - log_head.height) // LOG_STEP)
    if lines < LEAST_LINES:
        pages.append(Block(height=0.0))
        lines = MOST_LINES
    log = [Block(height=LOG_STEP, shapes=_log_line(width)) for _ in range(min(lines, MOST_LINES))]
    pages[-1] = stack([pages[-1], log_head, *log])
    return tuple(Draft(title="Offcuts and log", paper=paper, body=body) for body in pages)


def _offcut(row: OffcutRow, width: float) -> Block:
    size = printable(row.size)
    size_height = fit(size, REST_X - SIZE_X - 2.0, FIGURE, NOTE) or NOTE
    code = printable(row.code)
    code_height = fit(code, SIZE_X - TICK_COLUMN - 2.0, CODE, FIGURE, bold=True) or FIGURE
    more = len(row.could_be) - MOST_CODES
    again = ", ".join(row.could_be[:MOST_CODES]) + (f" and {more} more" if more > 0 else "")
    rest = stack(
        paragraph(words, width - REST_X, x=REST_X)
        for words in (
            f"{row.material}, {row.grain}",
            f"sheet {row.sheet}, cut {row.cut}; cut edges: {row.good_edges}",
            f"could become {again} again" if again else "too small for any part again",
        )
    )
    shapes: tuple[Shape, ...] = (
        rule(width),
        TickBox(x=0.25, y=2.0, size=TICK),
        Text(x=TICK_COLUMN, y=8.8, words=code, height=code_height, role=Role.CODE, bold=True),
        Text(x=SIZE_X, y=8.8, words=size, height=size_height, role=Role.FIGURE),
        *moved(rest.shapes, 0.0, 0.8),
    )
    return Block(height=max(rest.height, 10.0) + 2.5, shapes=shapes)


def _fallbacks(rows: Sequence[FallbackRow], width: float) -> list[Block]:
    """Return what spoilt parts can still become, largest first; nothing where none can."""
    if not rows:
        return []
    return [
        heading("If a part is spoilt, cut from it instead", width),
        *(_fallback(row, width) for row in rows[:MOST_FALLBACKS]),
    ]


def _fallback(row: FallbackRow, width: float) -> Block:
    more = len(row.codes) - MOST_NAMED
    codes = ", ".join(row.codes[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")
    spoilt = paragraph(f"{codes}: {row.name}, {row.size}", REST_X - 16.0, bold=True)
    becomes = paragraph(row.becomes, width - REST_X + 12.0, x=REST_X - 12.0)
    return Block(
        height=max(spoilt.height, becomes.height) + 1.6,
        shapes=(rule(width), *moved((*spoilt.shapes, *becomes.shapes), 0.0, 0.6)),
    )


LOG = ((0.0, "piece"), (30.0, "size that is left"), (84.0, "what happened"))


def _log_head() -> Block:
    return Block(
        height=6.0,
        shapes=tuple(Text(x=x, y=4.2, words=words, height=NOTE) for x, words in LOG),
        is_glued=True,
    )


def _log_line(width: float) -> tuple[Shape, ...]:
    ends = (26.0, 80.0, width)
    return tuple(blank(x, LOG_STEP - 0.5, end - x) for (x, _), end in zip(LOG, ends, strict=True))
