"""The plan file: what was planned, in numbers, and beside it what is printed, as text.

JSON, lengths in decimal millimetres, exact. x runs along the sheet's length and y along its
width, from the home corner. The rehearsal and the next session read it.
"""

import json
from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import Any

from nesting.cut_sequence import Step
from nesting.earlier import Leftover
from nesting.job import Job
from nesting.layout import By, Cut, Layout, PartLeaf, Place, Rect, RestLeaf
from nesting.lengths import NM_PER_MM, Length
from nesting.sheets import Defect, Trim
from plans.plan import Plan, Solved
from plans.printed_texts import printed_texts
from plans.sections.bound import plan_cost
from plans.sections.hole_pieces import HolePiece, list_hole_pieces
from plans.sections.overview import total_minutes
from plans.sections.part_list import PartRow
from plans.sections.part_words import full_name
from plans.sections.sheet_view import SheetView
from plans.sections.whole_first import find_whole_first
from plans.sections.worked import Worked, WorkedSheet, work_out
from plans.sections.yard import count_yard_cuts

FORMAT = "setout plan"
VERSION = 1

Json = dict[str, Any]
"""A JSON object."""


def plan_document(job: Job, solved: Solved, plan: Plan) -> Json:
    """Return the content of the plan file.

    Args:
        job: The job.
        solved: The layout that the plan was made from, and the bound on its cost.
        plan: The plan, made by `plans.plan.make_plan` from the same two.
    """
    worked = work_out(job, solved.layout, plan.sequences)
    rows_of_parts = {row.code: row for row in plan.parts}
    saw = job.saw
    return {
        "format": FORMAT,
        "version": VERSION,
        "fingerprint": plan.fingerprint,
        "job": job.name,
        "unit": job.unit.value,
        "marked_face": saw.marked_face.value,
        "saw": {
            "kerf": to_mm(saw.kerf),
            "base_left": to_mm(saw.base_left),
            "base_right": to_mm(saw.base_right),
            "guide_length": to_mm(saw.guide_length),
            "lift_limit_kg": to_number(saw.lift_limit_kg),
        },
        **_blocks(plan),
        "cost": to_number(plan_cost(worked)),
        "bound": to_number(solved.bound),
        "minutes": total_minutes(worked),
        "sheets": [
            _sheet(job, sheet, view, rows_of_parts)
            for sheet, view in zip(worked.sheets, plan.sheets, strict=True)
        ],
        "unplaced": _unplaced(job, solved.layout),
        **_from_holes(worked, rows_of_parts),
        **_whole_first(worked),
        **_unsound(job),
        **_yard(job, worked),
        **_earlier(job),
    }


def _blocks(plan: Plan) -> Json:
    """Return the blocks that set the guide, as printed; nothing where a tape does."""
    return {"blocks": {block.name: block.size for block in plan.blocks}} if plan.blocks else {}


def to_mm(length: Length) -> int | float:
    """Return a length in millimetres.

    JSON knows no decimals but floating ones. They are written by their shortest text, which is
    the exact decimal for all of up to 15 figures: any length below 1000 metres.

    >>> to_mm(17_700_000), to_mm(3_000_000), to_mm(18_256_250)
    (17.7, 3, 18.25625)
    """
    whole, rest = divmod(length, NM_PER_MM)
    return float(Decimal(length) / NM_PER_MM) if rest else whole


def to_number(amount: Decimal) -> int | float:
    """Return an amount of money or a mass as JSON writes it."""
    return int(amount) if amount == amount.to_integral_value() else float(amount)


def _sheet(job: Job, worked: WorkedSheet, view: SheetView, rows: Mapping[str, PartRow]) -> Json:
    sheet = worked.sheet
    leaves = [(worked.codes[freed.place.path], freed.place) for freed in worked.freed]
    return {
        "number": worked.number,
        "stock": sheet.name,
        "material": sheet.material,
        "thickness": to_mm(sheet.thickness),
        "measured": to_mm(sheet.real_thickness) if sheet.measured else None,
        "length": to_mm(sheet.length),
        "width": to_mm(sheet.width),
        "grain": sheet.grain.value,
        "price": to_number(sheet.price),
        "trim": _trim(sheet.trim),
        "parts": list(_parts(job, leaves)),
        "cuts": [_cut(job, worked, step) for step in worked.sequence.steps],
        "offcuts": [
            {"code": code, **_rect(place.rect)}
            for code, place in leaves
            if isinstance(place.node, RestLeaf) and place.node.is_offcut
        ],
        "printed": printed_texts(job, view, leaves, rows),
        **({"defects": list(map(_defect, sheet.defects))} if sheet.defects else {}),
    }


def _from_holes(worked: Worked, rows: Mapping[str, PartRow]) -> Json:
    """Return the parts that come out of holes; nothing where there are none."""
    pieces = [_from_hole(piece, rows[piece.code]) for piece in list_hole_pieces(worked)]
    return {"from_holes": pieces} if pieces else {}


