"""Cutting a sheet round its defects: the ways to take it apart into sound pieces.

Along each of the four sides of a defect a cut may free all that lies beyond it. Which comes first
decides which piece is the long one: that gives a handful of ways round one defect. A piece that
holds another defect is taken apart in turn, in the way that leaves the largest pieces.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import permutations

from nesting.layout import (
    Cut,
    Direction,
    Node,
    Rect,
    RestLeaf,
    replace_leaves,
    split,
    walk,
    whole_of,
)
from nesting.lengths import Length
from nesting.search.realise import trim_home_edges
from nesting.sheets import Defect, Sheet, Trim
from nesting.zones import find_under, is_sound, meets, trim_of, usable_of

MOST_WAYS = 10
SIDES = ("left", "right", "low", "high")
ORDERS = tuple(permutations(SIDES))


@dataclass(frozen=True, slots=True, kw_only=True)
class SoundPiece:
    """A piece of a sheet that is taken apart.

    Attributes:
        path: How it is reached in the tree.
        rect: Where it lies on the sheet.
        trim: What is not used along its edges.
    """

    path: tuple[int, ...]
    rect: Rect
    trim: Trim


@dataclass(frozen=True, slots=True, kw_only=True)
class WayRound:
    """One way to take a sheet apart.

    Attributes:
        root: The cuts; its leaves are the pieces and what holds the defects.
        pieces: The pieces that parts can be cut from, in the order of the tree.
    """

    root: Node
    pieces: tuple[SoundPiece, ...]


def leave_whole(sheet: Sheet) -> WayRound:
    """Return the way of a sheet that is not taken apart."""
    rect = whole_of(sheet)
    return WayRound(root=RestLeaf(), pieces=(SoundPiece(path=(), rect=rect, trim=sheet.trim),))


def list_ways_round(sheet: Sheet, defects: Sequence[Defect], kerf: Length) -> tuple[WayRound, ...]:
    """Return the ways to take a sheet apart into pieces without some defects.

    Args:
        sheet: The sheet.
        defects: Those of its defects that no piece may have.
        kerf: Width that a cut removes.

    Returns:
        At most `MOST_WAYS`, those with the largest pieces first.
    """
    inside = Rect(
        x=sheet.trim.left,
        y=sheet.trim.bottom,
        length=sheet.length - sheet.trim.left,
        width=sheet.width - sheet.trim.bottom,
    )
    taker = _Taker(sheet, tuple(_as_wide_as_cuts(each, kerf) for each in defects), kerf)
    found: dict[tuple[Rect, ...], tuple[int, WayRound]] = {}
    for node in taker.list_nodes(inside):
        root = trim_home_edges(sheet, node, kerf)
        pieces = tuple(_list_pieces(sheet, root, defects))
        area = _worth(sheet, (piece.rect for piece in pieces))
        found.setdefault(
            tuple(piece.rect for piece in pieces), (area, WayRound(root=root, pieces=pieces))
        )
    ranked = sorted(found.values(), key=lambda way: -way[0])
    return tuple(way for _, way in ranked[:MOST_WAYS])


def _as_wide_as_cuts(defect: Defect, kerf: Length) -> Defect:
    """Return a defect that two cuts do not reach beyond, with a kerf of wood left between them."""
    least = 3 * kerf
    return Defect(
        what=defect.what,
        x=defect.x,
        y=defect.y,
        length=max(defect.length, least),
        width=max(defect.width, least),
        use=defect.use,
    )


class _Taker:
    """Takes one sheet apart."""

    def __init__(self, sheet: Sheet, defects: tuple[Defect, ...], kerf: Length) -> None:
        self._sheet = sheet
        self._defects = defects
        self._kerf = kerf
        self._best: dict[Rect, Node] = {}

    def list_nodes(self, rect: Rect) -> Iterator[Node]:
        """Yield the ways to take a piece apart, round each of its defects first."""
        for defect in find_under(rect, self._defects):
            for order in ORDERS:
                yield self._take_apart(rect, defect, order)

    def _take_apart(self, rect: Rect, defect: Defect, order: Sequence[str]) -> Node:
        """Return the cuts round one defect, and the best ones round those in the other pieces."""
        node = self._isolate(rect, defect, order)
        leaves = {
            place.path: self._find_best(place.rect)
            for place in walk(node, rect)
            if isinstance(place.node, RestLeaf) and not meets(place.rect, defect)
        }
        return replace_leaves(node, leaves)

    def _find_best(self, rect: Rect) -> Node:
        """Return the way to take a piece apart that leaves the largest pieces."""
        if rect not in self._best:
            under = find_under(rect, self._defects)
            ways = [self._take_apart(rect, under[0], order) for order in ORDERS if under]
            self._best[rect] = max(
                ways, key=lambda way: self._sound_area(way, rect), default=RestLeaf()
            )
        return self._best[rect]

    def _sound_area(self, node: Node, rect: Rect) -> int:
        leaves = (place.rect for place in walk(node, rect) if isinstance(place.node, RestLeaf))
        return _worth(self._sheet, (leaf for leaf in leaves if is_sound(leaf, self._defects)))

    def _isolate(self, rect: Rect, defect: Defect, order: Sequence[str]) -> Node:
        """Return the cuts along the sides of a defect, in an order; what is left holds it."""
        if not order:
            return RestLeaf()
        is_first = order[0] in {"right", "high"}  # whether what holds the defect is the low piece
        cut = self._cut_along(rect, defect, order[0])
        if cut is None:
            return self._isolate(rect, defect, order[1:])
        holding = split(cut, rect)[0 if is_first else 1]
        if not holding.length or not holding.width:  # the blade runs off the piece there
            return replace(cut, first=RestLeaf())
        inner = self._isolate(holding, defect, order[1:])
        first, second = (inner, RestLeaf()) if is_first else (RestLeaf(), inner)
        return replace(cut, first=first, second=second)

    def _cut_along(self, rect: Rect, defect: Defect, side: str) -> Cut | None:
        """Return the cut along one side of a defect, None where nothing usable lies beyond."""
        usable, kerf = usable_of(rect, self._sheet), self._kerf
        direction, at, beyond = {
            "left": (Direction.CROSSCUT, defect.x - rect.x, defect.x - usable.x),
            "right": (
                Direction.CROSSCUT,
                defect.x + defect.length - kerf - rect.x,
                usable.x + usable.length - defect.x - defect.length,
            ),
            "low": (Direction.RIP, defect.y - rect.y, defect.y - usable.y),
            "high": (
                Direction.RIP,
                defect.y + defect.width - kerf - rect.y,
                usable.y + usable.width - defect.y - defect.width,
            ),
        }[side]
        if beyond <= kerf or at <= 0:
            return None
        extent = rect.length if direction is Direction.CROSSCUT else rect.width
        removed = min(kerf, extent - at)
        return Cut(direction=direction, at=at, removed=removed, first=None, second=None)


def _list_pieces(sheet: Sheet, root: Node, defects: Sequence[Defect]) -> Iterator[SoundPiece]:
    whole = whole_of(sheet)
    for place in walk(root, whole):
        rect, usable = place.rect, usable_of(place.rect, sheet)
        if (
            isinstance(place.node, RestLeaf)
            and is_sound(rect, defects)
            and min(usable.length, usable.width) > 0
        ):
            yield SoundPiece(
                path=place.path,
                rect=rect,
                trim=trim_of(rect, sheet),
            )


def _worth(sheet: Sheet, rects: Iterator[Rect]) -> int:
    """Return how large some pieces are: one large piece is worth more than two small ones."""
    usable = (usable_of(rect, sheet) for rect in rects)
    return sum((each.length * each.width) ** 2 for each in usable)
