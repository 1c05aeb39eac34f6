"""One command at a time for each job.

The lock is a transaction on an empty database file in the user's cache folder. The system drops
it with the process, so that a killed command leaves nothing locked, on every system alike.
"""

import hashlib
import os
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

import platformdirs

from nesting.errors import NestingError

PATIENCE_S = 3.0
"""How long to wait for another command, in seconds."""


class BusyError(NestingError):
    """Another command works on the same job."""


@contextmanager
def hold(job_file: Path) -> Iterator[None]:
    """Hold a job while a command works on it.

    Args:
        job_file: The job file; need not exist.

    Raises:
        BusyError: Another command holds the job and did not let go within `PATIENCE_S`.
    """
    place = _folder() / f"{hashlib.sha256(os.fsencode(job_file.resolve())).hexdigest()[:32]}.lock"
    with closing(sqlite3.connect(place, timeout=PATIENCE_S, isolation_level=None)) as lock:
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
        if os.access(folder, os.W_OK):
            return folder
    return Path(tempfile.mkdtemp(prefix="setout-"))
