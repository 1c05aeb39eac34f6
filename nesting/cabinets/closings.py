"""Baffles and backs: what they take of the depth, and of the opening that they go into."""

from dataclasses import dataclass

from nesting.cabinets.boards import Board
from nesting.cabinets.design import Closing, Covering, Fit, Fitted, Margins
from nesting.cabinets.space import Axis, Interval
from nesting.cabinets.sums import Term, add
from nesting.lengths import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedClosing:
    """A baffle or back with its place along the depth, counted from its own end of the cabinet.

    Attributes:
        name: "baffle" or "back".
        fit: Inset, planted, or none: then it takes no room.
        board: What it is cut from.
        real: Its measured thickness.
        before: From the edge of the carcass to the panel's face: set-back and covering.
        behind: Covering between the panel and the frame that it rests against.
        clear: Covering and clearance on every side, taken off the opening.
        extra: What is taken off besides, each side separately.
        is_wrapped: Whether the panel itself is covered.
    """

    name: str
    fit: Fit
    board: Board
    real: Length
    before: tuple[Term, ...] = ()
    behind: tuple[Term, ...] = ()
    clear: tuple[Term, ...] = ()
    extra: Margins = Margins()
    is_wrapped: bool = False

    @property
    def shortens(self) -> tuple[Term, ...]:
        """What it takes off the depth of the carcass: its thickness where it is planted."""
        return self._thickness if self.fit is Fit.PLANTED else ()

    @property
    def to_inside(self) -> tuple[Term, ...]:
        """What stands between the outside and the inside."""
        return () if self.fit is Fit.NONE else self.before + self._thickness

    @property
    def to_frame(self) -> tuple[Term, ...]:
        """What stands between the edge of the carcass and the frame."""
        return self.to_inside + self.behind

    @property
    def through(self) -> Interval:
        """Where the panel begins and ends, counted from the outside."""
        return (add(self.before), add(self.before) + self.real)

    def clear_ends(self, axis: Axis) -> tuple[tuple[Term, ...], tuple[Term, ...]]:
        """Return what is taken off the opening at the low and the high end of an axis."""
        return clear_ends(self.clear, self.extra, axis)

    @property
    def _thickness(self) -> tuple[Term, ...]:
        return (Term(length=self.real, what=self.name),)


def clear_ends(
    clear: tuple[Term, ...], extra: Margins, axis: Axis
) -> tuple[tuple[Term, ...], tuple[Term, ...]]:
    """Return what is taken off an opening at the low and the high end of an axis.

    Args:
        clear: What is taken off on every side.
        extra: What is taken off besides, side by side.
        axis: The width or the height.
    """
    low, high = axis.ends
    return (
        (*clear, *_without_zeros([Term(length=getattr(extra, low), what=f"more at the {low}")])),
        (*clear, *_without_zeros([Term(length=getattr(extra, high), what=f"more at the {high}")])),
    )


def place_closing(
    name: str, closing: Closing | None, board: Board, real: Length, covering: Covering | None
) -> PlacedClosing:
    """Return where a baffle or back stands.

    Where it goes into a covered opening, the covering is turned in round the opening and over the
    frame. A panel that is covered itself has one more layer on its face, on its edges, and, turned
    over, where it rests on the frame.

    Args:
        name: "baffle" or "back".
        closing: What the design says; None for nothing.
        board: Its board, the carcass's where it has none of its own.
        real: Measured thickness of that board.
        covering: The covering of the cabinet, None for none.
    """
    if closing is None or closing.fit is not Fit.INSET:
        fit = Fit.NONE if closing is None else closing.fit
        return PlacedClosing(name=name, fit=fit, board=board, real=real)
    before = [Term(length=closing.set_back, what="set-back")]
    behind, clear = [], []
    if covering is not None and closing.fitted is Fitted.AFTER_COVERING:
        layer = covering.thickness
        own = layer if closing.wrapped else 0
        before.append(Term(length=own, what=f"covering of the {name}"))
        behind.append(Term(length=own, what=f"covering of the {name} turned over"))
        behind.append(Term(length=layer, what="covering on the frame"))
        clear = list_clearance(covering, [Term(length=own, what=f"covering of the {name}")])
    return PlacedClosing(
        name=name,
        fit=Fit.INSET,
        board=board,
        real=real,
        before=_without_zeros(before),
        behind=_without_zeros(behind),
        clear=_without_zeros(clear),
        extra=closing.extra,
        is_wrapped=bool(closing.wrapped),
    )


def list_clearance(covering: Covering, own: list[Term]) -> list[Term]:
    """Return what a covered opening takes off a panel on each side.

    Args:
        covering: The covering of the cabinet.
        own: The panel's own layers: covering, cloth or piping.
    """
    return [
        Term(length=covering.lining, what="lining"),
        Term(length=covering.thickness, what="covering"),
        *own,
        Term(length=covering.ease, what="clearance"),
    ]


def _without_zeros(terms: list[Term]) -> tuple[Term, ...]:
    return tuple(term for term in terms if term.length)
