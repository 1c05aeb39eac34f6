"""Bays: what shelves and dividers make of the inside of a case."""

from collections.abc import Iterable

from nesting.cabinets.panels import Panel
from nesting.cabinets.space import Axis, Box


def find_bays(inside: Box, inner: Iterable[Panel]) -> tuple[Box, ...]:
    """Return the bays of a case as seen from an end, from the bottom up and from the left.

    A panel parts two bays where it takes more than half the depth: a brace does not.

    Args:
        inside: The inside of the case.
        inner: What stands in it.
    """
    deep = inside.size(Axis.DEPTH)
    low, high = inside.low[Axis.DEPTH.index], inside.high[Axis.DEPTH.index]
    parting = [
        panel.box.with_side(Axis.DEPTH, (low, high))
        for panel in inner
        if 2 * panel.box.size(Axis.DEPTH) > deep
    ]
    bays = inside.without(parting)
    return tuple(sorted(bays, key=lambda bay: (bay.low[Axis.HEIGHT.index], bay.low)))
