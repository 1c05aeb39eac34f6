"""Blocks: what is stacked down a page and never torn apart."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import product

from plans.pages.shapes import Hatch, Line, Rectangle, Shape, Solid, Text, TickBox

FEW_LINES = 24.0
BETWEEN_SECTIONS = 6.0
GOOD_START = 30.0  # of a section that begins below another


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """What stands under one title, on a page of its own or below what comes before.

    Attributes:
        title: Of the page; stands again above the section where another begins the page.
        blocks: In reading order. A block that is glued goes where the next one goes.
        later_head: What stands at the top of every later page, such as a table's head.
    """

    title: str
    blocks: tuple[Block, ...]
    later_head: tuple[Block, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Filled:
    """One page's body, and the titles of what stands on it."""

    titles: tuple[str, ...]
    body: Block


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
    section = Section(title="", blocks=tuple(blocks), later_head=tuple(later_head))
    return tuple(page.body for page in flow_sections([section], room, lambda _: Block(height=0.0)))


def flow_sections(
    sections: Sequence[Section], room: float, head: Callable[[str], Block]
) -> tuple[Filled, ...]:
    """Return sections one after the other on as few pages as their blocks allow.

    A section begins on a page of its own, or below the one before where that saves a page and a
    good start of it has room there.

    Args:
        sections: In the order of use, at least one.
        room: Height of a page's body.
        head: Makes what opens a section that does not begin a page, from its title.
    """
    pages = _fewest_pages(sections, room, head)
    last = pages[-1]
    if len(pages) > 1 and last.used - last.head <= FEW_LINES:
        tight = [replace(one, blocks=tuple(map(_tightened, one.blocks))) for one in sections]
        fewer = _fewest_pages(tight, room, head)
        if len(fewer) < len(pages):
            pages = fewer
    return tuple(Filled(titles=tuple(page.titles), body=stack(page.blocks)) for page in pages)


def _tightened(block: Block) -> Block:
    return block if block.shapes else replace(block, height=block.height / 2)


@dataclass(slots=True, kw_only=True)
class _Page:
    """A page that is being filled: what stands on it, how high, and how high its table's head."""

    titles: list[str]
    blocks: list[Block]
    used: float = 0.0
    head: float = 0.0

    def add(self, blocks: Sequence[Block]) -> None:
        self.blocks += blocks
        self.used += _height(blocks)


def _fewest_pages(
    sections: Sequence[Section], room: float, head: Callable[[str], Block]
) -> list[_Page]:
    """Return the pages, as many sections on pages of their own as cost no page."""
    ways = product((True, False), repeat=len(sections) - 1)
    fillings = [
        (-sum(begins_page), _pages(sections, room, head, (True, *begins_page)))
        for begins_page in ways
    ]
    return min(fillings, key=lambda filling: (len(filling[1]), filling[0]))[1]


def _pages(
    sections: Sequence[Section],
    room: float,
    head: Callable[[str], Block],
    begins_page: Sequence[bool],
) -> list[_Page]:
    """Return the pages, filled."""
    pages = [_Page(titles=[], blocks=[])]
    for section, is_fresh in zip(sections, begins_page, strict=True):
        groups = _glued_groups(_without_white_end(section.blocks))
        if pages[-1].titles:
            opening = [space(BETWEEN_SECTIONS), head(section.title)]
            needed = _height(opening) + _good_start(groups)
            if is_fresh or pages[-1].used + needed > room:
                pages.append(_Page(titles=[], blocks=[]))
            else:
                pages[-1].add(opening)
        pages[-1].titles.append(section.title)
        for group in groups:
            page = pages[-1]
            if page.used + _height(group) > room and page.used > page.head:
                page = _Page(titles=[section.title], blocks=[], head=_height(section.later_head))
                page.add(section.later_head)
                pages.append(page)
            page.add(group)
    return pages


def _without_white_end(blocks: Sequence[Block]) -> Sequence[Block]:
    """Return blocks without the white after the last one, which needs no page."""
    count = len(blocks)
    while count and not blocks[count - 1].shapes:
        count -= 1
    return blocks[:count]


def _good_start(groups: Sequence[Sequence[Block]]) -> float:
    """Return how much of a section must stand where it begins: all of a short one."""
    height = 0.0
    for group in groups:
        height += _height(group)
        if height >= GOOD_START:
            break
    return height


def _height(blocks: Sequence[Block]) -> float:
    return sum(block.height for block in blocks)


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
