"""What a search reports, on its way and at its end."""

from dataclasses import dataclass
from decimal import Decimal

from nesting.layout import Layout
from nesting.lengths import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """How far a search is.

    Attributes:
        done: Fraction of the work done, 0 to 1. The search may end before 1.
        cost: Price of the best plan so far, over the materials begun.
        bound: What no plan for these materials can cost less than.
        is_preparing: True while the kernels are compiled, once after installation.
    """

    done: float
    cost: Decimal
    bound: Decimal
    is_preparing: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupResult:
    """What was found for one material and thickness.

    Attributes:
        material: The material.
        thickness: Nominal thickness.
        sheets: How many sheets are used.
        sheet_bound: How many any plan needs at least for the parts placed.
        cost: Price of the sheets used.
        cost_bound: What any plan costs at least for the parts placed.
        is_proven: True where no plan that places these parts is cheaper.
    """

    material: str
    thickness: Length
    sheets: int
    sheet_bound: int
    cost: Decimal
    cost_bound: Decimal
    is_proven: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """The best layout found, and what is known about it.

    Attributes:
        layout: The layout, with what could not be placed and why.
        cost: Price of its sheets.
        bound: What no plan for the parts placed costs less than.
        groups: The same for each material and thickness, in the order of the parts.
        iterations: How many plans or changes of plans were tried.
        interrupted: True where the user stopped the search; the layout is the best until then.
    """

    layout: Layout
    cost: Decimal
    bound: Decimal
    groups: tuple[GroupResult, ...]
    iterations: int
    interrupted: bool = False
