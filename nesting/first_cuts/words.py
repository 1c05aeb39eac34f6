"""What a person is told about getting the sheets home."""

from decimal import Decimal

from nesting.job import Job
from nesting.lengths import format_length
from nesting.parts import Part
from nesting.sheets import Sheet


def say_stays_outside(job: Job, sheet: Sheet) -> str:
    """Return that a sheet does not go into the car, where no yard is there to cut it."""
    return (
        f"{sheet.name}, {_size(job, sheet.length, sheet.width)}, does not go into the car. Have it "
        "delivered, or add a [yard] table so that its first cuts are planned."
    )


def say_not_found(job: Job, sheet: Sheet) -> str:
    """Return that no first cuts were found for a sheet."""
    if job.car is None:
        return (
            f"{sheet.name}, {_size(job, sheet.length, sheet.width)}, is over the "
            f"{job.saw.lift_limit_kg:f} kg that one person lifts, and no first cuts within the "
            "yard's limits were found that change that. Carry it by two."
        )
    return (
        f"{sheet.name}, {_size(job, sheet.length, sheet.width)}, does not go into the car, and no "
        "first cuts within the yard's limits were found from which all parts come out. Have it "
        "delivered."
    )


def say_too_large(job: Job, part: Part) -> str:
    """Return that a part is in no piece that gets home."""
    size = _size(job, part.blank_length, part.blank_width)
    what = "goes into the car" if job.car is not None else "is light enough for one person"
    return (
        f"{part.name}, {size}, lies in no piece that {what} and that the yard may cut. No first "
        f"cuts are planned for its sheets: have {'them' if part.count > 1 else 'it'} delivered."
    )


def say_dearer(material: str, before: tuple[int, Decimal], after: tuple[int, Decimal]) -> str:
    """Return what the car costs in sheets.

    Args:
        material: What they are made of.
        before: How many sheets and their price without first cuts.
        after: The same with first cuts.
    """
    more = after[0] - before[0]
    costs = f"costs {_sheets(more)} more" if more > 0 else "costs more"
    return (
        f"The car {costs} of {material}, {after[1] - before[1]:.2f} in all: with delivery "
        f"{_sheets(before[0])} for {before[1]:.2f} would do."
    )


def _sheets(number: int) -> str:
    return "1 sheet" if number == 1 else f"{number} sheets"


def _size(job: Job, length: int, width: int) -> str:
    unit = job.unit
    return f"{format_length(length, unit)} × {format_length(width, unit)} {unit.value}"
