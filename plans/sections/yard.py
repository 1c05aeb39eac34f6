"""The yard's page: only the yard's cuts of one kind of sheet, to be handed over the counter.

It is in the yard's own unit and shows no part. Sizes that are measured are whole numbers of the
yard's step, as they were planned; what is left over is rounded to it, as nobody measures it.
"""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import count

from nesting.cut_sequence import is_over_limit, piece_mass_kg
from nesting.job import Job
from nesting.layout import By, Cut, Direction, Place, Rect, split
from nesting.lengths import Length, Unit, format_length, inch, mm, round_to
from nesting.saw import Face
from nesting.sheets import Sheet, SheetGrain
from nesting.yard import Yard
from plans.sections.cut_table import edge_measured_from
from plans.sections.numbers import count_of, show_kg, show_money
from plans.sections.sheet_view import draw
from plans.sections.worked import Worked, WorkedSheet

YARD_STEP = {Unit.MM: mm(1), Unit.INCH: inch("1/8")}
"""What sizes on the yard's page are whole numbers of."""


@dataclass(frozen=True, slots=True, kw_only=True)
class YardPiece:
    """A piece that the yard hands over.

    Attributes:
        codes: What the plan calls it from now on, one code for every sheet cut so: "P1"; "L1" or
            "WASTE" where nothing is cut from it. For our own copy of the page.
        rect: Where it lies, as drawn.
        size: Its size in the yard's unit, left-right first, "1016 × 1220".
    """

    codes: tuple[str, ...]
    rect: Rect
    size: str


