"""Cabinets of all families and joints, held against a general-purpose geometry library."""

import re
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from math import radians, tan

import pytest
import shapely
from hypothesis import HealthCheck, given, settings

from nesting.cabinets.construction import Construction
from nesting.cabinets.design import BoxDesign, GrainRound, Through
from nesting.cabinets.expand import expand
from nesting.cabinets.families import Design
from nesting.cabinets.joints import JointKind
from nesting.cabinets.panels import Bar, Cut, Panel, Space
from nesting.cabinets.profiles import Profile, profile_of
from nesting.cabinets.space import Axis, Box
from nesting.cabinets.sums import round_size
from nesting.lengths import NM_PER_MM, Length, Unit, inch, mm
from tests.nesting.cabinets.designs import BIRCH, POPLAR, tenths
from tests.nesting.cabinets.generated import DESIGNS, STEP, joined_boxes, lay_out_or_skip, wedges

AREA_MM2 = 0.01
"""Corners of slopes are rounded to a nanometre: over two metres that is 0.002 square mm."""
THICKNESSES = tenths(9, 24)
MANY = settings(
    max_examples=120,
    deadline=None,
    suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow],
)


def outline(corners: tuple[tuple[int, int], ...]) -> shapely.Polygon:
    return shapely.Polygon([(x / NM_PER_MM, y / NM_PER_MM) for x, y in corners])


def section(solid: Panel | Space | Bar | Cut, axis: Axis, at: float) -> shapely.Geometry:
    """Cut a solid by a plane across an axis: its true shape, cuts and slopes included."""
    box = solid.box
    if not box.low[axis.index] < at < box.high[axis.index]:
        return shapely.Polygon()
    profile = getattr(solid, "profile", None)
    if profile is None:
        shape = outline(profile_of(box, axis).corners)
    elif profile.axis is axis:
        shape = outline(profile.corners)
    else:
        shape = slice_profile(profile, box, axis, at)
    cuts = [section(cut, axis, at) for cut in getattr(solid, "cuts", ())]
    return shape.difference(shapely.union_all(cuts)) if cuts else shape


def slice_profile(profile: Profile, box: Box, axis: Axis, at: float) -> shapely.Polygon:
    """Cut a solid with a profile across an axis of the profile's plane: a rectangle."""
    across = profile.plane.index(axis)
    far, here = 1e5, at / NM_PER_MM
    line = [(here, -far), (here, far)] if across == 0 else [(-far, here), (far, here)]
    met = outline(profile.corners).intersection(shapely.LineString(line))
    if met.is_empty or met.length == 0:
        return shapely.Polygon()
    other = profile.plane[1 - across]
    ends = met.bounds[1 - across], met.bounds[3 - across]
    along = (box.low[profile.axis.index] / NM_PER_MM, box.high[profile.axis.index] / NM_PER_MM)
    spans = {other: ends, profile.axis: along}
    first, second = (each for each in Axis if each is not axis)
    return shapely.box(spans[first][0], spans[second][0], spans[first][1], spans[second][1])


