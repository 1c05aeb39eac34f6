"""The measures of a wedge: its outline, and its boards fitted to each other."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from nesting.cabinets.boards import Board, real_thickness
from nesting.cabinets.closing_design import Fit
from nesting.cabinets.closings import PlacedClosing, place_closing
from nesting.cabinets.joints import JointKind
from nesting.cabinets.profiles import Corner
from nesting.cabinets.ring_lines import RingBoard
from nesting.cabinets.rings import FittedBoard, fit_ring
from nesting.cabinets.space import Axis
from nesting.cabinets.sums import Rounding, Span, Term, add
from nesting.cabinets.wedge_design import WedgeDesign
from nesting.lengths import Length, Unit, round_to

RANKS = {"baffle": 0, "bottom": 1, "top": 1, "back": 2, "front": 2}


@dataclass(frozen=True, slots=True, kw_only=True)
class Wedge:
    """The measures of a wedge.

    Attributes:
        design: What the builder said.
        outside: Outside width, depth and height, rounded to the step.
        outline: Its outline from the side, anticlockwise from the front of the floor.
        ring: The boards between the sides, before they are fitted.
        real: Measured thickness of the carcass's board.
        boards: The boards between the sides, fitted to each other.
        inside: The outline of the inside.
        closings: Baffle and back by name.
        let_in: How deep bottom, top and front are let into the sides, 0 for not at all.
        step: Sizes are rounded to this.
        unit: The unit of what is said.
    """

    design: WedgeDesign
    outside: tuple[Length, Length, Length]
    outline: tuple[Corner, ...]
    real: Length
    ring: tuple[RingBoard, ...]
    boards: tuple[FittedBoard, ...]
    inside: tuple[Corner, ...]
    closings: Mapping[str, PlacedClosing]
    let_in: Length
    step: Length
    unit: Unit

    @property
    def across(self) -> Span:
        """The opening between the sides."""
        return Span(
            axis=Axis.WIDTH,
            whole=self.outside[0],
            named="outside width",
            low=(Term(length=self.real, what="left side"),),
            high=(Term(length=self.real, what="right side"),),
        )

    def across_of(self, name: str) -> Span:
        """Return the width of a board: between the sides, or over them where it is planted."""
        if self.is_planted(name):
            return Span(axis=Axis.WIDTH, whole=self.outside[0], named="outside width")
        clear, is_late = self.clear(name), name in self.closings
        return replace(
            self.across,
            low_clear=clear,
            high_clear=clear,
            low_let_in=0 if is_late else self.let_in,
            high_let_in=0 if is_late else self.let_in,
            rounding=Rounding.DOWN if is_late else Rounding.NEAREST,
        )

    def is_planted(self, name: str) -> bool:
        """Return whether a board lies on the edges of the others."""
        return name in self.closings and self.closings[name].fit is Fit.PLANTED

    def clear(self, name: str) -> tuple[Term, ...]:
        """Return what covering and clearance take off every edge of a board."""
        return self.closings[name].clear if name in self.closings else ()

    def thickness(self, name: str) -> Length:
        """Return the measured thickness of a board, 0 where nothing stands."""
        placed = self.closings.get(name)
        if placed is None:
            return self.real
        return 0 if placed.fit is Fit.NONE else placed.real

    def board(self, name: str) -> Board:
        """Return what a board is cut from."""
        return self.closings[name].board if name in self.closings else self.design.board

    @property
    def standing(self) -> tuple[FittedBoard, ...]:
        """The boards that are there."""
        return tuple(board for board in self.boards if self.thickness(board.name))


def measure_wedge(
    design: WedgeDesign, measured: Mapping[Board, Length], step: Length, unit: Unit
) -> Wedge:
    """Return the measures of a wedge: outside sizes rounded, boards fitted to each other."""
    width, depth, height, top, front = (
        round_to(length, step)
        for length in (design.width, design.depth, design.height, design.top, design.front)
    )
    real = real_thickness(design.board, measured)
    half = design.board.thickness // 2 // step * step
    closings = {}
    for name, closing in (("baffle", design.baffle), ("back", design.back)):
        board = (closing.board if closing else None) or design.board
        placed = place_closing(
            name, closing, board, real_thickness(board, measured), design.covering
        )
        # Without a set-back it stands flush with the edges, its own covering proud like theirs.
        closings[name] = placed if closing and closing.set_back else replace(placed, before=())
    starts = {"bottom": (0, 0), "back": (depth, 0)}
    if top:
        starts["top"] = (depth, height)
    starts["baffle"] = (depth - top, height)
    if front:
        starts["front"] = (0, front)
    thick = {
        name: 0 if placed.fit is Fit.NONE else placed.real for name, placed in closings.items()
    }
    ring = tuple(
        RingBoard(
            name=name,
            start=start,
            thickness=thick.get(name, real),
            rank=RANKS[name],
            set_back=add(closings[name].before) if name in closings else 0,
            is_planted=name in closings and closings[name].fit is Fit.PLANTED,
        )
        for name, start in starts.items()
    )
    boards, inside = fit_ring(ring)
    return Wedge(
        design=design,
        outside=(width, depth, height),
        outline=tuple(starts.values()),
        real=real,
        ring=ring,
        boards=boards,
        inside=inside,
        closings=closings,
        let_in=(design.joint.depth or half) if design.joint.kind is JointKind.REBATE else 0,
        step=step,
        unit=unit,
    )
