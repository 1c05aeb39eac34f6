"""A strip of small drawings: for every setting the piece in hand, its cut and its supports."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import ceil

from nesting.layout import Direction, Rect
from plans.pages.blocks import Block, moved
from plans.pages.fonts import printable, text_width
from plans.pages.lettering import NOTE, fit, heading
from plans.pages.shapes import Line, LineKind, Rectangle, Role, Shape, Text
from plans.sections.cut_table import CutRow
from plans.sections.sheet_view import CutView, SheetView

EACH = 8  # drawings beside each other
MOST = 9  # where that saves a row
BETWEEN = 3.0
NUMBER = 4.0
NUMBER_STEP = 5.9  # from the top of a cell to its drawing
DRAWING = 9.0  # height of the tallest drawing
CELL = 18.7
OVERHANG = 1.2  # battens stick out of the work


@dataclass(frozen=True, slots=True, kw_only=True)
class Lying:
    """How the piece of one setting lies.

    Attributes:
        numbers: The cuts of the setting, "4" or "4 to 6".
        hold: Code of the first piece in hand.
        piece: Where that piece lies on the sheet, as drawn.
        cut: Its cut.
    """

    numbers: str
    hold: str
    piece: Rect
    cut: CutView


def support_strip(view: SheetView, width: float) -> list[Block]:
    """Return the drawings, a row of them a block; nothing where no cut has its supports."""
    cells = list(_lyings(view))
    if not cells:
        return []
    each = per_row(len(cells))
    step = (width + BETWEEN) / each
    rows = [cells[start : start + each] for start in range(0, len(cells), each)]
    return [
        heading(
            "How each piece lies: dashed, the battens under it; heavy, the cut",
            width,
            height=NOTE,
        ),
        *(
            Block(
                height=CELL,
                shapes=tuple(
                    shape
                    for place, lying in enumerate(row)
                    for shape in moved(_cell(lying, step - BETWEEN), place * step, 0.0)
                ),
            )
            for row in rows
        ),
    ]


def per_row(count: int) -> int:
    """Return how many drawings of so many stand beside each other: one more to save a row."""
    return MOST if ceil(count / MOST) < ceil(count / EACH) else EACH


def _lyings(view: SheetView) -> Iterator[Lying]:
    """Yield the first piece of every setting that lies on battens."""
    pieces = _pieces_in_hand(view)
    settings: dict[int, list[tuple[CutRow, CutView]]] = {}
    for row, cut in zip(view.rows, view.cuts, strict=True):
        settings.setdefault(row.setting, []).append((row, cut))
    for cuts in settings.values():
        first, last = cuts[0][0], cuts[-1][0]
        shown = next(((row, cut) for row, cut in cuts if cut.supports), None)
        if shown:
            yield Lying(
                numbers=first.number if len(cuts) == 1 else f"{first.number} to {last.number}",
                hold=shown[0].hold,
                piece=pieces[shown[1].number],
                cut=shown[1],
            )


def _pieces_in_hand(view: SheetView) -> dict[str, Rect]:
    """Return for every cut the piece that it goes through, as drawn."""
    lying = [Rect(x=0, y=0, length=view.length, width=view.width)]
    in_hand: dict[str, Rect] = {}
    for cut in view.cuts:
        piece = next(piece for piece in lying if _holds(piece, cut.band))
        in_hand[cut.number] = piece
        lying.remove(piece)
        lying += _halves(piece, cut)
    return in_hand


def _holds(piece: Rect, band: Rect) -> bool:
    return (
        piece.x <= band.x
        and piece.y <= band.y
        and band.x + band.length <= piece.x + piece.length
        and band.y + band.width <= piece.y + piece.width
    )


def _halves(piece: Rect, cut: CutView) -> tuple[Rect, Rect]:
    """Return what is left of a piece on either side of a cut."""
    band = cut.band
    if cut.direction is Direction.RIP:
        beyond = band.y + band.width
        return (
            replace(piece, width=band.y - piece.y),
            replace(piece, y=beyond, width=piece.y + piece.width - beyond),
        )
    beyond = band.x + band.length
    return (
        replace(piece, length=band.x - piece.x),
        replace(piece, x=beyond, length=piece.x + piece.length - beyond),
    )


def _cell(lying: Lying, width: float) -> Iterator[Shape]:
    numbers, hold = lying.numbers, printable(lying.hold)
    height = fit(numbers, width - text_width(hold, NOTE) - 2.0, NUMBER, NOTE, bold=True) or NOTE
    end = text_width(numbers, height, bold=True)
    yield Text(x=0, y=NUMBER, words=numbers, height=height, role=Role.CUT_NUMBER, bold=True)
    if end + 2.0 + text_width(hold, NOTE) <= width:
        yield Text(x=end + 2.0, y=NUMBER, words=hold, height=NOTE, role=Role.CODE)
    piece, cut = lying.piece, lying.cut
    room = width - 2 * OVERHANG
    ratio = min(room / piece.length, DRAWING / piece.width)
    left, top = OVERHANG, NUMBER_STEP + OVERHANG
    yield Rectangle(
        x=left,
        y=top,
        width=piece.length * ratio,
        height=piece.width * ratio,
        kind=LineKind.SHEET_EDGE,
    )
    for rect, kind, over in (
        *((batten, LineKind.SUPPORT, OVERHANG) for batten in cut.supports),
        (cut.band, LineKind.NEXT_CUT, 0.0),
    ):
        x, y = left + (rect.x - piece.x) * ratio, top + (rect.y - piece.y) * ratio
        if cut.direction is Direction.RIP:
            y += rect.width * ratio / 2
            yield Line(x1=x - over, y1=y, x2=x + rect.length * ratio + over, y2=y, kind=kind)
        else:
            x += rect.length * ratio / 2
            yield Line(x1=x, y1=y - over, x2=x, y2=y + rect.width * ratio + over, kind=kind)
