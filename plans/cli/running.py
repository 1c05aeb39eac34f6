"""A command run, and what comes of it printed: the result, the messages and the exit status."""

import codecs
import errno
import json
import os
import sys
import traceback
from collections.abc import Callable, Iterator

import typer

from nesting.errors import InputError, NestingError, NoFitError
from plans.outcome import ExitStatus, Outcome
from plans.progress import ProgressLine

MOST_FAULTS = 30
"""Faults shown at once."""


def run(command: Callable[[], Outcome], *, as_json: bool = False, quiet: bool, debug: bool) -> None:
    """Run a command, print what it did and leave with its exit status.

    Args:
        command: Does the work.
        as_json: Print the data of the result instead of its text.
        quiet: Print nothing but the result and errors.
        debug: Print where in the code an error arose.

    Raises:
        typer.Exit: Always, with the exit status.
    """
    _finish(_attempt(command, debug=debug), as_json=as_json, quiet=quiet)


def run_searching(
    command: Callable[[ProgressLine], Outcome], *, as_json: bool, quiet: bool, debug: bool
) -> None:
    """Run a command that searches, with a line that says how far it is; otherwise as `run`."""
    with ProgressLine(sys.stderr, is_quiet=quiet) as progress:
        outcome = _attempt(lambda: command(progress), debug=debug)
    _finish(outcome, as_json=as_json, quiet=quiet)


def _attempt(command: Callable[[], Outcome], *, debug: bool) -> Outcome:
    """Run a command; whatever goes wrong becomes a message and a status."""
    try:
        return command()
    except (Exception, KeyboardInterrupt) as error:  # noqa: BLE001 - no traceback at the saw
        if debug:
            traceback.print_exc()
        return _explain(error)


def _explain(error: BaseException) -> Outcome:
    match error:
        case InputError():
            return Outcome(status=ExitStatus.WRONG_INPUT, messages=tuple(_list_faults(error)))
        case NoFitError():
            return _failure(ExitStatus.SOME_PARTS_DO_NOT_FIT, str(error))
        case NestingError():
            return _failure(ExitStatus.FAILED, str(error))
        case KeyboardInterrupt() | typer.Abort():
            return _failure(ExitStatus.INTERRUPTED, "Interrupted: nothing was written.")
        case OSError():
            return _failure(ExitStatus.FAILED, _sentence(error))
        case _:
            return _failure(
                ExitStatus.FAILED,
                f"setout: something unexpected went wrong ({error!r}).\n"
                "Nothing was written. Run it again with --debug and report what it prints.",
            )


def _list_faults(error: InputError) -> Iterator[str]:
    """Yield the faults, not so many that the first ones scroll away."""
    yield from map(str, error.faults[:MOST_FAULTS])
    rest = len(error.faults) - MOST_FAULTS
    if rest > 0:
        yield f"{rest} more such faults are not shown. Mend these first."


def _failure(status: ExitStatus, message: str) -> Outcome:
    return Outcome(status=status, messages=(message,))


def _sentence(error: OSError) -> str:
    place = error.filename or "writing"
    reason = (error.strerror or str(error)).lower()
    remedy = _REMEDIES.get(error.errno or 0, "Check the name, the folder and the disk.")
    return f"{place}: {reason}.\nEarlier files are as they were. {remedy}"


_REMEDIES = {
    errno.ENOSPC: "Make room on the disk.",
    errno.EDQUOT: "Make room on the disk.",
    errno.EFBIG: "Make room on the disk.",
    errno.EACCES: "Change its permissions, or name another folder.",
    errno.EPERM: "Change its permissions, or name another folder.",
    errno.EROFS: "Name another folder.",
    errno.EISDIR: "Move the folder away, or choose another name.",
    errno.ENAMETOOLONG: "Choose a shorter name.",
}


def _finish(outcome: Outcome, *, as_json: bool, quiet: bool) -> None:
    failed = outcome.status not in (ExitStatus.DONE, ExitStatus.SOME_PARTS_DO_NOT_FIT)
    if outcome.messages and (failed or not quiet):
        typer.echo("\n".join(outcome.messages), err=True)
    try:
        if as_json and outcome.data:
            typer.echo(json.dumps(outcome.data, ensure_ascii=not _writes_utf_8(), indent=1))
        elif outcome.text and not as_json:
            typer.echo(outcome.text)
        sys.stdout.flush()
    except OSError as error:
        if error.errno == errno.EPIPE:  # whoever reads has seen enough
            raise
        typer.echo(f"standard output: {_sentence(error)}", err=True)
        # Python prints what is left once more as it ends, and would fail with a status of its own.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        raise typer.Exit(int(ExitStatus.FAILED)) from None
    raise typer.Exit(int(outcome.status))


def _writes_utf_8() -> bool:
    encoding = getattr(sys.stdout, "encoding", None) or "utf-8"
    return codecs.lookup(encoding).name == "utf-8"
