"""The cuts that free pieces where they lie: apart in a row, or in a larger piece."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from nesting.layout import Cut, Direction, Node, Rect, RestLeaf
from nesting.lengths import Length

Leftover = Callable[[Rect], Node]
"""What becomes of a leftover that lies somewhere on the sheet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """A piece of a row.

    Attributes:
        start: Where it begins along the row, on the sheet.
        end: Where it ends.
        node: What is done to it.
    """

    start: Length
    end: Length
    node: Node


def cut_row(
    direction: Direction, rect: Rect, items: Sequence[Item], kerf: Length, leftover: Leftover
) -> Node:
    """Return the cuts that free the pieces of a row one by one from the low edge.

    Args:
        direction: Of the cuts: crosscuts where the row runs along x.
        rect: The piece that is cut up.
        items: The pieces, a kerf or more apart. Room before one of them is as wide as a kerf and
            a leftover, or nothing.
        kerf: Width that a cut removes.
        leftover: What becomes of the room between and behind them.
    """
    low, high = _ends(direction, rect)
    last = items[-1]
    node = last.node
    if last.end < high:
        beyond = last.end + kerf
        node = Cut(
            direction=direction,
            at=last.end - last.start,
            removed=min(kerf, high - last.end),
            first=node,
            second=leftover(_slice(direction, rect, beyond, high)) if beyond < high else None,
        )
    for index in range(len(items) - 1, -1, -1):
        start = items[index - 1].end + kerf if index else low
        room = items[index].start - start
        if room:
            waste = _slice(direction, rect, start, start + room - kerf)
            node = Cut(
                direction=direction,
                at=room - kerf,
                removed=kerf,
                first=leftover(waste),
                second=node,
            )
        if index:
            before = items[index - 1]
            node = Cut(
                direction=direction,
                at=before.end - before.start,
                removed=kerf,
                first=before.node,
                second=node,
            )
    return node


def cut_free(node: Node, inner: Rect, rect: Rect, kerf: Length, leftover: Leftover) -> Node:
    """Return the cuts that free one piece from a larger one, the larger leftover first.

    Args:
        node: What is done to the piece.
        inner: Where it lies.
        rect: The larger piece.
        kerf: Width that a cut removes.
        leftover: What becomes of what lies round it.
    """
    over_x, over_y = rect.length - inner.length, rect.width - inner.width
    ways = [Direction.CROSSCUT, Direction.RIP]
    if over_x * rect.width < over_y * rect.length:
        ways.reverse()
    outer, inside = ways
    strip = (
        Rect(x=inner.x, y=rect.y, length=inner.length, width=rect.width)
        if outer is Direction.CROSSCUT
        else Rect(x=rect.x, y=inner.y, length=rect.length, width=inner.width)
    )
    for direction, piece in ((inside, strip), (outer, rect)):
        start, end = _ends(direction, inner)
        if (start, end) != _ends(direction, piece):
            item = Item(start=start, end=end, node=node)
            node = cut_row(direction, piece, [item], kerf, leftover)
    return node


def throw_away(_: Rect) -> Node:
    """Return what becomes of a leftover before it is judged."""
    return RestLeaf()


def _ends(direction: Direction, rect: Rect) -> tuple[Length, Length]:
    if direction is Direction.CROSSCUT:
        return rect.x, rect.x + rect.length
    return rect.y, rect.y + rect.width


def _slice(direction: Direction, rect: Rect, start: Length, end: Length) -> Rect:
    if direction is Direction.CROSSCUT:
        return Rect(x=start, y=rect.y, length=end - start, width=rect.width)
    return Rect(x=rect.x, y=start, length=rect.length, width=end - start)
