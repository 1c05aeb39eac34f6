"""What can go wrong, and how it is said.

The tree::

    NestingError
    ├── InputError     a file, an option or a value is wrong; holds every fault found
    ├── NoFitError     nothing at all can be placed
    └── LayoutError    the engine broke one of its own rules: our bug, never the user's

A message reads **where: what. What to do.** It uses the user's own labels and units.
"""

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One thing that is wrong with the input.

    Attributes:
        where: The place, such as "parts.csv, row 7, column 'width'". May be empty while the
            fault travels up to the reader that knows the place.
        what: What is wrong there, a clause without a full stop.
        remedy: What to do about it, one or more sentences.
        excerpt: Lines quoted from the input, the last of which may point at the fault.
    """

    where: str
    what: str
    remedy: str
    excerpt: tuple[str, ...] = ()

    def __str__(self) -> str:
        """Return the message as the user reads it."""
        head = f"{self.where}: {self.what}." if self.where else f"{self.what}."
        return "\n".join([head, *(f"    {line}" for line in self.excerpt), self.remedy])


class NestingError(Exception):
    """Base of every error that this package raises on purpose."""


class InputError(NestingError):
    """The input is wrong. Carries all faults found, in the order of the file."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        """Keep the faults; there must be at least one."""
        self.faults = tuple(faults)
        assert self.faults, "an InputError needs a fault"
        super().__init__("\n".join(str(fault) for fault in self.faults))


class NoFitError(NestingError):
    """No part of the job fits any of its sheets."""


class LayoutError(NestingError):
    """A layout breaks a rule of the job: a bug of ours."""
