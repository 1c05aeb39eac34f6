"""What is said of a part in several places: its name, its status, its grain."""

from nesting.job import Job
from nesting.lengths import Unit
from nesting.parts import Grain, Part, Status
from plans.sections.numbers import show, show_size


def full_name(part: Part) -> str:
    """Return the name of a part with its cabinet; a plain part keeps exactly its name."""
    return f"{part.name}, cabinet {part.cabinet}" if part.cabinet else part.name


def base_status(part: Part) -> str:
    """Return "final", "oversize" or "measure first"."""
    if part.status is Status.FINAL and (part.oversize or part.extra_length or part.extra_width):
        return Status.OVERSIZE.value
    return part.status.value


def status_words(part: Part, unit: Unit) -> str:
    """Return the status with what is added to the blank, such as "oversize +3"."""
    status = base_status(part)
    if status == Status.OVERSIZE.value:
        more = (part.blank_length - part.length, part.blank_width - part.width)
        return f"{status} +{' × +'.join(show(each, unit) for each in dict.fromkeys(more))}"
    return status


def blank_words(part: Part, unit: Unit) -> str:
    """Return the size as cut."""
    return show_size(part.blank_length, part.blank_width, unit)


def finished_words(part: Part, unit: Unit) -> str:
    """Return the finished size."""
    return show_size(part.length, part.width, unit)


def part_grain_words(part: Part, unit: Unit, of_any: str) -> str:
    """Return "grain along the 562", or the words given where it may run either way."""
    if part.grain is Grain.ANY:
        return of_any
    along = part.length if part.grain is Grain.LENGTH else part.width
    if part.length == part.width:
        side = "first" if part.grain is Grain.LENGTH else "second"
        return f"grain along the {side} {show(along, unit)}"
    return f"grain along the {show(along, unit)}"


def copy_words(job: Job, part: int, copy: int) -> str:
    """Return "2 of 4", copies counted from 0."""
    return f"{copy + 1} of {job.parts[part].count}"
