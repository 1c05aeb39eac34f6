"""The layout: for every sheet a tree of cuts.

A sheet is cut edge to edge into two pieces, each piece again, until every leaf is a part, an
offcut or waste. The tree is what the search changes, what the sequence walks and what the page
draws; nothing else stores positions. `walk` derives them.

x runs along the sheet's length and y along its width, from the home corner: the bottom left
corner as seen from the good face. Every piece is measured from its low edges (least x, least y),
which are trimmed or freshly cut. So the first piece of a cut has the size that is kept, and the
kerf lies beyond it.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from enum import Enum
from typing import TypeAlias

from nesting.lengths import Length
from nesting.sheets import Sheet


class Direction(Enum):
    """How a cut runs: a rip along x, a crosscut along y."""

    RIP = "rip"
    CROSSCUT = "crosscut"


class By(Enum):
    """Whose saw makes a cut."""

    HOME = "home"
    YARD = "yard"


@dataclass(frozen=True, slots=True, kw_only=True)
class PartLeaf:
    """A piece that is a part.

    Attributes:
        part: Index into `Job.parts`.
        copy: Which copy of it, from 0.
        turned: True where the part's own length lies along y.
    """

    part: int
    copy: int
    turned: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class RestLeaf:
    """A piece that is no part: an offcut where it is worth keeping, else waste."""

    is_offcut: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """One cut across a whole piece.

    Attributes:
        direction: Rip or crosscut.
        at: Size of the first piece, from the low edge to the kerf; 0 where there is no first
            piece and the blade runs off the low edge.
        removed: Width of the wood turned to dust: one kerf, less only where the blade runs off
            the piece.
        first: The piece at the low edge, None where at is 0.
        second: The piece beyond the kerf, None where the blade runs off the high edge.
        is_trim: True for the cut that takes a raw edge off; then the second piece is the one kept.
        by: Whose saw.
        remark: What is done before it; empty for nothing.
    """

    direction: Direction
    at: Length
    removed: Length
    first: "Node | None"
    second: "Node | None"
    is_trim: bool = False
    by: By = By.HOME
    remark: str = ""


Node: TypeAlias = Cut | PartLeaf | RestLeaf


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetLayout:
    """One sheet, cut up.

    Attributes:
        sheet: Index into `Job.sheets`.
        root: What is done to the whole sheet.
    """

    sheet: int
    root: Node


@dataclass(frozen=True, slots=True, kw_only=True)
class Unplaced:
    """Copies of a part that could not be placed.

    Attributes:
        part: Index into `Job.parts`.
        count: How many copies.
        reason: Why, and the nearest thing that would fit them, in the user's units.
    """

    part: int
    count: int
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """The engine's whole output.

    Attributes:
        sheets: The sheets used, in the order they are cut.
        unplaced: What could not be placed.
        notes: What the person must be told about it, a sentence or two each.
    """

    sheets: tuple[SheetLayout, ...]
    unplaced: tuple[Unplaced, ...] = ()
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Rect:
    """A rectangle on a sheet: its low corner and its extent along x and y."""

    x: Length
    y: Length
    length: Length
    width: Length


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A node of the tree and the rectangle of the piece it describes.

    Attributes:
        path: How the node is reached from the root: 0 for a first piece, 1 for a second.
        node: The node.
        rect: The piece before the node's cut, or the leaf itself.
    """

    path: tuple[int, ...]
    node: Node
    rect: Rect


def walk(root: Node, whole: Rect) -> Iterator[Place]:
    """Yield every node below and including the root with its rectangle, parents first.

    Iterative, so that a sheet with a thousand strips does not exhaust the stack.
    """
    waiting = [Place(path=(), node=root, rect=whole)]
    while waiting:
        place = waiting.pop()
        yield place
        if isinstance(place.node, Cut):
            cut = place.node
            first, second = split(cut, place.rect)
            if cut.second is not None:
                waiting.append(Place(path=(*place.path, 1), node=cut.second, rect=second))
            if cut.first is not None:
                waiting.append(Place(path=(*place.path, 0), node=cut.first, rect=first))


def list_parts(root: Node) -> Iterator[PartLeaf]:
    """Yield the parts of a tree, the pieces at the low edges first."""
    waiting: list[Node | None] = [root]
    while waiting:
        node = waiting.pop()
        if isinstance(node, PartLeaf):
            yield node
        elif isinstance(node, Cut):
            waiting += [node.second, node.first]


def whole_of(sheet: Sheet) -> Rect:
    """Return a sheet as a rectangle, trims and all."""
    return Rect(x=0, y=0, length=sheet.length, width=sheet.width)


def split(cut: Cut, rect: Rect) -> tuple[Rect, Rect]:
    """Return the rectangles of a cut's first and second piece; either may have no extent."""
    beyond = cut.at + cut.removed
    if cut.direction is Direction.RIP:
        return (
            Rect(x=rect.x, y=rect.y, length=rect.length, width=cut.at),
            Rect(x=rect.x, y=rect.y + beyond, length=rect.length, width=rect.width - beyond),
        )
    return (
        Rect(x=rect.x, y=rect.y, length=cut.at, width=rect.width),
        Rect(x=rect.x + beyond, y=rect.y, length=rect.length - beyond, width=rect.width),
    )


def band(cut: Cut, rect: Rect) -> Rect:
    """Return the wood that a cut removes from a piece."""
    if cut.direction is Direction.RIP:
        return Rect(x=rect.x, y=rect.y + cut.at, length=rect.length, width=cut.removed)
    return Rect(x=rect.x + cut.at, y=rect.y, length=cut.removed, width=rect.width)


def map_leaves(root: Node, change: Callable[[PartLeaf], Node]) -> Node:
    """Return a tree with its parts changed. Iterative: a strip may be a thousand cuts deep."""
    anywhere = Rect(x=0, y=0, length=0, width=0)
    done: dict[tuple[int, ...], Node] = {}
    for place in sorted(walk(root, anywhere), key=lambda place: -len(place.path)):
        node = place.node
        if isinstance(node, PartLeaf):
            node = change(node)
        elif isinstance(node, Cut):
            node = replace(
                node,
                first=done.pop((*place.path, 0), None),
                second=done.pop((*place.path, 1), None),
            )
        done[place.path] = node
    return done[()]


def replace_leaves(root: Node, leaves: Mapping[tuple[int, ...], Node]) -> Node:
    """Return a tree with other nodes in place of the leaves at some paths. Iterative.

    Args:
        root: The tree.
        leaves: What comes in place of the leaf at a path, see `Place.path`.
    """
    nodes: dict[tuple[int, ...], Node] = {}
    for place in reversed(list(walk(root, Rect(x=0, y=0, length=0, width=0)))):
        if isinstance(place.node, Cut):
            nodes[place.path] = replace(
                place.node,
                first=nodes.pop((*place.path, 0), None),
                second=nodes.pop((*place.path, 1), None),
            )
        else:
            nodes[place.path] = leaves.get(place.path, place.node)
    return nodes[()]
