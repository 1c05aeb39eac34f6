"""What a tree of cuts holds, without its waste: parts in rows, rows in rows.

The pieces of a row may change places and move apart, and the whole may be laid elsewhere; that is
what there is to choose from when a finished layout is to keep clear of a defect.
"""

from dataclasses import dataclass
from typing import TypeAlias

from nesting.job import Job
from nesting.layout import Cut, Direction, Node, PartLeaf, walk, whole_of
from nesting.lengths import Length
from nesting.sheets import Sheet


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Block:
    """One part.

    Attributes:
        leaf: The part and how it lies.
        length: Extent along x.
        width: Extent along y.
        has_shown: True where one of its parts shows when the work is done.
    """

    leaf: PartLeaf
    length: Length
    width: Length
    has_shown: bool


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Row:
    """Two pieces or more beside each other, with a kerf between them.

    Attributes:
        direction: Of the cuts between them: a crosscut where they stand along x.
        members: The pieces, from the low edge.
        length: Least extent along x.
        width: Least extent along y.
        has_shown: As for a block.
    """

    direction: Direction
    members: tuple["Content", ...]
    length: Length
    width: Length
    has_shown: bool


Content: TypeAlias = Block | Row


def read_content(job: Job, sheet: Sheet, root: Node) -> Content | None:
    """Return what a tree holds, None where it holds no part. Built from the leaves up.

    Args:
        job: The job.
        sheet: The sheet that the tree belongs to.
        root: The tree.
    """
    whole = whole_of(sheet)
    held: dict[tuple[int, ...], Content] = {}
    for place in reversed(list(walk(root, whole))):
        match place.node:
            case PartLeaf() as leaf:
                held[place.path] = Block(
                    leaf=leaf,
                    length=place.rect.length,
                    width=place.rect.width,
                    has_shown=not job.parts[leaf.part].is_hidden,
                )
            case Cut() as cut:
                sides = [held.pop((*place.path, side), None) for side in (0, 1)]
                pieces = [side for side in sides if side is not None]
                if pieces:
                    held[place.path] = _join(cut.direction, pieces, job.saw.kerf)
    return held.get(())


def _join(direction: Direction, pieces: list[Content], kerf: Length) -> Content:
    """Return a row of pieces; rows in the same direction become one."""
    if len(pieces) == 1:
        return pieces[0]
    members: list[Content] = []
    for piece in pieces:
        is_same = isinstance(piece, Row) and piece.direction is direction
        members += piece.members if isinstance(piece, Row) and is_same else [piece]
    along = [each.length for each in members]
    across = [each.width for each in members]
    if direction is Direction.CROSSCUT:
        length, width = sum(along) + (len(members) - 1) * kerf, max(across)
    else:
        length, width = max(along), sum(across) + (len(members) - 1) * kerf
    return Row(
        direction=direction,
        members=tuple(members),
        length=length,
        width=width,
        has_shown=any(each.has_shown for each in members),
    )
