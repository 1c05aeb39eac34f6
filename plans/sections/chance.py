"""How much a plan forgives, in a sentence: the chance that every part reaches its size."""

from nesting.lengths import Unit, inch, mm
from nesting.tolerance import Errors, Tolerance
from plans.sections.numbers import show_with_unit

MOST_NAMED = 4

USUAL = {
    Unit.MM: Errors(setting=mm("0.5"), forgiven=mm(1)),
    Unit.INCH: Errors(setting=inch("1/64"), forgiven=inch("1/32")),
}
"""The errors tried, in lengths that a rule of the unit shows."""


def say_chance(found: Tolerance, closer: Tolerance, errors: Errors, unit: Unit) -> str:
    """Return how often every part came out, and the row that is most at risk.

    Args:
        found: What the trials found.
        closer: What they found with settings off by half as much.
        errors: The errors that were tried first.
        unit: Of the plan.
    """
    words = (
        "Tried with settings a little off, two in three by less than "
        f"{show_with_unit(errors.setting, unit)}: every part reaches its size, to "
        f"{show_with_unit(errors.forgiven, unit)}, in {show_chance(found.chance)} of the trials; "
        f"set twice as closely, in {show_chance(closer.chance)}"
    )
    worst = found.worst
    if worst is None or worst.chance == 1000:  # noqa: PLR2004 - all of 1000
        return f"{words}."
    more = len(worst.parts) - MOST_NAMED
    parts = ", ".join(worst.parts[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")
    return (
        f"{words}. Most at risk is {worst.piece} of sheet {worst.sheet} ({parts}), "
        f"{show_chance(worst.chance)}."
    )


def show_chance(per_mille: int) -> str:
    """Return a chance as it is printed.

    >>> show_chance(973)
    '97.3 %'
    """
    return f"{per_mille // 10}.{per_mille % 10} %"
