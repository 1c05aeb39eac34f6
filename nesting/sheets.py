"""Sheets: what is bought, or already stands in the garage."""

from dataclasses import dataclass
from decimal import Decimal
from enum import Enum

from nesting.lengths import FINEST_FRACTION, NM_PER_INCH, Length, mm, round_to

FINEST_MM = mm("0.1")
FINEST_INCH = NM_PER_INCH // FINEST_FRACTION // 5
"""A fifth of 1/64 in, 0.08 mm: as fine as 0.1 mm, and 23/32 in stays 23/32 in."""


class SheetGrain(Enum):
    """The side of a sheet that its face grain runs along."""

    LENGTH = "length"
    WIDTH = "width"
    NONE = "none"


@dataclass(frozen=True, slots=True, kw_only=True)
class Trim:
    """How much of each edge is not used: raw, crushed or out of square.

    Seen from the good face with the sheet's length running left to right.
    """

    left: Length = 0
    right: Length = 0
    top: Length = 0
    bottom: Length = 0


class Use(Enum):
    """What may lie on a place of a sheet that is not sound."""

    NOTHING = "nothing"
    HIDDEN_PARTS = "hidden parts"


@dataclass(frozen=True, slots=True, kw_only=True)
class Defect:
    """A rectangle of one real sheet that is not sound.

    Measured from the home corner, the bottom left one as seen from the good face.

    Attributes:
        what: What it is, in a word or two, such as "knot hole".
        x: From the home corner along the sheet's length to its near end. Not negative.
        y: The same along the sheet's width.
        length: Extent along the sheet's length. Positive.
        width: Extent along its width. Positive.
        use: What may lie there. Cuts, waste and trims may lie on any.
    """

    what: str = "defect"
    x: Length
    y: Length
    length: Length
    width: Length
    use: Use = Use.NOTHING


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A kind of sheet, and how many of it there are.

    Attributes:
        name: Unique name of the stock, such as "birch 18".
        material: What it is made of; parts name it.
        thickness: Nominal thickness, the name it is sold under.
        measured: Readings of the sheets in hand; empty until they are measured.
        length: First dimension. Positive. Need not be the longer one.
        width: Second dimension. Positive.
        grain: The side that the face grain runs along.
        price: Price of one sheet; 0 where it is owned.
        count: How many there are; None where as many as needed can be had.
        owned: Already in the garage.
        trim: What is not used along each edge.
        defects: Its places that are not sound. Sheets that are not sound are told apart: each is
            a kind of its own, of which there is one.
        told_from: Name of the kind that it was told apart from for its defects; else empty.
    """

    name: str
    material: str
    thickness: Length
    measured: tuple[Length, ...] = ()
    length: Length
    width: Length
    grain: SheetGrain = SheetGrain.LENGTH
    price: Decimal = Decimal(0)
    count: int | None = None
    owned: bool = False
    trim: Trim = Trim()
    defects: tuple[Defect, ...] = ()
    told_from: str = ""

    @property
    def real_thickness(self) -> Length:
        """Mean of the readings, see `mean_reading`; the nominal thickness where there are none."""
        return mean_reading(self.measured) if self.measured else self.thickness

    @property
    def usable_length(self) -> Length:
        """Length between the trims."""
        return self.length - self.trim.left - self.trim.right

    @property
    def usable_width(self) -> Length:
        """Width between the trims."""
        return self.width - self.trim.bottom - self.trim.top


def mean_reading(readings: tuple[Length, ...]) -> Length:
    """Return the mean of some readings of a thickness.

    It is given to 0.1 mm. Where every reading is a whole number of 1/64 in or of 0.001 in, it was
    read in inches, and the mean is given to a fifth of 1/64 in instead.

    Args:
        readings: At least one.

    References:
        EN 324-1:1993: the mean of the readings is given to 0.1 mm.
    """
    in_inches = all(
        reading % (NM_PER_INCH // FINEST_FRACTION) == 0 or reading % (NM_PER_INCH // 1000) == 0
        for reading in readings
    )
    finest = FINEST_INCH if in_inches else FINEST_MM
    return round_to(sum(readings), len(readings) * finest) // len(readings)
