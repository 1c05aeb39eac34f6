"""What goes into or onto the carcass of a box: baffle, back and braces."""

from collections.abc import Mapping

from nesting.cabinets.boards import Board, real_thickness
from nesting.cabinets.carcass import Carcass, rounded_down, turn_grain
from nesting.cabinets.closings import PlacedClosing
from nesting.cabinets.design import Along, BoxDesign, Fit
from nesting.cabinets.panels import Panel
from nesting.cabinets.space import Axis
from nesting.cabinets.sums import Span
from nesting.lengths import Length
from nesting.parts import Status


def build_closings(carcass: Carcass) -> tuple[Panel, ...]:
    """Return the baffle and the back, as far as there are any."""
    grains = carcass.design.grains
    return tuple(
        _build_closing(carcass, placed, grain)
        for placed, grain in ((carcass.front, grains.baffle), (carcass.rear, grains.back))
        if placed.fit is not Fit.NONE
    )


def _build_closing(carcass: Carcass, placed: PlacedClosing, grain: Along) -> Panel:
    upright, across = carcass.through(Axis.HEIGHT), carcass.through(Axis.WIDTH)
    status, oversize = Status.FINAL, 0
    to_do: tuple[str, ...] = ("fix to the edges of the carcass, flush all round",)
    if placed.fit is Fit.INSET:
        upright = rounded_down(carcass.upright, placed.clear)
        across = rounded_down(carcass.across, placed.clear)
        status, oversize, to_do = wait(carcass.design, has_clearance=bool(placed.clear))
    if placed.is_wrapped:
        to_do = (*to_do, "cover its face and edges")
    is_front = placed is carcass.front
    return Panel(
        name=placed.name,
        kind=placed.name.capitalize(),
        board=placed.board,
        normal=Axis.DEPTH,
        through=placed.through if is_front else carcass.from_rear(placed.through),
        length=upright,
        width=across,
        grain=turn_grain(grain, Axis.HEIGHT),
        status=status,
        oversize=oversize,
        to_do=to_do,
    )


def build_braces(carcass: Carcass, measured: Mapping[Board, Length]) -> tuple[Panel, ...]:
    """Return the braces, spread evenly over the inside height."""
    braces = carcass.design.braces
    if braces is None:
        return ()
    board = braces.board or carcass.design.board
    real = real_thickness(board, measured)
    front, rear = carcass.clear_depth
    low, high = carcass.upright.opening_interval
    gap = (high - low - braces.count * real) // (braces.count + 1)
    depth = Span(
        axis=Axis.DEPTH,
        whole=braces.depth,
        named="as designed",
        offset=(front + rear - braces.depth) // 2,
    )
    status, oversize, to_do = wait(carcass.design)
    starts = [low + gap + number * (gap + real) for number in range(braces.count)]
    return tuple(
        Panel(
            name=f"brace {number}",
            kind="Brace",
            board=board,
            normal=Axis.HEIGHT,
            through=(start, start + real),
            length=rounded_down(carcass.across),
            width=depth,
            status=status,
            oversize=oversize,
            to_do=to_do,
        )
        for number, start in enumerate(starts, start=1)
    )


def wait(
    design: BoxDesign, *, has_clearance: bool = False
) -> tuple[Status, Length, tuple[str, ...]]:
    """Return status, oversize and what is to be done for what goes into a standing carcass."""
    if not design.measure_first:
        return Status.FINAL, 0, ()
    clearance = ", take off covering and clearance" if has_clearance else ""
    to_do = f"measure its place in the standing carcass{clearance}, trim to size"
    return Status.MEASURE_FIRST, design.allowance, (to_do,)
