"""Why the cuts of a sheet stand in this order, and what another order would cost."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from nesting.cut_sequence import MOST_OPEN_PIECES, Step, minutes, order_cuts
from nesting.cut_sequence import Sequence as CutSequence
from nesting.job import Job
from nesting.layout import By, Direction, SheetLayout
from plans.sections.numbers import count_of, show_with_unit, to_whole
from plans.sections.worked import WorkedSheet


def say_why(job: Job, worked: WorkedSheet) -> str:
    """Return the reason and the price of another order.

    The reason is read off the sequence itself, and the other order is made and counted: nothing
    is claimed that was not worked out.
    """
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
    return " ".join([f"{text[0].upper()}{text[1:]}.", *_other_orders(job, worked)])


def _other_orders(job: Job, worked: WorkedSheet) -> Iterator[str]:
    """Yield what other orders of the same cuts would cost, or save."""
    sequence = worked.sequence
    if sequence.pause:
        letter = job.terms.first_whole
        layout = SheetLayout(sheet=sequence.sheet, root=worked.places[()].node)
        free = replace(job, terms=replace(job.terms, first_whole=""))
        saved = _compare(job, order_cuts(free, layout), sequence)
        yield f"Cabinet {letter} comes first: that costs {saved}."
    more = _compare(job, sequence, _finish_each_piece(sequence))
    yield f"To finish each piece before the next is begun would cost {more}."


def _compare(job: Job, first: CutSequence, second: CutSequence) -> str:
    """Return how much more the second order takes, in words."""
    settings = second.settings - first.settings
    longer = to_whole(minutes(job, second)) - to_whole(minutes(job, first))
    if settings <= 0 and longer <= 0:
        return "nothing"
    named = [
        count_of(number, what)
        for number, what in ((settings, "setting"), (longer, "minute"))
        if number > 0
    ]
    return f"{' and '.join(named)} more"


def _finish_each_piece(sequence: CutSequence) -> CutSequence:
    """Return the same cuts, each piece cut up wholly before the next one is taken in hand."""
    steps: list[Step] = []
    setting = turns = 0
    for number, step in enumerate(sorted(sequence.steps, key=lambda step: step.path), start=1):
        before = steps[-1] if steps else None
        setting += before is None or _kind(before) != _kind(step)
        turns += before is not None and before.direction is not step.direction
        steps.append(replace(step, number=number, setting=setting))
    return replace(sequence, steps=tuple(steps), settings=setting, turns=turns)


def _kind(step: Step) -> tuple[By, Direction, bool, int]:
    """Return what cuts that can share a setting have in common."""
    return step.by, step.direction, step.is_trim, step.keep


def _yard_purpose(job: Job) -> str:
    if job.car is not None:
        return "so that every piece goes into the car"
    return "so that one person can lift every piece"


def _settings_reason(steps: Sequence[Step], settings: int) -> str:
    kinds = len(set(map(_kind, steps)))
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
