"""A plan file read back into the tree of every sheet, so that work can go on from it."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from decimal import Decimal
from pathlib import Path
from typing import Any, Final

from nesting.earlier import FinishedPart, Leftover
from nesting.errors import Fault, InputError
from nesting.garage.planned import Piece, Planned, PlannedCut, PlannedPart, PlannedSheet
from nesting.layout import By, Direction, Rect
from nesting.lengths import NM_PER_MM, Length, Unit
from nesting.parts import Grain
from nesting.sheets import Defect, SheetGrain, Trim, Use
from plans.rehearsal import read_plan, rehearse

Json = Mapping[str, Any]

WASTE: Final = "WASTE"


def read_planned(path: Path) -> Planned:
    """Return the plan of a plan file.

    The plan is rehearsed first: only one that can be sawn as printed is gone on from.

    Raises:
        InputError: There is no such file, it is no plan, or it was changed since it was made.
    """
    document = read_plan(path)
    faults = rehearse(document).faults
    if faults:
        raise InputError(
            [
                Fault(
                    where=str(path),
                    what=f"it no longer holds together ({faults[0].where}: {faults[0].what})",
                    remedy="Restore the file as 'setout plan' wrote it.",
                )
            ]
        )
    return planned_of(document)


def planned_of(document: Json) -> Planned:
    """Return the plan of a document that passes its rehearsal."""
    earlier = document.get("earlier") or {}
    first = document.get("whole_first") or {}
    pauses = {pause["sheet"]: pause["cut"] for pause in first.get("after", ())}
    trims = _yard_trims(document)
    return Planned(
        fingerprint=document["fingerprint"],
        unit=Unit(document["unit"]),
        sheets=tuple(
            replace(_sheet(sheet, trims), pause=pauses.get(sheet["number"], 0))
            for sheet in document["sheets"]
        ),
        kerf=_length(document["saw"]["kerf"]),
        finished=tuple(
            FinishedPart(
                code=part["code"],
                name=part["name"],
                length=_length(part["finished"][0]),
                width=_length(part["finished"][1]),
            )
            for part in earlier.get("finished", ())
        ),
        kept=tuple(map(_leftover, earlier.get("kept", ()))),
        used=tuple((line["stock"], line["count"]) for line in earlier.get("used", ())),
        figures=(earlier.get("pieces", 0), earlier.get("offcuts", 0)),
        unsound=tuple(document.get("unsound", ())),
        first_whole=first.get("cabinet", ""),
    )


def _leftover(piece: Json) -> Leftover:
    return Leftover(
        code=piece["code"],
        material=piece["material"],
        thickness=_length(piece["thickness"]),
        measured=tuple(map(_length, piece["measured"])),
        length=_length(piece["length"]),
        width=_length(piece["width"]),
        grain=SheetGrain(piece["grain"]),
        trim=_trim(piece["trim"]),
        defects=_defects(piece),
    )


def _defects(thing: Json) -> tuple[Defect, ...]:
    return tuple(
        Defect(
            what=defect["what"],
            x=_length(defect["x"]),
            y=_length(defect["y"]),
            length=_length(defect["length"]),
            width=_length(defect["width"]),
            use=Use(defect["use"]),
        )
        for defect in thing.get("defects", ())
    )


def _trim(trim: Json) -> Trim:
    return Trim(**{side: _length(size) for side, size in trim.items()})


def _length(number: float) -> Length:
    return int(Decimal(str(number)) * NM_PER_MM)


def _rect(thing: Json) -> Rect:
    return Rect(
        x=_length(thing["x"]),
        y=_length(thing["y"]),
        length=_length(thing["length"]),
        width=_length(thing["width"]),
    )


def _yard_trims(document: Json) -> tuple[Length, Length]:
    """Return what is not used along a yard's edge at the low and at the high end of a piece.

    The blade takes off what the cut may be off, one kerf at least; at the high end the piece may
    be short by as much besides.
    """
    if "yard" not in document:
        return 0, 0
    rough, kerf = _length(document["yard"]["rough"]), _length(document["saw"]["kerf"])
    return max(rough, kerf), max(rough, kerf) + rough


def _sheet(sheet: Json, yard_trims: tuple[Length, Length]) -> PlannedSheet:
    measured = sheet.get("measured")
    length, width = _length(sheet["length"]), _length(sheet["width"])
    pieces, cuts = _saw_up(sheet, Rect(x=0, y=0, length=length, width=width))
    return PlannedSheet(
        number=sheet["number"],
        stock=sheet["stock"],
        material=sheet["material"],
        thickness=_length(sheet["thickness"]),
        measured=None if measured is None else _length(measured),
        length=length,
        width=width,
        grain=SheetGrain(sheet["grain"]),
        trim=_trim(sheet["trim"]),
        cuts=cuts,
        pieces=pieces,
        yard_trims=yard_trims,
        defects=_defects(sheet),
    )


def _saw_up(sheet: Json, whole: Rect) -> tuple[tuple[Piece, ...], tuple[PlannedCut, ...]]:
    """Return the pieces and the cuts of a sheet by making every cut in its order."""
    parts = {part["code"]: part for part in sheet["parts"]}
    offcuts = {offcut["code"] for offcut in sheet["offcuts"]}
    rows = sheet["printed"]["rows"]
    # Piece by piece: code, rectangle, cut that makes it; then the cut across it and its children.
    root = rows[0]["hold"] if rows else next(iter(parts), f"S{sheet['number']}")
    made: list[tuple[str, Rect, int]] = [(root, whole, 0)]
    across: dict[int, tuple[int, int | None, int | None]] = {}
    index_of = {root: 0}
    cuts = []
    for row, cut in zip(rows, sheet["cuts"], strict=True):
        index = index_of[row["hold"]]
        planned, first, second = _split(made[index][1], row, cut)
        cuts.append(planned)
        low, high = row["keep_code"], row["free_code"]
        if planned.is_trim:
            low, high = high, low
        children: list[int | None] = [None, None]
        for side, (code, rect) in enumerate(((low, first), (high, second))):
            if rect is not None:
                children[side] = len(made)
                index_of[code or WASTE] = len(made)
                made.append((code or WASTE, rect, planned.number))
        across[index] = (planned.number, children[0], children[1])
    return tuple(
        Piece(
            code=code,
            rect=rect,
            made_by=made_by,
            cut_by=across.get(index, (0, None, None))[0],
            low=across.get(index, (0, None, None))[1],
            high=across.get(index, (0, None, None))[2],
            part=_part(parts[code]) if code in parts else None,
            is_offcut=code in offcuts,
        )
        for index, (code, rect, made_by) in enumerate(made)
    ), tuple(cuts)


def _split(piece: Rect, row: Json, cut: Json) -> tuple[PlannedCut, Rect | None, Rect | None]:
    """Return a cut and the pieces it makes, None where there is none."""
    band, direction = _rect(cut["band"]), Direction(cut["direction"])
    if direction is Direction.CROSSCUT:
        at, removed = band.x - piece.x, band.length
        beyond = piece.length - at - removed
        first = Rect(x=piece.x, y=piece.y, length=at, width=piece.width)
        second = Rect(x=band.x + removed, y=piece.y, length=beyond, width=piece.width)
    else:
        at, removed = band.y - piece.y, band.width
        beyond = piece.width - at - removed
        first = Rect(x=piece.x, y=piece.y, length=piece.length, width=at)
        second = Rect(x=piece.x, y=band.y + removed, length=piece.length, width=beyond)
    planned = PlannedCut(
        number=cut["number"],
        direction=direction,
        at=at,
        removed=removed,
        is_trim=row["keep"].startswith("trim"),
        setting=row["setting"],
        by=By(cut["by"]),
        remark=cut.get("remark", ""),
    )
    return planned, first if at else None, second if beyond else None


def _part(part: Json) -> PlannedPart:
    return PlannedPart(
        name=part["name"],
        turned=part["turned"],
        grain=Grain(part["grain"]),
        finished=(_length(part["finished"][0]), _length(part["finished"][1])),
    )


def printed_rows(document: Json) -> Iterator[tuple[int, Json]]:
    """Yield every printed row of a plan with the number of its sheet, in the order of doing."""
    for sheet in document["sheets"]:
        for row in sheet["printed"]["rows"]:
            yield sheet["number"], row
