"""Screwed joints, and those of battens that lie along a slope."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import hypot

from nesting.cabinets.hole_places import find_extent, find_faces
from nesting.cabinets.panels import Bar, Panel
from nesting.cabinets.profiles import Corner
from nesting.cabinets.space import Axis
from nesting.lengths import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class FixingJoint:
    """A joint that gets screws, along its middle line.

    Attributes:
        through: Name of what they go through first.
        into: Name of what they hold in.
        kind: "battens", "closings", "braces" or "carcass".
        axis: The direction of the screws.
        is_low: Whether they go in from the low side.
        start: Where the line begins, on the two axes across, see `cross_axes`.
        finish: Where it ends.
        breadth: Breadth of the joint.
        end: What the end is called that places are measured from.
        head: Where the screws begin along their direction.
        thickness: Of what they go through.
        beyond: Of what they hold in, along their direction.
        is_flat: Whether it lies on a panel that leans, told as if the panel stood upright, as its
            holes are.
    """

    through: str
    into: str
    kind: str
    axis: Axis
    is_low: bool
    start: Corner
    finish: Corner
    breadth: Length
    end: str
    head: Length
    thickness: Length
    beyond: Length
    is_flat: bool = False

    @property
    def name(self) -> str:
        """What is screwed to what."""
        return f"{self.through} to {self.into}"


def find_on_side(bar: Bar, fixed: tuple[Panel, ...]) -> Iterator[FixingJoint]:
    """Yield the joint of a batten that lies along a slope on a side; one across is glued."""
    assert bar.profile is not None, "a batten that does not lean"
    if bar.length.axis is Axis.WIDTH:
        return
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = bar.profile.corners
    for panel in fixed:
        low, high = panel.through
        is_low = bar.box.high[0] == low
        if panel.normal is Axis.WIDTH and (is_low or bar.box.low[0] == high):
            yield FixingJoint(
                through=bar.name,
                into=panel.name,
                kind="battens",
                axis=Axis.WIDTH,
                is_low=is_low,
                start=((ax + dx) // 2, (ay + dy) // 2),
                finish=((bx + cx) // 2, (by + cy) // 2),
                breadth=round(hypot(dx - ax, dy - ay)),
                end="upper end",
                head=bar.box.low[0] if is_low else bar.box.high[0],
                thickness=bar.box.size(Axis.WIDTH),
                beyond=high - low,
            )


def find_behind_slope(closing: Panel, bars: tuple[Bar, ...]) -> Iterator[FixingJoint]:
    """Yield the joints of a baffle that leans with the battens behind it.

    Told in the width and along the panel, from its lower end up, as its holes are.
    """
    assert closing.profile is not None, "a panel that does not lean"
    upper, lower, *_ = closing.profile.corners
    whole = hypot(upper[0] - lower[0], upper[1] - lower[1])
    begins = find_extent(closing, Axis.HEIGHT)[0]
    outer, inner = find_faces(closing)

    def along(corner: Corner) -> Length:
        across, up = corner[0] - lower[0], corner[1] - lower[1]
        part = across * (upper[0] - lower[0]) + up * (upper[1] - lower[1])
        return begins + round(part / whole)

    for bar in bars:
        if bar.profile is None:
            continue
        near_high, near_low, *_ = bar.profile.corners
        left, right = bar.box.low[0], bar.box.high[0]
        low, high = along(near_low), along(near_high)
        is_across = bar.length.axis is Axis.WIDTH
        middle = ((left + right) // 2, (low + high) // 2)
        yield FixingJoint(
            through=closing.name,
            into=bar.name,
            kind="closings",
            axis=closing.normal,
            is_low=True,
            start=(left, middle[1]) if is_across else (middle[0], low),
            finish=(right, middle[1]) if is_across else (middle[0], high),
            breadth=high - low if is_across else right - left,
            end="left" if is_across else "lower end",
            head=outer,
            thickness=inner - outer,
            beyond=bar.section[1],
            is_flat=True,
        )
