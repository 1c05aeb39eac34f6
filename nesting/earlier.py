"""What an earlier plan of the same job has already led to, where a plan goes on from it."""

from dataclasses import dataclass

from nesting.lengths import Length
from nesting.sheets import Defect, SheetGrain, Trim


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishedPart:
    """A part that has been cut.

    Attributes:
        code: The code on its label.
        name: Its name with its cabinet, as the plan file gives it.
        length: Finished size along its own length, as it was planned or measured.
        width: Finished size across it.
    """

    code: str
    name: str
    length: Length
    width: Length


@dataclass(frozen=True, slots=True, kw_only=True)
class Leftover:
    """A piece in the garage that the plan going on does not need.

    Attributes:
        code: What it is called from now on.
        material: What it is made of.
        thickness: Nominal thickness.
        measured: Readings of its thickness, may be empty.
        length: Extent along the length of the sheet that it came from.
        width: Extent along the width of that sheet.
        grain: The side that the face grain runs along.
        trim: What is not used along the edges that are still raw.
        defects: Its places that are not sound, from its own low corner.
    """

    code: str
    material: str
    thickness: Length
    measured: tuple[Length, ...] = ()
    length: Length
    width: Length
    grain: SheetGrain
    trim: Trim = Trim()
    defects: tuple[Defect, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Earlier:
    """The plan that this one goes on from.

    Attributes:
        fingerprint: Its code.
        changes: What has changed since, a sentence each, for the first page.
        finished: Every part cut so far, over all earlier plans.
        kept: Pieces in the garage that this plan does not need, for the next one.
        used: Stocks of the job file and how many sheets of each are used up or in hand.
        codes: For every part of the job the codes of its copies, so that labels stay true.
        pieces: The highest figure that a piece on the way had (P7: 7), so that none comes twice.
        offcuts: The highest figure that an offcut had.
    """

    fingerprint: str
    changes: tuple[str, ...] = ()
    finished: tuple[FinishedPart, ...] = ()
    kept: tuple[Leftover, ...] = ()
    used: tuple[tuple[str, int], ...] = ()
    codes: tuple[tuple[str, ...], ...] = ()
    pieces: int = 0
    offcuts: int = 0
