"""What has to be found or bought where the pieces in hand do not do."""

from dataclasses import dataclass, replace

from nesting.job import Job
from nesting.layout import Layout
from nesting.lengths import Length
from nesting.lots import SAME_LOT
from nesting.parts import Part
from nesting.replan.smallest_piece import Box, find_smallest_pieces
from nesting.sheets import Sheet, SheetGrain


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """What is missing of one material, and the smallest piece that would do.

    Attributes:
        material: The material.
        thickness: Nominal thickness.
        between: Least and greatest real thickness that matches what is in hand, None where
            nothing of it was measured.
        has_grain: Whether the grain must run along the length of the piece.
        parts: The parts that it is for, with their number.
        pieces: Every smallest piece that a sheet of the job is large enough for, the least area
            first; empty where there is none, or too many parts.
    """

    material: str
    thickness: Length
    between: tuple[Length, Length] | None
    has_grain: bool
    parts: tuple[Part, ...]
    pieces: tuple[Box, ...]


def find_needs(job: Job, layout: Layout) -> tuple[Need, ...]:
    """Return for every material what the parts without a place need."""
    missing = [replace(job.parts[gap.part], count=gap.count) for gap in layout.unplaced]
    groups = dict.fromkeys((part.material, part.thickness) for part in missing)
    return tuple(
        _need(
            job,
            material,
            thickness,
            tuple(p for p in missing if (p.material, p.thickness) == (material, thickness)),
        )
        for material, thickness in groups
    )


def _need(job: Job, material: str, thickness: Length, parts: tuple[Part, ...]) -> Need:
    sheets = [s for s in job.sheets if (s.material, s.thickness) == (material, thickness)]
    measured = sorted(sheet.real_thickness for sheet in sheets if sheet.measured)
    has_grain = any(sheet.grain is not SheetGrain.NONE for sheet in sheets)
    return Need(
        material=material,
        thickness=thickness,
        # A piece must match all that it may be joined to.
        between=_lot(measured),
        has_grain=has_grain,
        parts=parts,
        pieces=tuple(
            box
            for box in find_smallest_pieces(parts, job.saw.kerf, has_grain=has_grain)
            if any(_could_be_part_of(box, sheet) for sheet in sheets)
        ),
    )


def _could_be_part_of(box: Box, sheet: Sheet) -> bool:
    """Return whether a piece is no larger than a sheet; nobody has it lying about otherwise."""
    sides = (sheet.length, sheet.width)
    ways = {
        SheetGrain.LENGTH: [sides],
        SheetGrain.WIDTH: [sides[::-1]],
        SheetGrain.NONE: [sides, sides[::-1]],
    }[sheet.grain]
    return any(box.length <= along and box.width <= across for along, across in ways)


def _lot(measured: list[Length]) -> tuple[Length, Length] | None:
    """Return between what a piece matches all readings, None where nothing can."""
    if not measured or measured[-1] - SAME_LOT > measured[0] + SAME_LOT:
        return None
    return measured[-1] - SAME_LOT, measured[0] + SAME_LOT
