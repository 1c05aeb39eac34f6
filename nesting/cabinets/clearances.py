"""What must not meet: fittings inside, fittings on one panel, and T-nuts near the hole."""

from collections.abc import Iterator
from itertools import combinations
from math import hypot

from nesting.cabinets.bodies import Prism, Solid, box_interval, meet
from nesting.cabinets.construction import Construction
from nesting.cabinets.fittings import Clearances
from nesting.cabinets.hole_bodies import Reaching, find_bodies
from nesting.cabinets.hole_places import PlacedHole
from nesting.cabinets.holes import Fastener
from nesting.cabinets.panels import Bar, Panel
from nesting.cabinets.space import Axis
from nesting.lengths import Length, Unit, format_length


def find_close_calls(
    construction: Construction,
    holes: tuple[PlacedHole, ...],
    clearances: Clearances,
    unit: Unit,
) -> Iterator[str]:
    """Yield what meets or comes too close, both items named, nothing where all keep apart.

    Bodies are compared with the clearance that the job gives; it is judgement where it gives none.
    """
    yield from _find_on_panels(holes, clearances.edge, unit)
    yield from _find_prongs(holes, clearances.prongs, unit)
    bodies = [body for hole in holes for body in find_bodies(hole, construction)]
    yield from _find_against_wood(construction, bodies, clearances, unit)
    for first, second in combinations(bodies, 2):
        kept = _kept(first, second, clearances)
        if first.hole != second.hole and meet(first.solid, second.solid, kept):
            yield _say(first.name, second.name, kept, unit)


def _find_against_wood(
    construction: Construction, bodies: list[Reaching], clearances: Clearances, unit: Unit
) -> Iterator[str]:
    """Yield fittings that come too close to a panel, a brace or a batten.

    A fitting keeps no clearance from its own panel, and what lines a port lies against the wood.
    """
    wood = {panel.name: _as_solid(panel) for panel in construction.panels}
    wood |= {bar.name: _as_solid(bar) for bar in construction.bars}
    for body in bodies:
        kept = clearances.prongs if body.is_prong else clearances.inside
        for name, solid in wood.items():
            if name != body.panel and meet(body.solid, solid, 0 if body.is_lined else kept):
                yield _say(body.name, name, kept, unit)


def _as_solid(piece: Panel | Bar) -> Solid:
    """Return a panel or batten as a body; one that is mitred at the corners as the box round it."""
    profile = piece.profile
    if profile is None or profile.axis is not Axis.WIDTH:
        return piece.box
    return Prism(profile=profile, interval=box_interval(piece.box, Axis.WIDTH))


def _find_on_panels(holes: tuple[PlacedHole, ...], edge: Length, unit: Unit) -> Iterator[str]:
    """Yield two fittings on one panel whose outlines come too close."""
    for first, second in combinations(holes, 2):
        if first.panel.name != second.panel.name:
            continue
        away = [abs(a - b) for a, b in zip(first.centre, second.centre, strict=True)]
        extents = [
            (a + b + 1) // 2 + edge
            for a, b in zip(first.hole.outline, second.hole.outline, strict=True)
        ]
        if first.hole.window or second.hole.window:
            is_near = all(gap < extent for gap, extent in zip(away, extents, strict=True))
        else:
            is_near = away[0] ** 2 + away[1] ** 2 < extents[0] ** 2
        if is_near:
            yield _say(first.hole.name, second.hole.name, edge, unit)


def _find_prongs(holes: tuple[PlacedHole, ...], kept: Length, unit: Unit) -> Iterator[str]:
    """Yield T-nuts whose prongs come too close to the edge of their own hole."""
    for placed in holes:
        hole = placed.hole
        if hole.fastener is not Fastener.T_NUTS or not hole.bolt_circle:
            continue
        corner = 2 * hypot(*(side / 2 for side in hole.window)) if hole.window else hole.cut_out
        between = (hole.bolt_circle - round(corner) - hole.prongs) // 2
        if between < kept:
            size = f"{format_length(abs(between), unit)} {unit.value}"
            how = f"come within {size} of" if between >= 0 else f"reach {size} into"
            yield (
                f"The prongs of the T-nuts {how} the cut-out of the {hole.name}, and "
                f"{format_length(kept, unit)} {unit.value} are kept. Take smaller T-nuts, or "
                "screws."
            )


def _kept(first: Reaching, second: Reaching, clearances: Clearances) -> Length:
    return clearances.prongs if first.is_prong or second.is_prong else clearances.inside


def _say(first: str, second: str, kept: Length, unit: Unit) -> str:
    return (
        f"The {first} and the {second} meet or come closer than {format_length(kept, unit)} "
        f"{unit.value}. Move one of them."
    )
