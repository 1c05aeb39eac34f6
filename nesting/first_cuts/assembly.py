"""Yard pieces as stock for the search, and its layouts put back into whole sheets."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from nesting.defects import mark_leftovers
from nesting.first_cuts.split import Split
from nesting.job import Job
from nesting.layout import Layout, Node, SheetLayout, Unplaced, map_leaves, replace_leaves
from nesting.sheets import Sheet
from nesting.zones import cut_out


@dataclass(frozen=True, slots=True, kw_only=True)
class Lot:
    """Some bought sheets of one kind that the yard cuts alike.

    Attributes:
        sheet: Index into `Job.sheets`.
        split: The yard's cuts.
        count: How many sheets.
    """

    sheet: int
    split: Split
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceJob:
    """A job on pieces: what the search is asked.

    Attributes:
        job: The parts of one material and thickness; its sheets are those at home, then every
            piece of every lot, each as often as its lot has sheets.
        parts: For every part of it the index in the whole job.
        home: For each of the first sheets the index in the whole job.
        pieces: For each of the others the number of its lot and its number in the split.
    """

    job: Job
    parts: tuple[int, ...]
    home: tuple[int, ...]
    pieces: tuple[tuple[int, int], ...]


def make_piece_job(job: Job, parts: Sequence[int], lots: Sequence[Lot]) -> PieceJob:
    """Return the job of cutting some parts from what is at home and from the pieces of lots.

    A piece costs nothing by itself: its sheet is paid for whether the piece is used or not.
    """
    kind = job.parts[parts[0]]
    home = tuple(
        index
        for index, sheet in enumerate(job.sheets)
        if sheet.owned and (sheet.material, sheet.thickness) == (kind.material, kind.thickness)
    )
    pieces = [
        (number, piece)
        for number, lot in enumerate(lots)
        for piece in range(len(lot.split.pieces))
        if lot.count
    ]
    return PieceJob(
        job=replace(
            job,
            parts=tuple(job.parts[index] for index in parts),
            sheets=(
                *(job.sheets[index] for index in home),
                *(
                    sheet
                    for number, piece in pieces
                    if (sheet := _as_sheet(job, lots[number], piece)) is not None
                ),
            ),
            cabinets=(),
            yard=None,
            car=None,
        ),
        parts=tuple(parts),
        home=home,
        pieces=tuple(
            (number, piece)
            for number, piece in pieces
            if _as_sheet(job, lots[number], piece) is not None
        ),
    )


def _as_sheet(job: Job, lot: Lot, number: int) -> Sheet | None:
    """Return a piece as a sheet; None where its trims leave nothing of it."""
    piece = lot.split.pieces[number]
    sheet = job.sheets[lot.sheet]
    made = replace(
        sheet,
        name=f"{sheet.name}, piece {number + 1}",
        length=piece.rect.length,
        width=piece.rect.width,
        trim=piece.trim,
        price=Decimal(0),
        owned=True,
        count=lot.count,
        defects=cut_out(sheet.defects, piece.rect),
    )
    return made if min(made.usable_length, made.usable_width) > 0 else None


def put_together(job: Job, asked: PieceJob, lots: Sequence[Lot], found: Layout) -> Layout:
    """Return the layout of a piece job as one of whole sheets of the job.

    Sheets none of whose pieces is used are left out.
    """
    home: list[SheetLayout] = []
    cut_up: dict[tuple[int, int], list[Node]] = defaultdict(list)
    for layout in found.sheets:
        root = _with_parts(layout.root, asked.parts)
        if layout.sheet < len(asked.home):
            home.append(SheetLayout(sheet=asked.home[layout.sheet], root=root))
        else:
            cut_up[asked.pieces[layout.sheet - len(asked.home)]].append(root)
    bought = []
    for number, lot in enumerate(lots):
        used = [cut_up[number, piece] for piece in range(len(lot.split.pieces))]
        for index in range(max(map(len, used))):
            nodes = {
                piece.path: roots[index]
                for piece, roots in zip(lot.split.pieces, used, strict=True)
                if index < len(roots)
            }
            root = replace_leaves(lot.split.root, nodes)
            sheet = job.sheets[lot.sheet]
            # The search judged leftovers by the allowances of its piece.
            root = mark_leftovers(root, sheet, job.keep, job.saw.kerf)
            bought.append(SheetLayout(sheet=lot.sheet, root=root))
    return Layout(
        sheets=(*home, *bought),
        unplaced=tuple(
            Unplaced(part=asked.parts[gap.part], count=gap.count, reason=gap.reason)
            for gap in found.unplaced
        ),
    )


def _with_parts(root: Node, parts: Sequence[int]) -> Node:
    """Return a tree whose parts are those of the whole job."""
    return map_leaves(root, lambda leaf: replace(leaf, part=parts[leaf.part]))
