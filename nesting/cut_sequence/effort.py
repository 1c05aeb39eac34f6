"""How long the work at the saw takes, for comparing plans and for a rough total."""

from decimal import Decimal
from fractions import Fraction
from itertools import pairwise

from nesting.cut_sequence.sequence import Sequence
from nesting.densities import find_density, find_mass_kg
from nesting.job import Job
from nesting.layout import By, Rect
from nesting.lengths import NM_PER_MM
from nesting.sheets import Sheet

MM_PER_METRE = 1000


def minutes(job: Job, sequence: Sequence) -> Decimal:
    """Return the minutes that one sheet takes at home, by `Job.times`.

    Counts settings of the guide, cuts, metres sawn, pieces over the lift limit (one for every cut
    across such a piece) and turns between rip and crosscut. The yard's cuts take no time here.
    """
    times = job.times
    steps = [step for step in sequence.steps if step.by is By.HOME]
    sheet = job.sheets[sequence.sheet]
    metres = Decimal(sum(step.cut_length for step in steps)) / NM_PER_MM / MM_PER_METRE
    turns = sum(step.direction is not before.direction for before, step in pairwise(steps))
    return (
        times.setting * len({step.setting for step in steps})
        + times.cut * len(steps)
        + times.metre * metres
        + times.lift * sum(is_over_limit(job, sheet, step.piece) for step in steps)
        + times.turn * turns
    )


def piece_mass_kg(sheet: Sheet, piece: Rect) -> Fraction:
    """Return the mass in kilograms of a piece of a sheet."""
    return find_mass_kg(
        find_density(sheet.material, sheet.thickness),
        length=piece.length,
        width=piece.width,
        thickness=sheet.thickness,
    )


def is_over_limit(job: Job, sheet: Sheet, piece: Rect) -> bool:
    """Return whether one person should not lift the piece alone."""
    return piece_mass_kg(sheet, piece) > Fraction(job.saw.lift_limit_kg)
