"""Holes: what the builder says about a driver, port, handle, connector or cable hole."""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from enum import Enum
from itertools import pairwise
from typing import Final

from nesting.errors import Fault, InputError
from nesting.lengths import Length, inch, mm


class HoleKind(Enum):
    """What goes through or into a hole."""

    DRIVER = "driver"
    PORT = "port"
    HANDLE = "handle"
    CONNECTOR = "connector"
    CABLE = "cable"


class Mounted(Enum):
    """The face of its panel that the flange lies on."""

    OUTSIDE = "outside"
    INSIDE = "inside"


class Fastener(Enum):
    """What holds a fitting in its hole."""

    T_NUTS = "t-nuts"
    SCREWS = "screws"
    NONE = "none"


NOMINAL_SIZES: Final = tuple(
    inch(size) for size in ("4", "5", "6", "6 1/2", "8", "10", "12", "15", "18", "21")
)
"""Sizes that drivers are called by. No such size is a dimension of the driver."""
SAME_SIZE: Final = mm("0.5")


@dataclass(frozen=True, slots=True, kw_only=True)
class Hole:
    """One hole and the fitting in it.

    All circles are diameters. A size of 0 is one that is not there or not known.

    Attributes:
        name: What it is called, unique in the cabinet.
        kind: What goes into it.
        panel: Name of the panel that it is cut in.
        places: Distance of the centre from named edges of the panel, such as ("left", 250 mm);
            along a direction that is not named the hole stands in the middle.
        cut_out: The hole through the panel where it is round.
        window: The hole where it is a rectangle, along the panel's two directions (left to right
            or front to rear first), None where it is round.
        bolt_circle: Circle through the middles of the bolts.
        bolts: How many bolts or screws hold the fitting.
        bolt_hole: Diameter of their holes.
        start_deg: Angle of the first bolt, from the second direction's high edge (the top, or the
            rear of a level panel) towards the first direction's high edge.
        flange: Outside of the flange.
        recess: How deep the flange is let in.
        nominal: What the driver is called by.
        confirmed: True where the builder has said that the cut-out is as large as that.
        mounted: The face that the flange lies on.
        fastener: T-nuts, screws or nothing.
        prongs: Circle round the prongs of one T-nut.
        depth: How far the fitting reaches in from the face that it lies on.
        magnet: Diameter of the magnet; 0 counts as wide as the cut-out.
        basket: How far the basket reaches in before the magnet begins; 0 counts as half the depth.
        wall: Thickness of the boards that line a rectangular port where no panel does.
        mass_kg: Mass of the fitting.
        litres: Room that the fitting takes inside, None where it is worked out.
        gives: Name of a part that is cut from what the hole leaves, empty for none.
    """

    name: str
    kind: HoleKind
    panel: str
    places: tuple[tuple[str, Length], ...] = ()
    cut_out: Length = 0
    window: tuple[Length, Length] | None = None
    bolt_circle: Length = 0
    bolts: int = 0
    bolt_hole: Length = mm(5)
    start_deg: Decimal = Decimal(0)
    flange: Length = 0
    recess: Length = 0
    nominal: Length = 0
    confirmed: bool = False
    mounted: Mounted = Mounted.OUTSIDE
    fastener: Fastener = Fastener.NONE
    prongs: Length = mm(19)
    depth: Length = 0
    magnet: Length = 0
    basket: Length = 0
    wall: Length = 0
    mass_kg: Decimal = Decimal(0)
    litres: Decimal | None = None
    gives: str = ""

    def __post_init__(self) -> None:
        """Refuse circles that cannot belong together."""
        faults = tuple(_find_faults(self))
        if faults:
            raise InputError(faults)

    @property
    def leaves(self) -> str:
        """What comes free when it is cut: a disc, or a piece of its window."""
        return "disc" if self.cut_out else "piece"

    @property
    def outline(self) -> tuple[Length, Length]:
        """Extent of all that is seen of it on the panel, along the panel's two directions."""
        least = max(self.flange, self.bolt_circle + self.bolt_hole if self.bolt_circle else 0)
        across, along = self.opening
        return max(across, least), max(along, least)

    @property
    def opening(self) -> tuple[Length, Length]:
        """Extent of the hole itself, along the panel's two directions."""
        return self.window or (self.cut_out, self.cut_out)


def _find_faults(hole: Hole) -> Iterator[Fault]:
    where = f"hole {hole.name!r}"
    if bool(hole.cut_out) == bool(hole.window):
        yield Fault(
            where=f"{where}, cut_out",
            what="it needs either a round cut-out or a window, not both",
            remedy="Give cut_out (a diameter), or window (two sizes).",
        )
        return
    yield from _find_circle_faults(hole, where)
    if _is_nominal(hole) and not hole.confirmed:
        yield Fault(
            where=f"{where}, cut_out",
            what="the cut-out is as large as the size that such drivers are called by, which "
            "is never a dimension",
            remedy="Measure the driver or take the cut-out from its data sheet; if it really is "
            "this size, add confirmed = true.",
        )
    if hole.basket and hole.basket > hole.depth:
        yield Fault(
            where=f"{where}, basket",
            what="the basket reaches in further than the whole driver",
            remedy="Give the depth of the whole driver, magnet included.",
        )
    if hole.bolts and hole.bolt_circle and hole.fastener is Fastener.NONE:
        yield Fault(
            where=f"{where}, fastener",
            what="it has bolts, and nothing that they go into",
            remedy='Write fastener = "t-nuts" or "screws", or leave the bolts out.',
        )


def _find_circle_faults(hole: Hole, where: str) -> Iterator[Fault]:
    """Yield every pair of circles of which the inner one is not the smaller."""
    circles = [
        ("cut_out", "cut-out", max(hole.opening)),
        ("bolt_circle", "bolt circle", hole.bolt_circle),
        ("flange", "flange", hole.flange),
    ]
    present = [circle for circle in circles if circle[2]]
    for (key, inner, size), (_, outer, larger) in pairwise(present):
        if size >= larger:
            yield Fault(
                where=f"{where}, {key}",
                what=f"the {inner} is not smaller than the {outer}",
                remedy="From the inside out a driver has cut-out, bolt circle and flange. Check "
                "which is which on its data sheet.",
            )
    if hole.recess and not hole.flange:
        yield Fault(
            where=f"{where}, recess",
            what="a recess takes the flange, and no flange is given",
            remedy="Give the outside of the flange, or leave the recess out.",
        )


def _is_nominal(hole: Hole) -> bool:
    if hole.kind is not HoleKind.DRIVER or hole.window:
        return False
    sizes = (hole.nominal,) if hole.nominal else NOMINAL_SIZES
    return any(abs(hole.cut_out - size) <= SAME_SIZE for size in sizes)
