"""One whole cabinet first: which cuts it takes, and where each sheet is put aside for it."""

from dataclasses import dataclass

from nesting.kits import find_kits
from plans.sections.worked import Worked, WorkedSheet


@dataclass(frozen=True, slots=True, kw_only=True)
class WholeFirst:
    """The cabinet that is cut whole before anything else is.

    Attributes:
        cabinet: Its letter.
        pauses: Number of every sheet that it needs, and of the last cut made on it for that.
        cuts: The cuts as they are printed, and typed after 'setout mark': "1.1-1.7 2.1-2.5".
    """

    cabinet: str
    pauses: tuple[tuple[int, int], ...]
    cuts: str


def find_whole_first(worked: Worked) -> WholeFirst | None:
    """Return the cabinet that comes first; None where none is to, or where it is not whole."""
    letter = worked.job.terms.first_whole
    sequences = [sheet.sequence for sheet in worked.sheets]
    kits = find_kits(worked.job, worked.layout, sequences)
    if not any(kit.cabinet == letter and kit.closes for kit in kits):
        return None
    pauses = tuple(
        (sheet.number, sheet.sequence.pause) for sheet in worked.sheets if sheet.sequence.pause
    )
    return WholeFirst(
        cabinet=letter,
        pauses=pauses,
        cuts=" ".join(
            f"{sheet}.1-{sheet}.{cut}" if cut > 1 else f"{sheet}.1" for sheet, cut in pauses
        ),
    )


def say_whole_first(first: WholeFirst) -> str:
    """Return what to do first, as a line of the overview."""
    return (
        f"Cabinet {first.cabinet} comes first: make cuts {first.cuts}, and put it together dry "
        "before any other cut"
    )


def say_pause(letter: str, worked: WorkedSheet, cut: int) -> str:
    """Return what stands beside the last cut that the first cabinet needs of a sheet, else ""."""
    sequence = worked.sequence
    if cut != sequence.pause or cut == len(sequence.steps):
        return ""
    return f"then STOP: put this sheet aside until cabinet {letter} has been put together dry"
