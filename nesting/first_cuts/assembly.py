"""Yard pieces as stock for the search, and its layouts put back into whole sheets."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from nesting.first_cuts.split import Split
from nesting.job import Job
from nesting.layout import Cut, Layout, Node, PartLeaf, Rect, RestLeaf, SheetLayout, Unplaced, walk
from nesting.saw import Keep
from nesting.sheets import Sheet

Path = tuple[int, ...]


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
            root = _replace_leaves(lot.split.root, nodes)
            root = _mark_offcuts(root, job.sheets[lot.sheet], job.keep)
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
    leaves: dict[Path, Node] = {
        place.path: replace(place.node, part=parts[place.node.part])
        for place in walk(root, Rect(x=0, y=0, length=0, width=0))
        if isinstance(place.node, PartLeaf)
    }
    return _replace_leaves(root, leaves)


def _mark_offcuts(root: Node, sheet: Sheet, keep: Keep) -> Node:
    """Return a tree whose leftovers are offcuts exactly where they are worth keeping.

    The search judged them by the allowances of its piece; a leftover is judged by the trims of
    the sheet alone, like all others.
    """
    leaves: dict[Path, Node] = {}
    for place in walk(root, Rect(x=0, y=0, length=sheet.length, width=sheet.width)):
        if isinstance(place.node, RestLeaf):
            rect, trim = place.rect, sheet.trim
            sides = sorted(
                (
                    min(rect.x + rect.length, sheet.length - trim.right) - max(rect.x, trim.left),
                    min(rect.y + rect.width, sheet.width - trim.top) - max(rect.y, trim.bottom),
                )
            )
            is_offcut = sides[0] >= keep.width and sides[1] >= keep.length
            leaves[place.path] = RestLeaf(is_offcut=is_offcut)
    return _replace_leaves(root, leaves)


def _replace_leaves(root: Node, leaves: Mapping[Path, Node]) -> Node:
    """Return a tree with other nodes in place of some leaves. Built from the leaves up."""
    nodes: dict[Path, Node] = {}
    for place in reversed(list(walk(root, Rect(x=0, y=0, length=0, width=0)))):
        if isinstance(place.node, Cut):
            nodes[place.path] = replace(
                place.node,
                first=nodes.get((*place.path, 0)),
                second=nodes.get((*place.path, 1)),
            )
        else:
            nodes[place.path] = leaves.get(place.path, place.node)
    return nodes[()]
