"""A construction: what a family makes of a design, panel by panel in space.

Every family ends here; lists, sums, edges, checks and advice are worked out from it alike.
"""

from dataclasses import dataclass

from nesting.cabinets.panels import Bar, Panel, Shared, Space
from nesting.cabinets.space import Axis, Box, Point
from nesting.cabinets.sums import Term
from nesting.lengths import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class Chain:
    """What one meets on a straight way through the cabinet, from outside to outside.

    Attributes:
        axis: The way's direction.
        terms: Thicknesses, clear spaces and panels, a panel with the size it is cut to.
    """

    axis: Axis
    terms: tuple[Term, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Construction:
    """A cabinet in space.

    Attributes:
        outside: Outside width, depth and height, rounded to the step.
        shell: Panels that together with the spaces fill the outside box.
        inner: Panels that stand in the inside, such as braces.
        bars: Battens, in the inside too.
        spaces: The inside first, then recesses and clearances.
        shared: Where solids share a place, such as a mitre.
        chains: One for height, width and depth.
    """

    outside: Point
    shell: tuple[Panel, ...]
    inner: tuple[Panel, ...] = ()
    bars: tuple[Bar, ...] = ()
    spaces: tuple[Space, ...] = ()
    shared: tuple[Shared, ...] = ()
    chains: tuple[Chain, ...] = ()

    @property
    def panels(self) -> tuple[Panel, ...]:
        """All panels."""
        return self.shell + self.inner

    @property
    def box(self) -> Box:
        """The outside as a box."""
        return Box(low=(0, 0, 0), high=self.outside)

    def whole(self, axis: Axis) -> Length:
        """Return the outside size along an axis."""
        return self.outside[axis.index]
