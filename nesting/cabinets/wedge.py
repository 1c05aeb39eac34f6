"""The wedge in space: a ring of boards, one of them sloped, between two sides.

Angles are reckoned with in floats, in `rings` and in what lays boards and battens along a slope.
"""

from collections.abc import Iterator, Mapping

from nesting.cabinets.boards import Board, real_thickness
from nesting.cabinets.construction import Chain, Construction
from nesting.cabinets.edges import Edge
from nesting.cabinets.joints import JointKind
from nesting.cabinets.panels import Panel
from nesting.cabinets.profiles import Profile
from nesting.cabinets.space import Axis
from nesting.cabinets.sums import Term, add
from nesting.cabinets.wedge_braces import build_braces, find_filling_faults
from nesting.cabinets.wedge_design import WedgeDesign
from nesting.cabinets.wedge_frames import build_frames, find_frame_faults
from nesting.cabinets.wedge_measures import Wedge, measure_wedge
from nesting.cabinets.wedge_panels import build_member, build_sides, rebate_sides
from nesting.cabinets.wedge_spaces import declare_spaces
from nesting.errors import Fault, InputError
from nesting.lengths import Length, Unit, format_length


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
    faults = tuple(_find_faults(wedge)) or tuple(find_frame_faults(wedge))
    if faults:
        raise InputError(faults)
    members = tuple(build_member(wedge, board) for board in wedge.standing)
    bars, braces = build_frames(wedge), _build_braces(wedge, measured)
    faults = tuple(find_filling_faults(wedge, bars, braces))
    if faults:
        raise InputError(faults)
    return Construction(
        outside=wedge.outside,
        shell=(*rebate_sides(wedge, build_sides(wedge), members), *members),
        inner=braces,
        bars=bars,
        spaces=tuple(declare_spaces(wedge)),
        chains=tuple(_chain(wedge, members)),
        outline=Profile(axis=Axis.WIDTH, corners=wedge.outline),
        corner_joint="" if wedge.design.joint.kind is JointKind.BUTT else "rebate",
        edges=tuple(_name_edges(wedge)),
    )


def _build_braces(wedge: Wedge, measured: Mapping[Board, Length]) -> tuple[Panel, ...]:
    braces = wedge.design.braces
    board = (braces.board if braces else None) or wedge.design.board
    return build_braces(wedge, board, real_thickness(board, measured))


def _find_faults(wedge: Wedge) -> Iterator[Fault]:
    where = f"cabinet {wedge.design.name!r}"
    unit = wedge.unit
    if wedge.let_in >= wedge.real:
        thick = f"{format_length(wedge.real, unit)} {unit.value}"
        yield Fault(
            where=f"{where}, joint",
            what=f"its depth leaves nothing of the sides, which are {thick} thick",
            remedy=f"Give a depth of less than {thick}; half of it is usual.",
        )
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


def _chain(wedge: Wedge, members: tuple[Panel, ...]) -> Iterator[Chain]:
    """Yield straight ways through the cabinet, as far as a straight one meets square panels."""
    there = {panel.name for panel in members}
    width, depth, height = wedge.outside
    real = wedge.real
    back = tuple(reversed(wedge.closings["back"].to_inside))
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
                Term(length=depth - real - add(back), what="inside"),
                *back,
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
            owner = board.name if wedge.is_planted(board.name) else side
            is_let_in = wedge.let_in and board.name not in wedge.closings
            joint = "rebate" if is_let_in else ""
            yield Edge(name=f"{board.name} and {side}", axis=axis, owner=owner, joint=joint)