def planes(laid: Construction, axis: Axis) -> list[float]:
    """Return one plane between every two neighbouring faces along an axis."""
    boxes = [panel.box for panel in laid.panels] + [bar.box for bar in laid.bars]
    boxes += [cut.box for panel in laid.panels for cut in panel.cuts]
    boxes += [space.box for space in laid.spaces]
    faces = {laid.outside[axis.index]}
    for box in boxes:
        faces |= {box.low[axis.index], box.high[axis.index]}
    between = [(low + high) / 2 for low, high in pairwise(sorted(faces)) if high - low > 100]
    return between[:: max(1, len(between) // 12)]


@pytest.mark.property
@MANY
@given(DESIGNS, THICKNESSES)
def test_sections_show_no_overlap_and_no_undeclared_gap(wanted: Design, thickness: Length) -> None:
    """Acceptance: panels as solids, no overlap, no gap over 0.05 mm but declared clearances."""
    laid = lay_out_or_skip(wanted, thickness)
    outside = (
        Space(name="outside", box=laid.box, profile=laid.outline)
        if laid.outline
        else Space(name="outside", box=laid.box)
    )
    for axis in Axis:
        for at in planes(laid, axis):
            wood = [section(panel, axis, at) for panel in laid.shell]
            inner = [section(panel, axis, at) for panel in laid.inner]
            spaces = [section(space, axis, at) for space in laid.spaces]
            together = shapely.union_all([*wood, *inner])
            assert abs(together.area - sum(each.area for each in [*wood, *inner])) < AREA_MM2
            room = shapely.union_all(spaces)
            assert shapely.union_all(wood).intersection(room).area < AREA_MM2
            gap = section(outside, axis, at).difference(together.union(room))
            assert gap.area < AREA_MM2
            sticks_out = together.union(room).difference(section(outside, axis, at))
            assert sticks_out.area < AREA_MM2


@pytest.mark.property
@MANY
@given(DESIGNS, THICKNESSES)
def test_every_edge_has_exactly_one_owner(wanted: Design, thickness: Length) -> None:
    edges = lay_out_or_skip(wanted, thickness).find_edges()
    assert len({edge.name for edge in edges}) == len(edges)
    assert all(edge.owner for edge in edges)
    if isinstance(wanted, BoxDesign):
        assert len(edges) == 12


@pytest.mark.property
@MANY
@given(DESIGNS, THICKNESSES)
def test_sizes_are_multiples_of_the_step_and_within_one_of_their_solids(
    wanted: Design, thickness: Length
) -> None:
    for panel in lay_out_or_skip(wanted, thickness).panels:
        for span in (panel.length, panel.width):
            size = round_size(span, STEP)
            assert size % STEP == 0
            assert abs(size - span.size) < STEP
            if panel.profile is None:
                assert span.size == panel.box.size(span.axis)


def build_or_skip(
    wanted: Design, thickness: Length, step: Length = STEP, unit: Unit = Unit.MM
) -> dict[str, tuple[Length, Length]]:
    lay_out_or_skip(wanted, thickness, step, unit)
    built = expand(
        wanted,
        letters=("A",) * wanted.count,
        measured={BIRCH: thickness, POPLAR: mm("11.8")},
        step=step,
        unit=unit,
    )
    sizes = {part.name: (part.length, part.width) for part in built.parts}
    assert len(sizes) == len(built.parts), "names of parts are unique"
    return sizes


@pytest.mark.property
@MANY
@given(DESIGNS, THICKNESSES)
def test_the_unit_of_the_pages_changes_no_size(wanted: Design, thickness: Length) -> None:
    step = inch("1/32")
    assert build_or_skip(wanted, thickness, step, Unit.MM) == (
        build_or_skip(wanted, thickness, step, Unit.INCH)
    )


@pytest.mark.property
@MANY
@given(DESIGNS, THICKNESSES)
def test_every_sum_of_a_part_holds_within_one_step(wanted: Design, thickness: Length) -> None:
    lay_out_or_skip(wanted, thickness)
    built = expand(
        wanted,
        letters=("A",),
        measured={BIRCH: thickness, POPLAR: mm("11.8")},
        step=STEP,
        unit=Unit.MM,
    )
    for part in built.parts:
        for text, size in zip(part.sums, (part.length, part.width), strict=True):
            right = re.split(r"[(;,]", text.split(" = ")[1])[0]
            if not re.fullmatch(r"[\d.]+(?: [+-] [\d.]+)* ?", right):
                continue  # "outside height", "as designed", a bay in brackets
            terms = re.findall(r"([+-]?) ?(\d+(?:\.\d+)?)", right)
            total = sum((Fraction(f"{sign}{value}") for sign, value in terms), Fraction(0))
            slack = STEP + mm("0.002")  # inputs that are not whole thousandths print rounded
            assert abs(total * NM_PER_MM - size) < slack, text
    for text in built.sums:
        whole, right = text.split(" = ")
        terms = re.findall(r"([+-]?) ?(\d+(?:\.\d+)?)", right.split("(")[0])
        total = sum((Fraction(f"{sign}{value}") for sign, value in terms), Fraction(0))
        assert abs(total - Fraction(whole)) <= Fraction(5, 1000), text


@pytest.mark.property
@MANY
@given(joined_boxes(), THICKNESSES)
def test_a_change_of_owner_moves_the_lengths_of_the_four_panels_and_no_others(
    wanted: BoxDesign, thickness: Length
) -> None:
    """Acceptance: swapping the owner changes exactly the sizes it should."""
    plain = replace(wanted, grain_round=GrainRound.NO)
    other = Through.SIDES if plain.through is not Through.SIDES else Through.TOP_AND_BOTTOM
    swapped = replace(plain, through=other)
    sizes = [
        {
            panel.name: (panel.length.size, panel.width.size)
            for panel in lay_out_or_skip(each, thickness).panels
        }
        for each in (plain, swapped)
    ]
    moved = {name for name in sizes[0] if sizes[0][name] != sizes[1][name]}
    is_shared = plain.joint.kind in {JointKind.MITRE, JointKind.FINGER}
    four = {"left side", "right side", "top", "bottom"}
    assert moved == (set() if is_shared else four)
    for name in moved:
        assert sizes[0][name][1] == sizes[1][name][1]


@pytest.mark.property
@MANY
@given(wedges(), THICKNESSES)
def test_bevels_of_a_wedge_follow_from_thickness_and_angle(
    wanted: Design, thickness: Length
) -> None:
    for panel in lay_out_or_skip(wanted, thickness).shell:
        real = thickness if panel.board == BIRCH else mm("11.8")
        for bevel in panel.bevels:
            expected = real * tan(radians(bevel.angle_deg))
            assert abs(abs(bevel.shorter) - expected) < mm("0.001")
