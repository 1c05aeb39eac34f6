"""Baffle, back and covering: what the builder says about them."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum

from nesting.cabinets.boards import Board
from nesting.errors import Fault, InputError
from nesting.lengths import Length, mm


class Fit(Enum):
    """How a baffle or back meets the carcass.

    Between its panels, in a rebate along their edges, in a groove all round, on their edges, or
    not there.
    """

    INSET = "inset"
    REBATE = "rebate"
    GROOVE = "groove"
    PLANTED = "planted"
    NONE = "none"

    @property
    def is_let_in(self) -> bool:
        """Whether wood is taken out of the carcass for it."""
        return self in {Fit.REBATE, Fit.GROOVE}

    @property
    def is_late(self) -> bool:
        """Whether it goes into an opening of the standing carcass."""
        return self in {Fit.INSET, Fit.REBATE}


class Fitted(Enum):
    """Whether an inset panel goes in before or after the carcass is covered."""

    BEFORE_COVERING = "before covering"
    AFTER_COVERING = "after covering"


@dataclass(frozen=True, slots=True, kw_only=True)
class Covering:
    """A covering glued to the outside of a cabinet and turned in over its edges.

    Attributes:
        thickness: Thickness of one layer, glued down. Not negative.
        ease: Clearance left on each side of a panel that slides into a covered opening.
        lining: A layer under the covering, on the faces of the opening; 0 for none.
    """

    thickness: Length
    ease: Length = mm(1)
    lining: Length = 0

    def __post_init__(self) -> None:
        """Refuse what no covering can be."""
        faults = tuple(
            Fault(where="covering", what=f"its {name} is negative", remedy="Give 0 or more.")
            for name, value in (
                ("thickness", self.thickness),
                ("ease", self.ease),
                ("lining", self.lining),
            )
            if value < 0
        )
        if faults:
            raise InputError(faults)


@dataclass(frozen=True, slots=True, kw_only=True)
class Margins:
    """What is taken off an opening on each of its four sides. Not negative."""

    left: Length = 0
    right: Length = 0
    bottom: Length = 0
    top: Length = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Closing:
    """A baffle or a back.

    Attributes:
        fit: Inset, in a rebate, in a groove, planted or none on purpose.
        board: What it is cut from; None for the carcass's board.
        set_back: From the outside edge of the carcass to the face of a panel that is not planted.
        depth: How deep it is let into the panels of the carcass; None for half their thickness.
        play: What is left free between its edges and the rebate or groove, on each side.
        wrapped: Whether the panel itself is covered, face and edges; None while nobody has said.
        fitted: Whether it goes in before or after the carcass is covered.
        held_by: What an inset panel without battens is held by, in the builder's words.
        extra: What is taken off the opening of an inset panel besides covering and clearance, on
            each side: where the covering has its seam, say.
        gap: Height left open between an upper and a lower board; 0 for one closed board.
        upper: Height of the upper board; None to make both alike.
    """

    fit: Fit
    board: Board | None = None
    set_back: Length = 0
    depth: Length | None = None
    play: Length = 0
    wrapped: bool | None = None
    fitted: Fitted = Fitted.AFTER_COVERING
    held_by: str = ""
    extra: Margins = Margins()
    gap: Length = 0
    upper: Length | None = None


def find_closing_faults(name: str, closing: Closing, where: str) -> Iterator[Fault]:
    """Yield what no baffle or back of a box can be.

    Args:
        name: "baffle" or "back".
        closing: What the design says of it.
        where: The cabinet, for messages.
    """
    yield from _find_let_in_faults(name, closing, where)
    if closing.set_back and not (closing.fit is Fit.INSET or closing.fit.is_let_in):
        yield Fault(
            where=f"{where}, {name}",
            what=f"only an inset {name}, or one in a rebate or groove, can be set back",
            remedy=f"Make the {name} inset, or leave the set-back out.",
        )
    if closing.set_back < 0:
        yield Fault(
            where=f"{where}, {name}",
            what="its set-back is negative",
            remedy="Give how far it stands behind the edge, 0 for flush.",
        )
    margins = closing.extra
    if min(margins.left, margins.right, margins.bottom, margins.top, closing.gap) < 0:
        yield Fault(
            where=f"{where}, {name}",
            what="its gap, or what is taken off one side, is negative",
            remedy="Give 0 or more.",
        )
    if closing.upper is not None and (not closing.gap or closing.upper <= 0):
        yield Fault(
            where=f"{where}, {name}",
            what="an upper board needs a height of more than 0 and a gap below it",
            remedy=f"Give the gap between the boards too, or leave upper out: the {name} is then "
            "one board.",
        )


def _find_let_in_faults(name: str, closing: Closing, where: str) -> Iterator[Fault]:
    if (closing.depth is not None or closing.play) and not closing.fit.is_let_in:
        yield Fault(
            where=f"{where}, {name}",
            what=f"only a {name} in a rebate or groove has a depth and play",
            remedy='Write fit = "rebate" or "groove", or leave depth and play out.',
        )
    if (closing.depth is not None and closing.depth <= 0) or closing.play < 0:
        yield Fault(
            where=f"{where}, {name}",
            what="its depth is not more than 0, or its play is negative",
            remedy="Leave both out for the usual ones.",
        )
    if closing.fit is not Fit.GROOVE:
        return
    if not closing.set_back:
        yield Fault(
            where=f"{where}, {name}",
            what="a groove at the very edge is no groove",
            remedy='Give set_back, the wood that is left outside of it, or write fit = "rebate".',
        )
    if closing.gap or closing.wrapped:
        yield Fault(
            where=f"{where}, {name}",
            what=f"a {name} in a groove goes in whole and bare, while the carcass is glued up",
            remedy='Leave gap and wrapped out, or write fit = "rebate".',
        )
