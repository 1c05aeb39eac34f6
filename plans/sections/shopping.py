"""What to buy: sheets, battens, and the price of it all."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetLine:
    """Sheets of one kind to buy, or to fetch from the garage.

    Attributes:
        count: How many.
        stock: Name of the stock.
        material: Material and nominal thickness with unit.
        size: Size as text with unit.
        grain_text: "GRAIN RUNS ALONG THE 2440", or "NO GRAIN".
        each: Price of one as text, "owned" where it is in the garage.
        total: Price of all, "" where owned.
        mass: Mass of one in kilograms as text.
    """

    count: int
    stock: str
    material: str
    size: str
    grain_text: str
    each: str
    total: str
    mass: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherLine:
    """Anything else on the list: how much, what, and which parts it is for."""

    amount: str
    what: str
    purpose: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Shopping:
    """The shopping list.

    Attributes:
        sheets: Lines of sheets, bought ones first.
        others: Battens and other things.
        cost: Total price as text.
        bound_text: How close to cheapest this is proven to be.
        card: What to look at when choosing sheets off the stack.
    """

    sheets: tuple[SheetLine, ...]
    others: tuple[OtherLine, ...]
    cost: str
    bound_text: str
    card: tuple[str, ...]
