"""Templates: what is printed at full size for holes, one for all that are alike."""

from collections.abc import Sequence
from dataclasses import dataclass

from nesting.lengths import Length
from plans.sections.holes import HoleText, PanelHoles


@dataclass(frozen=True, slots=True, kw_only=True)
class Template:
    """One template.

    Attributes:
        codes: The holes that it is for, such as "H1, H2".
        title: What it is.
        numbers: The same sizes as numbers, so that no hole rests on the print alone.
        cut_out: Diameter of the hole, 0 for a window.
        window: Sides of the window, left to right first; None for a round hole.
        bolt_circle: Diameter, 0 for none.
        flange: Diameter, 0 where not known.
        bolts: The bolts from the centre, to the right and up, as the face is seen.
    """

    codes: str
    title: str
    numbers: str
    cut_out: Length
    window: tuple[Length, Length] | None
    bolt_circle: Length
    flange: Length
    bolts: tuple[tuple[Length, Length], ...]


def make_templates(panels: Sequence[PanelHoles]) -> tuple[Template, ...]:
    """Return a template for every kind of hole."""
    alike: dict[tuple[object, ...], list[tuple[HoleText, str]]] = {}
    for panel in panels:
        for hole in panel.holes:
            key = (hole.cut_out, hole.window, hole.bolt_circle, hole.flange, _offsets(hole))
            alike.setdefault(key, []).append((hole, panel.panel))
    return tuple(_template(group) for group in alike.values())


def _offsets(hole: HoleText) -> tuple[tuple[Length, Length], ...]:
    return tuple((bolt.at[0] - hole.at[0], bolt.at[1] - hole.at[1]) for bolt in hole.bolts)


def _template(group: list[tuple[HoleText, str]]) -> Template:
    hole = group[0][0]
    return Template(
        codes=", ".join(each.code for each, _ in group),
        title="; ".join(f"{each.code} {each.name}, {panel}" for each, panel in group),
        numbers=", ".join(f"{name} {size}" for name, size in hole.sizes)
        + (f", from bolt to bolt {hole.chord}" if hole.chord else ""),
        cut_out=hole.cut_out,
        window=hole.window,
        bolt_circle=hole.bolt_circle,
        flange=hole.flange,
        bolts=_offsets(hole),
    )