def _from_hole(piece: HolePiece, row: PartRow) -> Json:
    taken = piece.taken
    return {
        "code": piece.code,
        "name": full_name(taken.part),
        "panel": piece.panel,
        "hole": taken.hole,
        "opening": list(map(to_mm, taken.window or (taken.cut_out, taken.cut_out))),
        "is_round": taken.window is None,
        "kerf": to_mm(taken.kerf),
        "pivot": to_mm(taken.pivot),
        "blank": [to_mm(taken.part.blank_length), to_mm(taken.part.blank_width)],
        "printed": {"finished": row.finished, "blank": row.blank, "thickness": row.thickness},
    }


def _leftover(piece: Leftover) -> Json:
    return {
        "code": piece.code,
        "material": piece.material,
        "thickness": to_mm(piece.thickness),
        "measured": list(map(to_mm, piece.measured)),
        "length": to_mm(piece.length),
        "width": to_mm(piece.width),
        "grain": piece.grain.value,
        "trim": _trim(piece.trim),
        **({"defects": list(map(_defect, piece.defects))} if piece.defects else {}),
    }


def _defect(defect: Defect) -> Json:
    return {
        "what": defect.what,
        "x": to_mm(defect.x),
        "y": to_mm(defect.y),
        "length": to_mm(defect.length),
        "width": to_mm(defect.width),
        "use": defect.use.value,
    }


def _trim(trim: Trim) -> Json:
    return {
        "left": to_mm(trim.left),
        "right": to_mm(trim.right),
        "top": to_mm(trim.top),
        "bottom": to_mm(trim.bottom),
    }


def _parts(job: Job, leaves: list[tuple[str, Place]]) -> Iterator[Json]:
    for code, place in leaves:
        if isinstance(place.node, PartLeaf):
            part = job.parts[place.node.part]
            yield {
                "code": code,
                "name": full_name(part),
                **_rect(place.rect),
                "turned": place.node.turned,
                "grain": part.grain.value,
                "finished": [to_mm(part.length), to_mm(part.width)],
                **({"hidden": True} if part.is_hidden else {}),
            }


def _cut(job: Job, worked: WorkedSheet, step: Step) -> Json:
    cut = worked.places[step.path].node
    return {
        "number": step.number,
        "direction": step.direction.value,
        "band": _rect(step.band),
        "by": step.by.value,
        "kerf": to_mm(_kerf_of(job, step.by)),
        **({"remark": cut.remark} if isinstance(cut, Cut) and cut.remark else {}),
    }


def _kerf_of(job: Job, by: By) -> Length:
    if by is By.HOME:
        return job.saw.kerf
    assert job.yard is not None, "a yard cut needs a yard"
    return job.yard.kerf


def _rect(rect: Rect) -> Json:
    return {
        "x": to_mm(rect.x),
        "y": to_mm(rect.y),
        "length": to_mm(rect.length),
        "width": to_mm(rect.width),
    }


def _unsound(job: Job) -> Json:
    """Return the sheets told apart for their defects, used or not; nothing where none is."""
    names = [sheet.name for sheet in job.sheets if sheet.told_from]
    return {"unsound": names} if names else {}


def _unplaced(job: Job, layout: Layout) -> list[Json]:
    return [
        {
            "name": full_name(job.parts[gap.part]),
            "count": gap.count,
            "reason": gap.reason,
        }
        for gap in layout.unplaced
    ]


def _whole_first(worked: Worked) -> Json:
    """Return which cabinet is cut whole first; nothing where none is."""
    first = find_whole_first(worked)
    if first is None:
        return {}
    return {
        "whole_first": {
            "cabinet": first.cabinet,
            "cuts": first.cuts,
            "after": [{"sheet": sheet, "cut": cut} for sheet, cut in first.pauses],
        }
    }


def _yard(job: Job, worked: Worked) -> Json:
    """Return what the yard is asked for; nothing where it cuts nothing."""
    cuts = count_yard_cuts(worked)
    if job.yard is None or not cuts:
        return {}
    return {
        "yard": {
            "kerf": to_mm(job.yard.kerf),
            "rough": to_mm(job.yard.rough),
            "unit": job.yard.unit.value,
            "cuts": cuts,
            "cost": to_number(job.yard.price_per_cut * cuts),
        }
    }


def _earlier(job: Job) -> Json:
    """Return what the next session must know of earlier plans; nothing for a new plan."""
    earlier = job.earlier
    if earlier is None:
        return {}
    return {
        "earlier": {
            "fingerprint": earlier.fingerprint,
            "changes": list(earlier.changes),
            "finished": [
                {
                    "code": part.code,
                    "name": part.name,
                    "finished": [to_mm(part.length), to_mm(part.width)],
                }
                for part in earlier.finished
            ],
            "kept": [_leftover(piece) for piece in earlier.kept],
            "used": [{"stock": stock, "count": count} for stock, count in earlier.used],
            "pieces": earlier.pieces,
            "offcuts": earlier.offcuts,
        }
    }


def dump(document: Json) -> str:
    """Return a document as JSON text; the same document gives the same text."""
    return json.dumps(document, ensure_ascii=False, indent=1, allow_nan=False) + "\n"
