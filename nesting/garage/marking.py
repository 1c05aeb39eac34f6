"""Adding marks: each is checked against the plan and against the marks before it.

So what comes out is always a garage that can exist.
"""

from collections.abc import Iterable
from dataclasses import replace
from typing import Final

from nesting.garage.events import (
    CutMade,
    FirstOff,
    Mark,
    PartRead,
    PieceSpoilt,
    SheetMissing,
    SheetRead,
)
from nesting.garage.marks import FIRST_OFF, Marks, find_deviation, is_there, printed_sides
from nesting.garage.planned import Piece, Planned, PlannedSheet
from nesting.garage.refusal import refuse
from nesting.garage.sheet_readings import check_sheet_reading
from nesting.lengths import mm

FARTHEST_FIRST_OFF: Final = mm(50)
"""Farther off, it is another part, or a slip of the pen."""


def add_mark(planned: Planned, marks: Marks, mark: Mark) -> Marks:
    """Return the marks with one more.

    Raises:
        InputError: The plan has no such cut, piece or sheet, or the mark cannot be true after
            those before it.
    """
    match mark:
        case CutMade():
            return _add_cut(planned, marks, mark)
        case PartRead():
            return _add_reading(planned, marks, mark)
        case FirstOff():
            return _add_first_off(planned, marks, mark)
        case PieceSpoilt():
            return _add_spoilt(planned, marks, mark)
        case SheetMissing():
            sheet = find_sheet(planned, mark.sheet)
            if _is_begun(marks, sheet):
                raise refuse(
                    f"sheet {sheet.number}",
                    "it cannot be missing, because cuts of it are marked",
                    "Take those marks back with --undo, or name another sheet.",
                )
            return replace(marks, missing=marks.missing | {sheet.number})
        case SheetRead():
            return _add_sheet_reading(planned, marks, mark)


def add_marks(planned: Planned, marks: Marks, more: Iterable[Mark]) -> Marks:
    """Return the marks with several more, one after the other."""
    for mark in more:
        marks = add_mark(planned, marks, mark)
    return marks


def find_sheet(planned: Planned, number: int) -> PlannedSheet:
    """Return a sheet by its number.

    Raises:
        InputError: There is none.
    """
    if 1 <= number <= len(planned.sheets):
        return planned.sheets[number - 1]
    raise refuse(
        f"sheet {number}",
        f"plan {planned.fingerprint} has {len(planned.sheets)}",
        "Look at the page for the number of the sheet.",
    )


def _is_begun(marks: Marks, sheet: PlannedSheet) -> bool:
    return any(number == sheet.number for number, _ in marks.cuts)


def _add_cut(planned: Planned, marks: Marks, mark: CutMade) -> Marks:
    sheet, where = find_sheet(planned, mark.sheet), f"cut {mark.sheet}.{mark.cut}"
    if not 1 <= mark.cut <= len(sheet.cuts):
        raise refuse(
            where,
            f"sheet {sheet.number} of plan {planned.fingerprint} has {len(sheet.cuts)} cuts",
            "Look at the page for the number of the cut.",
        )
    name = (mark.sheet, mark.cut)
    if name in marks.cuts:
        return marks
    piece = sheet.piece_cut_by(mark.cut)
    if piece.made_by and (sheet.number, piece.made_by) not in marks.cuts:
        raise refuse(
            where,
            f"it goes across {piece.code}, which comes free with cut "
            f"{sheet.number}.{piece.made_by}, and that is not marked",
            f"Mark {sheet.number}.{piece.made_by} first, or give a range such as "
            f"{sheet.number}.{piece.made_by}-{sheet.number}.{mark.cut}.",
        )
    if piece.code in marks.spoilt or sheet.number in marks.missing:
        state = "spoilt" if piece.code in marks.spoilt else "missing"
        raise refuse(
            where,
            f"it goes across {piece.code}, which is marked as {state}",
            "Take that mark back with --undo, or plan the rest with 'setout resume'.",
        )
    return replace(marks, cuts={**marks.cuts, name: None})


def _add_reading(planned: Planned, marks: Marks, mark: PartRead) -> Marks:
    _, piece = _find_piece(planned, mark.code)
    if piece.part is None:
        raise refuse(mark.code, "it is not a part", "Give the code of a part, as its label has it.")
    return replace(marks, readings={**marks.readings, mark.code: mark.size})


