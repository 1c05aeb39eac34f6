"""A split: the yard's cuts of one sheet, and what each piece is still good for.

A yard cut may be off by `Yard.rough` either way, so its fresh edge is a raw edge. Both neighbours
keep an allowance along it:

- a clean-up of one `rough`, or of one kerf at home where that is more: what the trim takes off;
- at its high end, beyond that, as much as the piece may come out too short.

The yard measures every piece from the edge that it has just cut, so a piece that is measured is
short by one `rough` at most, and the one that is left by one more than the piece it was cut from.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from nesting.layout import By, Cut, Direction, Node, Rect, RestLeaf, split, whole_of
from nesting.lengths import Length
from nesting.sheets import Sheet, Trim
from nesting.yard import Yard


@dataclass(frozen=True, slots=True, kw_only=True)
class YardPiece:
    """A piece that the yard hands over.

    Attributes:
        path: How it is reached in the split's tree.
        rect: Where it lies on the sheet.
        trim: What is not used along its edges: the sheet's own trims and the allowances.
        off_length: How far its extent along x may be off.
        off_width: How far its extent along y may be off.
    """

    path: tuple[int, ...]
    rect: Rect
    trim: Trim
    off_length: Length
    off_width: Length


@dataclass(frozen=True, slots=True, kw_only=True)
class Split:
    """The yard's cuts of one sheet.

    Attributes:
        root: The tree of cuts; its leaves stand for the pieces.
        cuts: How many cuts there are.
        pieces: In the order of the tree, those of least x and y first.
    """

    root: Node
    cuts: int
    pieces: tuple[YardPiece, ...]


def clean_up(yard: Yard, kerf: Length) -> Length:
    """Return what is trimmed off a yard's edge at home: the blade never runs half beside it."""
    return max(yard.rough, kerf)


def make_row(
    direction: Direction, sizes: Sequence[Length], nodes: Sequence[Node], yard: Yard
) -> Node:
    """Return the tree of one row of yard cuts.

    Args:
        direction: How the cuts run.
        sizes: Size of every piece but the last, from the low edge.
        nodes: What is done to each piece, one more than there are sizes.
        yard: The yard.
    """
    node = nodes[-1]
    for size, first in zip(reversed(sizes), reversed(nodes[:-1]), strict=True):
        node = Cut(
            direction=direction,
            at=size,
            removed=yard.kerf,
            first=first,
            second=node,
            by=By.YARD,
        )
    return node


def make_split(sheet: Sheet, root: Node, yard: Yard, kerf: Length) -> Split:
    """Return a split with its pieces.

    Args:
        sheet: The sheet.
        root: The tree of the yard's cuts.
        yard: The yard.
        kerf: The kerf at home.
    """
    pieces = tuple(_list_pieces(sheet, root, yard, kerf))
    return Split(root=root, cuts=len(pieces) - 1, pieces=pieces)


def whole_sheet(sheet: Sheet) -> Split:
    """Return the split of a sheet that is left whole."""
    piece = YardPiece(
        path=(),
        rect=whole_of(sheet),
        trim=sheet.trim,
        off_length=0,
        off_width=0,
    )
    return Split(root=RestLeaf(), cuts=0, pieces=(piece,))


@dataclass(frozen=True, slots=True, kw_only=True)
class _Side:
    """One extent of a piece on the way: its trims and how far it may be off."""

    low: Length
    high: Length
    off: Length = 0

    def divide(self, clean: Length, rough: Length) -> tuple["_Side", "_Side"]:
        """Return the same of both pieces of a cut across this extent."""
        return (
            _Side(low=self.low, high=clean, off=rough),
            _Side(low=clean, high=self.high, off=self.off + rough),
        )


def _list_pieces(sheet: Sheet, root: Node, yard: Yard, kerf: Length) -> Iterator[YardPiece]:
    clean = clean_up(yard, kerf)
    whole = whole_of(sheet)
    along = _Side(low=sheet.trim.left, high=sheet.trim.right)
    across = _Side(low=sheet.trim.bottom, high=sheet.trim.top)
    waiting: list[tuple[tuple[int, ...], Node, Rect, _Side, _Side]] = [
        ((), root, whole, along, across)
    ]
    while waiting:
        path, node, rect, along, across = waiting.pop()
        if not isinstance(node, Cut):
            yield YardPiece(
                path=path,
                rect=rect,
                trim=Trim(
                    left=along.low,
                    right=along.high + along.off,
                    bottom=across.low,
                    top=across.high + across.off,
                ),
                off_length=along.off,
                off_width=across.off,
            )
            continue
        rects = split(node, rect)
        sides = [(along, across), (along, across)]
        if node.direction is Direction.CROSSCUT:
            sides = [(side, across) for side in along.divide(clean, yard.rough)]
        else:
            sides = [(along, side) for side in across.divide(clean, yard.rough)]
        for index, following in ((1, node.second), (0, node.first)):
            assert following is not None, "a yard cut has a piece on either side"
            waiting.append(((*path, index), following, rects[index], *sides[index]))
