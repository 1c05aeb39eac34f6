"""Panels and bars: the solids of a cabinet, each with the sums of its size.

A panel's size and its place in space come from the same two spans, so the list of parts and the
solids cannot disagree.
"""

from dataclasses import dataclass

from nesting.cabinets.boards import Board
from nesting.cabinets.profiles import Profile, box_of
from nesting.cabinets.space import Axis, Box, Interval, box_along
from nesting.cabinets.sums import Span
from nesting.lengths import Length
from nesting.parts import Grain, Status


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """A place where wood is taken out of a panel: a rebate, a groove or a slot between fingers.

    Attributes:
        what: Such as "rebate" or "groove for shelf 1".
        box: The place, inside the panel, or the box round it.
        profile: Its outline where it is not a plain box.
    """

    what: str
    box: Box
    profile: Profile | None = None

    @property
    def volume_twice(self) -> int:
        """Twice the volume of the wood taken out, in cubic nanometres."""
        if self.profile is None:
            return 2 * self.box.volume
        return self.profile.area_twice * self.box.size(self.profile.axis)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bevel:
    """A bevelled edge of a panel. Sizes are given on the outside face.

    Attributes:
        edge: Such as "top end".
        angle_deg: Tilt of the saw: 0 would be a square edge.
        shorter: How much shorter the inside face ends; negative where it reaches further.
    """

    edge: str
    angle_deg: float
    shorter: Length


@dataclass(frozen=True, slots=True, kw_only=True)
class Allowance:
    """What the blank has beyond the finished size at one edge.

    Attributes:
        edge: Such as "top end".
        along: The axis that the panel is larger along.
        amount: How much. Positive.
        why: What takes it away, such as "trimmed flush after gluing".
    """

    edge: str
    along: Axis
    amount: Length
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """One panel of sheet material, where it stands in the cabinet.

    Attributes:
        name: Name of this panel, such as "left side". Unique in the cabinet.
        kind: Name of the part, such as "Side". Panels of one kind are interchangeable.
        board: What it is cut from.
        normal: The axis of its thickness.
        through: Where it begins and ends along that axis: its measured thickness.
        length: Its extent along the part's own length.
        width: Its extent across it.
        grain: The side that runs with the face grain.
        status: Final, or measured from the standing carcass.
        oversize: How much larger the blank is in both directions.
        match: Panels that share a non-empty value share the dimension that it names.
        to_do: What is still done to it after it is cut.
        cuts: Where wood is taken out of it; apart from each other, inside its box.
        profile: Its outline where it is not a plain box: mitred or sloped.
        bevels: Its bevelled edges.
        allowances: What its blank has beyond the finished size, edge by edge.
        note: What its label says besides.
    """

    name: str
    kind: str
    board: Board
    normal: Axis
    through: Interval
    length: Span
    width: Span
    grain: Grain = Grain.LENGTH
    status: Status = Status.FINAL
    oversize: Length = 0
    match: str = ""
    to_do: tuple[str, ...] = ()
    cuts: tuple[Cut, ...] = ()
    profile: Profile | None = None
    bevels: tuple[Bevel, ...] = ()
    allowances: tuple[Allowance, ...] = ()
    note: str = ""

    @property
    def box(self) -> Box:
        """Its place in space; with a profile, or before cuts are taken out, the box round it."""
        if self.profile is not None:
            return box_of(self.profile, self._along(self.profile.axis))
        return box_along(
            {
                self.normal: self.through,
                self.length.axis: self.length.interval,
                self.width.axis: self.width.interval,
            }
        )

    def _along(self, axis: Axis) -> Interval:
        if axis is self.normal:
            return self.through
        return (self.length if self.length.axis is axis else self.width).interval


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """One batten, where it stands in the cabinet.

    Attributes:
        name: Name of this batten, such as "front frame, top". Unique in the cabinet.
        kind: Name of the batten in the list. Battens of one kind are interchangeable.
        section: Thickness and width of its section, the smaller first.
        length: Its extent along itself.
        box: Its place in space, exact; where its ends are mitred or it leans, the box round it.
        profile: Its outline where it leans.
        status: Final, or measured from the standing carcass.
        oversize: How much longer it is cut at first.
        set_back: How far it stands behind the edge it is measured from, as a sum in words.
    """

    name: str
    kind: str
    section: tuple[Length, Length]
    length: Span
    box: Box
    profile: Profile | None = None
    status: Status = Status.FINAL
    oversize: Length = 0
    set_back: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Space:
    """A declared space: the inside, a recess or a clearance.

    Attributes:
        name: What it is, such as "clearance left of the baffle".
        box: Its place, or the box round it.
        profile: Its outline where it is not a plain box.
    """

    name: str
    box: Box
    profile: Profile | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Shared:
    """A place where two solids meet inside each other's box, such as a mitre.

    Each takes a share of the wood there; together they fill it.

    Attributes:
        first: Name of one solid.
        second: Name of the other.
        box: The place.
    """

    first: str
    second: str
    box: Box
