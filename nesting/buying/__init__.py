"""Ways to buy: whole plans for the same job, each from less than all the stock there is."""

from nesting.buying.counts import Left, Lot, count_layouts, price_yard_cuts
from nesting.buying.repeated import count_repeats, solve_repeated
from nesting.buying.restrictions import Restriction, list_restrictions
from nesting.buying.sawing import Sawing, say_hindrance
from nesting.buying.ways import Solve, Way, find_ways, list_compromises

__all__ = [
    "Left",
    "Lot",
    "Restriction",
    "Sawing",
    "Solve",
    "Way",
    "count_layouts",
    "count_repeats",
    "find_ways",
    "list_compromises",
    "list_restrictions",
    "price_yard_cuts",
    "say_hindrance",
    "solve_repeated",
]
