"""The panels of a wedge: its two sides, and the boards between them with their bevels."""

from nesting.cabinets.boards import Board
from nesting.cabinets.panels import Allowance, Bevel, Panel
from nesting.cabinets.profiles import Corner, Profile
from nesting.cabinets.rings import FittedBoard, shorten
from nesting.cabinets.space import Axis
from nesting.cabinets.sums import Rounding, Span, Term, add, round_size
from nesting.cabinets.wedge_design import WedgeDesign
from nesting.lengths import Length, Unit, format_length, mm, round_to
from nesting.parts import Grain, Status

SQUARE_DEG = 0.05
"""A tilt of less than this cannot be set: the edge is square."""


def build_sides(
    design: WedgeDesign,
    outside: tuple[Length, Length, Length],
    outline: tuple[Corner, ...],
    real: Length,
    unit: Unit,
) -> tuple[Panel, ...]:
    """Return the two sides: rectangles from the saw, then cut along the slope.

    Args:
        design: The wedge.
        outside: Outside width, depth and height.
        outline: The outline from the side.
        real: Measured thickness.
        unit: The unit of what is to be done.
    """
    width, depth, height = outside
    top = depth - min(x for x, y in outline if y == height)
    front = max(y for x, y in outline if x == 0)
    to_do = (
        (
            f"mark the slope on the outside face, from {format_length(front, unit)} above the "
            f"bottom on the front edge to {format_length(top, unit)} before the rear edge on the "
            "top edge, and cut along it"
        ),
        *(("cover with the whole carcass, once it is glued",) if design.covering else ()),
    )
    return tuple(
        Panel(
            name=name,
            kind="Side",
            board=design.board,
            normal=Axis.WIDTH,
            through=through,
            length=Span(axis=Axis.HEIGHT, whole=height, named="outside height"),
            width=Span(axis=Axis.DEPTH, whole=depth, named="outside depth"),
            grain=Grain.LENGTH,
            match=f"{design.name}: sides",
            to_do=to_do,
            profile=Profile(axis=Axis.WIDTH, corners=outline),
        )
        for name, through in (("left side", (0, real)), ("right side", (width - real, width)))
    )


def build_member(
    fitted: FittedBoard,
    *,
    across: Span,
    clear: tuple[Term, ...],
    board: Board,
    real: Length,
    design: WedgeDesign,
    step: Length,
    unit: Unit,
) -> Panel:
    """Return one board between the sides.

    Its length is that of its outside face along the outline, from long point to long point. Where
    the inside face reaches further, the blank is larger by that much.

    Args:
        fitted: The board, fitted to its neighbours.
        across: Its width between the sides.
        clear: Covering and clearance at each of its ends.
        board: What it is cut from.
        real: Its measured thickness.
        design: The wedge.
        step: Sizes are rounded to this.
        unit: The unit of sums and of what is to be done.
    """
    is_late = fitted.name in ("baffle", "back")
    length = Span(
        axis=Axis.DEPTH if fitted.name in ("bottom", "top") else Axis.HEIGHT,
        whole=fitted.edge,
        named=_name_whole(fitted, unit),
        low=_taken(fitted.low.set_in, fitted.low.neighbour),
        high=_taken(fitted.high.set_in, fitted.high.neighbour),
        low_clear=clear,
        high_clear=clear,
        rounding=Rounding.DOWN if is_late else Rounding.NEAREST,
    )
    bevels = tuple(
        Bevel(edge=f"edge at the {end.neighbour}", angle_deg=end.bevel_deg, shorter=end.shorter)
        for end in (fitted.low, fitted.high)
        if end.bevel_deg >= SQUARE_DEG
    )
    waits = is_late and design.measure_first
    to_do = list(_say_bevels(bevels, round_size(length, step), real, unit))
    if waits:
        to_do.insert(0, "measure its place in the standing carcass, trim to size")
    corners = shorten(fitted, add(clear))
    low_depth = min(x for x, _ in corners)
    return Panel(
        name=fitted.name,
        kind=fitted.name.capitalize(),
        board=board,
        normal=Axis.HEIGHT if fitted.name in ("bottom", "top") else Axis.DEPTH,
        through=(low_depth, low_depth + real),
        length=length,
        width=across,
        grain=Grain.WIDTH,
        status=Status.MEASURE_FIRST if waits else Status.FINAL,
        oversize=design.allowance if waits else 0,
        match="" if is_late else f"{design.name}: inside width",
        to_do=tuple(to_do),
        profile=Profile(axis=Axis.WIDTH, corners=corners),
        bevels=bevels,
        allowances=_allow(bevels, length.axis, design.bevel_allowance),
    )


def _name_whole(fitted: FittedBoard, unit: Unit) -> str:
    if fitted.name != "baffle":
        return {"bottom": "outside depth", "back": "outside height"}.get(
            fitted.name, f"outside of the {fitted.name}"
        )
    along, up = (abs(fitted.edge * part) for part in fitted.direction)
    shown = " + ".join(f"{format_length(round(part), unit)}²" for part in (along, up))
    return f"{format_length(fitted.edge, unit)}, the slope: √({shown})"


def _taken(set_in: Length, neighbour: str) -> tuple[Term, ...]:
    return (Term(length=set_in, what=neighbour),) if set_in else ()


def _say_bevels(bevels: tuple[Bevel, ...], outside: Length, real: Length, unit: Unit) -> list[str]:
    """Return a line for every bevelled edge, and one on how to set the saw."""
    thick, out = format_length(real, unit), format_length(outside, unit)
    lines = []
    for bevel in bevels:
        inside = _show(outside - bevel.shorter, unit)
        sign = "-" if bevel.shorter > 0 else "+"
        lines.append(
            f"{bevel.edge}: bevel {bevel.angle_deg:.1f}°, outside face {out}, inside face {inside} "
            f"= {out} {sign} {thick} × tan {bevel.angle_deg:.1f}°"
        )
    if len(bevels) > 1:
        both = _show(outside - sum(bevel.shorter for bevel in bevels), unit)
        lines.append(f"over both bevels the inside face measures {both}")
    if bevels:
        lines.append(
            "sizes are those of the outside face: tilt the saw so that the face which is to be "
            "longer keeps its size, and measure the guide offset again at that tilt, on a scrap"
        )
    return lines


def _show(length: Length, unit: Unit) -> str:
    """Return a size that nobody sets a guide to, in millimetres to 0.1."""
    return format_length(round_to(length, mm("0.1")) if unit is Unit.MM else length, unit)


def _allow(bevels: tuple[Bevel, ...], along: Axis, amount: Length) -> tuple[Allowance, ...]:
    allowances = (
        Allowance(
            edge=bevel.edge,
            along=along,
            amount=amount + max(0, -bevel.shorter),
            why="taken off by the bevel",
        )
        for bevel in bevels
    )
    return tuple(each for each in allowances if each.amount)
