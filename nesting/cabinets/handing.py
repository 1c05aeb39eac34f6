"""Handed parts: pairs that stand opposite each other, and whether one may take the other's place.

The right side is the left one mirrored. Turned over about an edge, a left side stands on the right;
it is the same part if what is done to it, and its outline, look the same turned over. Where they do
not, the two get names of their own.
"""

from dataclasses import replace
from itertools import groupby
from typing import TypeAlias

from nesting.cabinets.panels import Panel
from nesting.cabinets.space import Axis, Box
from nesting.lengths import Length

PAIR = 2
SAME = 1000
"""Features are alike within a micrometre: evenly spread ones are divided in whole nanometres."""

Feature: TypeAlias = tuple[Length, ...]


def name_handed(
    panels: tuple[Panel, ...], always: frozenset[str] = frozenset()
) -> tuple[Panel, ...]:
    """Return the panels, those of a handed pair named "Side, left" and "Side, right".

    Args:
        panels: The panels of one cabinet; those of one kind stand together.
        always: Names of panels that are no longer interchangeable for another reason, such as a
            hole in one of them or a grain that runs on.
    """
    named: list[Panel] = []
    for _, group in groupby(panels, key=lambda panel: panel.kind):
        pair = tuple(group)
        named += _name(pair) if _is_handed(pair, always) else pair
    return tuple(named)


def _is_handed(pair: tuple[Panel, ...], always: frozenset[str]) -> bool:
    if len(pair) != PAIR or not _are_opposite(pair):
        return False
    return any(panel.name in always for panel in pair) or not _is_same_turned_over(pair[0])


def _are_opposite(pair: tuple[Panel, ...]) -> bool:
    first, second = pair
    return first.normal is second.normal and first.length.interval == second.length.interval


def _name(pair: tuple[Panel, ...]) -> list[Panel]:
    """Return a pair, each with a name of its own and a note that says what it mirrors."""
    ends = [_end(panel) for panel in pair]
    kinds = [f"{panel.kind.split(' or ')[0]}, {end}" for panel, end in zip(pair, ends, strict=True)]
    if pair[0].normal is Axis.HEIGHT:
        kinds = [end.capitalize() for end in ends]
    return [
        replace(
            panel,
            kind=kind,
            note="; ".join(filter(None, (panel.note, f"handed: mirror image of {other}"))),
        )
        for panel, kind, other in zip(pair, kinds, reversed(kinds), strict=True)
    ]


def _end(panel: Panel) -> str:
    words = panel.name.split(" ")
    low, high = panel.normal.ends
    return low if low in words else high


def _is_same_turned_over(panel: Panel) -> bool:
    """Return whether turning a panel over about one of its edges brings every feature back."""
    axes = [axis for axis in Axis if axis is not panel.normal]
    return any(
        _are_alike(_list_features(panel), _list_features(panel, flipped))
        and (panel.profile is None or _is_outline_same(panel, flipped))
        for flipped in axes
    )


def _is_outline_same(panel: Panel, flipped: Axis) -> bool:
    profile = panel.profile
    assert profile is not None, "asked of a panel without a profile"
    if flipped is profile.axis:
        return True
    return profile.is_same(profile.mirrored(flipped))


def _list_features(panel: Panel, flipped: Axis | None = None) -> list[Feature]:
    return sorted(_place(panel.box, cut.box, flipped) for cut in panel.cuts)


def _place(panel: Box, cut: Box, flipped: Axis | None) -> Feature:
    """Return where a cut lies in its panel, perhaps with one direction turned round."""
    low, high = list(cut.low), list(cut.high)
    if flipped is not None:
        index = flipped.index
        both = panel.low[index] + panel.high[index]
        low[index], high[index] = both - cut.high[index], both - cut.low[index]
    return (*low, *high)


def _are_alike(first: list[Feature], second: list[Feature]) -> bool:
    return all(
        any(all(abs(x - y) <= SAME for x, y in zip(a, b, strict=True)) for b in second)
        for a in first
    )
