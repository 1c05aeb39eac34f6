"""Faults gathered while a file is read, so that all of them are told at once."""

from dataclasses import dataclass, field

from nesting.errors import Fault, InputError


@dataclass(slots=True)
class Faults:
    """The faults found so far, each with its place in the order of the job file.

    Shared by everything that reads one job file, and filled as the reading goes on.
    """

    _found: list[tuple[tuple[int, int], Fault]] = field(default_factory=list)

    def __len__(self) -> int:
        """Return how many there are."""
        return len(self._found)

    def add(self, fault: Fault, *, line: int, row: int = 0) -> None:
        """Keep a fault.

        Args:
            fault: What is wrong.
            line: Line of the job file that it belongs to, from 1; 0 for the whole file.
            row: Row of the part list named on that line, from 1; 0 where there is none.
        """
        self._found.append(((line, row), fault))

    def in_order(self) -> tuple[Fault, ...]:
        """Return the faults in the order of the file."""
        return tuple(fault for _, fault in sorted(self._found, key=lambda found: found[0]))

    def raise_any(self) -> None:
        """Do nothing where there is no fault.

        Raises:
            InputError: There is at least one.
        """
        if self._found:
            raise InputError(self.in_order())
