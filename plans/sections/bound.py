"""How close to the cheapest a plan is proven to be, in one sentence that claims no more."""

from decimal import Decimal
from math import ceil

from plans.sections.numbers import show_money
from plans.sections.worked import Worked


def say_bound(worked: Worked, bound: Decimal) -> str:
    """Return the sentence.

    Args:
        worked: The plan.
        bound: What any plan that places every part must cost at least.
    """
    if worked.layout.unplaced:
        return "Nothing is said about the least cost, because some parts are not placed."
    cost = plan_cost(worked)
    if cost == 0:
        return _without_cost(worked)
    if cost <= bound:
        return f"Proven cheapest: no plan can cost less than {show_money(cost)}."
    price = _only_price(worked)
    if price is not None:
        return _in_sheets(bought=int(cost / price), fewest=ceil(bound / price))
    return (
        f"At most {show_money(cost - bound)} above the bound: no plan can cost less than "
        f"{show_money(bound)}."
    )


def _without_cost(worked: Worked) -> str:
    if all(sheet.sheet.owned for sheet in worked.sheets):
        return "Nothing has to be bought."
    return "The sheets bear no price, so nothing is said about the least cost."


def _in_sheets(*, bought: int, fewest: int) -> str:
    if fewest == bought:
        return f"Proven cheapest: no plan can need fewer than {_sheets(bought)} to be bought."
    return (
        f"At most {_sheets(bought - fewest)} above the bound: no plan can need fewer than "
        f"{_sheets(fewest)} to be bought."
    )


def plan_cost(worked: Worked) -> Decimal:
    """Return the price of all sheets bought."""
    return sum((sheet.sheet.price for sheet in worked.sheets), Decimal(0))


def _only_price(worked: Worked) -> Decimal | None:
    """Return the price of all sheets that can be bought, None where they differ."""
    prices = {sheet.price for sheet in worked.job.sheets if not sheet.owned}
    return prices.pop() if len(prices) == 1 else None


def _sheets(number: int) -> str:
    return "1 sheet" if number == 1 else f"{number} sheets"
