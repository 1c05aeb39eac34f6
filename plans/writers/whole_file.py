"""Files written whole or not at all."""

import os
import tempfile
from collections.abc import Mapping
from pathlib import Path


def write_whole(contents: Mapping[Path, bytes]) -> tuple[Path, ...]:
    """Write several files so that each is either as it was or complete.

    Everything is written beside its target and flushed to the disk before the first rename, so a
    full disk leaves every earlier file as it stood.

    Args:
        contents: What each path shall hold. The folders must exist.

    Returns:
        The paths that existed before and were replaced.

    Raises:
        OSError: A file could not be written; nothing was replaced, unless a rename failed.
    """
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
    handle, name = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.")
    temporary = Path(name)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        temporary.chmod(0o666 & ~_umask())
    except BaseException:
        temporary.unlink(missing_ok=True)
        raise
    return temporary


def _umask() -> int:
    """Return the mask for new files; the only way to read it is to set it."""
    mask = os.umask(0o022)
    os.umask(mask)
    return mask
