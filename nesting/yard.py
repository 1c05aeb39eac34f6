"""The timber yard's saw: what it may be asked for."""

from dataclasses import dataclass
from decimal import Decimal

from nesting.lengths import Length, Unit, mm


@dataclass(frozen=True, slots=True, kw_only=True)
class Yard:
    """What the yard cuts, and how well. A yard cut is never taken for a finished edge.

    Attributes:
        kerf: Width that a cut of the yard's saw removes.
        max_cuts: How many cuts the yard makes in one sheet. At least 1.
        min_piece: The yard hands over no piece with a shorter side.
        price_per_cut: What one cut costs.
        rough: How far a yard cut may be off its size, either way. Positive.
        unit: The unit that the yard works in; its page is printed in it.
    """

    kerf: Length = mm("3.2")
    max_cuts: int = 3
    min_piece: Length = mm(305)
    price_per_cut: Decimal = Decimal(0)
    rough: Length = mm(3)
    unit: Unit = Unit.MM
