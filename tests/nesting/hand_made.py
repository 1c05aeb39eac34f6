"""Jobs and layouts made by hand, for tests that must not depend on the search."""

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal

from hypothesis import strategies as st

from nesting.job import Job
from nesting.layout import Cut, Direction, Layout, Node, PartLeaf, RestLeaf, SheetLayout
from nesting.lengths import Length, mm
from nesting.parts import Part
from nesting.saw import Saw
from nesting.sheets import Sheet, SheetGrain, Trim

SAW = Saw()
BIRCH = Sheet(
    name="birch 18",
    material="birch plywood",
    thickness=mm(18),
    measured=(mm("17.7"),),
    length=mm(2440),
    width=mm(1220),
    price=Decimal("62.00"),
    trim=Trim(left=mm(10), right=mm(10), top=mm(10), bottom=mm(10)),
)

Item = tuple[Length, Node]
"""A node and its extent in the direction of the row that it stands in."""


def part(name: str, length: int | str, width: int | str, count: int = 1) -> Part:
    """Return a plain part of 18 mm birch, sizes in millimetres."""
    return Part(
        name=name,
        length=mm(length),
        width=mm(width),
        count=count,
        material=BIRCH.material,
        thickness=BIRCH.thickness,
    )


def job(*parts: Part, sheets: Sequence[Sheet] = (BIRCH,), saw: Saw = SAW) -> Job:
    """Return a job of these parts."""
    return Job(name="Test shelves", step=mm("0.5"), saw=saw, sheets=tuple(sheets), parts=parts)


def row(direction: Direction, extent: Length, items: Sequence[Item], kerf: Length) -> Node:
    """Return the tree that cuts a piece into these items, low edge first."""
    starts = [extent]
    for size, _ in items:
        starts.append(starts[-1] - size - kerf)
    left = starts[-1] + kerf  # beyond the last item, its cut not yet made
    assert left >= 0, "the items do not fit in the row"
    beyond: Node | None = None if left <= kerf else RestLeaf(is_offcut=left >= mm(300))
    tree: Node | None = None
    for index in range(len(items) - 1, -1, -1):
        size, node = items[index]
        is_last = index == len(items) - 1
        if is_last and left == 0:
            tree = node
            continue
        tree = Cut(
            direction=direction,
            at=size,
            removed=min(kerf, left) if is_last else kerf,
            first=node,
            second=beyond if is_last else tree,
        )
    assert tree is not None, "a row needs an item"
    return tree


def trimmed(sheet: Sheet, kerf: Length, inner: Node) -> Node:
    """Return the tree that takes off the two low edges, the long one first."""
    for direction, trim in (
        (Direction.CROSSCUT, sheet.trim.left),
        (Direction.RIP, sheet.trim.bottom),
    ):
        if trim:
            at = max(0, trim - kerf)
            inner = Cut(
                direction=direction,
                at=at,
                removed=trim - at,
                first=RestLeaf() if at else None,
                second=inner,
                is_trim=True,
            )
    return inner


def strips(
    job: Job, strips: Sequence[tuple[Length, Sequence[PartLeaf]]], sheet: int = 0
) -> SheetLayout:
    """Return a sheet ripped into strips of these heights, each crosscut into its parts.

    A part lower than its strip is ripped to size by a cut of its own.
    """
    stock, kerf = job.sheets[sheet], job.saw.kerf
    length, width = stock.length - stock.trim.left, stock.width - stock.trim.bottom
    cut_strips: list[Item] = []
    for height, leaves in strips:
        items: list[Item] = []
        for leaf in leaves:
            kind = job.parts[leaf.part]
            along, across = kind.blank_length, kind.blank_width
            if leaf.turned:
                along, across = across, along
            items.append((along, row(Direction.RIP, height, [(across, leaf)], kerf)))
        cut_strips.append((height, row(Direction.CROSSCUT, length, items, kerf)))
    inner = row(Direction.RIP, width, cut_strips, kerf)
    return SheetLayout(sheet=sheet, root=trimmed(stock, kerf, inner))


def two_cabinets() -> tuple[Job, Layout]:
    """Return four sides, four tops and two braces on one sheet, in three strips."""
    made = job(part("Side", 562, 300, 4), part("Top", 400, 300, 4), part("Brace", 400, 80, 2))
    sheet = strips(
        made,
        [
            (mm(300), [PartLeaf(part=0, copy=copy) for copy in range(4)]),
            (mm(300), [PartLeaf(part=1, copy=copy) for copy in range(4)]),
            (mm(80), [PartLeaf(part=2, copy=copy) for copy in range(2)]),
        ],
    )
    return made, Layout(sheets=(sheet,))


@st.composite
def guillotine_jobs(draw: st.DrawFn, *, most_cuts: int = 40) -> tuple[Job, Layout]:
    """Return a job whose one sheet is cut up at random, every part a kind of its own.

    Sizes are few, so that cuts often share a setting.
    """
    kerf = draw(st.sampled_from([0, mm("2.4"), mm(3)]))
    trim = draw(st.sampled_from([0, mm("1.5"), mm(10)]))
    stock = replace(
        BIRCH,
        trim=Trim(left=trim, right=0, top=0, bottom=trim),
        grain=draw(st.sampled_from(SheetGrain)),
    )
    parts: list[Part] = []
    cuts = 0

    def cut_up(length: Length, width: Length) -> Node:
        nonlocal cuts
        direction = draw(st.sampled_from(Direction))
        extent = width if direction is Direction.RIP else length
        sizes = [size for size in (mm(100), mm(150), mm(300), mm(600)) if size < extent]
        if cuts >= most_cuts or not sizes or not draw(st.integers(0, 5)):
            return leaf(length, width)
        cuts += 1
        at = draw(st.sampled_from(sizes))
        removed = min(kerf, extent - at)
        left = extent - at - removed
        if direction is Direction.RIP:
            first, second = cut_up(length, at), cut_up(length, left) if left else None
        else:
            first, second = cut_up(at, width), cut_up(left, width) if left else None
        return Cut(direction=direction, at=at, removed=removed, first=first, second=second)

    def leaf(length: Length, width: Length) -> Node:
        if draw(st.booleans()):
            return RestLeaf(is_offcut=draw(st.booleans()))
        turned = draw(st.booleans())
        name = f"Piece {len(parts) + 1}"
        along, across = (width, length) if turned else (length, width)
        parts.append(
            replace(part(name, 1, 1), length=along, width=across),
        )
        return PartLeaf(part=len(parts) - 1, copy=0, turned=turned)

    inner = cut_up(stock.length - trim, stock.width - trim)
    made = job(*parts, sheets=[stock], saw=replace(SAW, kerf=kerf))
    return made, Layout(sheets=(SheetLayout(sheet=0, root=trimmed(stock, kerf, inner)),))
