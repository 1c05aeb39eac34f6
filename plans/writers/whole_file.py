"""Files written whole or not at all."""

import errno
import glob
import os
import signal
import tempfile
import threading
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Final

SUFFIX: Final = ".unfinished"
"""Ends the name of what is written beside a file and has not taken its place yet."""
STALE_S: Final = 600
"""What is written beside a file for so long, in seconds, was left by a command that was killed."""


def write_whole(contents: Mapping[Path, bytes]) -> tuple[Path, ...]:
    """Write several files so that each is either as it was or complete.

    Everything is written beside its target and flushed to the disk before the first rename, so a
    full disk leaves every earlier file as it stood. An interrupt from the keyboard is too late by
    then: it would leave new pages beside an old plan. What a killed command left beside one of
    these files is cleared away.

    Args:
        contents: What each path shall hold. The folders must exist.

    Returns:
        The paths that existed before and were replaced.

    Raises:
        OSError: A file could not be written; nothing was replaced, unless a rename failed. It
            names the file as it would have been called in the end.
    """
    for target in contents:
        if target.is_dir():
            raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR), str(target))
    with uninterrupted():
        for target in contents:
            _clear_away(target)
        return _write_all(contents)


def _clear_away(target: Path) -> None:
    """Remove what was never finished beside a file; younger ones another command may be writing."""
    for left in target.parent.glob(f".{glob.escape(target.name)}.*{SUFFIX}"):
        with suppress(OSError):  # gone already, or another user's
            if time.time() - left.stat().st_mtime > STALE_S:
                left.unlink()


def _write_all(contents: Mapping[Path, bytes]) -> tuple[Path, ...]:
    beside: list[tuple[Path, Path]] = []
    try:
        for target, content in contents.items():
            beside.append((_write_beside(target, content), target))
        replaced = tuple(target for _, target in beside if target.exists())
        for temporary, target in beside:
            temporary.replace(target)
    except BaseException:
        for temporary, _ in beside:
            temporary.unlink(missing_ok=True)
        raise
    return replaced


def _write_beside(target: Path, content: bytes) -> Path:
    try:
        handle, name = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.", suffix=SUFFIX)
    except OSError as error:
        raise OSError(error.errno, error.strerror, str(target)) from error
    temporary = Path(name)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        temporary.chmod(0o666 & ~_umask())
    except OSError as error:
        temporary.unlink(missing_ok=True)
        raise OSError(error.errno, error.strerror, str(target)) from error
    except BaseException:
        temporary.unlink(missing_ok=True)
        raise
    return temporary


@contextmanager
def uninterrupted() -> Iterator[None]:
    """Turn a deaf ear to the keyboard; only the main thread may, and only it is interrupted."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    before = signal.signal(signal.SIGINT, signal.SIG_IGN)
    try:
        yield
    finally:
        signal.signal(signal.SIGINT, before)


def _umask() -> int:
    """Return the mask for new files; the only way to read it is to set it."""
    mask = os.umask(0o022)
    os.umask(mask)
    return mask