@dataclass(frozen=True, slots=True, kw_only=True)
class YardCut:
    """One cut of the yard.

    Attributes:
        number: From 1, in the order of doing.
        direction: Rip or crosscut, as drawn.
        line: The wood that the cut removes, as drawn.
        kept: The piece that is measured, as drawn. The blade goes on the other side of the line.
        size: Its size across the cut in the yard's unit, "1016".
        text: "CUT 1: 1016 from the left edge", and of which piece, where it is not the sheet.
    """

    number: str
    direction: Direction
    line: Rect
    kept: Rect
    size: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class YardPattern:
    """One way in which some sheets are cut.

    Attributes:
        count: How many sheets are cut so.
        heading: "2 sheets, cut like this".
        sheets: Numbers of these sheets in the plan.
        cuts: In the order of doing.
        pieces: What comes of a sheet.
    """

    count: int
    heading: str
    sheets: tuple[int, ...]
    cuts: tuple[YardCut, ...]
    pieces: tuple[YardPiece, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class YardPage:
    """Everything on the yard's page of one kind of sheet.

    Attributes:
        unit: The one unit of this page.
        heading: "birch plywood 18 mm, 2440 × 1220 mm".
        length: Extent left to right, as drawn.
        width: Extent top to bottom.
        size: Size of the sheet as text, "2440 × 1220".
        unit_text: "All sizes in millimetres".
        grain: "length", "width" or "none", as drawn.
        grain_text: "GRAIN RUNS ALONG THE 2440", or "NO GRAIN".
        mass_text: "36.7 kg a sheet: TWO PEOPLE".
        patterns: The ways in which the sheets are cut, one drawing each.
        rough_text: How exact the cuts need be.
        line_text: On which side of the line the blade goes.
        order_text: In which order to cut.
        total_text: How many cuts in all.
        price_lines: Pairs of words and amount for the price box; the last is the total, the
            amounts are empty where the price of a cut is not known.
    """

    unit: Unit
    heading: str
    length: Length
    width: Length
    size: str
    unit_text: str
    grain: str
    grain_text: str
    mass_text: str
    patterns: tuple[YardPattern, ...]
    rough_text: str
    line_text: str
    order_text: str
    total_text: str
    price_lines: tuple[tuple[str, str], ...]


LINE_TEXT = (
    "Cut on the far side of each line: the size given is what is left of the piece measured, and "
    "the blade goes beyond it."
)
ORDER_TEXT = "Cut in the order of the numbers. Each size is measured from an edge of that piece."


def make_yard_pages(worked: Worked) -> tuple[YardPage, ...]:
    """Return a page for every kind of sheet that the yard cuts, in the order of the job."""
    yard = worked.job.yard
    if yard is None:
        return ()
    kinds: dict[int, list[WorkedSheet]] = defaultdict(list)
    for sheet in worked.sheets:
        if any(step.by is By.YARD for step in sheet.sequence.steps):
            kinds[sheet.sequence.sheet].append(sheet)
    return tuple(_make_page(worked.job, yard, kinds[kind]) for kind in sorted(kinds))


def list_yard_pieces(sheet: WorkedSheet) -> tuple[Place, ...]:
    """Return what is left of a sheet when the yard has made its cuts, in the order of the tree."""
    return tuple(
        place
        for path, place in sheet.places.items()
        if not _is_yard_cut(place)
        and all(_is_yard_cut(sheet.places[path[:depth]]) for depth in range(len(path)))
    )


def count_yard_cuts(worked: Worked) -> int:
    """Return how many cuts the yard makes in all."""
    return sum(step.by is By.YARD for sheet in worked.sheets for step in sheet.sequence.steps)


def show_at_yard(length: Length, unit: Unit) -> str:
    """Return a size as the yard reads it: whole millimetres or eighths of an inch.

    >>> show_at_yard(mm("1420.8"), Unit.MM), show_at_yard(mm(1219), Unit.INCH)
    ('1421', '48')
    """
    return format_length(round_to(length, YARD_STEP[unit]), unit)


def _is_yard_cut(place: Place) -> bool:
    return isinstance(place.node, Cut) and place.node.by is By.YARD


def _make_page(job: Job, yard: Yard, sheets: list[WorkedSheet]) -> YardPage:
    sheet, unit = sheets[0].sheet, yard.unit
    patterns = tuple(_patterns(job, yard, sheets))
    cuts = sum(len(pattern.cuts) * pattern.count for pattern in patterns)
    size = _size(sheet.length, sheet.width, unit)
    return YardPage(
        unit=unit,
        heading=f"{sheet.material} {_thickness(sheet, unit)}, {size} {unit.value}",
        length=sheet.length,
        width=sheet.width,
        size=size,
        unit_text="All sizes in millimetres" if unit is Unit.MM else "All sizes in inches",
        grain=sheet.grain.value,
        grain_text=_grain_words(sheet, unit),
        mass_text=_mass_words(job, sheet),
        patterns=patterns,
        rough_text=f"ROUGH CUTS: {format_length(yard.rough, unit)} {unit.value} off either way is "
        "fine. Every edge is cut again at home.",
        line_text=LINE_TEXT,
        order_text=ORDER_TEXT,
        total_text=f"{count_of(cuts, 'cut')} in all in {count_of(len(sheets), 'sheet')}",
        price_lines=tuple(_price_lines(yard, cuts)),
    )


def _patterns(job: Job, yard: Yard, sheets: list[WorkedSheet]) -> Iterator[YardPattern]:
    """Yield the ways in which sheets are cut, those of most sheets first."""
    alike: dict[tuple[Rect, ...], list[WorkedSheet]] = defaultdict(list)
    for sheet in sheets:
        alike[tuple(piece.rect for piece in list_yard_pieces(sheet))].append(sheet)
    for rects, members in sorted(
        alike.items(), key=lambda item: (-len(item[1]), item[1][0].number)
    ):
        stock, face = members[0].sheet, job.saw.marked_face
        codes = [
            tuple(member.codes[place.path] for member in members)
            for place in list_yard_pieces(members[0])
        ]
        yield YardPattern(
            count=len(members),
            heading=f"{count_of(len(members), 'sheet')}, cut like this",
            sheets=tuple(member.number for member in members),
            cuts=tuple(_cuts(job, yard, members[0])),
            pieces=tuple(
                YardPiece(
                    codes=code,
                    rect=draw(rect, stock, face),
                    size=_size(rect.length, rect.width, yard.unit),
                )
                for code, rect in zip(codes, rects, strict=True)
            ),
        )


def _cuts(job: Job, yard: Yard, sheet: WorkedSheet) -> Iterator[YardCut]:
    face: Face = job.saw.marked_face
    numbers = count(1)
    for step in sheet.sequence.steps:
        if step.by is not By.YARD:
            continue
        number = str(next(numbers))
        cut = sheet.places[step.path].node
        assert isinstance(cut, Cut)
        size = show_at_yard(step.keep, yard.unit)
        edge = edge_measured_from(step.direction, face)
        held = _size(step.piece.length, step.piece.width, yard.unit)
        of_piece = f" of the piece of {held}" if step.path else ""
        yield YardCut(
            number=number,
            direction=step.direction,
            line=draw(step.band, sheet.sheet, face),
            kept=draw(split(cut, step.piece)[0], sheet.sheet, face),
            size=size,
            text=f"CUT {number}: {size} from the {edge}{of_piece}",
        )


def _price_lines(yard: Yard, cuts: int) -> Iterator[tuple[str, str]]:
    if yard.price_per_cut:
        yield f"{count_of(cuts, 'cut')} at {show_money(yard.price_per_cut)}", ""
        yield "in all", show_money(yard.price_per_cut * cuts)
    else:
        yield count_of(cuts, "cut"), ""
        yield "in all", ""


def _size(length: Length, width: Length, unit: Unit) -> str:
    return f"{show_at_yard(length, unit)} × {show_at_yard(width, unit)}"


def _thickness(sheet: Sheet, unit: Unit) -> str:
    """Return the thickness that the sheet is sold under, in the unit of the page."""
    return f"{format_length(sheet.thickness, unit)} {unit.value}"


def _grain_words(sheet: Sheet, unit: Unit) -> str:
    if sheet.grain is SheetGrain.NONE:
        return "NO GRAIN"
    along = sheet.length if sheet.grain is SheetGrain.LENGTH else sheet.width
    if sheet.length == sheet.width:
        way = "LEFT TO RIGHT" if sheet.grain is SheetGrain.LENGTH else "UP AND DOWN"
        return f"GRAIN RUNS {way} AS DRAWN"
    return f"GRAIN RUNS ALONG THE {show_at_yard(along, unit)}"


def _mass_words(job: Job, sheet: Sheet) -> str:
    whole = Rect(x=0, y=0, length=sheet.length, width=sheet.width)
    people = ": TWO PEOPLE" if is_over_limit(job, sheet, whole) else ""
    return f"{show_kg(piece_mass_kg(sheet, whole))} kg a sheet{people}"
