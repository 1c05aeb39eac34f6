"""Bodies behind a panel that leans: told as if it stood upright, then laid along its slope."""

from math import hypot

from nesting.cabinets.bodies import Prism, Rod, box_interval, cross_axes
from nesting.cabinets.hole_places import PlacedHole, find_extent, find_faces
from nesting.cabinets.profiles import Corner, Profile
from nesting.cabinets.space import Axis, Box, Interval
from nesting.lengths import Length


def lean(solid: Box | Rod, placed: PlacedHole) -> Prism:
    """Return a body behind a leaning panel where it really is; a rod as the box round it.

    Args:
        solid: The body as if the panel stood upright at its `through`, its length along the height.
        placed: The hole that it belongs to.
    """
    panel = placed.panel
    assert panel.profile is not None, "a panel that does not lean"
    upper, lower, *_ = panel.profile.corners
    across, up = upper[0] - lower[0], upper[1] - lower[1]
    whole = hypot(across, up)
    begins, outer = find_extent(panel, Axis.HEIGHT)[0], find_faces(panel)[0]

    def lay(along: Length, deep: Length) -> Corner:
        along, deep = along - begins, deep - outer
        return (
            round(lower[0] + (along * across + deep * up) / whole),
            round(lower[1] + (along * up - deep * across) / whole),
        )

    low, high = _interval(solid, Axis.HEIGHT)
    near, far = _interval(solid, Axis.DEPTH)
    corners = (lay(low, near), lay(low, far), lay(high, far), lay(high, near))
    return Prism(
        profile=Profile(axis=Axis.WIDTH, corners=corners), interval=_interval(solid, Axis.WIDTH)
    )


def _interval(solid: Box | Rod, axis: Axis) -> Interval:
    """Return where a body begins and ends along an axis."""
    if isinstance(solid, Box):
        return box_interval(solid, axis)
    if axis is solid.axis:
        return solid.interval
    at = solid.centre[cross_axes(solid.axis).index(axis)]
    return (at - solid.radius, at + solid.radius)
