"""Files as bytes and text, with plain words for what can be wrong with them."""

from pathlib import Path

from nesting.errors import Fault, InputError
from nesting.reading.excerpts import quote

LARGEST_FILE = 5_000_000


def read_bytes(path: Path) -> bytes:
    """Return a file's content.

    Raises:
        InputError: There is no such file, it is not one that can be read, or it is too large.
    """
    try:
        if path.is_dir():
            raise _fault(path, "this is a folder", "Name a file in it.")
        if path.exists() and not path.is_file():
            raise _fault(path, "this is not an ordinary file", "Name a file on the disk.")
        if path.stat().st_size > LARGEST_FILE:
            raise _fault(path, "the file is larger than 5 MB", "Check that it is the right one.")
        return path.read_bytes()
    except (FileNotFoundError, NotADirectoryError):
        raise _fault(path, "there is no such file", "Check the name and the folder.") from None
    except PermissionError:
        raise _fault(path, "you may not read it", "Change its permissions.") from None
    except (OSError, ValueError):
        raise _fault(path, "it cannot be read", "Check the name and the disk.") from None


def decode(content: bytes, name: str) -> str:
    """Return the text of a UTF-8 file, with lines that end in one newline.

    A byte order mark at the start is tolerated.

    Args:
        content: The file's bytes.
        name: What messages call it.

    Raises:
        InputError: It is not UTF-8; the fault names the first line that is not.
    """
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        number = content[: error.start].count(b"\n")
        line = content.split(b"\n")[number].decode("utf-8", errors="replace")
        start = max(0, line.find("\N{REPLACEMENT CHARACTER}"))
        raise InputError(
            [
                Fault(
                    where=f"{name}, line {number + 1}",
                    what="a letter is not written in UTF-8",
                    remedy="Save the file again with the encoding UTF-8.",
                    excerpt=quote(line, start, start + 1),
                )
            ]
        ) from None
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _fault(path: Path, what: str, remedy: str) -> InputError:
    return InputError([Fault(where=str(path), what=what, remedy=remedy)])
