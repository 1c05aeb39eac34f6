"""The solids of a cabinet, for drawing it: whole nanometres, as they stand in space."""

from collections.abc import Iterator
from dataclasses import dataclass

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
        normal: The axis that it goes along.
        sides: Its extents along the two other axes, in order.
        is_round: Whether it is a circle.
    """

    centre: Point
    normal: int
    sides: tuple[Length, Length]
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
        mouths: Its holes, as far as their panels stand square.
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
    profile = solid.profile if isinstance(solid, Panel) else None
    if profile is None:
        profile = profile_of(solid.box, Axis.DEPTH)
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
        if is_sloped(panel):
            continue
        faces = find_faces(panel)
        face = faces[0] if sum(faces) < outside[panel.normal.index] else faces[1]
        centre = [0, 0, 0]
        centre[panel.normal.index] = face
        for axis, edge, distance in zip(
            cross_axes(panel.normal), hole.edges, hole.centre, strict=True
        ):
            low, high = panel.box.low[axis.index], panel.box.high[axis.index]
            centre[axis.index] = low + distance if edge == axis.ends[0] else high - distance
        yield Mouth(
            centre=(centre[0], centre[1], centre[2]),
            normal=panel.normal.index,
            sides=hole.window or (hole.cut_out, hole.cut_out),
            is_round=hole.window is None,
        )
