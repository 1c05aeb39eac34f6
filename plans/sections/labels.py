"""What to write on every panel before it is cut free (in the order of cutting)."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from nesting.job import Job
from nesting.layout import PartLeaf, RestLeaf
from nesting.lengths import Length
from nesting.parts import Grain, Part
from nesting.saw import Face
from nesting.sheets import SheetGrain
from plans.sections.codes import Freed
from plans.sections.hole_pieces import HolePiece, list_hole_pieces
from plans.sections.numbers import show, show_size
from plans.sections.part_list import look_alikes
from plans.sections.part_words import (
    blank_words,
    copy_words,
    finished_words,
    full_name,
    part_grain_words,
    status_words,
)
from plans.sections.spares import say_spare_of
from plans.sections.worked import Worked, WorkedSheet


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """One label.

    Attributes:
        code: Code of the part or offcut.
        copy: "2 of 4".
        name: Name in words, with the cabinet.
        size: Finished size and measured thickness, "562 × 300 × 17.7".
        blank: Blank size where it differs, else "".
        grain: "grain along the 562", or "any grain".
        grain_along_length: True where the arrow runs along the part's length; None for no grain.
        face: "this is the BACK face", or "BACK face: inside" where the front is known by it.
        status: "final", "oversize +3" or "measure first".
        to_do: What is still done to it.
        look_alikes: Codes it must not be taken for.
        origin: "sheet 1, cut 7", or the hole that it comes out of.
        note: What it says besides, such as "interchangeable".
        allowances: Which edges of the blank have wood to spare, and how much.
        spare: Names of these edges, "left" or "front", say.
        hand: "left", "right", "top" or "bottom" where the part has a mirror image, else "".
        share: Which share of the triangle mark across the carcass is the part's: such a side, or
            "left or right" where it is settled only when the part has its place; else "".
        front: The side of the label, "left" or "right", that looks to the front of the work where
            the label stands upright; "" where it is ticked by hand.
    """

    code: str
    copy: str
    name: str
    size: str
    blank: str
    grain: str
    grain_along_length: bool | None
    face: str
    status: str
    to_do: tuple[str, ...]
    look_alikes: tuple[str, ...]
    origin: str
    note: str = ""
    allowances: tuple[str, ...] = ()
    spare: tuple[str, ...] = ()
    hand: str = ""
    share: str = ""
    front: str = ""


EDGES = ("left", "right", "top", "bottom", "front", "rear")
SIDES = ("left", "right")
HANDS = (*SIDES, "top", "bottom")
OPEN_SHARES = {"Side": "left or right", "Top or bottom": "top or bottom"}
"""Parts of a carcass that are interchangeable, with the shares that they may come to have."""

BLACKEN = "blacken its share of the triangle when it has its place"


def make_labels(worked: Worked) -> tuple[Label, ...]:
    """Return a label for every part and offcut in the order in which they come free.

    Parts from holes come last: their holes are cut at the bench.
    """
    return tuple(_in_order(worked))


def _in_order(worked: Worked) -> Iterator[Label]:
    alike = look_alikes(worked)
    copies = [0] * len(worked.job.parts)
    for sheet in worked.sheets:
        for freed in sheet.freed:
            match freed.place.node:
                case PartLeaf(part=part):
                    yield _part_label(worked, sheet, freed, part, copies[part], alike[part])
                    copies[part] += 1
                case RestLeaf(is_offcut=True):
                    yield _offcut_label(worked.job, sheet, freed)
    for piece in list_hole_pieces(worked):
        yield _hole_label(worked.job, piece)


def _part_label(
    worked: Worked,
    sheet: WorkedSheet,
    freed: Freed,
    index: int,
    copy: int,
    alike: Sequence[str],
) -> Label:
    job = worked.job
    part = job.parts[index]
    label = _label(job, part, sheet.codes[freed.place.path], sheet.sheet.real_thickness)
    return replace(
        label,
        copy=copy_words(job, index, copy),
        face=_face_of(part, job.saw.marked_face),
        look_alikes=tuple(alike),
        origin=_origin(sheet, freed),
        note="; ".join(
            words for words in (say_spare_of(worked, part), part.note, _say_share(part)) if words
        ),
        hand=hand_of(part),
        share=share_of(part),
        front=front_of(part, job.saw.marked_face),
    )


def _hole_label(job: Job, piece: HolePiece) -> Label:
    label = _label(job, piece.taken.part, piece.code, piece.thickness)
    return replace(label, origin=piece.origin)


def _label(job: Job, part: Part, code: str, thickness: Length) -> Label:
    """Return what the label of a part says, wherever it comes from."""
    unit = job.unit
    blank, finished = blank_words(part, unit), finished_words(part, unit)
    return Label(
        code=code,
        copy="1 of 1",
        name=full_name(part),
        size=f"{finished} × {show(thickness, unit)}",
        blank=blank if blank != finished else "",
        grain=part_grain_words(part, unit, "any grain"),
        grain_along_length=_arrow(part),
        face=_say_face(job.saw.marked_face),
        status=status_words(part, unit),
        to_do=part.to_do,
        look_alikes=(),
        origin="",
        note=part.note,
        allowances=part.allowances,
        spare=_name_edges(part),
    )


def _name_edges(part: Part) -> tuple[str, ...]:
    """Return the edges that have wood to spare; the calculator names them first, "left end".

    Where one is called after its neighbour, as on a part that leans, none is: words must do.
    """
    edges = dict.fromkeys(words.partition(" ")[0] for words in part.allowances)
    return tuple(edges) if set(edges) <= set(EDGES) else ()


def _arrow(part: Part) -> bool | None:
    """Return whether the grain arrow runs along a part's length; None for no arrow."""
    return None if part.grain is Grain.ANY else part.grain is Grain.LENGTH


