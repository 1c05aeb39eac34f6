"""How close to the cheapest a plan is proven to be, in one sentence that claims no more."""

from dataclasses import dataclass
from decimal import Decimal

from plans.sections.numbers import show_money
from plans.sections.worked import Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class Bound:
    """What no plan for the parts placed can stay below.

    Attributes:
        cost: What it must cost at least; 0 where nothing is known.
        sheets: How many sheets it must use at least; 0 where nothing is known.
    """

    cost: Decimal = Decimal(0)
    sheets: int = 0


def say_bound(worked: Worked, bound: Bound) -> str:
    """Return the sentence."""
    cost, used = plan_cost(worked), len(worked.sheets)
    if not used:
        return "No sheet is used."
    placed = " for the parts placed" if worked.layout.unplaced else ""
    if cost == 0:
        return _say_sheets(worked, bound, placed)
    if cost <= bound.cost:
        return f"Proven cheapest: no plan{placed} can cost less than {show_money(cost)}."
    return _say_gap(cost - bound.cost, used, bound, placed)


def plan_cost(worked: Worked) -> Decimal:
    """Return the price of all sheets bought."""
    return sum((sheet.sheet.price for sheet in worked.sheets), Decimal(0))


def _say_sheets(worked: Worked, bound: Bound, placed: str) -> str:
    """Return the sentence where nothing is paid, so that only sheets count."""
    owned = all(sheet.sheet.owned for sheet in worked.sheets)
    start = "Nothing has to be bought" if owned else "The sheets bear no price"
    if not bound.sheets:
        return f"{start}."
    fewest = f"no plan{placed} can use fewer than {_sheets(bound.sheets)}"
    extra = len(worked.sheets) - bound.sheets
    if extra > 0:
        return f"{start}; at most {_sheets(extra)} above the bound: {fewest}."
    return f"{start}; {fewest}."


def _say_gap(gap: Decimal, used: int, bound: Bound, placed: str) -> str:
    """Return how far above the bound a plan may be, in sheets where they are known."""
    least = f"no plan{placed} can cost less than {show_money(bound.cost)}"
    if used > bound.sheets > 0:
        return (
            f"At most {_sheets(used - bound.sheets)} above the bound: {least} or use fewer than "
            f"{_sheets(bound.sheets)}."
        )
    return f"At most {show_money(gap)} above the bound: {least}."


def _sheets(number: int) -> str:
    return "1 sheet" if number == 1 else f"{number} sheets"
