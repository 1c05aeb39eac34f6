"""Advice for the bench: the order of cuts that makes joints line up and grain run on."""

from collections.abc import Iterator

from nesting.cabinets.construction import Construction
from nesting.cabinets.design import BoxDesign
from nesting.cabinets.families import Design
from nesting.cabinets.grain_round import LOOP
from nesting.cabinets.panels import Panel
from nesting.cabinets.space import Axis
from nesting.lengths import Length, Unit, format_length


def find_bench_advice(
    design: Design, construction: Construction, *, kerf: Length | None, unit: Unit
) -> Iterator[str]:
    """Yield how to cut so that joints line up and grain runs on.

    Args:
        design: The design.
        construction: What became of it.
        kerf: The saw's kerf; None where it is not known.
        unit: The unit to write in.
    """
    yield from _offer_joint_first(construction, kerf, unit)
    if isinstance(design, BoxDesign) and design.grain_round:
        yield _describe_strip(construction, unit)


def _offer_joint_first(
    construction: Construction, kerf: Length | None, unit: Unit
) -> Iterator[str]:
    """Yield where a wide blank can carry the grooves or rebates of a mirrored pair.

    Cut across both at once they line up, even where they are misplaced.
    """
    panels = {panel.name: panel for panel in construction.shell}
    for first, second in (("left side", "right side"), ("bottom", "top")):
        if first not in panels or second not in panels:
            continue
        panel = panels[first]
        if not any(_runs_across(panel, cut.box.size(Axis.DEPTH)) for cut in panel.cuts):
            continue
        width = panel.width.size
        shown = format_length(width, unit)
        saw = "the saw's kerf" if kerf is None else format_length(kerf, unit)
        total = "" if kerf is None else f" = {format_length(2 * width + (kerf or 0), unit)}"
        length = format_length(panel.length.size, unit)
        yield (
            f"Joint first, rip after: cut one blank {length} long and 2 × {shown} + {saw}{total} "
            f"wide for {first} and {second}, make grooves and rebates across it, then rip it in "
            "two. The joints line up even if they are misplaced."
        )


def _runs_across(panel: Panel, depth: Length) -> bool:
    """Return whether a cut runs over the whole width: a stopped one cannot be cut across two."""
    return panel.box.size(Axis.DEPTH) == depth


def _describe_strip(construction: Construction, unit: Unit) -> str:
    panels = {panel.name: panel for panel in construction.shell}
    lengths = [format_length(panels[name].length.size, unit) for name in LOOP]
    width = format_length(panels[LOOP[0]].width.size, unit)
    return (
        f"Grain round the carcass: cut {', '.join(LOOP)} one after the other from one strip "
        f"{width} wide, in this order ({' + '.join(lengths)}), with nothing but a kerf between "
        "them, outside face up and all arrows the same way. Number them before they are cut free."
    )
