"""Ways to buy: whole plans for the same job, each from less than all the stock there is."""

from nesting.buying.restrictions import Restriction, list_restrictions
from nesting.buying.sawing import Sawing, say_hindrance
from nesting.buying.ways import Left, Lot, Solve, Way, count_layouts, find_ways

__all__ = [
    "Left",
    "Lot",
    "Restriction",
    "Sawing",
    "Solve",
    "Way",
    "count_layouts",
    "find_ways",
    "list_restrictions",
    "say_hindrance",
]
