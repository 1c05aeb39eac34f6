"""A layout with its sequences and codes: what all sections are made from."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from nesting.cut_sequence import Path, Sequence
from nesting.job import Job
from nesting.layout import Layout, Place, Rect, SheetLayout, walk
from nesting.sheets import Sheet
from plans.sections.codes import Freed, assign_codes


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class WorkedSheet:
    """One sheet, its cuts in order and a code for every piece.

    Attributes:
        number: Number of the sheet in the plan, from 1.
        sheet: The stock.
        sequence: Its cuts in order.
        places: Every node of its tree by its path.
        codes: Code of every piece by its path: a part, a piece, an offcut or WASTE.
        freed: The leaves in the order in which they come free.
    """

    number: int
    sheet: Sheet
    sequence: Sequence
    places: Mapping[Path, Place]
    codes: Mapping[Path, str]
    freed: tuple[Freed, ...]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Worked:
    """All sheets of a plan, worked out.

    Attributes:
        job: The job.
        layout: Its layout.
        sheets: The sheets in the order of cutting.
        part_codes: For every part of the job the codes of its copies: placed ones in the order of
            cutting, then those that were not placed.
    """

    job: Job
    layout: Layout
    sheets: tuple[WorkedSheet, ...]
    part_codes: tuple[tuple[str, ...], ...]


def work_out(job: Job, layout: Layout, sequences: tuple[Sequence, ...]) -> Worked:
    """Return a layout with a code for every piece, given the order of its cuts."""
    trees = [_places(job, sheet_layout) for sheet_layout in layout.sheets]
    freed = [
        tuple(_leaves(sequence, places)) for sequence, places in zip(sequences, trees, strict=True)
    ]
    codes = assign_codes(job, freed)
    return Worked(
        job=job,
        layout=layout,
        sheets=tuple(
            WorkedSheet(
                number=number,
                sheet=job.sheets[sequence.sheet],
                sequence=sequence,
                places=places,
                codes=codes.by_path[number - 1],
                freed=pieces,
            )
            for number, (sequence, places, pieces) in enumerate(
                zip(sequences, trees, freed, strict=True), start=1
            )
        ),
        part_codes=codes.by_part,
    )


def _places(job: Job, sheet_layout: SheetLayout) -> dict[Path, Place]:
    sheet = job.sheets[sheet_layout.sheet]
    whole = Rect(x=0, y=0, length=sheet.length, width=sheet.width)
    return {place.path: place for place in walk(sheet_layout.root, whole)}


def _leaves(sequence: Sequence, places: Mapping[Path, Place]) -> Iterator[Freed]:
    """Yield what every cut makes, the piece at the low edge first."""
    if not sequence.steps:
        yield Freed(cut=0, place=places[()])
    for step in sequence.steps:
        for side in (0, 1):
            if place := places.get((*step.path, side)):
                yield Freed(cut=step.number, place=place)
