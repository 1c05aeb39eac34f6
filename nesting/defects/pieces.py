"""Sound pieces of unsound sheets as stock for the search, and its layouts put back together."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from nesting.defects.leftovers import mark_leftovers
from nesting.defects.ways_round import WayRound
from nesting.job import Job
from nesting.layout import Node, SheetLayout, replace_leaves
from nesting.zones import cut_out

Choice = Mapping[int, WayRound | None]
"""For every unsound sheet how it is taken apart, None where it is left where it stands."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceJob:
    """A job whose unsound sheets are taken apart.

    Attributes:
        job: It: the sheets of the whole job first, none of those taken apart; then the pieces.
        pieces: For each of the pieces the sheet and the number of the piece.
    """

    job: Job
    pieces: tuple[tuple[int, int], ...]


def make_piece_job(job: Job, choice: Choice) -> PieceJob:
    """Return the job on the pieces of its unsound sheets.

    A piece costs nothing by itself: its sheet is paid for as soon as one of them is used.
    """
    pieces = [
        (kind, number)
        for kind, way in choice.items()
        if way is not None
        for number in range(len(way.pieces))
    ]
    made = []
    for kind, number in pieces:
        way, sheet = choice[kind], job.sheets[kind]
        assert way is not None
        piece = way.pieces[number]
        made.append(
            replace(
                sheet,
                name=f"{sheet.name}, piece {number + 1}",
                length=piece.rect.length,
                width=piece.rect.width,
                trim=piece.trim,
                price=Decimal(0),
                owned=True,
                count=1,
                defects=cut_out(sheet.defects, piece.rect),
            )
        )
    return PieceJob(
        job=replace(
            job,
            sheets=(
                *(
                    replace(sheet, count=0) if kind in choice else sheet
                    for kind, sheet in enumerate(job.sheets)
                ),
                *made,
            ),
        ),
        pieces=tuple(pieces),
    )


def put_together(
    job: Job, asked: PieceJob, choice: Choice, found: Sequence[SheetLayout]
) -> tuple[SheetLayout, ...]:
    """Return sheets of a piece job as sheets of the whole job, unsound ones last."""
    sheets: list[SheetLayout] = []
    cut_up: dict[int, dict[tuple[int, ...], Node]] = {}
    for layout in found:
        if layout.sheet < len(job.sheets):
            sheets.append(layout)
            continue
        kind, number = asked.pieces[layout.sheet - len(job.sheets)]
        way = choice[kind]
        assert way is not None
        cut_up.setdefault(kind, {})[way.pieces[number].path] = layout.root
    for kind, nodes in sorted(cut_up.items()):
        way, sheet = choice[kind], job.sheets[kind]
        assert way is not None
        root = replace_leaves(way.root, nodes)
        root = mark_leftovers(root, sheet, job.keep, job.saw.kerf)
        sheets.append(SheetLayout(sheet=kind, root=root))
    return tuple(sheets)
