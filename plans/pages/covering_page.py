"""Covering and cloth: the pieces on the roll, and the order of work."""

from collections.abc import Iterator

from plans.pages.blocks import Block, Section, moved, space
from plans.pages.fonts import printable
from plans.pages.lettering import FIGURE, NOTE, fit, heading, paragraph
from plans.pages.paper import Paper
from plans.pages.rows import TICK, TICK_COLUMN, dashed, rule, ticked
from plans.pages.shapes import (
    Anchor,
    Hatch,
    HatchKind,
    Line,
    LineKind,
    Rectangle,
    Role,
    Shape,
    Text,
    TickBox,
)
from plans.plan import Plan
from plans.sections.covering import RollPiece, RollPlan

TITLE = "Covering"
HIGHEST = 85.0
LABEL = 6.0
NUMBER = 12.0
SIZE = 58.0


def covering_section(plan: Plan, paper: Paper) -> Section:
    """Return the rolls; nothing where nothing is covered from a roll."""
    if not plan.bench.rolls:
        return Section(title=TITLE, blocks=())
    width = paper.body_width
    cautions = [caution.short for caution in plan.cautions if "covering" in caution.where]
    blocks: list[Block] = [dashed(line, width, bold=True) for line in cautions]
    for roll in plan.bench.rolls:
        blocks += _roll(roll, width)
    return Section(title=TITLE, blocks=tuple(blocks))


def _roll(roll: RollPlan, width: float) -> list[Block]:
    title = f"{roll.title[:1].upper()}{roll.title[1:]} of {roll.design}"
    return [
        space(1.0),
        heading(title, width),
        paragraph(roll.order, width, bold=True, glued=True),
        _drawing(roll, width),
        paragraph("Across the roll × along it:", width, glued=True),
        *(_piece(piece, width) for piece in roll.pieces),
        space(2.0),
        heading("Order of work", width),
        *(ticked(line, width) for line in roll.work),
    ]


def _drawing(roll: RollPlan, width: float) -> Block:
    """Return the roll with its beginning at the left; what no piece takes is hatched as waste."""
    scale = min((width - LABEL - 1.0) / roll.length, HIGHEST / roll.width)
    long, high = roll.length * scale, roll.width * scale
    laid = roll.laid_out * scale
    shapes: list[Shape] = [
        Rectangle(x=0.0, y=0.0, width=long, height=high, kind=LineKind.SHEET_EDGE),
        Line(x1=laid, y1=0.0, x2=laid, y2=high, kind=LineKind.SHEET_EDGE),
        *(shape for piece in roll.pieces for shape in _drawn(piece, scale)),
        Text(
            x=-1.8, y=high / 2, words=printable(roll.width_text), height=NOTE,
            anchor=Anchor.MIDDLE, is_upright=True,
        ),
        Text(
            x=laid / 2, y=high + 1.8 + NOTE, words=printable(f"laid out {roll.laid_out_text}"),
            height=NOTE, anchor=Anchor.MIDDLE,
        ),
    ]  # fmt: skip
    if long - laid > 1.0:
        shapes.append(Hatch(x=laid, y=0.0, width=long - laid, height=high, kind=HatchKind.WASTE))
    return Block(height=high + NOTE + 6.0, shapes=tuple(moved(shapes, LABEL, 2.0)))


def _drawn(piece: RollPiece, scale: float) -> Iterator[Shape]:
    x, y = piece.from_end * scale, piece.from_edge * scale
    long, high = piece.along * scale, piece.across * scale
    yield Rectangle(x=x, y=y, width=long, height=high, kind=LineKind.CUT)
    words = f"{piece.number} {piece.cabinet}".strip()
    height = fit(words, long - 2.0, FIGURE, NOTE, bold=True)
    if height is not None and high > height + 2.0:
        yield Text(
            x=x + long / 2, y=y + high / 2 + height / 2, words=words, height=height, bold=True,
            anchor=Anchor.MIDDLE, role=Role.NOTE,
        )  # fmt: skip


def _piece(piece: RollPiece, width: float) -> Block:
    name = paragraph(
        f"cabinet {piece.cabinet}: {piece.name}", width - TICK_COLUMN - NUMBER - SIZE,
        x=TICK_COLUMN + NUMBER + SIZE,
    )  # fmt: skip
    seam = paragraph(
        f"seam: {piece.seam}", width - TICK_COLUMN - NUMBER - SIZE, x=TICK_COLUMN + NUMBER + SIZE
    )
    size = printable(piece.size)
    high = fit(size, SIZE - 3.0, FIGURE, NOTE) or NOTE
    return Block(
        height=max(name.height + seam.height, TICK + 1.0) + 2.2,
        shapes=(
            rule(width),
            TickBox(x=0.25, y=1.4, size=TICK),
            Text(x=TICK_COLUMN, y=FIGURE + 2.2, words=piece.number, height=FIGURE, bold=True),
            Text(x=TICK_COLUMN + NUMBER, y=FIGURE + 2.2, words=size, height=high),
            *moved(name.shapes, 0.0, 0.6),
            *moved(seam.shapes, 0.0, name.height + 0.6),
        ),
    )
