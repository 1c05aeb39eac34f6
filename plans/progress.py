"""One line on a terminal that says how far the search is."""

import time
from types import TracebackType
from typing import Any, Self, TextIO

_WIDTH = 24
_INTERVAL_S = 0.1


class ProgressLine:
    """Shows progress while it lasts and leaves no trace of itself.

    Draws nothing where the stream is not a terminal; says once, on any stream, when something has
    to be prepared before the search can begin.
    """

    def __init__(self, stream: TextIO, *, is_quiet: bool) -> None:
        """Draw on stream, or nowhere where quiet."""
        self._stream = stream
        self._is_quiet = is_quiet
        self._draws = stream.isatty() and not is_quiet
        self._last_s = 0.0

    def __enter__(self) -> Self:
        """Begin."""
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        """Wipe the line."""
        if self._draws:
            self._stream.write("\r\x1b[K")
            self._stream.flush()

    def __call__(self, progress: Any) -> None:  # noqa: ANN401 - any record with these fields
        """Show a record with `done` (0 to 1), `cost`, `bound` and `is_preparing`."""
        if progress.is_preparing:
            self._say("Preparing the search: compiled once, which takes 15 to 30 seconds ...")
            return
        now_s = time.monotonic()
        if not self._draws or now_s - self._last_s < _INTERVAL_S:
            return
        self._last_s = now_s
        filled = round(_WIDTH * progress.done)
        bar = "█" * filled + "·" * (_WIDTH - filled)
        self._stream.write(f"\r\x1b[K{bar} best {progress.cost}, bound {progress.bound}")
        self._stream.flush()

    def _say(self, note: str) -> None:
        if not self._is_quiet:
            self._stream.write(f"{note}\n")
            self._stream.flush()
