"""Laying a finished sheet again so that its parts keep clear of defects.

The pieces of its rows change places and move apart; no piece goes into another row. Every order of
a row is looked at, with each piece as near the low edge as it is clear, right behind a defect, or
pushed to the high end, until one is clear throughout or a limit of looks is reached. The limit
counts looks, not seconds, so that the same job comes out alike everywhere.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.defects.content import Block, Content, Row, read_content
from nesting.defects.row_cuts import Item, cut_free, cut_row, throw_away
from nesting.job import Job
from nesting.layout import Direction, Node, PartLeaf, Rect, walk, whole_of
from nesting.lengths import Length
from nesting.search.realise import trim_home_edges
from nesting.sheets import Defect, Sheet, Use
from nesting.zones import is_sound, list_barred, meets, usable_of

MOST_LOOKS = 1_000
DEEPEST = 200
"""Pieces one behind the other; what has more is left to the search on sound pieces."""


def dodge(job: Job, sheet: Sheet, root: Node) -> Node | None:
    """Return the tree of a sheet laid so that no part lies where it must not.

    Its leftovers are not judged yet. A tree that keeps clear as it is comes back unchanged.

    Args:
        job: The job.
        sheet: The sheet that it is to be cut from, of the size it was laid out for.
        root: The tree.

    Returns:
        None where no way was found.
    """
    if lies_clear(job, sheet, root):
        return root
    content = read_content(job, sheet, root)
    if content is None or _depth(content) > DEEPEST:
        return None
    rect = Rect(
        x=sheet.trim.left,
        y=sheet.trim.bottom,
        length=sheet.length - sheet.trim.left,
        width=sheet.width - sheet.trim.bottom,
    )
    node = _Layer(job, sheet).lay(content, rect)
    return None if node is None else trim_home_edges(sheet, node, job.saw.kerf)


def lies_clear(job: Job, sheet: Sheet, root: Node) -> bool:
    """Return whether no part of a tree lies where it must not."""
    whole = whole_of(sheet)
    return all(
        is_sound(place.rect, list_barred(job.parts[place.node.part], sheet.defects))
        for place in walk(root, whole)
        if isinstance(place.node, PartLeaf)
    )


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _Spot:
    """How far a row is laid: its pieces so far, those still to come, and the room for them."""

    items: tuple[Item, ...]
    left: tuple[Content, ...]
    start: Length
    end: Length


class _Layer:
    """Lays the content of one sheet."""

    def __init__(self, job: Job, sheet: Sheet) -> None:
        self._sheet = sheet
        self._kerf = job.saw.kerf
        self._least = max(2 * self._kerf, 1)  # room before a piece that is not nothing
        self._looks = 0
        self._known: dict[tuple[int, Rect], Node | None] = {}

    def lay(self, content: Content, rect: Rect) -> Node | None:
        """Return the cuts that free a content from a piece that is large enough for it."""
        key = (id(content), rect)
        if key not in self._known:
            self._looks += 1
            self._known[key] = (
                self._lay_block(content, rect)
                if isinstance(content, Block)
                else self._lay_row(content, rect)
            )
        return self._known[key]

    def _barred(self, content: Content, rect: Rect) -> list[Defect]:
        """Return the defects in a piece that matter to a content."""
        return [
            defect
            for defect in self._sheet.defects
            if (defect.use is Use.NOTHING or content.has_shown) and meets(rect, defect)
        ]

    def _lay_block(self, block: Block, rect: Rect) -> Node | None:
        barred, usable = self._barred(block, rect), usable_of(rect, self._sheet)
        ends_x = [_end(Direction.CROSSCUT, defect) for defect in barred]
        ends_y = [_end(Direction.RIP, defect) for defect in barred]
        places = [
            Rect(x=x, y=y, length=block.length, width=block.width)
            for x in self._starts(usable.x, usable.x + usable.length, block.length, ends_x)
            for y in self._starts(usable.y, usable.y + usable.width, block.width, ends_y)
        ]
        clear = [place for place in places if is_sound(place, barred)]
        if not clear:
            return None
        fewest_cuts = min(clear, key=lambda place: (place.x > usable.x) + (place.y > usable.y))
        return cut_free(block.leaf, fewest_cuts, rect, self._kerf, throw_away)

    def _lay_row(self, row: Row, rect: Rect) -> Node | None:
        usable = usable_of(rect, self._sheet)
        start, end = usable.x, usable.x + usable.length
        if row.direction is Direction.RIP:
            start, end = usable.y, usable.y + usable.width
        spot = _Spot(items=(), left=row.members, start=start, end=end)
        items = self._line_up(row, rect, spot)
        if items is None:
            return None
        return cut_row(row.direction, rect, items, self._kerf, throw_away)

    def _line_up(self, row: Row, rect: Rect, spot: _Spot) -> tuple[Item, ...] | None:
        """Return the pieces of a row where they are clear, None where that was not found."""
        if not spot.left:
            return spot.items
        direction = row.direction
        ends = [_end(direction, each) for each in self._barred(row, rect)]
        ahead = [end for end in ends if end > spot.start]
        needed = sum(_extent(direction, each) for each in spot.left)
        needed += (len(spot.left) - 1) * self._kerf
        tried: set[tuple[Length, Length, bool]] = set()
        for index, member in enumerate(spot.left):
            shape = (member.length, member.width, member.has_shown)
            if self._looks >= MOST_LOOKS or (tried and not ahead):
                return None
            if isinstance(member, Block) and shape in tried:
                continue
            tried.add(shape)
            extent = _extent(direction, member)
            for start in self._starts(spot.start, spot.end, needed, ahead):
                node = self.lay(member, _section(direction, rect, start, extent))
                if node is None:
                    continue
                further = _Spot(
                    items=(*spot.items, Item(start=start, end=start + extent, node=node)),
                    left=(*spot.left[:index], *spot.left[index + 1 :]),
                    start=start + extent + self._kerf,
                    end=spot.end,
                )
                if found := self._line_up(row, rect, further):
                    return found
        return None

    def _starts(
        self, low: Length, high: Length, extent: Length, ends: list[Length]
    ) -> Iterator[Length]:
        """Yield where something may begin: at the low edge, behind a defect, at the high end."""
        last = high - extent
        behind = (max(end, low + self._least) for end in ends if end > low)
        for start in dict.fromkeys((low, *sorted(behind), last)):
            if low <= start <= last and (start == low or start >= low + self._least):
                yield start


def _depth(content: Content) -> int:
    """Return how many calls deep laying it goes: pieces in a row, and rows in rows."""
    if isinstance(content, Block):
        return 1
    return len(content.members) + max(map(_depth, content.members))


def _extent(direction: Direction, content: Content) -> Length:
    """Return how much of a row a content takes."""
    return content.length if direction is Direction.CROSSCUT else content.width


def _end(direction: Direction, defect: Defect) -> Length:
    """Return where a defect ends along a row."""
    if direction is Direction.CROSSCUT:
        return defect.x + defect.length
    return defect.y + defect.width


def _section(direction: Direction, rect: Rect, start: Length, extent: Length) -> Rect:
    """Return a piece of a row, as wide as the row."""
    if direction is Direction.CROSSCUT:
        return Rect(x=start, y=rect.y, length=extent, width=rect.width)
    return Rect(x=rect.x, y=start, length=rect.length, width=extent)
