"""Grain that runs on round the carcass: sides, top and bottom cut one after the other."""

from dataclasses import replace

from nesting.cabinets.panels import Panel

LOOP = ("bottom", "left side", "top", "right side")
"""Round the carcass as one unrolls it, beginning at the corner where the break shows least."""


def number_loop(panels: tuple[Panel, ...]) -> tuple[Panel, ...]:
    """Return the panels of the shell, those of the carcass numbered in the order of the strip."""
    return tuple(
        replace(
            panel,
            note=f"grain runs round: {LOOP.index(panel.name) + 1} of {len(LOOP)} in the strip",
            match=f"{panel.match}, one strip",
        )
        if panel.name in LOOP
        else panel
        for panel in panels
    )
