"""The saw, its guide and how long the work with them takes."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from enum import Enum
from fractions import Fraction

from nesting.lengths import Length, mm, round_to

MOST_SPREAD: Length = mm("0.3")
"""Tests of one saw that differ by more a cut were not made alike (judgement)."""


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
class KerfTest:
    """Several cuts across a scrap, its pieces pushed together, and one reading.

    Attributes:
        cuts: How many.
        missing: What the scrap is shorter by.
    """

    cuts: int
    missing: Length

    @property
    def kerf(self) -> Fraction:
        """What one cut removes, not rounded."""
        return Fraction(self.missing, self.cuts)


def mean_kerf(tests: Sequence[KerfTest], step: Length) -> Length:
    """Return what one cut of all tests removes in the mean, rounded to a step.

    >>> five, ten = KerfTest(cuts=5, missing=mm(12)), KerfTest(cuts=10, missing=mm(25))
    >>> mean_kerf([five, ten], mm("0.1")) == mm("2.5")
    True
    """
    missing, cuts = sum(test.missing for test in tests), sum(test.cuts for test in tests)
    return round_to(missing // cuts, step)


def spread_of(tests: Sequence[KerfTest]) -> Length:
    """Return by how much the kerfs of several tests differ, 0 for one or none."""
    kerfs = [test.kerf for test in tests] or [Fraction(0)]
    return int(max(kerfs) - min(kerfs))


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
        kerf_tests: What the kerf was worked out from; empty where it was given or left out.
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
    kerf_tests: tuple[KerfTest, ...] = ()


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
