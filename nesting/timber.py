"""Timber: the lengths that battens are cut from."""

from dataclasses import dataclass
from decimal import Decimal

from nesting.lengths import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class Timber:
    """A stock length of solid timber of rectangular section.

    Attributes:
        name: Unique name, such as "pine 20 x 20, 2.4 m".
        section: Thickness and width of the section, the smaller first.
        length: Length as bought. Positive.
        price: Price of one.
        count: How many there are; None where as many as needed can be had.
        trim: What is cut off each end, kerf included.
    """

    name: str
    section: tuple[Length, Length]
    length: Length
    price: Decimal = Decimal(0)
    count: int | None = None
    trim: Length = 0

    @property
    def usable(self) -> Length:
        """Length between the end trims."""
        return self.length - 2 * self.trim
