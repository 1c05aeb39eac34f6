"""Advice for the bench: the order of cuts that makes joints line up and grain run on."""

from collections.abc import Iterator

from nesting.cabinets.construction import Construction
from nesting.cabinets.design import BoxDesign, GrainRound
from nesting.cabinets.families import Design
from nesting.cabinets.grain_round import LOOPS
from nesting.cabinets.joint_first import offer_joint_first
from nesting.cabinets.panels import Panel
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
    box = design if isinstance(design, BoxDesign) else None
    is_planned = box is not None and box.joint_first
    yield from offer_joint_first(construction, kerf, unit, is_planned=is_planned)
    if box is not None and box.grain_round is not GrainRound.NO:
        yield _describe_strip(construction, LOOPS[box.grain_round], unit)


def _describe_strip(construction: Construction, loop: tuple[str, ...], unit: Unit) -> str:
    panels = {panel.name: panel for panel in construction.panels}
    sizes = [panels[name] for name in loop]
    lengths = [format_length(panel.length.size, unit) for panel in sizes]
    width = format_length(sizes[0].width.size, unit)
    return (
        f"Grain round the carcass: cut {', '.join(loop)} one after the other from one strip "
        f"{width} wide, in this order ({' + '.join(lengths)}), with nothing but a kerf between "
        "them, outside face up and all arrows the same way. Number them before they are cut free."
        + _say_allowances(sizes, unit)
    )


def _say_allowances(panels: list[Panel], unit: Unit) -> str:
    """Return what else breaks the figure at the joints, empty for nothing.

    Sizes are those of the outside: of a mitre the long point.
    """
    more = max(
        (
            each.amount
            for panel in panels
            for each in panel.allowances
            if each.along is panel.length.axis
        ),
        default=0,
    )
    if not more:
        return ""
    spare = format_length(more, unit)
    return (
        " Sizes are those of the outside, to the long point; beside the kerf each joint also "
        f"takes the {spare} that either end has to spare (bevel_allowance and flush)."
    )
