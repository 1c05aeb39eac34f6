"""What a piece must be for a person to get it home."""

from fractions import Fraction

from nesting.car import find_way_in
from nesting.densities import find_density, find_mass_kg
from nesting.job import Job
from nesting.layout import By, Cut, Layout, Rect, walk
from nesting.lengths import Length
from nesting.sheets import Sheet


def gets_home(job: Job, sheet: Sheet, length: Length, width: Length) -> bool:
    """Return whether a piece of a sheet gets home.

    With a car it must go in. Without one, one person must be able to lift it.
    """
    if job.car is not None:
        thickness = max(sheet.thickness, sheet.real_thickness)
        return find_way_in(job.car, length, width, thickness) is not None
    mass = find_mass_kg(
        find_density(sheet.material, sheet.thickness),
        length=length,
        width=width,
        thickness=sheet.thickness,
    )
    return mass <= Fraction(job.saw.lift_limit_kg)


def is_handled_whole(job: Job, sheet: Sheet) -> bool:
    """Return whether a sheet needs no first cut: it is at home already, or gets home whole."""
    return sheet.owned or gets_home(job, sheet, sheet.length, sheet.width)


def count_left_outside(job: Job, layout: Layout) -> int:
    """Return how many sheets of a layout do not get home: neither whole nor by the yard's cuts."""
    if job.yard is None and job.car is None:
        return 0
    anywhere = Rect(x=0, y=0, length=0, width=0)
    return sum(
        not is_handled_whole(job, job.sheets[sheet.sheet])
        and not any(
            isinstance(place.node, Cut) and place.node.by is By.YARD
            for place in walk(sheet.root, anywhere)
        )
        for sheet in layout.sheets
    )
