"""The record beside a job: an append-only text file of what has been marked.

One line an event::

    KAC-01234 3 cut 1.7 #648b628d

the fingerprint of the plan, the number of the entry (one `setout mark`), what happened, and a
checksum of the line. Every line is flushed to the disk before the next one is written. After a
power cut everything up to the last whole line is there; the torn rest is cut off by the next
entry. Lengths are decimal millimetres, exact.
"""

import os
import zlib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from typing import Final

from nesting.errors import Fault, InputError
from nesting.garage.events import (
    CutMade,
    FirstOff,
    Mark,
    PartRead,
    PieceSpoilt,
    SheetMissing,
    SheetRead,
)
from nesting.garage.sheet_readings import Size
from nesting.lengths import NM_PER_MM, Length
from nesting.sheets import Defect, Use


@dataclass(frozen=True, slots=True, kw_only=True)
class Undone:
    """An earlier entry is taken back."""

    entry: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of the record.

    Attributes:
        fingerprint: The plan that it belongs to.
        entry: Number of the entry; the lines of one command share it.
        event: What happened.
    """

    fingerprint: str
    entry: int
    event: Mark | Undone


WORDS: Final = {Use.NOTHING: "defect", Use.HIDDEN_PARTS: "stain"}
"""How a line calls each kind of defect."""
_FIELDS: Final = 4  # fingerprint, entry, word, and at least one more
_SIZE_AND_CHECK: Final = 10  # " #" and eight hexadecimal figures


def record_path(job_file: Path) -> Path:
    """Return where the record of a job file stands: NAME.record beside it."""
    return job_file.with_name(f"{job_file.stem}.record")


def read_record(path: Path) -> tuple[Line, ...]:
    """Return every whole line of a record, none where there is no record.

    What a power cut tore at its end is left out.

    Raises:
        InputError: The file cannot be read, or a line before the last whole one was changed.
    """
    return tuple(line for line, _ in _whole_lines(path))


def append(path: Path, fingerprint: str, events: Iterable[Mark | Undone]) -> int:
    """Write one entry, line by line, each on the disk before the next; return its number.

    Raises:
        InputError: The record was changed by hand.
        OSError: A line could not be written. Those before it stand.
    """
    whole = list(_whole_lines(path))
    end = whole[-1][1] if whole else 0
    entry = max((line.entry for line, _ in whole), default=0) + 1
    is_new = not path.exists()
    with path.open("r+b" if not is_new else "xb") as file:
        file.truncate(end)
        file.seek(end)
        for event in events:
            line = Line(fingerprint=fingerprint, entry=entry, event=event)
            file.write(spell(line).encode())
            file.flush()
            os.fsync(file.fileno())
    if is_new:
        _flush_folder(path.parent)
    return entry


def marks_of(lines: Iterable[Line], fingerprint: str) -> tuple[tuple[int, Mark], ...]:
    """Return the marks that stand for one plan, each with its entry, without those taken back."""
    own = [line for line in lines if line.fingerprint == fingerprint]
    undone = {line.event.entry for line in own if isinstance(line.event, Undone)}
    return tuple(
        (line.entry, line.event)
        for line in own
        if not isinstance(line.event, Undone) and line.entry not in undone
    )


def spell(line: Line) -> str:
    r"""Return a line as the file holds it.

    >>> spell(Line(fingerprint="KAC-01234", entry=3, event=CutMade(sheet=1, cut=7)))
    'KAC-01234 3 cut 1.7 #648b628d\n'
    """
    text = f"{line.fingerprint} {line.entry} {' '.join(_words(line.event))}"
    return f"{text} #{_check(text)}\n"


def _words(event: Mark | Undone) -> Iterator[str]:
    match event:
        case CutMade():
            yield from ("cut", f"{event.sheet}.{event.cut}")
        case PartRead() | FirstOff():
            word = "first" if isinstance(event, FirstOff) else "reading"
            yield from (word, event.code, *map(_to_mm, event.size))
        case PieceSpoilt():
            yield from ("spoilt", event.code)
            for size in event.left:
                yield from ("left", *map(_to_mm, size))
        case SheetMissing():
            yield from ("missing", str(event.sheet))
        case SheetRead():
            yield from ("sheet", str(event.sheet), *_reading_words(event))
        case Undone():
            yield from ("undo", str(event.entry))


def _reading_words(read: SheetRead) -> Iterator[str]:
    for word, lengths in (
        ("size", read.size),
        ("diagonals", read.diagonals),
        ("thickness", read.thickness),
    ):
        if lengths:
            yield from (word, *map(_to_mm, lengths))
    for defect in read.defects:
        place = (defect.x, defect.y, defect.length, defect.width)
        yield from (WORDS[defect.use], *map(_to_mm, place))


def _whole_lines(path: Path) -> Iterator[tuple[Line, int]]:
    """Yield every whole line with the place in the file where it ends."""
    try:
        content = path.read_bytes()
    except FileNotFoundError:
        return
    except IsADirectoryError:
        raise _damaged(path, 0, "it is a folder", "Move it away.") from None
    end = 0
    torn = 0  # number of the first line that is not whole, 0 for none
    for number, raw in enumerate(content.split(b"\n")[:-1], start=1):
        end += len(raw) + 1
        line = _read_line(raw)
        if line is None:
            torn = torn or number
            continue
        if torn:
            raise _damaged(
                path,
                torn,
                "the line was changed since it was written",
                "Restore it, or take the line out to lose that mark only.",
            )
        yield line, end


def _read_line(raw: bytes) -> Line | None:
    """Return the line of some bytes, None where they are not a whole one."""
    try:
        text = raw.decode("ascii")
    except UnicodeDecodeError:
        return None
    body, check = text[:-_SIZE_AND_CHECK], text[-_SIZE_AND_CHECK:]
    if check != f" #{_check(body)}":
        return None
    words = body.split(" ")
    if len(words) < _FIELDS:
        return None
    try:
        return Line(fingerprint=words[0], entry=int(words[1]), event=_event(words[2], words[3:]))
    except (ValueError, ArithmeticError, IndexError):
        return None


def _event(word: str, rest: list[str]) -> Mark | Undone:
    match word:
        case "cut":
            sheet, cut = rest[0].split(".")
            return CutMade(sheet=int(sheet), cut=int(cut))
        case "reading" | "first":
            kind = FirstOff if word == "first" else PartRead
            return kind(code=rest[0], size=_pair(rest[1:3]))
        case "spoilt":
            return PieceSpoilt(
                code=rest[0],
                left=tuple(_pair(rest[at + 1 : at + 3]) for at in range(1, len(rest), 3)),
            )
        case "missing":
            return SheetMissing(sheet=int(rest[0]))
        case "sheet":
            return _sheet_event(int(rest[0]), rest[1:])
        case "undo":
            return Undone(entry=int(rest[0]))
    raise ValueError(word)


def _sheet_event(sheet: int, words: list[str]) -> SheetRead:
    groups: list[tuple[str, list[str]]] = []
    for word in words:
        if word.isalpha():
            groups.append((word, []))
        else:
            groups[-1][1].append(word)
    found = dict(groups)
    return SheetRead(
        sheet=sheet,
        size=_pair(found["size"]) if "size" in found else None,
        diagonals=_pair(found["diagonals"]) if "diagonals" in found else None,
        thickness=tuple(map(_from_mm, found.get("thickness", ()))),
        defects=tuple(
            _defect(use, places)
            for word, places in groups
            for use, known in WORDS.items()
            if word == known
        ),
    )


def _defect(use: Use, words: list[str]) -> Defect:
    x, y, length, width = map(_from_mm, words)
    return Defect(what=WORDS[use], x=x, y=y, length=length, width=width, use=use)


def _pair(words: list[str]) -> Size:
    first, second = map(_from_mm, words)
    return first, second


def _to_mm(length: Length) -> str:
    return f"{(Decimal(length) / NM_PER_MM).normalize():f}"


def _from_mm(text: str) -> Length:
    return int(Decimal(text) * NM_PER_MM)


def _check(text: str) -> str:
    return f"{zlib.crc32(text.encode()):08x}"


def _flush_folder(folder: Path) -> None:
    """Let a new file's name reach the disk, where the system can do that."""
    if hasattr(os, "O_DIRECTORY"):
        handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _damaged(path: Path, line: int, what: str, remedy: str) -> InputError:
    where = f"{path.name}, line {line}" if line else path.name
    return InputError([Fault(where=where, what=what, remedy=remedy)])
