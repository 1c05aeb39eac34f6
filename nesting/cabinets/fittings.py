"""Fittings: all that the builder says about a cabinet beside its panels."""

from dataclasses import dataclass
from enum import Enum

from nesting.cabinets.holes import Hole
from nesting.lengths import Length, mm


class WayKind(Enum):
    """What a finished cabinet has to get through."""

    DOOR = "door"
    CAR = "car"
    CORNER = "corner"


class LoadsFrom(Enum):
    """The end of the cabinet that a baffle is put in from."""

    FRONT = "front"
    REAR = "rear"


class Pattern(Enum):
    """Whether a covering may be laid any way round."""

    NONE = "none"
    ALONG = "along"


class BandFace(Enum):
    """A face of the carcass that a covering goes round, those where a seam shows least first."""

    BOTTOM = "bottom"
    LEFT = "left side"
    RIGHT = "right side"
    TOP = "top"


class CarcassScrews(Enum):
    """Whether the butt joints of a carcass are screwed as well as glued."""

    NONE = "none"
    UNTIL_DRY = "until dry"
    STAY = "stay"


@dataclass(frozen=True, slots=True, kw_only=True)
class Clearances:
    """Distances that are kept. All defaults are judgement, no source.

    Attributes:
        inside: Between what reaches into the cabinet and everything else in it.
        prongs: Between the circle round the prongs of a T-nut and the edge of the cut-out, and
            between the T-nut and whatever stands on the inside of its panel.
        edge: Between the outline of a fitting and the edge of its panel or another fitting.
    """

    inside: Length = mm(10)
    prongs: Length = mm(3)
    edge: Length = mm(10)


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """A door, a car or the corner of a stair that the finished cabinet has to get through.

    Attributes:
        name: What it is called.
        kind: Door, car or corner.
        width: Clear width; at a corner that of the first passage.
        height: Clear height; at a corner 0 where there is headroom enough.
        length: Floor length of a car; width of the second passage at a corner.
    """

    name: str
    kind: WayKind = WayKind.DOOR
    width: Length
    height: Length = 0
    length: Length = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class InsideItem:
    """Something that goes into the cabinet, such as a damping mat or a board of electronics.

    Attributes:
        name: What it is called.
        size: The two smaller of its three sizes: what has to pass an opening.
    """

    name: str
    size: tuple[Length, Length]


@dataclass(frozen=True, slots=True, kw_only=True)
class AssemblyWishes:
    """What the order of assembly has to respect.

    Attributes:
        baffle_from: The end that an inset baffle is put in from.
        damping: Whether damping is glued to the inside.
        wiring: Whether wires are laid inside.
        items: Other things that go in.
        hand: Least side of an opening that a hand passes. Judgement, no source.
        reach: How far a hand reaches in through one. Judgement, no source.
    """

    baffle_from: LoadsFrom = LoadsFrom.FRONT
    damping: bool = False
    wiring: bool = False
    items: tuple[InsideItem, ...] = ()
    hand: Length = mm(100)
    reach: Length = mm(500)


@dataclass(frozen=True, slots=True, kw_only=True)
class Roll:
    """How a covering or a cloth is sold and laid. The defaults are judgement, no source.

    Attributes:
        width: Width of the roll.
        sold_by: Length that it is sold by.
        pattern: Whether pieces must all lie the same way.
        overlap: How far one end of the wrap lies over the other before both are cut through.
        turn_in: How far a piece is turned round the last edge.
        spare: What is bought over and above.
        no_seam: Faces that must have no seam.
    """

    width: Length
    sold_by: Length = mm(500)
    pattern: Pattern = Pattern.NONE
    overlap: Length = mm(30)
    turn_in: Length = mm(50)
    spare: Length = mm(100)
    no_seam: tuple[BandFace, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Screws:
    """Screws of a cabinet. The defaults are judgement, no source.

    Attributes:
        battens: Length of those that hold battens; 0 for the longest that cannot come through.
        closings: Length of those that hold a baffle or back to its frame; 0 as above.
        carcass: Whether butt joints of the carcass, and planted panels, are screwed too.
        carcass_length: Length of those; 0 as above.
        diameter: Of their shanks.
        spacing: From one to the next.
        first: From the end of a joint to the first.
        margin: What is kept between a screw and whatever a cutter or another screw takes.
        round_over: Radius that the outside edges are rounded over with; 0 for none.
    """

    battens: Length = 0
    closings: Length = 0
    carcass: CarcassScrews = CarcassScrews.NONE
    carcass_length: Length = 0
    diameter: Length = mm(4)
    spacing: Length = mm(150)
    first: Length = mm(50)
    margin: Length = mm(5)
    round_over: Length = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Hardware:
    """What is screwed on from the outside.

    Attributes:
        feet: How many feet.
        foot: Diameter of one.
        foot_inset: From the edges of the underside to the middle of a foot.
        foot_height: Height of one.
        corners: How many corner pieces.
        corner_reach: How far a corner piece reaches along each edge.
        handles: Handles that need no hole.
        projection: How far the handles stand out at each side.
    """

    feet: int = 0
    foot: Length = mm(40)
    foot_inset: Length = mm(70)
    foot_height: Length = 0
    corners: int = 0
    corner_reach: Length = mm(45)
    handles: int = 0
    projection: Length = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Fittings:
    """All fittings of a cabinet.

    Attributes:
        holes: Its holes, in the order of the file.
        clearances: Distances that are kept.
        ways: What the finished cabinet has to get through.
        assembly: What the order of assembly has to respect.
        roll: The roll that its covering comes from; None where it is not planned.
        cloth: The roll that its grille cloth comes from; None for no grille.
        screws: Its screws; None where they are not planned.
        hardware: What is screwed on from the outside.
        disc_kerf: What a circle cutter removes, for discs used again. Judgement, no source.
        pivot: Diameter of the pivot hole in a disc, 0 for none.
    """

    holes: tuple[Hole, ...] = ()
    clearances: Clearances = Clearances()
    ways: tuple[Way, ...] = ()
    assembly: AssemblyWishes = AssemblyWishes()
    roll: Roll | None = None
    cloth: Roll | None = None
    screws: Screws | None = None
    hardware: Hardware = Hardware()
    disc_kerf: Length = mm(8)
    pivot: Length = mm(6)
