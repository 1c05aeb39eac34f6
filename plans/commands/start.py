"""`setout start`: a commented job file that plans as it stands."""

from collections.abc import Callable, Mapping
from pathlib import Path

from nesting.errors import Fault, InputError
from plans.outcome import Outcome

Ask = Callable[[str, str], str]


def start(file: Path, given: Mapping[str, str | None], ask: Ask | None) -> Outcome:
    """Write a starter job file.

    Args:
        file: Where to. Must not exist yet.
        given: The answers known so far, None for those still open.
        ask: Asks a question with a default; None where nobody is there to answer, then the
            defaults stand.

    Raises:
        InputError: The file exists already, its folder does not, or an answer is wrong.
    """
    from nesting.reading.starter import QUESTIONS, starter_job
    from plans.writers.whole_file import write_whole

    if file.exists():
        raise InputError([_fault(file, "it exists already", "Choose another name.")])
    if not file.parent.is_dir():
        raise InputError([_fault(file, "its folder does not exist", "Make the folder first.")])
    answers: dict[str, str] = {}
    for question in QUESTIONS:
        default = question.default(answers)
        answer = given[question.key]
        if answer is None:
            answer = ask(question.text, default) if ask else default
        answers[question.key] = answer
    write_whole({file: starter_job(answers).encode()})
    return Outcome(text=f"Wrote {file}\nNow run: setout plan {file}")


def _fault(file: Path, what: str, remedy: str) -> Fault:
    return Fault(where=str(file), what=what, remedy=remedy)
