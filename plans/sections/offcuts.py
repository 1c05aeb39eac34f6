"""What is left over and worth keeping."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.job import Job
from nesting.layout import By, Rect, RestLeaf
from nesting.lengths import Length
from nesting.parts import Grain, Part
from nesting.saw import Face
from nesting.sheets import Sheet, SheetGrain
from plans.sections.codes import Freed
from plans.sections.labels import offcut_grain_words
from plans.sections.numbers import show, show_size
from plans.sections.worked import Worked, WorkedSheet


@dataclass(frozen=True, slots=True, kw_only=True)
class OffcutRow:
    """One offcut.

    Attributes:
        code: Its code, "L2".
        size: Size as text, the side along the sheet's length first.
        material: Material and measured thickness.
        grain: "grain along the 600", or "no grain".
        sheet: Number of the sheet it comes from.
        cut: Number of the cut that frees it.
        good_edges: The edges that were cut, not raw.
        could_be: Codes of parts that could be cut again from it.
    """

    code: str
    size: str
    material: str
    grain: str
    sheet: str
    cut: str
    good_edges: str
    could_be: tuple[str, ...]


def make_offcut_rows(worked: Worked) -> tuple[OffcutRow, ...]:
    """Return every offcut that is kept, in the order in which they come free."""
    return tuple(
        _make_row(worked, sheet, freed)
        for sheet in worked.sheets
        for freed in sheet.freed
        if isinstance(freed.place.node, RestLeaf) and freed.place.node.is_offcut
    )


def _make_row(worked: Worked, sheet: WorkedSheet, freed: Freed) -> OffcutRow:
    job, rect = worked.job, freed.place.rect
    return OffcutRow(
        code=sheet.codes[freed.place.path],
        size=show_size(rect.length, rect.width, job.unit),
        material=f"{sheet.sheet.material} {show(sheet.sheet.real_thickness, job.unit)}",
        grain=offcut_grain_words(job, sheet, freed),
        sheet=str(sheet.number),
        cut=str(freed.cut) if freed.cut else "-",
        good_edges=", ".join(_cut_edges(job, sheet, rect)) or "none",
        could_be=tuple(
            code
            for part, codes in zip(job.parts, worked.part_codes, strict=True)
            if not part.spare_of and could_become(part, sheet.sheet, rect)
            for code in codes
        ),
    )


def could_become(part: Part, sheet: Sheet, rect: Rect) -> bool:
    """Return whether a part could be cut again from a leftover of a sheet.

    Its blank must fit what is left within the trims, its grain the way the leftover lies. Less
    than a kerf may remain beside it: the blade then runs off the edge.
    """
    if (part.material, part.thickness) != (sheet.material, sheet.thickness):
        return False
    length, width = _usable(sheet, rect)
    return any(
        along <= length and across <= width and _runs_with_grain(part, sheet, is_turned=is_turned)
        for along, across, is_turned in (
            (part.blank_length, part.blank_width, False),
            (part.blank_width, part.blank_length, True),
        )
    )


def _usable(sheet: Sheet, rect: Rect) -> tuple[Length, Length]:
    """Return what is left of a rectangle within the trims of its sheet."""
    left = max(rect.x, sheet.trim.left)
    right = min(rect.x + rect.length, sheet.length - sheet.trim.right)
    bottom = max(rect.y, sheet.trim.bottom)
    top = min(rect.y + rect.width, sheet.width - sheet.trim.top)
    return right - left, top - bottom


def _runs_with_grain(part: Part, sheet: Sheet, *, is_turned: bool) -> bool:
    if part.grain is Grain.ANY or sheet.grain is SheetGrain.NONE:
        return True
    is_along_x = (part.grain is Grain.LENGTH) != is_turned
    return is_along_x == (sheet.grain is SheetGrain.LENGTH)


def _cut_edges(job: Job, sheet: WorkedSheet, rect: Rect) -> Iterator[str]:
    """Yield the edges, as drawn, that a cut at home made.

    Edges of the sheet itself are raw, and the yard cuts roughly.
    """
    bands = [step.band for step in sheet.sequence.steps if step.by is By.YARD]
    right, far = rect.x + rect.length, rect.y + rect.width
    is_good = {
        "left": rect.x > 0 and rect.x not in {band.x + band.length for band in bands},
        "right": right < sheet.sheet.length and right not in {band.x for band in bands},
        "low": rect.y > 0 and rect.y not in {band.y + band.width for band in bands},
        "high": far < sheet.sheet.width and far not in {band.y for band in bands},
    }
    is_back = job.saw.marked_face is Face.BACK
    for name, edge in (
        ("left", "left"),
        ("right", "right"),
        ("top", "low" if is_back else "high"),
        ("bottom", "high" if is_back else "low"),
    ):
        if is_good[edge]:
            yield name
