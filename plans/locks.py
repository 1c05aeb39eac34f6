"""One command at a time for each job.

The lock is a transaction on an empty database file in the user's cache folder. The system drops
it with the process, so that a killed command leaves nothing locked, on every system alike.
"""

import hashlib
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from typing import Final

import platformdirs

from nesting.errors import NestingError

PATIENCE_S: Final = 3.0


class BusyError(NestingError):
    """Another command works on the same job."""


@contextmanager
def hold(job_file: Path, *, patience_s: float = PATIENCE_S) -> Iterator[None]:
    """Hold a job while a command works on it.

    Args:
        job_file: The job file; need not exist.
        patience_s: How long to wait for another command.

    Raises:
        BusyError: Another command holds the job and did not let go in time.
    """
    place = _folder() / f"{hashlib.sha256(str(job_file.resolve()).encode()).hexdigest()[:32]}.lock"
    with closing(sqlite3.connect(place, timeout=patience_s, isolation_level=None)) as lock:
        try:
            lock.execute("BEGIN EXCLUSIVE")
        except sqlite3.OperationalError as error:
            raise BusyError(
                f"{job_file}: another setout command is working on this job.\n"
                "Wait until it has ended, then run this one again."
            ) from error
        yield


def _folder() -> Path:
    """Return a folder that can be written to, made if need be."""
    for parent in (platformdirs.user_cache_path("setout"), Path(tempfile.gettempdir()) / "setout"):
        folder = parent / "locks"
        try:
            folder.mkdir(parents=True, exist_ok=True)
        except OSError:
            continue
        return folder
    return Path(tempfile.mkdtemp(prefix="setout-"))
