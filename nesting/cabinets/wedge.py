"""The wedge in space: a ring of boards, one of them sloped, between two sides.

Angles are reckoned with in floats, here and in `rings` only.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from nesting.cabinets.boards import Board, real_thickness
from nesting.cabinets.closings import PlacedClosing, place_closing
from nesting.cabinets.construction import Chain, Construction
from nesting.cabinets.design import Fit
from nesting.cabinets.edges import Edge
from nesting.cabinets.panels import Panel, Space
from nesting.cabinets.profiles import Corner, Profile, box_of
from nesting.cabinets.rings import FittedBoard, RingBoard, fit_ring, shorten
from nesting.cabinets.space import Axis, Interval
from nesting.cabinets.sums import Rounding, Span, Term, add
from nesting.cabinets.wedge_design import WedgeDesign
from nesting.cabinets.wedge_panels import build_member, build_sides
from nesting.errors import Fault, InputError
from nesting.lengths import Length, Unit, format_length, round_to

RANKS = {"baffle": 0, "bottom": 1, "top": 1, "back": 2, "front": 2}


@dataclass(frozen=True, slots=True, kw_only=True)
class Wedge:
    """The measures of a wedge.

    Attributes:
        design: What the builder said.
        outside: Outside width, depth and height, rounded to the step.
        outline: Its outline from the side, anticlockwise from the front of the floor.
        real: Measured thickness of the carcass's board.
        boards: The boards between the sides, fitted to each other.
        inside: The outline of the inside.
        closings: Baffle and back by name.
        step: Sizes are rounded to this.
        unit: The unit of what is said.
    """

    design: WedgeDesign
    outside: tuple[Length, Length, Length]
    outline: tuple[Corner, ...]
    real: Length
    boards: tuple[FittedBoard, ...]
    inside: tuple[Corner, ...]
    closings: Mapping[str, PlacedClosing]
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


def lay_out_wedge(
    design: WedgeDesign, measured: Mapping[Board, Length], *, step: Length, unit: Unit
) -> Construction:
    """Return a wedge in space.

    Args:
        design: The wedge.
        measured: Measured thicknesses; boards that are not in it count with their nominal one.
        step: Sizes are rounded to this. Positive.
        unit: The unit of messages and sums.

    Raises:
        InputError: The boards leave no inside, or nothing of one of them.
    """
    wedge = measure_wedge(design, measured, step, unit)
    faults = tuple(_find_faults(wedge))
    if faults:
        raise InputError(faults)
    members = tuple(
        build_member(
            board,
            across=_across(wedge, board.name),
            clear=wedge.clear(board.name),
            board=wedge.board(board.name),
            real=wedge.thickness(board.name),
            design=design,
            step=step,
            unit=unit,
        )
        for board in wedge.standing
    )
    return Construction(
        outside=wedge.outside,
        shell=(*build_sides(design, wedge.outside, wedge.outline, wedge.real, unit), *members),
        spaces=tuple(_declare_spaces(wedge)),
        chains=tuple(_chain(wedge, members)),
        outline=Profile(axis=Axis.WIDTH, corners=wedge.outline),
        edges=tuple(_name_edges(wedge)),
    )


def measure_wedge(
    design: WedgeDesign, measured: Mapping[Board, Length], step: Length, unit: Unit
) -> Wedge:
    """Return the measures of a wedge: outside sizes rounded, boards fitted to each other."""
    width, depth, height, top, front = (
        round_to(length, step)
        for length in (design.width, design.depth, design.height, design.top, design.front)
    )
    real = real_thickness(design.board, measured)
    closings = {}
    for name, closing in (("baffle", design.baffle), ("back", design.back)):
        board = (closing.board if closing else None) or design.board
        closings[name] = place_closing(
            name, closing, board, real_thickness(board, measured), design.covering
        )
    starts = {"bottom": (0, 0), "back": (depth, 0)}
    if top:
        starts["top"] = (depth, height)
    starts["baffle"] = (depth - top, height)
    if front:
        starts["front"] = (0, front)
    thick = {
        name: 0 if placed.fit is Fit.NONE else placed.real for name, placed in closings.items()
    }
    boards, inside = fit_ring(
        tuple(
            RingBoard(name=name, start=start, thickness=thick.get(name, real), rank=RANKS[name])
            for name, start in starts.items()
        )
    )
    return Wedge(
        design=design,
        outside=(width, depth, height),
        outline=tuple(starts.values()),
        real=real,
        boards=boards,
        inside=inside,
        closings=closings,
        step=step,
        unit=unit,
    )


def _find_faults(wedge: Wedge) -> Iterator[Fault]:
    where = f"cabinet {wedge.design.name!r}"
    unit = wedge.unit
    if wedge.across.opening < wedge.step:
        yield Fault(
            where=f"{where}, width",
            what="the two sides leave no inside",
            remedy=f"Make it more than {format_length(2 * wedge.real, unit)} {unit.value}.",
        )
    for number, board in enumerate(wedge.boards):
        taken = 2 * add(wedge.clear(board.name))
        start, end = (wedge.inside[at % len(wedge.inside)] for at in (number, number + 1))
        hollow = sum((b - a) * part for a, b, part in zip(start, end, board.direction, strict=True))
        inside = board.outside - board.low.shorter - board.high.shorter
        if min(board.outside, inside, hollow) - taken < wedge.step:
            key = board.name if board.name in ("top", "front", "baffle", "back") else "depth"
            yield Fault(
                where=f"{where}, {key}",
                what=f"the boards it meets leave nothing of the {board.name}",
                remedy="Make the cabinet, or the boards that are too small, larger; give 0 for a "
                "top or front that is not to be there.",
            )


def _across(wedge: Wedge, name: str) -> Span:
    clear = wedge.clear(name)
    span = wedge.across
    is_late = name in wedge.closings
    return Span(
        axis=span.axis,
        whole=span.whole,
        named=span.named,
        low=span.low,
        high=span.high,
        low_clear=clear,
        high_clear=clear,
        rounding=Rounding.DOWN if is_late else Rounding.NEAREST,
    )


def _declare_spaces(wedge: Wedge) -> Iterator[Space]:
    """Yield the inside, then the clearance round baffle and back."""
    opening = wedge.across.opening_interval
    yield _space("inside", wedge.inside, opening)
    for board in wedge.standing:
        clear = add(wedge.clear(board.name))
        if not clear:
            continue
        left, right = opening
        name = f"clearance of the {board.name}"
        yield _space(f"{name}, left", board.corners, (left, left + clear))
        yield _space(f"{name}, right", board.corners, (right - clear, right))
        out_low, out_high, in_high, in_low = board.corners
        new_low, new_high, inner_high, inner_low = shorten(board, clear)
        between = (left + clear, right - clear)
        low, high = board.low.neighbour, board.high.neighbour
        yield _space(f"{name}, at the {low}", (out_low, new_low, inner_low, in_low), between)
        yield _space(f"{name}, at the {high}", (new_high, out_high, in_high, inner_high), between)


def _space(name: str, corners: tuple[Corner, ...], along: Interval) -> Space:
    profile = Profile(axis=Axis.WIDTH, corners=corners)
    return Space(name=name, box=box_of(profile, along), profile=profile)


def _chain(wedge: Wedge, members: tuple[Panel, ...]) -> Iterator[Chain]:
    """Yield straight ways through the cabinet, as far as a straight one meets square panels."""
    there = {panel.name for panel in members}
    width, depth, height = wedge.outside
    real, back = wedge.real, wedge.thickness("back")
    side = Term(length=real, what="left side")
    inside = Term(length=width - 2 * real, what="inside")
    other = Term(length=real, what="right side")
    yield Chain(axis=Axis.WIDTH, terms=(side, inside, other))
    if {"bottom", "top"} <= there:
        yield Chain(
            axis=Axis.HEIGHT,
            terms=(
                Term(length=real, what="bottom"),
                Term(length=height - 2 * real, what="inside"),
                Term(length=real, what="top"),
            ),
        )
    if {"front", "back"} <= there:
        yield Chain(
            axis=Axis.DEPTH,
            terms=(
                Term(length=real, what="front"),
                Term(length=depth - real - back, what="inside"),
                Term(length=back, what="back"),
            ),
        )


def _name_edges(wedge: Wedge) -> Iterator[Edge]:
    """Yield every edge: the ring's corners along the width, and the outlines of the two sides."""
    for board in wedge.boards:
        end = board.high
        is_owner = end.runs_through and wedge.thickness(board.name) > 0
        yield Edge(
            name=f"{board.name} and {end.neighbour}",
            axis=Axis.WIDTH,
            owner=board.name if is_owner else end.neighbour,
            joint="mitre" if end.is_mitred and wedge.thickness(board.name) else "",
        )
    for side in ("left side", "right side"):
        for board in wedge.boards:
            axis = Axis.DEPTH if board.name in ("bottom", "top") else Axis.HEIGHT
            yield Edge(name=f"{board.name} and {side}", axis=axis, owner=side)
