"""What a command did: frozen data, texts for either stream, and an exit status."""

from dataclasses import dataclass, field
from enum import IntEnum
from typing import Any


class ExitStatus(IntEnum):
    """How a command ended."""

    DONE = 0
    FAILED = 1
    WRONG_USAGE = 2
    WRONG_INPUT = 3
    SOME_PARTS_DO_NOT_FIT = 4
    INTERRUPTED = 130


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """The end of a command.

    Attributes:
        status: The exit status.
        text: The result, for a person, on standard output.
        data: The result, for a program, printed as JSON instead where --json is given.
        messages: What a person should know beside the result, on standard error.
    """

    status: ExitStatus = ExitStatus.DONE
    text: str = ""
    data: dict[str, Any] = field(default_factory=dict, hash=False)
    messages: tuple[str, ...] = ()
