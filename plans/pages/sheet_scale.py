"""From lengths on a sheet to millimetres on paper: the one place where they become floats."""

from dataclasses import dataclass

from nesting.layout import Direction, Rect
from plans.pages.boxes import Box
from plans.sections.sheet_view import CutView, SheetView


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """A drawing's scale.

    Attributes:
        left: Of the sheet on paper.
        top: Of the sheet on paper.
        ratio: Millimetres on paper for a nanometre of sheet.
    """

    left: float
    top: float
    ratio: float

    def box(self, rect: Rect) -> Box:
        """Return where a rectangle of the sheet lies on paper."""
        return Box(
            self.left + rect.x * self.ratio,
            self.top + rect.y * self.ratio,
            self.left + (rect.x + rect.length) * self.ratio,
            self.top + (rect.y + rect.width) * self.ratio,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class CutLine:
    """A cut as a line on paper, along the middle of the wood it removes.

    Attributes:
        number: Of the cut.
        is_upright: True for a crosscut.
        at: Its x where it is upright, else its y.
        start: Where it begins along the other axis.
        end: Where it ends.
        is_trim: True for a cut that takes a raw edge off.
    """

    number: str
    is_upright: bool
    at: float
    start: float
    end: float
    is_trim: bool

    def point(self, along: float) -> tuple[float, float]:
        """Return the point of the line at a place along it."""
        return (self.at, along) if self.is_upright else (along, self.at)

    def box(self, half: float) -> Box:
        """Return the line as a thin box."""
        if self.is_upright:
            return Box(self.at - half, self.start, self.at + half, self.end)
        return Box(self.start, self.at - half, self.end, self.at + half)


def fit_sheet(view: SheetView, room: Box) -> Scale:
    """Return the scale at which a sheet fills a room as far as it can, at its top left."""
    ratio = min(room.width / view.length, room.height / view.width)
    return Scale(left=room.left, top=room.top, ratio=ratio)


def cut_line(cut: CutView, scale: Scale) -> CutLine:
    """Return a cut as a line on paper."""
    box = scale.box(cut.band)
    is_upright = cut.direction is Direction.CROSSCUT
    return CutLine(
        number=cut.number,
        is_upright=is_upright,
        at=(box.left + box.right) / 2 if is_upright else (box.top + box.bottom) / 2,
        start=box.top if is_upright else box.left,
        end=box.bottom if is_upright else box.right,
        is_trim=cut.is_trim,
    )
