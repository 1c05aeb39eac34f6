"""Grain that runs on round the carcass: its panels cut one after the other from one strip."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import pairwise

from nesting.cabinets.design import GrainRound
from nesting.cabinets.panels import Panel
from nesting.parts import Part, Strip

STRIP = "grain round"
LOOPS = {
    GrainRound.NO: (),
    GrainRound.ALL: ("bottom", "left side", "top", "right side"),
    GrainRound.OVER_TOP: ("left side", "top", "right side"),
}
"""Round the carcass as one unrolls it, outside up and front edge down, from the left. The break is
at the bottom, where it shows least."""
LETTERS = "abc"
BEFORE = "grain runs round: number the pieces in their order and mark their joints first"
SHORTER = 'Write grain_round = "over the top", which leaves the bottom out, or take it out.'
LONGER = "Take grain_round out, or list a sheet that is long enough."


def number_loop(panels: tuple[Panel, ...], loop: tuple[str, ...]) -> tuple[Panel, ...]:
    """Return the panels of the shell, each of a loop with its place and its joints in words."""
    joints = dict(zip(pairwise(loop), LETTERS, strict=False))
    return tuple(
        replace(panel, note="; ".join(_describe(panel.name, loop, joints)))
        if panel.name in loop
        else panel
        for panel in panels
    )


def _describe(
    name: str, loop: tuple[str, ...], joints: dict[tuple[str, str], str]
) -> Iterator[str]:
    yield f"grain runs round: {loop.index(name) + 1} of {len(loop)} in the strip"
    for pair, letter in joints.items():
        if name in pair:
            other = pair[1 - pair.index(name)]
            yield f"joint {letter} to {other}"


def bind_loop(
    parts: Iterable[Part], shell: Iterable[Panel], wanted: GrainRound
) -> tuple[Part, ...]:
    """Return the parts of one cabinet, those of the loop bound in one strip.

    Every panel of a loop has a name of its own, so that no other can take its place.
    """
    loop = LOOPS[wanted]
    places = {panel.kind: loop.index(panel.name) + 1 for panel in shell if panel.name in loop}
    return tuple(
        replace(
            part,
            strip=Strip(
                name=STRIP,
                place=places[part.name],
                before=BEFORE,
                low_edge="front",
                otherwise=SHORTER if wanted is GrainRound.ALL else LONGER,
            ),
        )
        if part.name in places
        else part
        for part in parts
    )
