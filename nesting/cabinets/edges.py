"""The twelve edges of a box, and which panel runs through at each."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import product

from nesting.cabinets.panels import Panel
from nesting.cabinets.space import Axis, Box


@dataclass(frozen=True, slots=True, kw_only=True)
class Edge:
    """One of the twelve edges.

    Attributes:
        name: Such as "top left", seen from the front.
        axis: The direction it runs in.
        owner: Name of the panel that runs through: it fills the edge, its neighbour butts against
            it. Empty where no panel does.
        joint: How the two panels meet there; empty for a plain butt.
    """

    name: str
    axis: Axis
    owner: str
    joint: str = ""


def find_edges(
    shell: tuple[Panel, ...],
    outside: Box,
    runs_through: tuple[str, ...] = (),
    corner_joint: str = "",
) -> tuple[Edge, ...]:
    """Return the twelve edges with their owners, read off the solids.

    The owner of an edge is the panel whose solid reaches it at its middle, or, where it is open
    there, the one that reaches the most of it. The last bit at either end belongs to a corner of
    the box, where three edges meet.

    Args:
        shell: The panels.
        outside: The outside of the box.
        runs_through: Names of panels that come first where two reach an edge, as at a mitre.
        corner_joint: How the carcass panels meet at the four edges along the depth.
    """
    shell = tuple(sorted(shell, key=lambda panel: panel.name not in runs_through))
    return tuple(
        Edge(
            name=name,
            axis=axis,
            owner=_find_owner(shell, outside, axis, ends),
            joint=corner_joint if axis is Axis.DEPTH else "",
        )
        for name, axis, ends in _list_edges()
    )


def _list_edges() -> Iterator[tuple[str, Axis, dict[Axis, int]]]:
    """Yield name, direction and the ends of the other two axes: 0 for low, 1 for high."""
    for axis in (Axis.DEPTH, Axis.HEIGHT, Axis.WIDTH):
        others = [other for other in (Axis.DEPTH, Axis.HEIGHT, Axis.WIDTH) if other is not axis]
        for ends in product((0, 1), repeat=2):
            chosen = dict(zip(others, ends, strict=True))
            yield " ".join(other.ends[end] for other, end in chosen.items()), axis, chosen


def _find_owner(shell: tuple[Panel, ...], outside: Box, axis: Axis, ends: dict[Axis, int]) -> str:
    middle = (outside.low[axis.index] + outside.high[axis.index]) // 2
    reaching = [panel for panel in shell if _reaches(panel.box, outside, ends)]
    for panel in reaching:
        if panel.box.low[axis.index] <= middle < panel.box.high[axis.index]:
            return panel.name
    # The middle is open between the two boards of an open back. A panel that meets the edge with
    # its thickness only is not one of them.
    boards = [panel for panel in reaching if panel.normal is not axis]
    longest = max(boards, key=lambda panel: panel.box.size(axis), default=None)
    return longest.name if longest else ""


def _reaches(box: Box, outside: Box, ends: dict[Axis, int]) -> bool:
    """Return whether a box reaches an edge of the outside somewhere along it."""
    return all(
        box.high[other.index] == outside.high[other.index]
        if end
        else box.low[other.index] == outside.low[other.index]
        for other, end in ends.items()
    )
