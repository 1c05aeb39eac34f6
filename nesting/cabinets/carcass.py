"""The carcass of a box: two sides, a top and a bottom, with butt joints."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from nesting.cabinets.boards import Board, real_thickness
from nesting.cabinets.closings import PlacedClosing, place_closing
from nesting.cabinets.design import Along, BoxDesign, Through
from nesting.cabinets.joints import JointKind
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
        let_in: How far the panels that stand between are let into the ones that run through.
        tongue: Thickness of the tongue in a groove, 0 where there is none.
        finger_lines: Where fingers begin, from the front edge of the carcass panels; the first at
            0, the last finger ends at the rear edge. Empty where there are none.
    """

    design: BoxDesign
    outside: Point
    real: Length
    front: PlacedClosing
    rear: PlacedClosing
    let_in: Length = 0
    tongue: Length = 0
    finger_lines: tuple[Length, ...] = ()

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

    def to_clear(self, placed: PlacedClosing) -> tuple[Term, ...]:
        """Return what stands between the outside and the room behind a closing and its frame."""
        depth = self.frame_depth(placed)
        if depth is None:
            return placed.to_inside
        return (*placed.to_frame, Term(length=depth[1] - depth[0], what="batten"))

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

    def seat(self, placed: PlacedClosing) -> Interval:
        """Return where the rebate or groove of a baffle or back begins and ends."""
        return placed.seat if placed is self.front else self.from_rear(placed.seat)

    def whole(self, axis: Axis) -> Length:
        """Return the outside size along an axis."""
        return self.outside[axis.index]

    def owns(self, panel: Panel) -> bool:
        """Return whether a carcass panel runs through at the long edges."""
        return (panel.normal is Axis.WIDTH) is (self.design.through is Through.SIDES)

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
    # Half of what the board is called: the joint is the same depth whatever the board measures.
    joint, half = design.joint, design.board.thickness // 2 // step * step
    placed = []
    for name, closing in (("baffle", design.baffle), ("back", design.back)):
        board = (closing.board if closing else None) or design.board
        real = real_thickness(board, measured)
        placed.append(place_closing(name, closing, board, real, design.covering, half))
    front, rear = placed
    real = real_thickness(design.board, measured)
    has_depth = joint.kind in {JointKind.REBATE, JointKind.GROOVE}
    carcass = Carcass(
        design=design,
        outside=(
            round_to(design.width, step),
            round_to(design.depth, step),
            round_to(design.height, step),
        ),
        real=real,
        front=front,
        rear=rear,
        let_in=(joint.depth or half) if has_depth else 0,
        tongue=(joint.tongue or half) if joint.kind is JointKind.GROOVE else 0,
    )
    if joint.kind is not JointKind.FINGER:
        return carcass
    return replace(carcass, finger_lines=_divide(carcass, step))


def _divide(carcass: Carcass, step: Length) -> tuple[Length, ...]:
    """Return where the fingers begin: an odd number of them, each line on the step.

    Lines are worked out from the front edge, not added up, so no error runs along the joint.
    """
    joint, depth = carcass.design.joint, max(carcass.depth.size, 0)
    count = joint.fingers
    if count is None:
        fitting = depth // (joint.finger_width or max(carcass.real, step))
        count = max(fitting - (fitting + 1) % 2, 1)
    return tuple(round_to(depth * number // count, step) for number in range(count))


def build_carcass(carcass: Carcass) -> tuple[Panel, ...]:
    """Return the sides, the top and the bottom.

    All four share their depth, so they match.
    """
    design, real = carcass.design, carcass.real
    sides_run = design.through is Through.SIDES
    upright = carcass.through(Axis.HEIGHT) if sides_run else _between(carcass, carcass.upright)
    across = _between(carcass, carcass.across) if sides_run else carcass.through(Axis.WIDTH)
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


def _between(carcass: Carcass, opening: Span) -> Span:
    """Return the span of the panels that do not run through, as the joint makes it."""
    if carcass.design.joint.kind in {JointKind.MITRE, JointKind.FINGER}:
        return carcass.through(opening.axis)
    return replace(opening, low_let_in=carcass.let_in, high_let_in=carcass.let_in)


def turn_grain(along: Along, length: Axis) -> Grain:
    """Return the side of a part that follows a direction of the cabinet."""
    if along is Along.ANY:
        return Grain.ANY
    return Grain.LENGTH if along.value == length.value else Grain.WIDTH


def rounded_down(
    span: Span, low_clear: tuple[Term, ...] = (), high_clear: tuple[Term, ...] = ()
) -> Span:
    """Return the span of something that goes into an opening, with the clearance it needs."""
    return replace(span, low_clear=low_clear, high_clear=high_clear, rounding=Rounding.DOWN)
