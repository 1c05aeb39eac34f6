"""Every part with its finished size, its status and where it comes from."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from nesting.layout import PartLeaf
from nesting.lengths import Length, mm
from nesting.parts import Part
from plans.sections.hole_pieces import list_hole_pieces
from plans.sections.numbers import show
from plans.sections.part_words import (
    base_status,
    blank_words,
    copy_words,
    finished_words,
    part_grain_words,
    status_words,
)
from plans.sections.worked import Worked

ALIKE: Length = mm(15)
"""Parts that differ by no more in both sizes are easily taken for each other (judgement)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PartRow:
    """One piece of one part.

    Attributes:
        code: Its code.
        name: Its name.
        cabinet: Letter of its cabinet, "" for none.
        copy: "2 of 4".
        finished: Finished size as text, "562 × 300".
        blank: Size as cut; equal to finished where nothing is added.
        thickness: Measured thickness where known, else nominal, as text.
        grain: "grain along the 562", or "any".
        status: "final", "oversize +3" or "measure first".
        sheet: Number of its sheet as text, "-" where it was not placed.
        cut: Number of the cut that frees it.
        sums: How its sizes came about.
        look_alikes: Codes of parts within 15 mm of it in both sizes, one per kind.
        to_do: What is still done to it.
        material: Its material.
        allowances: Which edges of the blank have wood to spare, and how much.
        panel: Code of the panel whose hole it comes out of; "" for a part from a sheet.
    """

    code: str
    name: str
    cabinet: str
    copy: str
    finished: str
    blank: str
    thickness: str
    grain: str
    status: str
    sheet: str
    cut: str
    sums: tuple[str, ...]
    look_alikes: tuple[str, ...]
    to_do: tuple[str, ...]
    material: str
    allowances: tuple[str, ...] = ()
    panel: str = ""

    @property
    def origin(self) -> tuple[str, str]:
        """Where it comes from, in two short lines."""
        if self.panel:
            return "a hole in", self.panel
        return f"sheet {self.sheet}", f"cut {self.cut}"


def make_part_rows(worked: Worked) -> tuple[PartRow, ...]:
    """Return one row a piece: by cabinet and kind in the order of the job.

    Copies stand in the order of cutting; those from holes come last of their cabinet.
    """
    rows = (*_rows_from_sheets(worked), *_rows_from_holes(worked))
    cabinets = list(dict.fromkeys(row.cabinet for row in rows))
    return tuple(sorted(rows, key=lambda row: cabinets.index(row.cabinet)))


def _rows_from_holes(worked: Worked) -> Iterator[PartRow]:
    unit = worked.job.unit
    for piece in list_hole_pieces(worked):
        part = piece.taken.part
        yield PartRow(
            code=piece.code,
            name=part.name,
            cabinet=part.cabinet,
            copy="from a hole",
            finished=finished_words(part, unit),
            blank=blank_words(part, unit),
            thickness=show(piece.thickness, unit),
            grain=part_grain_words(part, unit, "any"),
            status=status_words(part, unit),
            sheet="-",
            cut="-",
            sums=part.sums,
            look_alikes=(),
            to_do=(f"cut it {piece.origin}, once that hole is made", *part.to_do),
            material=part.material,
            allowances=part.allowances,
            panel=piece.panel,
        )


def _rows_from_sheets(worked: Worked) -> Iterator[PartRow]:
    job = worked.job
    alike = look_alikes(worked)
    origins = _origins(worked)
    for index, (part, codes) in enumerate(zip(job.parts, worked.part_codes, strict=True)):
        for copy, code in enumerate(codes):
            sheet, cut, thickness = origins.get(code, ("-", "-", part.thickness))
            yield PartRow(
                code=code,
                name=part.name,
                cabinet=part.cabinet,
                copy=copy_words(job, index, copy),
                finished=finished_words(part, job.unit),
                blank=blank_words(part, job.unit),
                thickness=show(thickness, job.unit),
                grain=part_grain_words(part, job.unit, "any"),
                status=status_words(part, job.unit),
                sheet=sheet,
                cut=cut,
                sums=part.sums,
                look_alikes=alike[index],
                to_do=part.to_do,
                material=part.material,
                allowances=part.allowances,
            )


def look_alikes(worked: Worked) -> tuple[tuple[str, ...], ...]:
    """Return for every kind the first code of every kind that it must not be taken for.

    Kinds that are equal in all that matters are interchangeable, so they are not told apart.
    """
    parts = worked.job.parts
    return tuple(
        tuple(
            worked.part_codes[other][0]
            for other in range(len(parts))
            if other != index and _is_alike(part, parts[other])
        )
        for index, part in enumerate(parts)
    )


def _is_alike(one: Part, other: Part) -> bool:
    if _essence(one) == _essence(other):
        return False
    return all(
        abs(mine - its) <= ALIKE for mine, its in zip(_sides(one), _sides(other), strict=True)
    )


def _sides(part: Part) -> Sequence[Length]:
    return sorted((part.length, part.width))


def _essence(part: Part) -> tuple[object, ...]:
    """Return what makes two kinds interchangeable on the bench."""
    return (
        part.length,
        part.width,
        part.grain,
        part.material,
        part.thickness,
        part.oversize,
        part.allowances,
        base_status(part),
        part.to_do,
        part.note,
    )


def _origins(worked: Worked) -> dict[str, tuple[str, str, Length]]:
    """Return for every placed code its sheet, the cut that frees it and its real thickness."""
    return {
        sheet.codes[freed.place.path]: (
            str(sheet.number),
            str(freed.cut) if freed.cut else "-",
            sheet.sheet.real_thickness,
        )
        for sheet in worked.sheets
        for freed in sheet.freed
        if isinstance(freed.place.node, PartLeaf)
    }