def _add_first_off(planned: Planned, marks: Marks, mark: FirstOff) -> Marks:
    sheet, piece = _find_piece(planned, mark.code)
    if piece.part is None:
        raise refuse(mark.code, "it is not a part", "Give the code of a part, as its label has it.")
    if not is_there(sheet, piece, marks):
        raise refuse(mark.code, *_why_not_there(sheet, piece, marks))
    longer, wider = find_deviation(piece, mark.size)
    if max(abs(longer), abs(wider)) > FARTHEST_FIRST_OFF:
        raise refuse(
            mark.code,
            "that is far off its size",
            "Measure again, its length first, as on its label.",
        )
    marks = replace(marks, first_offs={**marks.first_offs, mark.code: mark.size})
    if min(longer, wider) >= -FIRST_OFF:
        return marks
    return replace(marks, spoilt={**marks.spoilt, mark.code: (mark.size,)})


def _add_spoilt(planned: Planned, marks: Marks, mark: PieceSpoilt) -> Marks:
    if mark.code in marks.spoilt:
        raise refuse(
            mark.code,
            "it is marked as spoilt already",
            "Take that mark back with --undo to say it otherwise.",
        )
    if any(part.code == mark.code for part in planned.finished):
        return _add_spoilt_earlier(marks, mark)
    if any(piece.code == mark.code for piece in planned.kept):
        return replace(marks, spoilt={**marks.spoilt, mark.code: mark.left})
    sheet, piece = _find_piece(planned, mark.code)
    if not is_there(sheet, piece, marks):
        raise refuse(mark.code, *_why_not_there(sheet, piece, marks))
    along, across = printed_sides(piece)
    for length, width in mark.left:
        if length > along or width > across or (length, width) == (along, across):
            raise refuse(
                mark.code,
                "what is left is not smaller than it was",
                "Give the size of a clean rectangle, in the order of the size on the page.",
            )
    return replace(marks, spoilt={**marks.spoilt, mark.code: mark.left})


def _add_spoilt_earlier(marks: Marks, mark: PieceSpoilt) -> Marks:
    if mark.left:
        raise refuse(
            mark.code,
            "it was cut under an earlier plan, so what is left of it is not known here",
            "Leave --left out, and write the piece into the job file as an owned sheet.",
        )
    return replace(marks, spoilt={**marks.spoilt, mark.code: ()})


def _why_not_there(sheet: PlannedSheet, piece: Piece, marks: Marks) -> tuple[str, str]:
    number = sheet.number
    if number in marks.missing:
        return f"sheet {number} is marked as missing", "Take that mark back with --undo."
    if piece.made_by and (number, piece.made_by) not in marks.cuts:
        return (
            f"it comes free with cut {number}.{piece.made_by}, and that is not marked",
            f"Mark {number}.{piece.made_by} first, or name the piece that lies there now.",
        )
    return (
        f"cut {number}.{piece.cut_by} has gone across it",
        "Name one of the pieces that came of it.",
    )


def _add_sheet_reading(planned: Planned, marks: Marks, mark: SheetRead) -> Marks:
    sheet = find_sheet(planned, mark.sheet)
    where = f"sheet {sheet.number}"
    if mark.defects and _is_begun(marks, sheet):
        raise refuse(
            where,
            "its home corner is gone, because cuts of it are marked",
            "Mark the piece that has the defect as spoilt, and say what is left of it.",
        )
    if (mark.size or mark.diagonals) and _is_begun(marks, sheet):
        raise refuse(
            where,
            "its size no longer counts, because cuts of it are marked",
            "Give its thickness only; if a piece is smaller than planned, mark it as spoilt and "
            "say what is left.",
        )
    before = marks.sheets.get(mark.sheet, SheetRead(sheet=mark.sheet))
    merged = SheetRead(
        sheet=mark.sheet,
        size=mark.size or before.size,
        diagonals=mark.diagonals or before.diagonals,
        thickness=mark.thickness or before.thickness,
        defects=(*before.defects, *mark.defects),
    )
    check_sheet_reading(
        sheet,
        size=merged.size,
        diagonals=merged.diagonals,
        thickness=merged.thickness,
        defects=merged.defects,
    )
    return replace(marks, sheets={**marks.sheets, mark.sheet: merged})


def _find_piece(planned: Planned, code: str) -> tuple[PlannedSheet, Piece]:
    for sheet, piece in planned.pieces():
        if piece.code == code and code != "WASTE":
            return sheet, piece
    if any(part.code == code for part in planned.finished):
        raise refuse(
            code,
            "it was finished under an earlier plan",
            "Add a part of its size to the job file to have it cut again.",
        )
    raise refuse(
        code,
        f"plan {planned.fingerprint} has no such piece",
        "Give a code of its pages: a part such as A3, a piece such as P5, an offcut such as L1.",
    )
