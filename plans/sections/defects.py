"""The places of a sheet that are not sound, as its page tells them."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.job import Job
from nesting.layout import PartLeaf, Rect
from nesting.lengths import Length
from nesting.saw import Face
from nesting.sheets import Use
from nesting.zones import meets
from plans.sections.codes import code_order
from plans.sections.precision import needs_fine_figures, show_keep
from plans.sections.worked import WorkedSheet


@dataclass(frozen=True, slots=True, kw_only=True)
class DefectView:
    """A place of a sheet that is not sound.

    Attributes:
        what: What it is, such as "knot hole".
        rect: Where it lies, from the home corner.
        along: Tape reading from the left edge to its near end, as text.
        across: Tape reading from the other edge measured from, as text.
        size: Its size as text, "80 × 50".
        is_for_hidden: True where hidden parts may lie on it.
        parts: Codes of the parts that lie on it.
        text: All that in a sentence.
    """

    what: str
    rect: Rect
    along: str
    across: str
    size: str
    is_for_hidden: bool
    parts: tuple[str, ...]
    text: str


def make_defect_views(job: Job, worked: WorkedSheet) -> tuple[DefectView, ...]:
    """Return the defects of a sheet, in the order of the job file."""
    return tuple(_make_views(job, worked))


def _make_views(job: Job, worked: WorkedSheet) -> Iterator[DefectView]:
    is_fine = needs_fine_figures(job, worked)

    def say(length: Length) -> str:
        return show_keep(length, job.unit, is_fine=is_fine)

    edge = "top edge" if job.saw.marked_face is Face.BACK else "bottom edge"
    for defect in worked.sheet.defects:
        on_it = (
            worked.codes[path]
            for path, place in worked.places.items()
            if isinstance(place.node, PartLeaf) and meets(place.rect, defect)
        )
        parts = tuple(sorted(on_it, key=code_order))
        along, across = say(defect.x), say(defect.y)
        size = f"{say(defect.length)} × {say(defect.width)}"
        is_for_hidden = defect.use is Use.HIDDEN_PARTS
        allowed = "ONLY HIDDEN PARTS MAY LIE ON IT" if is_for_hidden else "NO PART LIES ON IT"
        there = f": {', '.join(parts)}" if parts else ""
        yield DefectView(
            what=defect.what,
            rect=Rect(x=defect.x, y=defect.y, length=defect.length, width=defect.width),
            along=along,
            across=across,
            size=size,
            is_for_hidden=is_for_hidden,
            parts=parts,
            text=f"{defect.what[:1].upper()}{defect.what[1:]}: {along} from the left edge and "
            f"{across} from the {edge}, {size}. {allowed}{there}.",
        )
