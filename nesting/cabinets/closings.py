"""Baffles and backs: what they take of the depth, and of the opening that they go into."""

from dataclasses import dataclass

from nesting.cabinets.boards import Board
from nesting.cabinets.closing_design import Closing, Covering, Fit, Fitted, Margins
from nesting.cabinets.space import Axis, Interval
from nesting.cabinets.sums import Term, add
from nesting.lengths import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedClosing:
    """A baffle or back with its place along the depth, counted from its own end of the cabinet.

    Attributes:
        name: "baffle" or "back".
        fit: How it meets the carcass; none takes no room.
        board: What it is cut from.
        real: Its measured thickness.
        before: From the edge of the carcass to the panel's face: set-back and covering.
        behind: Covering between the panel and the frame or rebate that it rests against.
        clear: Covering and clearance on every side, taken off the opening.
        extra: What is taken off besides, each side separately.
        is_wrapped: Whether the panel itself is covered.
        let_in: How deep it is let into the panels of the carcass, 0 for not at all.
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
    let_in: Length = 0

    @property
    def shortens(self) -> tuple[Term, ...]:
        """What it takes off the depth of the carcass: its thickness where it is planted."""
        return self._thickness if self.fit is Fit.PLANTED else ()

    @property
    def to_inside(self) -> tuple[Term, ...]:
        """What stands between the outside and the inside, which begins at the end of a rebate."""
        if self.fit is Fit.NONE:
            return ()
        return self.to_frame if self.fit is Fit.REBATE else self.before + self._thickness

    @property
    def to_frame(self) -> tuple[Term, ...]:
        """What stands between the edge of the carcass and the frame."""
        return () if self.fit is Fit.NONE else self.before + self._thickness + self.behind

    @property
    def through(self) -> Interval:
        """Where the panel begins and ends, counted from the outside."""
        return (add(self.before), add(self.before) + self.real)

    @property
    def seat(self) -> Interval:
        """Where its rebate or groove begins and ends, counted from the outside."""
        return (0, add(self.to_inside)) if self.fit is Fit.REBATE else self.through

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
    name: str,
    closing: Closing | None,
    board: Board,
    real: Length,
    covering: Covering | None,
    usual_depth: Length = 0,
) -> PlacedClosing:
    """Return where a baffle or back stands.

    Where it goes into a covered opening or rebate, the covering is turned in round the opening and
    over the frame, or down to the end of the rebate. A panel that is covered itself has one more
    layer on its face, on its edges, and, turned over, where it rests. A panel in a groove goes in
    bare, before anything is covered.

    Args:
        name: "baffle" or "back".
        closing: What the design says; None for nothing.
        board: Its board, the carcass's where it has none of its own.
        real: Measured thickness of that board.
        covering: The covering of the cabinet, None for none.
        usual_depth: How deep a rebate or groove is where the design does not say.
    """
    if closing is None or closing.fit in {Fit.NONE, Fit.PLANTED}:
        fit = Fit.NONE if closing is None else closing.fit
        return PlacedClosing(name=name, fit=fit, board=board, real=real)
    before = [Term(length=closing.set_back, what="set-back")]
    behind, clear = [], []
    is_late = closing.fit.is_late and closing.fitted is Fitted.AFTER_COVERING
    if covering is not None and is_late:
        layer = covering.thickness
        own = layer if closing.wrapped else 0
        rests_on = "frame" if closing.fit is Fit.INSET else "end of the rebate"
        before.append(Term(length=own, what=f"covering of the {name}"))
        behind.append(Term(length=own, what=f"covering of the {name} turned over"))
        behind.append(Term(length=layer, what=f"covering on the {rests_on}"))
        clear = list_clearance(covering, [Term(length=own, what=f"covering of the {name}")])
    clear.append(Term(length=closing.play, what="play"))
    return PlacedClosing(
        name=name,
        fit=closing.fit,
        board=board,
        real=real,
        before=_without_zeros(before),
        behind=_without_zeros(behind),
        clear=_without_zeros(clear),
        extra=closing.extra,
        is_wrapped=bool(closing.wrapped),
        let_in=(closing.depth or usual_depth) if closing.fit.is_let_in else 0,
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
