"""Checking the solids: nothing overlaps, and no gap is left that nobody declared.

Panels of the shell and declared spaces must fill the outside box exactly. As they may not overlap
and none may stick out, it is enough that their volumes add up. What stands in the inside is checked
apart. All in whole numbers, so there is no tolerance.
"""

from collections.abc import Iterator
from itertools import combinations

from nesting.cabinets.construction import Construction
from nesting.cabinets.edges import find_edges
from nesting.cabinets.panels import Shared
from nesting.cabinets.space import Box


def find_clashes(construction: Construction) -> Iterator[str]:
    """Yield what is wrong with the solids of a cabinet, nothing where all is well."""
    filling = {panel.name: panel.box for panel in construction.shell}
    filling |= {space.name: space.box for space in construction.spaces}
    outside = construction.box
    yield from _find_overlaps(filling, construction.shared)
    for name, box in filling.items():
        if not outside.contains(box):
            yield f"the {name} sticks out"
    missing = outside.volume - sum(box.volume for box in filling.values())
    if missing > 0:
        yield f"{missing} nm³ of the outside box are neither wood nor a declared space"
    yield from _find_inner_clashes(construction)
    for edge in find_edges(construction.shell, outside):
        if not edge.owner:
            yield f"no panel runs through at the {edge.name} edge"


def _find_inner_clashes(construction: Construction) -> Iterator[str]:
    inner = {panel.name: panel.box for panel in construction.inner}
    inner |= {bar.name: bar.box for bar in construction.bars}
    yield from _find_overlaps(inner, construction.shared)
    inside = construction.spaces[0].box
    for name, box in inner.items():
        if not inside.contains(box):
            yield f"the {name} does not stand in the inside"


def _find_overlaps(solids: dict[str, Box], shared: tuple[Shared, ...]) -> Iterator[str]:
    declared = {(each.first, each.second): each.box for each in shared}
    for (first, box), (second, other) in combinations(solids.items(), 2):
        overlap = box.overlap(other)
        if overlap and overlap != declared.get((first, second), declared.get((second, first))):
            yield f"the {first} and the {second} overlap"
