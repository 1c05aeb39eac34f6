"""The solids of a cabinet, for drawing it: whole nanometres, as they stand in space."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import isqrt

from nesting.cabinets.bodies import cross_axes
from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.hole_places import find_faces, is_sloped
from nesting.cabinets.hole_sheets import HoleSheet
from nesting.cabinets.panels import Bar, Panel
from nesting.cabinets.profiles import profile_of
from nesting.cabinets.space import Axis, Point
from nesting.job import Job
from nesting.lengths import Length
from plans.sections.numbers import show


@dataclass(frozen=True, slots=True, kw_only=True)
class Prism:
    """A solid that is the same all along one axis.

    Attributes:
        name: Name of the panel or batten.
        axis: 0 for the width, 1 for the depth, 2 for the height.
        corners: Its outline across that axis, anticlockwise, on the other two in order.
        along: Where it begins and ends on the axis.
    """

    name: str
    axis: int
    corners: tuple[tuple[Length, Length], ...]
    along: tuple[Length, Length]


@dataclass(frozen=True, slots=True, kw_only=True)
class Mouth:
    """A hole as it is seen on the outside of its panel.

    Attributes:
        centre: Its middle in space, on the outside face.
        across: From the middle to its edge, one way along the face.
        up: The same the other way, at a right angle to it.
        is_round: Whether it is a circle.
    """

    centre: Point
    across: Point
    up: Point
    is_round: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """One cabinet of a design, to be drawn.

    Attributes:
        name: Name of the design.
        letters: Its cabinets, such as "A, B".
        outside: Width, depth and height.
        texts: The same as printed: width, depth and height.
        prisms: Its panels and battens.
        mouths: Its holes.
    """

    name: str
    letters: str
    outside: Point
    texts: tuple[str, str, str]
    prisms: tuple[Prism, ...]
    mouths: tuple[Mouth, ...]


def make_pictures(job: Job) -> tuple[Picture, ...]:
    """Return a picture of every design whose solids are known."""
    return tuple(_picture(job, build) for build in job.cabinets if build.panels)


def _picture(job: Job, build: CabinetBuild) -> Picture:
    height, width, depth = build.outside
    outside = (width, depth, height)
    holes = build.fit_out.holes if build.fit_out else ()
    return Picture(
        name=build.name,
        letters=", ".join(build.letters),
        outside=outside,
        texts=(show(width, job.unit), show(depth, job.unit), show(height, job.unit)),
        prisms=make_prisms(build),
        mouths=tuple(_mouths(build, holes, outside)),
    )


def make_prisms(build: CabinetBuild) -> tuple[Prism, ...]:
    """Return the panels and battens of a cabinet as they are drawn: without rebates and grooves."""
    solids: tuple[Panel | Bar, ...] = (*build.panels, *build.bars)
    return tuple(_prism(solid) for solid in solids)


def _prism(solid: Panel | Bar) -> Prism:
    profile = solid.profile or profile_of(solid.box, Axis.DEPTH)
    index = profile.axis.index
    return Prism(
        name=solid.name,
        axis=index,
        corners=profile.corners,
        along=(solid.box.low[index], solid.box.high[index]),
    )


def _mouths(build: CabinetBuild, holes: tuple[HoleSheet, ...], outside: Point) -> Iterator[Mouth]:
    panels = {panel.name: panel for panel in build.panels}
    for hole in holes:
        panel = panels[hole.panel]
        first, second = cross_axes(panel.normal)
        distances = dict(
            zip((first, second), zip(hole.edges, hole.centre, strict=True), strict=True)
        )
        half_across, half_up = (side // 2 for side in hole.window or (hole.cut_out,) * 2)
        low, high = _middle_line(panel, second, outside)
        length = isqrt(sum((to - start) ** 2 for start, to in zip(low, high, strict=True)))
        edge, distance = distances[second]
        along = distance if edge == second.ends[0] else length - distance
        centre = list(_towards(low, high, along, length))
        edge, distance = distances[first]
        start, end = panel.box.low[first.index], panel.box.high[first.index]
        centre[first.index] = start + distance if edge == first.ends[0] else end - distance
        across = [0, 0, 0]
        across[first.index] = half_across
        up = _towards(low, high, half_up, length)
        yield Mouth(
            centre=(centre[0], centre[1], centre[2]),
            across=(across[0], across[1], across[2]),
            up=(up[0] - low[0], up[1] - low[1], up[2] - low[2]),
            is_round=hole.window is None,
        )


def _middle_line(panel: Panel, axis: Axis, outside: Point) -> tuple[Point, Point]:
    """Return the ends of a line on the outside face of a panel, its low end along an axis first.

    On a panel that leans it goes up the slope: the outside is the long side of its outline that
    lies farther from the middle of the cabinet.
    """
    if not is_sloped(panel):
        faces = find_faces(panel)
        index = panel.normal.index
        face = faces[0] if sum(faces) < outside[index] else faces[1]
        ends = []
        for end in (panel.box.low, panel.box.high):
            point = [0, 0, 0]
            point[axis.index], point[index] = end[axis.index], face
            ends.append((point[0], point[1], point[2]))
        return ends[0], ends[1]
    assert panel.profile is not None, "a panel that leans has an outline"
    corners = panel.profile.corners
    sides = sorted(zip(corners, (*corners[1:], corners[0]), strict=True), key=_length_squared)
    middle = outside[1] // 2, outside[2] // 2
    (u1, v1), (u2, v2) = max(
        sides[-2:],
        key=lambda side: _length_squared(
            (middle, ((side[0][0] + side[1][0]) // 2, (side[0][1] + side[1][1]) // 2))
        ),
    )
    ends = sorted([(0, u1, v1), (0, u2, v2)], key=lambda point: point[axis.index])
    return ends[0], ends[1]


def _length_squared(side: tuple[tuple[Length, Length], tuple[Length, Length]]) -> int:
    (u1, v1), (u2, v2) = side
    return (u2 - u1) ** 2 + (v2 - v1) ** 2


def _towards(low: Point, high: Point, distance: Length, length: Length) -> Point:
    """Return the point so far from one end of a line towards the other."""
    x, y, z = (
        start + (end - start) * distance // length for start, end in zip(low, high, strict=True)
    )
    return x, y, z
