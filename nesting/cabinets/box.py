"""The plain box: a carcass with butt joints, baffle and back inset, planted or left out.

All sizes are formulas of the measured thickness. The outside holds: inset panels stand between all
four of the carcass, planted ones cover its edges and shorten its depth.
"""

from collections.abc import Iterator, Mapping

from nesting.cabinets.boards import Board
from nesting.cabinets.box_faults import find_box_faults
from nesting.cabinets.carcass import Carcass, build_carcass, measure_carcass, rounded_down
from nesting.cabinets.closings import PlacedClosing
from nesting.cabinets.construction import Chain, Construction
from nesting.cabinets.design import BoxDesign, Through
from nesting.cabinets.fillings import build_braces, build_closings, wait
from nesting.cabinets.frames import Frame, build_frame
from nesting.cabinets.panels import Bar, Shared, Space
from nesting.cabinets.space import Axis, Interval, box_along
from nesting.cabinets.sums import Span, Term, add, list_terms, round_size
from nesting.errors import InputError
from nesting.lengths import Length, Unit


def lay_out_box(
    design: BoxDesign, measured: Mapping[Board, Length], *, step: Length, unit: Unit
) -> Construction:
    """Return a box in space.

    Args:
        design: The box.
        measured: Measured thicknesses; boards that are not in it count with their nominal one.
        step: Sizes are rounded to this. Positive.
        unit: The unit of messages and sums.

    Raises:
        InputError: The panels leave no inside, or do not find room in it.
    """
    carcass = measure_carcass(design, measured, step)
    faults = tuple(find_box_faults(carcass, measured, step, unit))
    if faults:
        raise InputError(faults)
    bars, shared = _build_frames(carcass, unit)
    return Construction(
        outside=carcass.outside,
        shell=(*build_carcass(carcass), *build_closings(carcass)),
        inner=build_braces(carcass, measured),
        bars=bars,
        spaces=tuple(_declare_spaces(carcass)),
        shared=shared,
        chains=_chain(carcass, step),
    )


def _build_frames(carcass: Carcass, unit: Unit) -> tuple[tuple[Bar, ...], tuple[Shared, ...]]:
    bars: tuple[Bar, ...] = ()
    shared: tuple[Shared, ...] = ()
    battens = carcass.design.battens
    status, oversize, _ = wait(carcass.design)
    for placed, end in ((carcass.front, "front"), (carcass.rear, "rear")):
        depth = carcass.frame_depth(placed)
        if battens is None or depth is None:
            continue
        frame = Frame(
            name=f"{end} frame",
            battens=battens,
            across=rounded_down(carcass.across),
            upright=rounded_down(carcass.upright),
            depth=depth,
            set_back=list_terms(f"behind the {end} edge", placed.to_frame, unit),
            status=status,
            oversize=oversize,
        )
        more_bars, more_shared = build_frame(frame)
        bars, shared = bars + more_bars, shared + more_shared
    return bars, shared


def _declare_spaces(carcass: Carcass) -> Iterator[Space]:
    """Yield the inside, then the recess before and the clearance round each inset panel."""
    across, upright = carcass.across, carcass.upright
    yield _space("inside", across.opening_interval, carcass.inside_depth, upright.opening_interval)
    for placed in (carcass.front, carcass.rear):
        is_front = placed is carcass.front
        if placed.before:
            recess = (0, add(placed.before))
            yield _space(
                f"recess before the {placed.name}",
                across.opening_interval,
                recess if is_front else carcass.from_rear(recess),
                upright.opening_interval,
            )
        if placed.clear:
            yield from _declare_clearance(
                placed,
                rounded_down(across, placed.clear),
                rounded_down(upright, placed.clear),
                placed.through if is_front else carcass.from_rear(placed.through),
            )


def _declare_clearance(
    placed: PlacedClosing, across: Span, upright: Span, depth: Interval
) -> Iterator[Space]:
    left, right = across.opening_interval
    low, high = upright.opening_interval
    inner_left, inner_right = across.interval
    inner_low, inner_high = upright.interval
    for side, width, height in (
        ("left", (left, inner_left), (low, high)),
        ("right", (inner_right, right), (low, high)),
        ("bottom", across.interval, (low, inner_low)),
        ("top", across.interval, (inner_high, high)),
    ):
        yield _space(f"clearance of the {placed.name}, {side}", width, depth, height)


def _space(name: str, width: Interval, depth: Interval, height: Interval) -> Space:
    box = box_along({Axis.WIDTH: width, Axis.DEPTH: depth, Axis.HEIGHT: height})
    return Space(name=name, box=box)


def _chain(carcass: Carcass, step: Length) -> tuple[Chain, ...]:
    """Return the ways through the box, with the panel that stands between two others as cut."""
    sides_run = carcass.design.through is Through.SIDES
    upright = "inside" if sides_run else "side"
    across = "top or bottom" if sides_run else "inside"
    return (
        Chain(axis=Axis.HEIGHT, terms=_chain_between(carcass.upright, upright, step)),
        Chain(axis=Axis.WIDTH, terms=_chain_between(carcass.across, across, step)),
        Chain(axis=Axis.DEPTH, terms=_chain_depth(carcass, step)),
    )


def _chain_between(span: Span, middle: str, step: Length) -> tuple[Term, ...]:
    length = span.opening if middle == "inside" else round_size(span, step)
    return (*span.low, Term(length=length, what=middle), *span.high)


def _chain_depth(carcass: Carcass, step: Length) -> tuple[Term, ...]:
    front, rear = carcass.front, carcass.rear
    if front.shortens or rear.shortens:
        carcass_depth = Term(length=round_size(carcass.depth, step), what="carcass")
        return (*front.shortens, carcass_depth, *rear.shortens)
    start, end = carcass.inside_depth
    inside = Term(length=end - start, what="inside")
    return (*front.to_inside, inside, *reversed(rear.to_inside))
