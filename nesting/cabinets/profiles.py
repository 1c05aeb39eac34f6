"""Profiles: the outline of a solid that is not a plain box, such as a mitred or a sloped panel.

A profile is a convex outline in a plane across one axis; the solid is the same all along that axis.
Corners are whole nanometres. Corners of mitred panels are exact; those of sloped ones are rounded
to the nearest nanometre, so solids with profiles may overlap, or stand apart, by `ROUNDED`.
"""

from dataclasses import dataclass
from itertools import pairwise
from typing import TypeAlias

from nesting.cabinets.space import Axis, Box
from nesting.lengths import Length

Corner: TypeAlias = tuple[Length, Length]

ROUNDED = 3
"""By how much corners that were rounded may overlap, in nanometres."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Profile:
    """A convex outline across an axis.

    Attributes:
        axis: The axis that it is the same along.
        corners: Corners in order, anticlockwise, in the plane of the other two axes; the width
            comes before the depth, the depth before the height. At least three.
    """

    axis: Axis
    corners: tuple[Corner, ...]

    @property
    def area_twice(self) -> int:
        """Twice the area, in square nanometres."""
        closed = (*self.corners, self.corners[0])
        return sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise(closed))

    @property
    def plane(self) -> tuple[Axis, Axis]:
        """The two axes of its plane, in order."""
        first, second = (axis for axis in Axis if axis is not self.axis)
        return first, second

    def mirrored(self, axis: Axis) -> "Profile":
        """Return the profile mirrored in its own middle, across an axis of its plane."""
        place = self.plane.index(axis)
        values = [corner[place] for corner in self.corners]
        both = min(values) + max(values)
        turned = [(both - x, y) if place == 0 else (x, both - y) for x, y in reversed(self.corners)]
        return Profile(axis=self.axis, corners=tuple(turned))

    def is_same(self, other: "Profile") -> bool:
        """Return whether two profiles have the same corners, whichever they begin with."""
        return self.axis is other.axis and set(self.corners) == set(other.corners)


def profile_of(box: Box, axis: Axis) -> Profile:
    """Return the rectangle that a box is across an axis."""
    first, second = (other.index for other in Axis if other is not axis)
    left, low = box.low[first], box.low[second]
    right, high = box.high[first], box.high[second]
    return Profile(axis=axis, corners=((left, low), (right, low), (right, high), (left, high)))


def box_of(profile: Profile, along: tuple[Length, Length]) -> Box:
    """Return the box round a solid with a profile.

    Args:
        profile: The profile.
        along: Where the solid begins and ends along the profile's axis.
    """
    low, high = [0, 0, 0], [0, 0, 0]
    for place, axis in enumerate(profile.plane):
        values = [corner[place] for corner in profile.corners]
        low[axis.index], high[axis.index] = min(values), max(values)
    low[profile.axis.index], high[profile.axis.index] = along
    return Box(low=(low[0], low[1], low[2]), high=(high[0], high[1], high[2]))


def find_run(profile: Profile, height: Length) -> tuple[Length, Length]:
    """Return where a level line crosses an outline, to the inner nanometre; (0, 0) for nowhere."""
    crossed: list[Length] = []
    for (ax, ay), (bx, by) in pairwise((*profile.corners, profile.corners[0])):
        if min(ay, by) <= height <= max(ay, by):
            crossed += [ax, bx] if ay == by else [ax + (bx - ax) * (height - ay) // (by - ay)]
    return (min(crossed) + 1, max(crossed)) if crossed else (0, 0)


def do_overlap(first: Profile, second: Profile, apart: Length = 0) -> bool:
    """Return whether two profiles across the same axis overlap by more than rounding does.

    Two convex outlines are apart if and only if an edge of one of them has the other wholly on its
    outer side.

    Args:
        first: A profile.
        second: Another one.
        apart: How far the other has to be from that edge; corner to corner a little more is asked.
    """
    assert first.axis is second.axis, "profiles across different axes"
    return not (_has_parting_edge(first, second, apart) or _has_parting_edge(second, first, apart))


def _has_parting_edge(first: Profile, second: Profile, apart: Length) -> bool:
    for (ax, ay), (bx, by) in pairwise((*first.corners, first.corners[0])):
        along_x, along_y = bx - ax, by - ay
        deepest = max(along_x * (y - ay) - along_y * (x - ax) for x, y in second.corners)
        length_squared = along_x * along_x + along_y * along_y
        least = apart - ROUNDED
        squares = (deepest * deepest, least * least * length_squared)
        if least > 0:
            is_parted = deepest <= 0 and squares[0] >= squares[1]
        else:
            is_parted = deepest <= 0 or squares[0] <= squares[1]
        if is_parted:
            return True
    return False
