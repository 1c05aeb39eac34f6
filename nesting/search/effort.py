"""How hard to search, where one question is put to the search several times."""

import time
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Effort:
    """How hard to search.

    Attributes:
        effort: As for `nesting.solve.solve`.
        seed: As there.
        deadline_s: Time of `time.monotonic` at which to stop, None for never.
    """

    effort: int
    seed: int
    deadline_s: float | None

    def left_s(self) -> float | None:
        """Return the seconds left, None where there is no cap."""
        return None if self.deadline_s is None else max(0.0, self.deadline_s - time.monotonic())


def begin(effort: int, seed: int, seconds: float | None) -> Effort:
    """Return an effort whose time begins now; `seconds` is None where there is no cap."""
    deadline_s = None if seconds is None else time.monotonic() + seconds
    return Effort(effort=effort, seed=seed, deadline_s=deadline_s)
