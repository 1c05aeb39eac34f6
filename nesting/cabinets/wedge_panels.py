"""The panels of a wedge: its two sides, and the boards between them with their bevels."""

from dataclasses import replace

from nesting.cabinets.panels import Allowance, Bevel, Cut, Panel
from nesting.cabinets.profiles import Profile
from nesting.cabinets.ring_shapes import outline_without_planted, shorten
from nesting.cabinets.rings import FittedBoard
from nesting.cabinets.space import Axis
from nesting.cabinets.sums import Rounding, Span, Term, add, round_size
from nesting.cabinets.waiting import NO_WAIT, wait
from nesting.cabinets.wedge_measures import Wedge
from nesting.lengths import Length, Unit, format_length, mm, round_to
from nesting.parts import Grain

LEVEL = ("bottom", "top")
SQUARE_DEG = 0.05
"""A tilt of less than this cannot be set: the edge is square."""


def build_sides(wedge: Wedge) -> tuple[Panel, ...]:
    """Return the two sides: rectangles from the saw, then cut along the slope."""
    design, (width, depth, height) = wedge.design, wedge.outside
    outline = outline_without_planted(wedge.ring)
    across, up = ([corner[place] for corner in outline] for place in (0, 1))
    front, rear = min(across), depth - max(across)
    over = height - max(up)
    upper = next(number for number, board in enumerate(wedge.ring) if board.name == "baffle")
    high, low = outline[upper], outline[(upper + 1) % len(outline)]
    before_rear, above_bottom = (
        _show(length, wedge.unit) for length in (max(across) - high[0], low[1])
    )
    to_do = (
        (
            f"mark the slope on the outside face, from {above_bottom} above the bottom on the "
            f"front edge to {before_rear} before the rear edge on the top edge, and cut along it"
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
            length=Span(
                axis=Axis.HEIGHT,
                whole=height,
                named="outside height",
                high=_taken(over, "under the baffle"),
            ),
            width=Span(
                axis=Axis.DEPTH,
                whole=depth,
                named="outside depth",
                low=_taken(front, "behind the baffle"),
                high=_taken(rear, "back"),
            ),
            grain=Grain.LENGTH,
            match=f"{design.name}: sides",
            to_do=to_do,
            profile=Profile(axis=Axis.WIDTH, corners=outline),
        )
        for name, through in (
            ("left side", (0, wedge.real)),
            ("right side", (width - wedge.real, width)),
        )
    )


def rebate_sides(
    wedge: Wedge, sides: tuple[Panel, ...], members: tuple[Panel, ...]
) -> tuple[Panel, ...]:
    """Return the sides with the rebates that bottom, top and front are let into, if there are any.

    Each has the outline of the board that goes in, its slanting end included.
    """
    let_in = [panel for panel in members if panel.name not in wedge.closings]
    if not wedge.let_in:
        return sides
    deep, wide = (format_length(length, wedge.unit) for length in (wedge.let_in, wedge.real))
    names = ", ".join(panel.name for panel in let_in)
    to_do = (
        f"rebate the inside face along the edges at the {names}: {wide} wide and {deep} deep, as "
        "far as these reach; mark their ends from the boards themselves"
    )
    return tuple(
        replace(
            side,
            cuts=tuple(_rebate(side, panel) for panel in let_in),
            to_do=(*side.to_do[:1], to_do, *side.to_do[1:]),
        )
        for side in sides
    )


def _rebate(side: Panel, panel: Panel) -> Cut:
    place = side.box.overlap(panel.box)
    assert place is not None, "a board that is not let into the side"
    return Cut(what=f"rebate for the {panel.name}", box=place, profile=panel.profile)


def build_member(wedge: Wedge, fitted: FittedBoard) -> Panel:
    """Return one board between the sides, or over them where it is planted.

    Its length is that of its outside face, from long point to long point. Where the inside face
    reaches further, the blank is larger by that much.
    """
    design, unit, name = wedge.design, wedge.unit, fitted.name
    real, clear = wedge.thickness(name), wedge.clear(name)
    is_late, is_planted = name in wedge.closings, wedge.is_planted(name)
    length = _length(wedge, fitted)
    bevels = tuple(
        Bevel(edge=f"edge at the {end.neighbour}", angle_deg=end.bevel_deg, shorter=end.shorter)
        for end in (fitted.low, fitted.high)
        if end.bevel_deg >= SQUARE_DEG
    )
    status, oversize, measuring = wait(design) if is_late and not is_planted else NO_WAIT
    to_do = [*measuring, *_say_bevels(bevels, round_size(length, wedge.step), real, unit)]
    if is_planted:
        to_do.append("fix to the edges of the carcass, flush all round")
    corners = shorten(fitted, add(clear))
    low_depth = min(x for x, _ in corners)
    return Panel(
        name=name,
        kind=name.capitalize(),
        board=wedge.board(name),
        normal=Axis.HEIGHT if name in LEVEL else Axis.DEPTH,
        through=(low_depth, low_depth + real),
        length=length,
        width=wedge.across_of(name),
        grain=Grain.WIDTH,
        status=status,
        oversize=oversize,
        match="" if is_late else f"{design.name}: inside width",
        to_do=tuple(to_do),
        profile=Profile(axis=Axis.WIDTH, corners=corners),
        bevels=bevels,
        allowances=_allow(bevels, length.axis, wedge),
    )


def _length(wedge: Wedge, fitted: FittedBoard) -> Span:
    """Return the length of a board's outside face; where it is set back no edge has that length."""
    name, clear = fitted.name, wedge.clear(fitted.name)
    placed = wedge.closings.get(name)
    is_late = placed is not None and not wedge.is_planted(name)
    span = Span(
        axis=Axis.DEPTH if name in LEVEL else Axis.HEIGHT,
        whole=fitted.edge,
        named=_name_whole(fitted, wedge.unit),
        low=_taken(fitted.low.set_in, fitted.low.neighbour),
        high=_taken(fitted.high.set_in, fitted.high.neighbour),
        low_clear=clear,
        high_clear=clear,
        rounding=Rounding.DOWN if is_late else Rounding.NEAREST,
    )
    if placed is None or not placed.before:
        return span
    back = format_length(add(placed.before), wedge.unit)
    ends = f"{fitted.low.neighbour} and {fitted.high.neighbour}"
    named = f"between {ends}, {back} behind the edges"
    return replace(span, whole=fitted.outside, named=named, low=(), high=())


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


def _allow(bevels: tuple[Bevel, ...], along: Axis, wedge: Wedge) -> tuple[Allowance, ...]:
    """Return what a blank has for its bevels, rounded up to what the saw is set to."""
    step, amount = wedge.step, wedge.design.bevel_allowance
    allowances = (
        Allowance(
            edge=bevel.edge,
            along=along,
            amount=-(-(amount + max(0, -bevel.shorter)) // step) * step,
            why="taken off by the bevel",
        )
        for bevel in bevels
    )
    return tuple(each for each in allowances if each.amount)
