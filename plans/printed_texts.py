"""The texts of a sheet's page as the plan file holds them: what a person saws from.

The rehearsal reads these and nothing else, so they are copied and never worked out.
"""

from collections.abc import Mapping
from typing import Any

from nesting.job import Job
from nesting.layout import PartLeaf, Place, RestLeaf
from nesting.sheets import Use
from plans.sections.cut_table import CutRow
from plans.sections.defects import DefectView
from plans.sections.part_list import PartRow
from plans.sections.part_words import base_status
from plans.sections.sheet_view import SheetView

Json = dict[str, Any]


def printed_texts(
    job: Job, view: SheetView, leaves: list[tuple[str, Place]], rows: Mapping[str, PartRow]
) -> Json:
    """Return the texts of a sheet's page.

    Args:
        job: The job.
        view: The page.
        leaves: What its sheet falls into, by code.
        rows: The rows of the parts list, by code.
    """
    sizes = {rest.code: rest.size for rest in view.rests}
    return {
        "size": view.size,
        "trims": view.trim_text,
        "rows": [_printed_row(row) for row in view.rows],
        "parts": [
            {
                "code": code,
                "finished": rows[code].finished,
                "blank": rows[code].blank,
                "thickness": rows[code].thickness,
                "status": base_status(job.parts[place.node.part]),
            }
            for code, place in leaves
            if isinstance(place.node, PartLeaf)
        ],
        "offcuts": [
            {"code": code, "size": sizes[code]}
            for code, place in leaves
            if isinstance(place.node, RestLeaf) and place.node.is_offcut
        ],
        "sums": [{"piece": line.piece, "text": line.text} for line in view.sums],
        **({"defects": list(map(_printed_defect, view.defects))} if view.defects else {}),
    }


def _printed_defect(defect: DefectView) -> Json:
    use = Use.HIDDEN_PARTS if defect.is_for_hidden else Use.NOTHING
    return {
        "along": defect.along,
        "across": defect.across,
        "size": defect.size,
        "use": use.value,
        "parts": ", ".join(defect.parts),
    }


def _printed_row(row: CutRow) -> Json:
    return {
        "number": row.number,
        "hold": row.hold,
        "hold_size": row.hold_size,
        "direction": row.direction.value,
        "measure_from": row.measure_from,
        "keep": row.keep,
        "keep_code": row.keep_code,
        **_printed_guide(row),
        "free_code": row.free_code,
        "setting": row.setting,
    }


def _printed_guide(row: CutRow) -> Json:
    """Return where the guide goes: its two places, or the blocks and the mark they lie against."""
    if row.blocks:
        return {"blocks": row.blocks, "mark": row.mark}
    return {
        "guide_left": row.guide_left,
        "guide_right": row.guide_right,
        "unusable": row.unusable,
    }
