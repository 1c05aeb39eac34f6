"""Corners of a cabinet cut through in its middle: joints, seats and battens as they really meet."""

from collections.abc import Iterator
from dataclasses import dataclass

from shapely import LineString, Polygon, box, union_all

from nesting.cabinets.bodies import box_interval, cross_axes
from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.panels import Bar, Cut, Panel
from nesting.cabinets.profiles import Corner, Profile, profile_of
from nesting.cabinets.space import Axis
from nesting.lengths import Length, mm

WINDOW: Length = mm(110)
"""How much of the cabinet a corner picture shows, across and up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CornerShape:
    """One solid where a corner picture cuts it.

    Attributes:
        letter: Stands in it in the picture.
        name: Its name.
        corners: Its outline from the corner of the cabinet inwards, both counted up.
    """

    letter: str
    name: str
    corners: tuple[tuple[Length, Length], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CornerPicture:
    """One corner, cut through in the middle of the cabinet.

    Attributes:
        title: Which corner, and how it is seen.
        window: Extent across and up, the cabinet's corner at 0.
        right: True where the cabinet's corner lies at the right.
        top: True where it lies at the top.
        shapes: What is cut there.
    """

    title: str
    window: Length
    right: bool
    top: bool
    shapes: tuple[CornerShape, ...]


_OF_BOX = (
    ("top left, seen from the front", Axis.DEPTH, (0, 1)),
    ("bottom left, seen from the front", Axis.DEPTH, (0, 0)),
    ("front left, seen from above", Axis.HEIGHT, (0, 0)),
    ("rear left, seen from above", Axis.HEIGHT, (0, 1)),
)
_OF_WEDGE = (
    ("bottom front, seen from the left", Axis.WIDTH, (0, 0)),
    ("top rear, seen from the left", Axis.WIDTH, (1, 1)),
    ("bottom rear, seen from the left", Axis.WIDTH, (1, 0)),
    ("rear left, seen from above", Axis.HEIGHT, (0, 1)),
)


def make_corners(build: CabinetBuild) -> tuple[CornerPicture, ...]:
    """Return pictures of the corners that differ, those of a cabinet with a slope from the side."""
    leans = any(each.profile and each.profile.axis is Axis.WIDTH for each in build.panels)
    pictures = (
        CornerPicture(
            title=title,
            window=WINDOW,
            right=bool(ends[0]),
            top=bool(ends[1]),
            shapes=tuple(_cut_at(build, axis, ends)),
        )
        for title, axis, ends in (_OF_WEDGE if leans else _OF_BOX)
    )
    return tuple(picture for picture in pictures if picture.shapes)


def _cut_at(build: CabinetBuild, axis: Axis, ends: tuple[int, int]) -> Iterator[CornerShape]:
    """Yield what a plane through the middle cuts near one corner."""
    height, width, depth = build.outside
    outside = dict(zip(Axis, (width, depth, height), strict=True))
    wholes = [outside[other] for other in cross_axes(axis)]
    number = 0
    solids: tuple[Panel | Bar, ...] = (*build.panels, *build.bars)
    for solid in solids:
        outline = _section(solid, axis, outside[axis] // 2)
        inwards = tuple(
            (wholes[0] - u if ends[0] else u, wholes[1] - v if ends[1] else v) for u, v in outline
        )
        if inwards and min(u for u, _ in inwards) < WINDOW and min(v for _, v in inwards) < WINDOW:
            yield CornerShape(letter=chr(ord("a") + number), name=solid.name, corners=inwards)
            number += 1


def _section(solid: Panel | Bar, axis: Axis, at: Length) -> tuple[Corner, ...]:
    """Return the outline of a solid where a plane across an axis cuts it, cuts taken out."""
    shape = _slice(solid, axis, at)
    if isinstance(solid, Panel):
        shape = shape.difference(union_all([_slice(cut, axis, at) for cut in solid.cuts]))
    if shape.is_empty:
        return ()
    pieces = [piece for piece in getattr(shape, "geoms", [shape]) if isinstance(piece, Polygon)]
    largest = max(pieces, key=lambda piece: piece.area)
    return tuple((round(u), round(v)) for u, v in largest.exterior.coords[:-1])


def _slice(solid: Panel | Bar | Cut, axis: Axis, at: Length) -> Polygon:
    low, high = box_interval(solid.box, axis)
    if not low <= at < high:
        return Polygon()
    if solid.profile is None:
        return Polygon(profile_of(solid.box, axis).corners)
    if solid.profile.axis is axis:
        return Polygon(solid.profile.corners)
    return _slice_slope(solid.profile, box_interval(solid.box, solid.profile.axis), axis, at)


def _slice_slope(profile: Profile, along: tuple[Length, Length], axis: Axis, at: Length) -> Polygon:
    """Return the rectangle where a plane cuts a solid that leans across another axis."""
    number = profile.plane.index(axis)
    places = [corner[1 - number] for corner in profile.corners]
    ends = [(at, place) if number == 0 else (place, at) for place in (min(places), max(places))]
    met = Polygon(profile.corners).intersection(LineString(ends))
    if met.is_empty or not met.length:
        return Polygon()
    sides = {profile.plane[1 - number]: met.bounds[1 - number :: 2], profile.axis: along}
    (left, right), (low, high) = (sides[other] for other in cross_axes(axis))
    return box(left, low, right, high)
