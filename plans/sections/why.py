"""One sentence on why the cuts of a sheet stand in this order."""

from nesting.cut_sequence import MOST_OPEN_PIECES, Step
from nesting.job import Job
from nesting.layout import By, Direction
from plans.sections.numbers import show_with_unit
from plans.sections.worked import WorkedSheet


def say_why(job: Job, worked: WorkedSheet) -> str:
    """Return the reason, read off the sequence itself: nothing is claimed that it does not show."""
    sequence = worked.sequence
    if not sequence.steps:
        return "No cut: the whole sheet is the part."
    home = tuple(step for step in sequence.steps if step.by is By.HOME)
    if not home:
        return f"The yard makes every cut of this sheet, {_yard_purpose(job)}."
    reasons = [_settings_reason(home, len({step.setting for step in home}))]
    if len(home) < len(sequence.steps):
        reasons.insert(0, f"the yard's cuts come first, {_yard_purpose(job)}")
    first = next((step for step in home if not step.is_trim), None)
    if (
        first is not None
        and first.direction is Direction.CROSSCUT
        and first.piece.length > job.saw.guide_length
    ):
        reasons.append(
            "the first cuts go across, because the guide "
            f"({show_with_unit(job.saw.guide_length, job.unit)}) does not reach along the sheet"
        )
    if home[0].is_trim and len(home) == len(sequence.steps):
        reasons.append("the trims come first, so that everything is measured from a cut edge")
    text = "; ".join(reasons)
    return f"{text[0].upper()}{text[1:]}."


def _yard_purpose(job: Job) -> str:
    if job.car is not None:
        return "so that every piece goes into the car"
    return "so that one person can lift every piece"


def _settings_reason(steps: tuple[Step, ...], settings: int) -> str:
    kinds = len({(step.by, step.direction, step.is_trim, step.keep) for step in steps})
    if settings == kinds == len(steps):
        return "every cut has a size of its own, so that no order saves a setting"
    cuts = f"{len(steps)} cuts come off {settings} settings of the guide"
    if settings == kinds:
        return f"{cuts}, one for each size, so that equal parts come out equal"
    again = settings - kinds
    come = "1 setting comes" if again == 1 else f"{again} settings come"
    return (
        f"{cuts}; {come} back to a size used before, because its other pieces are freed only "
        f"later, or more than {MOST_OPEN_PIECES} pieces would lie about"
    )
