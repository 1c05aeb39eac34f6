"""What a person is told about sheets that are not sound."""

from decimal import Decimal

from nesting.job import Job
from nesting.lengths import format_length
from nesting.parts import Part
from nesting.search.result import GroupResult


def say_dearer(sound: GroupResult, sheets: int, cost: Decimal) -> str:
    """Return what the defects of a material cost.

    Args:
        sound: What its sheets would come to without defects.
        sheets: How many are used round them.
        cost: Their price.
    """
    more = sheets - sound.sheets
    costs = f"cost {more} more sheet{'s' if more > 1 else ''} of it" if more > 0 else "cost more"
    return (
        f"The defects of {sound.material} {costs}, {cost - sound.cost:.2f} in all. Parts that may "
        "lie on a defect save room: see 'face' and 'use' in the job file."
    )


def say_no_room(job: Job, part: Part) -> str:
    """Return why a part has no place though it would have one on sound sheets."""
    names = ", ".join(
        repr(sheet.name)
        for sheet in job.sheets
        if sheet.defects and (sheet.material, sheet.thickness) == (part.material, part.thickness)
    )
    sides = (part.blank_length, part.blank_width)
    size = " x ".join(format_length(side, job.unit) for side in sides)
    return (
        f"no room of {size} {job.unit.value} was found clear of the defects of {names}; one sound "
        "sheet more would do, or another use of a defect where this part is hidden"
    )
