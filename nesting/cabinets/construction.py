"""A construction: what a family makes of a design, panel by panel in space.

Every family ends here; lists, sums, edges, checks and advice are worked out from it alike.
"""

from dataclasses import dataclass

from nesting.cabinets.edges import Edge, find_edges
from nesting.cabinets.panels import Bar, Panel, Shared, Space
from nesting.cabinets.profiles import Profile
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
        runs_through: Names of the panels that own an edge which two panels reach, as at a mitre.
        corner_joint: How the carcass panels meet at the four long edges; empty for a plain butt.
        outline: The outline of the outside where it is not a box; every panel is worked out in it.
        edges: Edges that the family names itself; empty for the twelve of a box.
    """

    outside: Point
    shell: tuple[Panel, ...]
    inner: tuple[Panel, ...] = ()
    bars: tuple[Bar, ...] = ()
    spaces: tuple[Space, ...] = ()
    shared: tuple[Shared, ...] = ()
    chains: tuple[Chain, ...] = ()
    runs_through: tuple[str, ...] = ()
    corner_joint: str = ""
    outline: Profile | None = None
    edges: tuple[Edge, ...] = ()

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

    def find_edges(self) -> tuple[Edge, ...]:
        """Return the edges of the cabinet with their owners."""
        return self.edges or find_edges(self.shell, self.box, self.runs_through, self.corner_joint)
