"""Joint first, rip after: a groove or rebate cut across a wide blank, which is then ripped in two.

What a mirrored pair has in common then lines up, even where it is misplaced.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from nesting.cabinets.construction import Construction
from nesting.cabinets.design import BoxDesign
from nesting.cabinets.families import Design
from nesting.cabinets.panels import Panel
from nesting.cabinets.space import Axis
from nesting.lengths import Length, Unit, format_length
from nesting.parts import Part, Strip

PAIRS = (("left side", "right side"), ("bottom", "top"))
OTHERWISE = "Take joint_first out: the two are then cut singly."


def find_pairs(construction: Construction) -> Iterator[tuple[Panel, Panel]]:
    """Yield the mirrored pairs that a joint runs across from edge to edge."""
    panels = {panel.name: panel for panel in construction.shell}
    for first, second in PAIRS:
        if first in panels and second in panels:
            panel = panels[first]
            if any(panel.box.size(Axis.DEPTH) == cut.box.size(Axis.DEPTH) for cut in panel.cuts):
                yield panel, panels[second]


def offer_joint_first(
    construction: Construction, kerf: Length | None, unit: Unit, *, is_planned: bool
) -> Iterator[str]:
    """Yield where a wide blank can carry, or is planned to carry, the joints of a pair."""
    for first, second in find_pairs(construction):
        width, length = first.width.size, format_length(first.length.size, unit)
        shown = format_length(width, unit)
        saw = "the saw's kerf" if kerf is None else format_length(kerf, unit)
        total = "" if kerf is None else f" = {format_length(2 * width + kerf, unit)}"
        offer = "" if is_planned else " With joint_first = true the plan cuts them so."
        yield (
            f"Joint first, rip after: cut one blank {length} long and 2 × {shown} + {saw}{total} "
            f"wide for {first.name} and {second.name}, make grooves and rebates across it, then "
            f"rip it in two. The joints line up even if they are misplaced.{offer}"
        )


def warn_of_no_pair(design: Design, construction: Construction) -> Iterator[str]:
    """Yield a warning where a pair should be cut from one blank, and no joint runs across one."""
    is_wanted = isinstance(design, BoxDesign) and design.joint_first
    if is_wanted and not any(find_pairs(construction)):
        yield (
            "joint_first has no effect: no groove or rebate runs across a pair of panels from edge "
            "to edge. A stopped one cannot be cut across two at once."
        )


def bind_pairs(parts: Iterable[Part], construction: Construction) -> tuple[Part, ...]:
    """Return the parts of one cabinet, those of each pair bound side by side in one blank."""
    strips = {
        panel.kind: Strip(
            name=f"joint first, {pair[0].name} and {pair[1].name}",
            place=place,
            is_across=True,
            before="STOP: make the grooves and rebates across this piece first, then rip it",
            otherwise=OTHERWISE,
        )
        for pair in find_pairs(construction)
        for place, panel in enumerate(pair, start=1)
    }
    return tuple(replace(part, strip=strips.get(part.name, part.strip)) for part in parts)
