"""Bodies: boxes and rods along the axes, prisms that lean, and whether two of them meet."""

from dataclasses import dataclass
from math import cos, isqrt, pi, sin
from typing import TypeAlias

from nesting.cabinets.profiles import Profile, do_overlap, profile_of
from nesting.cabinets.space import Axis, Box, Interval, box_along
from nesting.lengths import Length

SIDES = 32
"""Of the outline that stands for a circle among leaning bodies."""
AXES = (Axis.WIDTH, Axis.DEPTH, Axis.HEIGHT)


def cross_axes(axis: Axis) -> tuple[Axis, Axis]:
    """Return the two directions across an axis, in the order width, depth, height."""
    first, second = (other for other in AXES if other is not axis)
    return first, second


@dataclass(frozen=True, slots=True, kw_only=True)
class Rod:
    """A round body along an axis.

    Attributes:
        axis: Its direction.
        centre: Where its middle line stands on the two other directions, see `cross_axes`.
        radius: Its radius, a whole number of nanometres, rounded up.
        interval: Where it begins and ends along itself.
    """

    axis: Axis
    centre: tuple[Length, Length]
    radius: Length
    interval: Interval

    @property
    def volume(self) -> int:
        """Volume in cubic nanometres, to the nearest."""
        low, high = self.interval
        return round(pi * self.radius**2 * (high - low))


@dataclass(frozen=True, slots=True, kw_only=True)
class Prism:
    """A body that is the same all along an axis, and leans across it.

    Attributes:
        profile: Its outline.
        interval: Where it begins and ends along the axis of the outline.
    """

    profile: Profile
    interval: Interval


Solid: TypeAlias = Box | Rod | Prism


def rod(axis: Axis, centre: tuple[Length, Length], diameter: Length, interval: Interval) -> Rod:
    """Return a rod of a diameter."""
    return Rod(axis=axis, centre=centre, radius=(diameter + 1) // 2, interval=interval)


def meet(first: Solid, second: Solid, clearance: Length = 0) -> bool:
    """Return whether two bodies come closer than a clearance; touching is allowed.

    The first is grown by the clearance on all sides: a rod grows in radius and at both ends, a
    box at every face. At the corners of a box that keeps a little more than the clearance, and so
    it does where a body leans: a rod beside it counts with the square round it.
    """
    if isinstance(first, Prism) or isinstance(second, Prism):
        return _leaning_meet(first, second, clearance)
    grown = _grow(first, clearance)
    match grown, second:
        case Box(), Box():
            return grown.overlap(second) is not None
        case Rod(), Box():
            return _rod_meets_box(grown, second)
        case Box(), Rod():
            return _rod_meets_box(second, grown)
        case Rod(), Rod() if grown.axis is second.axis:
            return _parallel_rods_meet(grown, second)
        case Rod(), Rod():
            return _crossing_rods_meet(grown, second)
    raise AssertionError


def _leaning_meet(first: Solid, second: Solid, clearance: Length) -> bool:
    axis = next(each.profile.axis for each in (first, second) if isinstance(each, Prism))
    one, other = _as_prism(first, axis), _as_prism(second, axis)
    low, high = one.interval
    is_beside = not _overlap((low - clearance, high + clearance), other.interval)
    return not is_beside and do_overlap(one.profile, other.profile, clearance)


def _as_prism(solid: Solid, axis: Axis) -> Prism:
    """Return a body as a prism along an axis; a rod as what is circumscribed about it."""
    match solid:
        case Prism():
            assert solid.profile.axis is axis, "prisms along different axes"
            return solid
        case Box():
            return Prism(profile=profile_of(solid, axis), interval=box_interval(solid, axis))
        case Rod() if solid.axis is axis:
            return Prism(profile=_circumscribe(solid), interval=solid.interval)
    first, second = ((at - solid.radius, at + solid.radius) for at in solid.centre)
    sides = dict(zip(cross_axes(solid.axis), (first, second), strict=True))
    return _as_prism(box_along(sides | {solid.axis: solid.interval}), axis)


def _circumscribe(round_one: Rod) -> Profile:
    (across, up), radius = round_one.centre, round_one.radius / cos(pi / SIDES)
    corners = tuple(
        (round(across + radius * cos(angle)), round(up + radius * sin(angle)))
        for angle in (2 * pi * number / SIDES for number in range(SIDES))
    )
    return Profile(axis=round_one.axis, corners=corners)


def _grow(solid: Box | Rod, by: Length) -> Box | Rod:
    if isinstance(solid, Box):
        low, high = solid.low, solid.high
        return Box(
            low=(low[0] - by, low[1] - by, low[2] - by),
            high=(high[0] + by, high[1] + by, high[2] + by),
        )
    start, end = solid.interval
    return Rod(
        axis=solid.axis,
        centre=solid.centre,
        radius=solid.radius + by,
        interval=(start - by, end + by),
    )


def _rod_meets_box(round_one: Rod, box: Box) -> bool:
    if not _overlap(round_one.interval, box_interval(box, round_one.axis)):
        return False
    away = [
        _distance(at, box_interval(box, axis))
        for at, axis in zip(round_one.centre, cross_axes(round_one.axis), strict=True)
    ]
    return away[0] ** 2 + away[1] ** 2 < round_one.radius**2


def _parallel_rods_meet(first: Rod, second: Rod) -> bool:
    if not _overlap(first.interval, second.interval):
        return False
    across, along = (a - b for a, b in zip(first.centre, second.centre, strict=True))
    return across**2 + along**2 < (first.radius + second.radius) ** 2


def _crossing_rods_meet(first: Rod, second: Rod) -> bool:
    """Return whether rods at right angles meet: seen along the direction that both lie across.

    Each takes, at the nearest place that the other's length allows, a chord along that direction.
    """
    shared = next(axis for axis in AXES if axis not in (first.axis, second.axis))
    middles, chords = [], []
    for one, other in ((first, second), (second, first)):
        place = dict(zip(cross_axes(one.axis), one.centre, strict=True))
        away = _distance(place[other.axis], other.interval)
        if away >= one.radius:
            return False
        middles.append(place[shared])
        chords.append(isqrt(one.radius**2 - away**2))
    return abs(middles[0] - middles[1]) < sum(chords)


def box_interval(box: Box, axis: Axis) -> Interval:
    """Return where a box begins and ends on an axis."""
    return box.low[axis.index], box.high[axis.index]


def _overlap(first: Interval, second: Interval) -> bool:
    return max(first[0], second[0]) < min(first[1], second[1])


def _distance(at: Length, interval: Interval) -> Length:
    return max(interval[0] - at, at - interval[1], 0)
