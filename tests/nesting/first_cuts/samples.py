"""Jobs with a yard and a car."""

from dataclasses import replace
from decimal import Decimal

from nesting.car import Car
from nesting.job import Job
from nesting.lengths import mm
from nesting.parts import Part
from nesting.sheets import Sheet
from nesting.yard import Yard
from tests.nesting.hand_made import BIRCH, job, part

YARD = Yard(kerf=mm("3.2"), max_cuts=2, min_piece=mm(300), price_per_cut=Decimal(2), rough=mm(3))
ESTATE = Car(
    opening_width=mm(1080),
    opening_height=mm(760),
    floor_length=mm(1620),
    arch_width=mm(1050),
    clearance=mm(10),
)
"""A half sheet of 1220 x 1220 goes in tilted."""

SMALL = replace(ESTATE, opening_height=mm(560))
"""Nothing wider than 1163 goes in."""

SHELVES = (part("Shelf", 700, 300, 4), part("Side", 1000, 300, 4))


def with_car(
    *parts: Part,
    car: Car | None = ESTATE,
    yard: Yard | None = YARD,
    sheets: tuple[Sheet, ...] = (BIRCH,),
) -> Job:
    """Return a job of these parts with a yard and a car."""
    return replace(job(*(parts or SHELVES), sheets=sheets), car=car, yard=yard)
