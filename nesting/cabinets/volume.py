"""Volume and mass of one cabinet."""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from itertools import product
from math import pi

from nesting.cabinets.closing_design import Covering
from nesting.cabinets.construction import Construction
from nesting.cabinets.fittings import Hardware
from nesting.cabinets.hole_bodies import find_boards, find_displaced
from nesting.cabinets.hole_places import PlacedHole
from nesting.cabinets.panels import Bar, Panel, Shared, Space
from nesting.cabinets.space import Box, Point
from nesting.densities import NM_PER_METRE, Density, find_density

SOFTWOOD_KG_PER_M3 = 500
"""Battens count as softwood. Judgement, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """The inside of one cabinet, in cubic nanometres.

    Attributes:
        gross: Inside the bare panels.
        braces: Taken by braces and other panels that stand inside.
        battens: Taken by battens.
        fittings: Taken by drivers, ports with their own boards, and the rest.
    """

    gross: int
    braces: int
    battens: int
    fittings: int

    @property
    def net(self) -> int:
        """What is left of it."""
        return self.gross - self.braces - self.battens - self.fittings


@dataclass(frozen=True, slots=True, kw_only=True)
class Mass:
    """Mass of one cabinet in kilograms, without glue, covering, screws and feet.

    Attributes:
        panels: Sheet parts at their nominal thickness, holes taken off.
        battens: Battens as softwood.
        fittings: Drivers and what else has a mass in the job.
        is_assumed: Whether the density of some board is not known.
    """

    panels: Fraction
    battens: Fraction
    fittings: Decimal
    is_assumed: bool

    @property
    def whole(self) -> Fraction:
        """All together."""
        return self.panels + self.battens + Fraction(self.fittings)


def find_room(construction: Construction, holes: tuple[PlacedHole, ...]) -> Room:
    """Return the inside of a cabinet, gross, and what stands in it."""
    insides = [space for space in construction.spaces if space.name.startswith("inside")]
    return Room(
        gross=sum(find_volume(space) for space in insides),
        braces=sum(find_volume(panel) for panel in construction.inner),
        battens=_common(insides, (bar.box for bar in construction.bars if bar.profile is None))
        + sum(find_volume(bar) for bar in construction.bars if bar.profile is not None)
        - _common(insides, (shared.box for shared in _mitred(construction))),
        fittings=sum(find_displaced(placed, construction) for placed in holes),
    )


def find_volume(solid: Panel | Bar | Space) -> int:
    """Return the volume of a solid by its outline, cuts taken out, in cubic nanometres."""
    profile, cuts = solid.profile, solid.cuts if isinstance(solid, Panel) else ()
    twice = 2 * solid.box.volume
    if profile is not None:
        twice = profile.area_twice * solid.box.size(profile.axis)
    return (twice - sum(cut.volume_twice for cut in cuts)) // 2


def _common(insides: list[Space], boxes: Iterable[Box]) -> int:
    """Return how much of some boxes lies inside; a grille's frame, say, does not."""
    pairs = product(insides, list(boxes))
    shared = (space.box.overlap(box) for space, box in pairs)
    return sum(box.volume for box in shared if box)


def _mitred(construction: Construction) -> tuple[Shared, ...]:
    """Return the places that two battens share."""
    names = {bar.name for bar in construction.bars}
    return tuple(each for each in construction.shared if {each.first, each.second} <= names)


def find_mass(construction: Construction, holes: tuple[PlacedHole, ...]) -> Mass:
    """Return the mass of a cabinet with its fittings."""
    densities = {
        panel.board: find_density(panel.board.material, panel.board.thickness)
        for panel in construction.panels
    }
    panels = Fraction(0)
    for panel in construction.panels:
        real = panel.through[1] - panel.through[0]
        panels += _mass(find_volume(panel) * panel.board.thickness, densities[panel.board]) / real
    for placed in holes:
        board, (across, along) = placed.panel.board, placed.hole.opening
        share = Fraction(1) if placed.hole.window else Fraction(pi / 4)
        panels -= share * _mass(across * along * board.thickness, densities[board])
        lining = find_density(board.material, placed.hole.wall)
        for _, length, width in find_boards(placed, construction):
            panels += _mass(length * width * placed.hole.wall, lining)
    battens = sum(find_volume(bar) for bar in construction.bars)
    battens -= sum(shared.box.volume for shared in _mitred(construction))
    return Mass(
        panels=panels,
        battens=Fraction(battens * SOFTWOOD_KG_PER_M3, NM_PER_METRE**3),
        fittings=sum((placed.hole.mass_kg for placed in holes), Decimal(0)),
        is_assumed=any(density.is_assumed for density in densities.values()),
    )


def _mass(volume: int, density: Density) -> Fraction:
    return Fraction(volume * density.kg_per_m3, NM_PER_METRE**3)


def find_finished(
    construction: Construction, covering: Covering | None, hardware: Hardware
) -> Point:
    """Return width, depth and height as carried: with covering, feet and handles.

    Covering counts on every face, also where a face is bare: never less than it is.
    """
    width, depth, height = construction.outside
    layers = 2 * covering.thickness if covering else 0
    feet = hardware.foot_height if hardware.feet else 0
    return (width + layers + 2 * hardware.projection, depth + layers, height + layers + feet)
