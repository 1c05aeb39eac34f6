"""The carcass of a box: two sides, a top and a bottom, with butt joints."""

from collections.abc import Mapping
from dataclasses import dataclass

from nesting.cabinets.boards import Board, real_thickness
from nesting.cabinets.closings import PlacedClosing, place_closing
from nesting.cabinets.design import Along, BoxDesign, Through
from nesting.cabinets.panels import Panel
from nesting.cabinets.space import Axis, Interval, Point
from nesting.cabinets.sums import Rounding, Span, Term, add
from nesting.lengths import Length, round_to
from nesting.parts import Grain


@dataclass(frozen=True, slots=True, kw_only=True)
class Carcass:
    """The measures that every panel of a box is worked out from.

    Attributes:
        design: What the builder said.
        outside: Outside width, depth and height, rounded to the step.
        real: Measured thickness of the four panels.
        front: The baffle's place.
        rear: The back's place.
    """

    design: BoxDesign
    outside: Point
    real: Length
    front: PlacedClosing
    rear: PlacedClosing

    @property
    def across(self) -> Span:
        """The opening from side to side."""
        return self._between(Axis.WIDTH, "left side", "right side")

    @property
    def upright(self) -> Span:
        """The opening from bottom to top."""
        return self._between(Axis.HEIGHT, "bottom", "top")

    @property
    def depth(self) -> Span:
        """The depth of the four panels: the outside depth less what is planted on them."""
        return Span(
            axis=Axis.DEPTH,
            whole=self.whole(Axis.DEPTH),
            named="outside depth",
            low=self.front.shortens,
            high=self.rear.shortens,
        )

    @property
    def inside_depth(self) -> Interval:
        """Where the inside begins and ends along the depth."""
        return (
            add(self.front.to_inside),
            self.whole(Axis.DEPTH) - add(self.rear.to_inside),
        )

    def frame_depth(self, placed: PlacedClosing) -> Interval | None:
        """Return where the frame of a baffle or back begins and ends, None for no frame."""
        battens = self.design.battens
        is_front = placed is self.front
        if battens is None or not (battens.front if is_front else battens.rear):
            return None
        start = add(placed.to_frame)
        interval = (start, start + battens.section[1])
        return interval if is_front else self.from_rear(interval)

    @property
    def clear_depth(self) -> Interval:
        """Where the room between the frames begins and ends, the inside's where there are none."""
        start, end = self.inside_depth
        front, rear = self.frame_depth(self.front), self.frame_depth(self.rear)
        return (front[1] if front else start, rear[0] if rear else end)

    def from_rear(self, interval: Interval) -> Interval:
        """Return the place of something counted from the rear, counted from the front."""
        depth = self.whole(Axis.DEPTH)
        return (depth - interval[1], depth - interval[0])

    def whole(self, axis: Axis) -> Length:
        """Return the outside size along an axis."""
        return self.outside[axis.index]

    def through(self, axis: Axis) -> Span:
        """Return the span of a panel that runs through from outside to outside."""
        return Span(axis=axis, whole=self.whole(axis), named=f"outside {axis.value}")

    def _between(self, axis: Axis, low: str, high: str) -> Span:
        return Span(
            axis=axis,
            whole=self.whole(axis),
            named=f"outside {axis.value}",
            low=(Term(length=self.real, what=low),),
            high=(Term(length=self.real, what=high),),
        )


def measure_carcass(design: BoxDesign, measured: Mapping[Board, Length], step: Length) -> Carcass:
    """Return the measures of a box: outside sizes rounded, thicknesses looked up."""
    placed = []
    for name, closing in (("baffle", design.baffle), ("back", design.back)):
        board = (closing.board if closing else None) or design.board
        real = real_thickness(board, measured)
        placed.append(place_closing(name, closing, board, real, design.covering))
    front, rear = placed
    return Carcass(
        design=design,
        outside=(
            round_to(design.width, step),
            round_to(design.depth, step),
            round_to(design.height, step),
        ),
        real=real_thickness(design.board, measured),
        front=front,
        rear=rear,
    )


def build_carcass(carcass: Carcass) -> tuple[Panel, ...]:
    """Return the sides, the top and the bottom.

    All four share their depth, so they match.
    """
    design, real = carcass.design, carcass.real
    sides_run = design.through is Through.SIDES
    upright = carcass.through(Axis.HEIGHT) if sides_run else carcass.upright
    across = carcass.across if sides_run else carcass.through(Axis.WIDTH)
    width, height = carcass.whole(Axis.WIDTH), carcass.whole(Axis.HEIGHT)
    level = design.grains.top_and_bottom
    to_do = ("cover with the whole carcass, once it is glued",) if design.covering else ()
    places = (
        ("left side", "Side", Axis.WIDTH, (0, real), upright, design.grains.sides),
        ("right side", "Side", Axis.WIDTH, (width - real, width), upright, design.grains.sides),
        ("top", "Top or bottom", Axis.HEIGHT, (height - real, height), across, level),
        ("bottom", "Top or bottom", Axis.HEIGHT, (0, real), across, level),
    )
    return tuple(
        Panel(
            name=name,
            kind=kind,
            board=design.board,
            normal=normal,
            through=through,
            length=length,
            width=carcass.depth,
            grain=turn_grain(grain, length.axis),
            match=f"{design.name}: depth",
            to_do=to_do,
        )
        for name, kind, normal, through, length, grain in places
    )


def turn_grain(along: Along, length: Axis) -> Grain:
    """Return the side of a part that follows a direction of the cabinet."""
    if along is Along.ANY:
        return Grain.ANY
    return Grain.LENGTH if along.value == length.value else Grain.WIDTH


def rounded_down(span: Span, clear: tuple[Term, ...] = ()) -> Span:
    """Return the span of something that goes into an opening, with the clearance it needs."""
    return Span(
        axis=span.axis,
        whole=span.whole,
        named=span.named,
        low=span.low,
        high=span.high,
        low_clear=clear,
        high_clear=clear,
        rounding=Rounding.DOWN,
    )
