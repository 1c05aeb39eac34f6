"""Panels as solids: a general-purpose geometry library looks at sections through them."""

from dataclasses import replace
from itertools import pairwise

import pytest
import shapely
from hypothesis import given, settings

from nesting.cabinets.clashes import find_clashes
from nesting.cabinets.closing_design import Closing, Covering, Fit
from nesting.cabinets.construction import Construction
from nesting.cabinets.design import Battens, BoxDesign, Corners
from nesting.cabinets.panels import Shared
from nesting.cabinets.space import Axis, Box
from nesting.cabinets.sums import Span
from nesting.lengths import Length, mm
from tests.nesting.cabinets.designs import THICKNESSES, box_designs, design, lay_out

AREA_TOLERANCE_MM2 = 1e-6


def section(box: Box, axis: Axis, at: float) -> shapely.Polygon:
    """Cut a box by a plane across an axis; empty where the plane misses it."""
    if not box.low[axis.index] < at < box.high[axis.index]:
        return shapely.Polygon()
    x, y = (other.index for other in Axis if other is not axis)
    corners = (box.low[x], box.low[y], box.high[x], box.high[y])
    return shapely.box(*(corner / mm(1) for corner in corners))


def cut_planes(laid: Construction, axis: Axis) -> list[float]:
    """Return one plane between every two neighbouring faces along an axis."""
    boxes = [panel.box for panel in laid.panels]
    boxes += [bar.box for bar in laid.bars] + [space.box for space in laid.spaces]
    faces = sorted({box.low[axis.index] for box in boxes} | {laid.outside[axis.index]})
    return [(low + high) / 2 for low, high in pairwise(faces)]


@pytest.mark.property
@settings(max_examples=60, deadline=None)
@given(box_designs(), THICKNESSES)
def test_sections_show_no_overlap_and_no_undeclared_gap(
    wanted: BoxDesign, thickness: Length
) -> None:
    laid = lay_out(wanted, thickness)
    assert not list(find_clashes(laid))
    for axis in Axis:
        for at in cut_planes(laid, axis):
            shell = [section(panel.box, axis, at) for panel in laid.shell]
            wood = shapely.union_all(shell)
            assert abs(wood.area - sum(each.area for each in shell)) < AREA_TOLERANCE_MM2
            spaces = shapely.union_all([section(each.box, axis, at) for each in laid.spaces])
            gap = section(laid.box, axis, at).difference(wood).symmetric_difference(spaces)
            assert gap.area < AREA_TOLERANCE_MM2


@pytest.mark.property
@settings(max_examples=60, deadline=None)
@given(box_designs(), THICKNESSES)
def test_battens_and_braces_stand_in_the_inside_and_apart(
    wanted: BoxDesign, thickness: Length
) -> None:
    laid = lay_out(wanted, thickness)
    inner = [brace.box for brace in laid.inner] + [bar.box for bar in laid.bars]
    for at in cut_planes(laid, Axis.DEPTH):
        pieces = [section(box, Axis.DEPTH, at) for box in inner]
        together = shapely.union_all(pieces)
        mitred = sum(section(each.box, Axis.DEPTH, at).area for each in laid.shared)
        assert (
            abs(sum(piece.area for piece in pieces) - together.area - mitred) < AREA_TOLERANCE_MM2
        )
        inside = section(laid.spaces[0].box, Axis.DEPTH, at)
        assert together.difference(inside).area < AREA_TOLERANCE_MM2


def moved(laid: Construction, name: str, by: Length) -> Construction:
    """Move a panel along its thickness."""
    shell = tuple(
        replace(panel, through=(panel.through[0] + by, panel.through[1] + by))
        if panel.name == name
        else panel
        for panel in laid.shell
    )
    return replace(laid, shell=shell)


def test_a_panel_that_is_too_far_in_is_found() -> None:
    problems = list(find_clashes(moved(lay_out(design()), "left side", mm("0.1"))))
    assert "the left side and the top overlap" in problems
    assert "no panel runs through at the front left edge" in problems


def test_a_panel_that_sticks_out_is_found() -> None:
    problems = list(find_clashes(moved(lay_out(design()), "left side", -mm("0.1"))))
    assert "the left side sticks out" in problems


def test_a_gap_of_a_hundredth_is_found() -> None:
    laid = lay_out(design())
    shorter = tuple(
        replace(panel, length=shorten(panel.length)) if panel.name == "baffle" else panel
        for panel in laid.shell
    )
    (problem,) = find_clashes(replace(laid, shell=shorter))
    assert problem.endswith("nm³ of the outside box are neither wood nor a declared space")


def shorten(span: Span) -> Span:
    return replace(span, whole=span.whole - mm("0.01"))


def test_mitred_battens_share_exactly_their_corners() -> None:
    frames = Battens(section=(mm(20), mm(30)), front=True, rear=True, corners=Corners.MITRED)
    laid = lay_out(design(battens=frames))
    assert len(laid.shared) == 8
    assert not list(find_clashes(laid))
    undeclared = replace(laid, shared=laid.shared[1:])
    assert list(find_clashes(undeclared)) == [
        "the front frame, bottom and the front frame, left overlap"
    ]
    wrong = Shared(first=laid.shared[0].first, second=laid.shared[0].second, box=laid.shared[1].box)
    assert list(find_clashes(replace(laid, shared=(wrong, *laid.shared[1:]))))


def test_a_batten_in_the_wall_is_found() -> None:
    laid = lay_out(design(battens=Battens(section=(mm(20), mm(30)), front=True)))
    bar = laid.bars[0]
    low = (bar.box.low[0] - 1, bar.box.low[1], bar.box.low[2])
    bars = (replace(bar, box=Box(low=low, high=bar.box.high)), *laid.bars[1:])
    assert list(find_clashes(replace(laid, bars=bars))) == [
        "the front frame, bottom does not stand in the inside"
    ]


def test_clearances_round_a_covered_opening_are_declared() -> None:
    laid = lay_out(
        design(
            covering=Covering(thickness=mm(1), ease=mm(1)),
            back=Closing(fit=Fit.INSET, wrapped=True, set_back=mm(5)),
        )
    )
    names = [space.name for space in laid.spaces if "back" in space.name]
    assert names == [
        "recess before the back",
        "clearance of the back, left",
        "clearance of the back, right",
        "clearance of the back, bottom",
        "clearance of the back, top",
    ]
