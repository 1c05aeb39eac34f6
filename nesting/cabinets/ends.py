"""The two ends of a cabinet, and the panels that close them."""

from nesting.cabinets.construction import Construction
from nesting.cabinets.panels import Panel
from nesting.cabinets.space import Axis

CLOSED_BY = {"front": "baffle", "rear": "back"}
"""What closes each end is called in a design."""


def find_closings(construction: Construction, end: str = "") -> tuple[Panel, ...]:
    """Return the panels that close one end, or both: baffles and backs, whole or in two boards."""
    return tuple(
        panel
        for panel in construction.shell
        if set(CLOSED_BY.values()) & set(panel.name.replace(",", "").split())
        and end in ("", find_end(construction, panel))
    )


def find_end(construction: Construction, panel: Panel) -> str:
    """Return the end that a panel closes, "front" or "rear"."""
    low, high = panel.box.low[Axis.DEPTH.index], panel.box.high[Axis.DEPTH.index]
    return "front" if low + high < construction.whole(Axis.DEPTH) else "rear"


def is_inset(construction: Construction, panel: Panel) -> bool:
    """Return whether a closing stands between the carcass panels, not on their edges."""
    return any(
        panel.box.size(axis) < construction.whole(axis) for axis in (Axis.WIDTH, Axis.HEIGHT)
    )
