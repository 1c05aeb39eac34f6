"""Blocks: what is stacked down a page and never torn apart."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from plans.pages.shapes import Hatch, Line, Rectangle, Shape, Solid, Text, TickBox

FEW_LINES = 16.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """Shapes that stay together, drawn from the top left corner of the block.

    Attributes:
        height: How much of the page it takes.
        shapes: What is in it.
        is_glued: True where the next block must stand on the same page.
    """

    height: float
    shapes: tuple[Shape, ...] = ()
    is_glued: bool = False


def space(height: float) -> Block:
    """Return an empty block."""
    return Block(height=height, is_glued=True)


def move(shape: Shape, over: float, down: float) -> Shape:
    """Return a shape moved to the right and down."""
    match shape:
        case Line(x1=x1, y1=y1, x2=x2, y2=y2):
            return replace(shape, x1=x1 + over, y1=y1 + down, x2=x2 + over, y2=y2 + down)
        case Hatch(x=x, y=y, gaps=gaps):
            moved = tuple(replace(gap, x=gap.x + over, y=gap.y + down) for gap in gaps)
            return replace(shape, x=x + over, y=y + down, gaps=moved)
        case Solid(points=points):
            return Solid(points=tuple((x + over, y + down) for x, y in points))
        case Rectangle(x=x, y=y) | TickBox(x=x, y=y) | Text(x=x, y=y):
            return replace(shape, x=x + over, y=y + down)


def moved(shapes: Iterable[Shape], over: float, down: float) -> tuple[Shape, ...]:
    """Return shapes moved to the right and down."""
    return tuple(move(shape, over, down) for shape in shapes)


def stack(blocks: Iterable[Block]) -> Block:
    """Return blocks one below the other as one block."""
    shapes: list[Shape] = []
    height = 0.0
    for block in blocks:
        shapes += moved(block.shapes, 0.0, height)
        height += block.height
    return Block(height=height, shapes=tuple(shapes))


def side_by_side(columns: Sequence[tuple[float, Block]]) -> Block:
    """Return blocks beside each other, each from its own x, as one block."""
    return Block(
        height=max((block.height for _, block in columns), default=0.0),
        shapes=tuple(shape for over, block in columns for shape in moved(block.shapes, over, 0.0)),
    )


def flow(
    blocks: Sequence[Block], room: float, later_head: Sequence[Block] = ()
) -> tuple[Block, ...]:
    """Return blocks stacked into columns no higher than a page's room.

    Args:
        blocks: In reading order. A block that is glued goes where the next one goes.
        room: Height of a page's body.
        later_head: What stands at the top of every page but the first, such as a table's head.

    Returns:
        One block per page, at least one. Where only a few lines would stand on the last page, the
        white between blocks is halved if that saves the page.
    """
    pages = _pages(blocks, room, later_head)
    over = sum(block.height for block in pages[-1]) - sum(block.height for block in later_head)
    if len(pages) > 1 and over <= FEW_LINES:
        tight = [
            block if block.shapes else replace(block, height=block.height / 2) for block in blocks
        ]
        fewer = _pages(tight, room, later_head)
        if len(fewer) < len(pages):
            pages = fewer
    return tuple(stack(page) for page in pages)


def _pages(blocks: Sequence[Block], room: float, later_head: Sequence[Block]) -> list[list[Block]]:
    """Return the blocks of each page."""
    pages: list[list[Block]] = [[]]
    used = 0.0
    head_height = sum(block.height for block in later_head)
    for group in _glued_groups(blocks):
        height = sum(block.height for block in group)
        is_fresh = len(pages[-1]) == (len(later_head) if len(pages) > 1 else 0)
        if used + height > room and not is_fresh:
            pages.append(list(later_head))
            used = head_height
        pages[-1] += group
        used += height
    return pages


def _glued_groups(blocks: Sequence[Block]) -> list[list[Block]]:
    groups: list[list[Block]] = []
    joins = False
    for block in blocks:
        if joins:
            groups[-1].append(block)
        else:
            groups.append([block])
        joins = block.is_glued
    return groups