def hand_of(part: Part) -> str:
    """Return on which side a part stands that has a mirror image, "" for any other.

    The calculator names the two of a handed pair after their sides: "Side, left", "Top".
    """
    side = part.name.rpartition(" ")[2].lower()
    return side if "handed:" in part.note and side in HANDS else ""


def front_of(part: Part, marked: Face) -> str:
    """Return to which side of its label the front lies of a side that has a mirror image.

    The good face of a side looks out. A label on its back is read from the inside, where the front
    lies to the left on the left side; on the good face it is the other way round.
    """
    hand = hand_of(part)
    if hand not in SIDES:
        return ""
    return hand if marked is Face.BACK else SIDES[1 - SIDES.index(hand)]


def share_of(part: Part) -> str:
    """Return which share of the triangle mark is a part's, "" for what is not of a carcass."""
    if not part.cabinet:
        return ""
    if part.name in OPEN_SHARES:
        return OPEN_SHARES[part.name]
    side = part.name.lower()
    return hand_of(part) or (side if side in HANDS else "")


def _say_share(part: Part) -> str:
    return BLACKEN if share_of(part) in OPEN_SHARES.values() else ""


def _offcut_label(job: Job, sheet: WorkedSheet, freed: Freed) -> Label:
    rect, grain = freed.place.rect, sheet.sheet.grain
    return Label(
        code=sheet.codes[freed.place.path],
        copy="",
        name=f"Offcut of {sheet.sheet.name}",
        size=f"{show_size(rect.length, rect.width, job.unit)} × "
        f"{show(sheet.sheet.real_thickness, job.unit)}",
        blank="",
        grain=offcut_grain_words(job, sheet, freed),
        grain_along_length=None if grain is SheetGrain.NONE else grain is SheetGrain.LENGTH,
        face=_say_face(job.saw.marked_face),
        status="offcut, keep",
        to_do=(),
        look_alikes=(),
        origin=_origin(sheet, freed),
    )


def offcut_grain_words(job: Job, sheet: WorkedSheet, freed: Freed) -> str:
    """Return "grain along the 600", or "no grain"."""
    rect, grain = freed.place.rect, sheet.sheet.grain
    if grain is SheetGrain.NONE:
        return "no grain"
    along = rect.length if grain is SheetGrain.LENGTH else rect.width
    if rect.length == rect.width:
        side = "first" if grain is SheetGrain.LENGTH else "second"
        return f"grain along the {side} {show(along, job.unit)}"
    return f"grain along the {show(along, job.unit)}"


def _face_of(part: Part, marked: Face) -> str:
    """Return which face the label is on, and where that looks if the front depends on it."""
    if not front_of(part, marked):
        return _say_face(marked)
    return "BACK face: inside" if marked is Face.BACK else "FRONT face: outside"


def _say_face(marked: Face) -> str:
    return f"this is the {marked.value.upper()} face"


def _origin(sheet: WorkedSheet, freed: Freed) -> str:
    return f"sheet {sheet.number}, " + (f"cut {freed.cut}" if freed.cut else "no cut")
