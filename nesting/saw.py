"""The saw, its guide and how long the work with them takes."""

from dataclasses import dataclass
from decimal import Decimal
from enum import Enum

from nesting.lengths import Length, mm


class Face(Enum):
    """A face of a sheet. The good face is the front."""

    FRONT = "front"
    BACK = "back"


class Hand(Enum):
    """The hand that holds the saw."""

    RIGHT = "right"
    LEFT = "left"


class SetWith(Enum):
    """What brings the guide to its place."""

    TAPE = "tape"
    BLOCKS = "blocks"


@dataclass(frozen=True, slots=True, kw_only=True)
class Saw:
    """A circular saw run along a guide.

    Attributes:
        kerf: Width that a cut removes. Not negative.
        guide_length: The longest cut that can be guided.
        base_left: Left edge of the base plate to the near side of the kerf.
        base_right: Far side of the kerf to the right edge of the base plate.
        marked_face: The face that lies up, is marked and is drawn.
        lift_limit_kg: What one person lifts; above it the plan says two people.
        smallest_held: A piece narrower than this cannot be held for a cut.
        guide_width: How wide the guide is, from the edge that the base plate runs along.
        hand: The hand that holds it; decides which guide column comes first and where to stand.
        set_with: What sets the guide: a tape to the figures printed, or two blocks to a mark.
    """

    kerf: Length = mm("2.4")
    guide_length: Length = mm(2700)
    base_left: Length = mm(38)
    base_right: Length = mm(130)
    marked_face: Face = Face.BACK
    lift_limit_kg: Decimal = Decimal(20)
    smallest_held: Length = mm(60)
    guide_width: Length = mm(100)
    hand: Hand = Hand.RIGHT
    set_with: SetWith = SetWith.TAPE


@dataclass(frozen=True, slots=True, kw_only=True)
class Times:
    """Minutes of work, for comparing plans and for a rough total. The defaults are judgement.

    Attributes:
        setting: Moving the guide to a new keep size.
        cut: One cut, however short.
        metre: Each metre of cut.
        lift: Handling one piece above the lift limit.
        turn: Changing between rip and crosscut.
    """

    setting: Decimal = Decimal("2.0")
    cut: Decimal = Decimal("1.5")
    metre: Decimal = Decimal("0.4")
    lift: Decimal = Decimal("1.0")
    turn: Decimal = Decimal("1.0")


@dataclass(frozen=True, slots=True, kw_only=True)
class Keep:
    """Which leftovers are worth keeping.

    Attributes:
        length: Smallest longer side of an offcut.
        width: Smallest shorter side of an offcut.
        use_book: Whether parts may come from the book of leftovers.
    """

    length: Length = mm(300)
    width: Length = mm(100)
    use_book: bool = False
