"""Boxes and cases: a carcass with baffle and back, shelves and dividers, frames and a grille.

All sizes are formulas of the measured thickness. The outside holds: inset panels stand between all
four of the carcass, or in a rebate or groove of them; planted ones cover its edges and shorten its
depth.
"""

from collections.abc import Iterator, Mapping

from nesting.cabinets.boards import Board
from nesting.cabinets.box_faults import find_box_faults
from nesting.cabinets.carcass import Carcass, build_carcass, measure_carcass, rounded_down
from nesting.cabinets.closing_spaces import declare_spaces
from nesting.cabinets.construction import Chain, Construction
from nesting.cabinets.corner_joints import join_corners
from nesting.cabinets.design import BoxDesign, Through
from nesting.cabinets.fillings import (
    build_braces,
    build_closings,
)
from nesting.cabinets.frames import Frame, build_frame
from nesting.cabinets.grilles import place_grille
from nesting.cabinets.joints import JointKind
from nesting.cabinets.panels import Bar, Shared
from nesting.cabinets.seats import cut_seats
from nesting.cabinets.shelf_panels import build_dividers, build_shelves, cut_grooves
from nesting.cabinets.space import Axis
from nesting.cabinets.sums import Span, Term, list_terms, round_size
from nesting.cabinets.waiting import wait
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
    dividers = build_dividers(carcass, measured)
    shelves = build_shelves(carcass, dividers, measured, unit)
    walls = cut_seats(carcass, join_corners(carcass, build_carcass(carcass), unit), unit)
    return Construction(
        outside=carcass.outside,
        shell=(*cut_grooves(walls, (*dividers, *shelves), unit), *build_closings(carcass)),
        inner=(
            *build_braces(carcass, measured),
            *cut_grooves(dividers, shelves, unit),
            *shelves,
        ),
        bars=bars,
        spaces=tuple(declare_spaces(carcass)),
        shared=shared,
        chains=_chain(carcass, step),
        runs_through=tuple(panel.name for panel in walls if carcass.owns(panel)),
        corner_joint="" if design.joint.kind is JointKind.BUTT else design.joint.kind.value,
    )


def _build_frames(carcass: Carcass, unit: Unit) -> tuple[tuple[Bar, ...], tuple[Shared, ...]]:
    bars: tuple[Bar, ...] = ()
    shared: tuple[Shared, ...] = ()
    for frame in (*_list_frames(carcass, unit), *place_grille(carcass, unit)):
        more_bars, more_shared = build_frame(frame)
        bars, shared = bars + more_bars, shared + more_shared
    return bars, shared


def _list_frames(carcass: Carcass, unit: Unit) -> Iterator[Frame]:
    battens = carcass.design.battens
    status, oversize, _ = wait(carcass.design)
    for placed, end in ((carcass.front, "front"), (carcass.rear, "rear")):
        depth = carcass.frame_depth(placed)
        if battens is None or depth is None:
            continue
        yield Frame(
            name=f"{end} frame",
            battens=battens,
            across=rounded_down(carcass.across),
            upright=rounded_down(carcass.upright),
            depth=depth,
            set_back=list_terms(f"behind the {end} edge", placed.to_frame, unit),
            status=status,
            oversize=oversize,
        )


def _chain(carcass: Carcass, step: Length) -> tuple[Chain, ...]:
    """Return the ways through the box, with the panel that stands between two others as cut."""
    sides_run = carcass.design.through is Through.SIDES
    is_butt = carcass.design.joint.kind is JointKind.BUTT
    upright = "side" if is_butt and not sides_run else "inside"
    across = "top or bottom" if is_butt and sides_run else "inside"
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
