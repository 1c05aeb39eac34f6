"""One sheet as it is drawn: seen from the marked face, lengths in nanometres, y downwards.

The home corner, from which everything is measured, is at the top left where the good face lies
down (the sheet is turned over about its long side) and at the bottom left where it lies up.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from nesting.cut_sequence import Step, minutes, piece_mass_kg
from nesting.job import Job
from nesting.layout import By, Direction, PartLeaf, Rect, RestLeaf
from nesting.parts import Part
from nesting.saw import Face
from nesting.sheets import Sheet, SheetGrain
from nesting.supports import draw_supports
from plans.sections.codes import WASTE, code_order
from plans.sections.cut_table import CutRow, StripSum, make_rows, supports_of
from plans.sections.defects import DefectView, make_defect_views
from plans.sections.numbers import show, show_kg, show_size, to_whole
from plans.sections.part_words import base_status
from plans.sections.precision import needs_fine_figures, show_keep
from plans.sections.strip_sums import make_sums
from plans.sections.why import say_why
from plans.sections.worked import WorkedSheet


@dataclass(frozen=True, slots=True, kw_only=True)
class PartView:
    """A part where it lies.

    Attributes:
        code: Its code, "A3".
        name: Its name.
        rect: Where it lies, as drawn.
        grain: "length" where the face grain runs left to right as drawn, "width" where up and
            down, "none" on a sheet without grain.
        finished: Finished size as text, its own length first.
        blank: Size as cut, as text; equal to finished where nothing is added.
        status: "final", "oversize" or "measure first".
    """

    code: str
    name: str
    rect: Rect
    grain: str
    finished: str
    blank: str
    status: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RestView:
    """An offcut (code "L1") or waste (code "WASTE") where it lies, with its size as text."""

    code: str
    rect: Rect
    size: str
    is_offcut: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class CutView:
    """A cut's number and the band that it removes, as drawn.

    Attributes:
        number: Its number.
        band: The wood that it removes.
        direction: Rip or crosscut.
        is_trim: True where a raw edge is taken off.
        supports: The battens under it; none for the yard's cuts.
    """

    number: str
    band: Rect
    direction: Direction
    is_trim: bool
    supports: tuple[Rect, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetView:
    """Everything on the page of one sheet.

    Attributes:
        number: Number of the sheet in the plan, from 1.
        stock: Name of the stock.
        material: Material and nominal thickness, "birch plywood 18".
        measured: Measured thickness as text, "" where it was not measured.
        length: Extent left to right.
        width: Extent top to bottom.
        size: Size as text, "2440 × 1220".
        mass: Mass in kilograms as text.
        grain: "length", "width" or "none", as drawn.
        grain_text: "GRAIN RUNS ALONG THE 2440", or "NO GRAIN".
        face_text: "Drawn as seen from the BACK: the good face lies down."
        home_text: "HOME CORNER: top left as you stand".
        home: "top left" or "bottom left".
        trims: The trims along each edge, as drawn; without those of no width.
        parts: In the order of their codes.
        rests: Offcuts and waste.
        cuts: In the order of doing.
        rows: The cut table, in the same order.
        sums: One per piece that is cut into a row.
        why: One sentence on why this order.
        settings: Number of settings of the guide.
        minutes: Estimated minutes of work.
        trim_text: What is not used along each edge as drawn, "left 10, right 10, top 10, bottom 5".
        defects: Its places that are not sound, as drawn.
    """

    number: int
    stock: str
    material: str
    measured: str
    length: int
    width: int
    size: str
    mass: str
    grain: str
    grain_text: str
    face_text: str
    home_text: str
    home: str
    trims: tuple[Rect, ...]
    parts: tuple[PartView, ...]
    rests: tuple[RestView, ...]
    cuts: tuple[CutView, ...]
    rows: tuple[CutRow, ...]
    sums: tuple[StripSum, ...]
    why: str
    settings: int
    minutes: int
    trim_text: str = ""
    defects: tuple[DefectView, ...] = ()


def make_sheet_view(job: Job, worked: WorkedSheet) -> SheetView:
    """Return everything on the page of one sheet."""
    sheet, face = worked.sheet, job.saw.marked_face
    whole = Rect(x=0, y=0, length=sheet.length, width=sheet.width)
    unit = job.unit
    is_fine = needs_fine_figures(job, worked)
    home = "top left" if face is Face.BACK else "bottom left"
    return SheetView(
        number=worked.number,
        stock=sheet.name,
        material=f"{sheet.material} {show(sheet.thickness, unit)}",
        measured=show(sheet.real_thickness, unit) if sheet.measured else "",
        length=sheet.length,
        width=sheet.width,
        size=" × ".join(
            show_keep(side, unit, is_fine=is_fine) for side in (sheet.length, sheet.width)
        ),
        mass=show_kg(piece_mass_kg(sheet, whole)),
        grain=sheet.grain.value,
        grain_text=grain_words(job, sheet),
        face_text=_face_words(face),
        home_text=f"HOME CORNER: {home} as you stand",
        home=home,
        trims=tuple(draw(trim, sheet, face) for trim in _trims(sheet)),
        parts=tuple(sorted(_parts(job, worked), key=lambda part: code_order(part.code))),
        rests=tuple(_rests(job, worked)),
        cuts=tuple(
            CutView(
                number=str(step.number),
                band=draw(step.band, sheet, face),
                direction=step.direction,
                is_trim=step.is_trim,
                supports=tuple(draw(batten, sheet, face) for batten in _battens(worked, step)),
            )
            for step in worked.sequence.steps
        ),
        rows=make_rows(job, worked),
        sums=make_sums(job, worked),
        why=say_why(job, worked),
        settings=worked.sequence.settings,
        minutes=to_whole(minutes(job, worked.sequence)),
        trim_text=_trim_words(sheet, job, is_fine=is_fine),
        defects=tuple(
            replace(defect, rect=draw(defect.rect, sheet, face))
            for defect in make_defect_views(job, worked)
        ),
    )


def _battens(worked: WorkedSheet, step: Step) -> tuple[Rect, ...]:
    if step.by is By.YARD:
        return ()
    return draw_supports(supports_of(worked, step), step.direction, step.piece)


def draw(rect: Rect, sheet: Sheet, face: Face) -> Rect:
    """Return a rectangle of the sheet as it is drawn, y downwards.

    Turned over about its length, the sheet has its home corner at the top left, and y runs down
    as drawn. With the good face up the corner is at the bottom left and y runs up.
    """
    if face is Face.BACK:
        return rect
    return replace(rect, y=sheet.width - rect.y - rect.width)


def grain_words(job: Job, sheet: Sheet) -> str:
    """Return which way the face grain runs, in words that need no order of numbers."""
    if sheet.grain is SheetGrain.NONE:
        return "NO GRAIN"
    along = sheet.length if sheet.grain is SheetGrain.LENGTH else sheet.width
    if sheet.length == sheet.width:
        way = "LEFT TO RIGHT" if sheet.grain is SheetGrain.LENGTH else "UP AND DOWN"
        return f"GRAIN RUNS {way} AS DRAWN: both sides are {show(along, job.unit)}"
    return f"GRAIN RUNS ALONG THE {show(along, job.unit)}"


def _face_words(face: Face) -> str:
    if face is Face.BACK:
        return "Drawn as seen from the BACK: the good face lies down."
    return "Drawn as seen from the FRONT: the good face lies up."


def _trims(sheet: Sheet) -> Iterator[Rect]:
    trim, length, width = sheet.trim, sheet.length, sheet.width
    for rect in (
        Rect(x=0, y=0, length=trim.left, width=width),
        Rect(x=length - trim.right, y=0, length=trim.right, width=width),
        Rect(x=0, y=0, length=length, width=trim.bottom),
        Rect(x=0, y=width - trim.top, length=length, width=trim.top),
    ):
        if rect.length and rect.width:
            yield rect


def _trim_words(sheet: Sheet, job: Job, *, is_fine: bool) -> str:
    """Return the trims in words; the drawing seen from the back has the low edge at its top."""
    trim = sheet.trim
    is_back = job.saw.marked_face is Face.BACK
    top, bottom = (trim.bottom, trim.top) if is_back else (trim.top, trim.bottom)
    sides = (("left", trim.left), ("right", trim.right), ("top", top), ("bottom", bottom))
    return ", ".join(
        f"{name} {show_keep(width, job.unit, is_fine=is_fine)}" for name, width in sides
    )


def _parts(job: Job, worked: WorkedSheet) -> Iterator[PartView]:
    for path, place in worked.places.items():
        if isinstance(place.node, PartLeaf):
            part: Part = job.parts[place.node.part]
            yield PartView(
                code=worked.codes[path],
                name=part.name,
                rect=draw(place.rect, worked.sheet, job.saw.marked_face),
                grain=worked.sheet.grain.value,
                finished=show_size(part.length, part.width, job.unit),
                blank=show_size(part.blank_length, part.blank_width, job.unit),
                status=base_status(part),
            )


def _rests(job: Job, worked: WorkedSheet) -> Iterator[RestView]:
    for path, place in worked.places.items():
        if isinstance(place.node, RestLeaf):
            yield RestView(
                code=worked.codes[path],
                rect=draw(place.rect, worked.sheet, job.saw.marked_face),
                size=show_size(place.rect.length, place.rect.width, job.unit),
                is_offcut=worked.codes[path] != WASTE,
            )
