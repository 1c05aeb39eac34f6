"""The moment at which a search must end, whatever it is busy with."""

import time
from dataclasses import dataclass
from math import inf

A_DAY_S = 86_400.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Deadline:
    """A moment that methods look at between pieces of work that take a fraction of a second.

    Attributes:
        at: Time of `time.monotonic`; infinite for never.
    """

    at: float = inf

    def is_over(self) -> bool:
        """Return whether the moment has come."""
        return time.monotonic() >= self.at

    def count_left(self) -> float:
        """Return the seconds that are left, at least 0 and at most a day."""
        return min(max(0.0, self.at - time.monotonic()), A_DAY_S)


NO_DEADLINE = Deadline()
PASSED = Deadline(at=-inf)
