"""What is in the garage at this moment: whole sheets, pieces to go on with, finished parts."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.earlier import FinishedPart, Leftover
from nesting.garage.edges import find_skew, raw_edges, widen_for_skew
from nesting.garage.marks import Marks, is_there
from nesting.garage.planned import Piece, Planned, PlannedSheet
from nesting.garage.sheet_readings import Size
from nesting.layout import Rect
from nesting.lengths import Length
from nesting.sheets import Defect, SheetGrain, Trim
from nesting.zones import cut_out


@dataclass(frozen=True, slots=True, kw_only=True)
class InHand:
    """A piece that parts can still be cut from.

    Attributes:
        name: What the plan going on calls it, such as "P5 of sheet 1".
        code: Its code in the plan so far.
        sheet: Number of the sheet that it came from, 0 for one of an earlier plan.
        origin: Index into that sheet's pieces where it lies as planned, None where it was spoilt
            or found to be of another size.
        material: What it is made of.
        thickness: Nominal thickness.
        measured: Readings of the thickness, the planned mean where there are none; may be empty.
        length: Extent along the sheet's length.
        width: Extent along the sheet's width.
        grain: The side that the face grain runs along.
        trim: What is not used along the edges that are still raw.
        defects: Its places that are not sound, from its own low corner.
    """

    name: str
    code: str
    sheet: int
    origin: int | None
    material: str
    thickness: Length
    measured: tuple[Length, ...]
    length: Length
    width: Length
    grain: SheetGrain
    trim: Trim
    defects: tuple[Defect, ...] = ()

    @property
    def is_cut(self) -> bool:
        """Whether it is a piece and no longer a whole sheet."""
        return not self.sheet or self.code != f"S{self.sheet}"


def list_in_hand(planned: Planned, marks: Marks) -> tuple[InHand, ...]:
    """Return every piece that is there and no part, in the order of the plan.

    Waste is not among them: it has been thrown away.
    """
    return tuple(_in_hand(planned, marks))


def _in_hand(planned: Planned, marks: Marks) -> Iterator[InHand]:
    for leftover in planned.kept:
        yield from _kept(leftover, marks.spoilt.get(leftover.code))
    for sheet, piece in planned.pieces():
        if piece.code in marks.spoilt:
            for number, left in enumerate(marks.spoilt[piece.code], start=1):
                yield _left_of(sheet, piece, marks, left, number)
        elif is_there(sheet, piece, marks) and _is_to_go_on_with(piece, marks):
            yield _as_it_lies(sheet, piece, marks)


def _kept(leftover: Leftover, left: tuple[Size, ...] | None) -> Iterator[InHand]:
    """Yield a piece of an earlier plan, or what is left of it where it was spoilt since."""
    sizes = ((leftover.length, leftover.width),) if left is None else left
    for number, (length, width) in enumerate(sizes, start=1):
        several = f"-{number}" if len(sizes) > 1 else ""
        yield InHand(
            name=f"{leftover.code}{several} of an earlier plan",
            code=f"{leftover.code}{several}",
            sheet=0,
            origin=None,
            material=leftover.material,
            thickness=leftover.thickness,
            measured=leftover.measured,
            length=length,
            width=width,
            grain=leftover.grain,
            trim=leftover.trim,
            defects=leftover.defects if left is None else (),
        )


def list_missing(planned: Planned, marks: Marks) -> tuple[InHand, ...]:
    """Return the sheets that are not there, as they would lie if they were bought again."""
    return tuple(
        _as_it_lies(sheet, sheet.pieces[0], marks)
        for sheet in planned.sheets
        if sheet.number in marks.missing
    )


def to_leftover(piece: InHand, fingerprint: str) -> Leftover:
    """Return a piece that the plan going on does not need, under a code that stays its own.

    Args:
        piece: The piece.
        fingerprint: Of the plan that it comes from, for a code that nothing else has.
    """
    return Leftover(
        code=piece.code if piece.sheet == 0 else f"{piece.code}-{fingerprint}",
        material=piece.material,
        thickness=piece.thickness,
        measured=piece.measured,
        length=piece.length,
        width=piece.width,
        grain=piece.grain,
        trim=piece.trim,
        defects=piece.defects,
    )


def _is_to_go_on_with(piece: Piece, marks: Marks) -> bool:
    if piece.cut_by or piece.is_offcut or piece.made_by == 0:
        return True
    return piece.part is not None and not piece_reaches(piece, marks.readings.get(piece.code))


def piece_reaches(piece: Piece, reading: Size | None) -> bool:
    """Return whether a part as cut is large enough for the size read, if one was."""
    if reading is None or piece.part is None:
        return True
    blank = (piece.rect.length, piece.rect.width)
    along, across = blank[::-1] if piece.part.turned else blank
    return reading[0] <= along and reading[1] <= across


def _as_it_lies(sheet: PlannedSheet, piece: Piece, marks: Marks) -> InHand:
    read = marks.sheets.get(sheet.number)
    rect, trim = piece.rect, raw_edges(sheet, piece.rect)
    is_as_planned = True
    if piece.made_by == 0 and read is not None:
        length, width = read.size or (rect.length, rect.width)
        is_as_planned = (length, width) == (rect.length, rect.width)
        rect = Rect(x=0, y=0, length=length, width=width)
        needed = widen_for_skew(trim, find_skew(rect, read.diagonals))
        is_as_planned = is_as_planned and needed == trim
        trim = needed
    is_whole = piece.made_by == 0
    return InHand(
        name=f"sheet {sheet.number}, {sheet.stock}" if is_whole else _name(sheet, piece.code),
        code=piece.code,
        sheet=sheet.number,
        origin=sheet.pieces.index(piece) if is_as_planned else None,
        material=sheet.material,
        thickness=sheet.thickness,
        measured=find_thickness(sheet, marks),
        length=rect.length,
        width=rect.width,
        grain=sheet.grain,
        trim=trim,
        defects=cut_out(find_defects(sheet, marks), rect),
    )


def _left_of(sheet: PlannedSheet, piece: Piece, marks: Marks, left: Size, number: int) -> InHand:
    along_x, along_y = left
    if piece.part is not None and piece.part.turned:
        along_x, along_y = along_y, along_x
    several = f"-{number}" if len(marks.spoilt[piece.code]) > 1 else ""
    return InHand(
        name=f"what is left of {_name(sheet, piece.code)}{several}",
        code=f"{piece.code}{several}",
        sheet=sheet.number,
        origin=None,
        material=sheet.material,
        thickness=sheet.thickness,
        measured=find_thickness(sheet, marks),
        length=along_x,
        width=along_y,
        grain=sheet.grain,
        trim=raw_edges(sheet, piece.rect),
    )


def _name(sheet: PlannedSheet, code: str) -> str:
    return f"{code} of sheet {sheet.number}"


def find_thickness(sheet: PlannedSheet, marks: Marks) -> tuple[Length, ...]:
    """Return the readings of a sheet's thickness, or the mean it was planned with."""
    read = marks.sheets.get(sheet.number)
    if read is not None and read.thickness:
        return read.thickness
    return () if sheet.measured is None else (sheet.measured,)


def find_defects(sheet: PlannedSheet, marks: Marks) -> tuple[Defect, ...]:
    """Return the defects that a sheet was planned with, and those found since."""
    read = marks.sheets.get(sheet.number)
    return sheet.defects if read is None else (*sheet.defects, *read.defects)


def list_finished(planned: Planned, marks: Marks) -> tuple[FinishedPart, ...]:
    """Return every part that is cut, under this plan and those before it, and not spoilt."""
    now = (
        _finished(piece, marks)
        for sheet, piece in planned.pieces()
        if piece.part is not None
        and is_there(sheet, piece, marks)
        and piece.made_by
        and piece_reaches(piece, marks.readings.get(piece.code))
    )
    before = (part for part in planned.finished if part.code not in marks.spoilt)
    return (*before, *now)


def _finished(piece: Piece, marks: Marks) -> FinishedPart:
    assert piece.part is not None
    length, width = marks.readings.get(piece.code, piece.part.finished)
    return FinishedPart(code=piece.code, name=piece.part.name, length=length, width=width)
