"""Every rule that a layout must keep, written apart from the search.

This module shares no code with what makes layouts: it replays each tree of cuts with its own
arithmetic. A message from it is a bug of ours, never the user's.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from nesting.job import Job
from nesting.layout import By, Cut, Direction, Layout, Node, PartLeaf, RestLeaf, SheetLayout
from nesting.lengths import Length
from nesting.parts import Grain, Part
from nesting.sheets import Defect, Sheet, SheetGrain, Use


@dataclass(frozen=True, slots=True)
class _Wood:
    """A rectangle of a sheet by its four edges."""

    left: Length
    low: Length
    right: Length
    high: Length

    @property
    def area(self) -> int:
        return (self.right - self.left) * (self.high - self.low)


def check_layout(job: Job, layout: Layout) -> tuple[str, ...]:
    """Return what is wrong with a layout, one sentence each; empty where it keeps every rule.

    Checked are: every copy placed once or reported once; cuts that run edge to edge, in pieces that
    are there, and remove exactly one kerf; parts of the right size, on the right material and
    thickness, with the right grain, inside the trims and on no defect that they must not lie on; no
    more sheets than there are; trims cut off where they must be; leftovers kept that are sound and
    worth it; and areas that add up exactly.
    """
    faults = [*_check_copies(job, layout), *_check_stock(job, layout)]
    for number, sheet in enumerate(layout.sheets, start=1):
        if 0 <= sheet.sheet < len(job.sheets):
            faults += [f"sheet {number}: {fault}" for fault in _check_sheet(job, sheet)]
    return tuple(faults)


def _check_copies(job: Job, layout: Layout) -> Iterator[str]:
    """Check that every copy is placed or reported, and none twice."""
    placed = Counter(
        (leaf.part, leaf.copy) for sheet in layout.sheets for leaf in _list_parts(sheet.root)
    )
    for (part, copy), times in sorted(placed.items()):
        if not 0 <= part < len(job.parts):
            yield f"there is no part {part}"
        elif not 0 <= copy < job.parts[part].count:
            yield f"{job.parts[part].name!r} has no copy {copy}"
        if times > 1:
            yield f"copy {copy} of part {part} is placed {times} times"
    reported: Counter[int] = Counter()
    for item in layout.unplaced:
        reported[item.part] += item.count
        if item.count < 1 or not item.reason:
            yield f"part {item.part} is reported as unplaced without a count or a reason"
    found = Counter(part for part, _ in placed)
    for index, wanted in enumerate(job.parts):
        if found[index] + reported[index] != wanted.count:
            yield (
                f"{wanted.name!r} is wanted {wanted.count} times, placed {found[index]} times and "
                f"reported {reported[index]} times"
            )


def _list_parts(root: Node) -> Iterator[PartLeaf]:
    waiting: list[Node | None] = [root]
    while waiting:
        node = waiting.pop()
        if isinstance(node, PartLeaf):
            yield node
        elif isinstance(node, Cut):
            waiting += [node.second, node.first]


def _check_stock(job: Job, layout: Layout) -> Iterator[str]:
    """Check that the sheets exist and that there are enough of them."""
    used = Counter(sheet.sheet for sheet in layout.sheets)
    for index, times in sorted(used.items()):
        if not 0 <= index < len(job.sheets):
            yield f"there is no sheet {index}"
            continue
        count = job.sheets[index].count
        if count is not None and times > count:
            yield f"{times} of {job.sheets[index].name!r} are used, and there are {count}"


def _check_sheet(job: Job, layout: SheetLayout) -> Iterator[str]:
    """Replay the cuts of one sheet."""
    sheet = job.sheets[layout.sheet]
    whole = _Wood(0, 0, sheet.length, sheet.width)
    usable = _Wood(
        sheet.trim.left,
        sheet.trim.bottom,
        sheet.length - sheet.trim.right,
        sheet.width - sheet.trim.top,
    )
    area = 0
    waiting: list[tuple[Node, _Wood]] = [(layout.root, whole)]
    while waiting:
        node, wood = waiting.pop()
        if wood.right <= wood.left or wood.high <= wood.low:
            yield "a piece has no size"
            return
        if isinstance(node, Cut):
            faults = list(_check_cut(job, node, wood))
            yield from faults
            if faults:
                return
            first, dust, second = _saw(node, wood)
            area += dust.area
            waiting += [
                (piece, rest)
                for piece, rest in ((node.second, second), (node.first, first))
                if piece is not None
            ]
            continue
        area += wood.area
        if isinstance(node, PartLeaf):
            if 0 <= node.part < len(job.parts):
                yield from _check_part(job.parts[node.part], node, sheet, wood, usable)
                yield from _check_ground(job.parts[node.part], node, sheet, wood)
        else:
            yield from _check_rest(job, node, sheet, wood, usable)
    if area != whole.area:
        yield f"parts, leftovers and dust make {area}, the sheet has {whole.area}"


def _saw(cut: Cut, wood: _Wood) -> tuple[_Wood, _Wood, _Wood]:
    """Return the piece at the low edge, the dust and the piece beyond."""
    if cut.direction is Direction.CROSSCUT:
        one, two = wood.left + cut.at, wood.left + cut.at + cut.removed
        return (
            _Wood(wood.left, wood.low, one, wood.high),
            _Wood(one, wood.low, two, wood.high),
            _Wood(two, wood.low, wood.right, wood.high),
        )
    one, two = wood.low + cut.at, wood.low + cut.at + cut.removed
    return (
        _Wood(wood.left, wood.low, wood.right, one),
        _Wood(wood.left, one, wood.right, two),
        _Wood(wood.left, two, wood.right, wood.high),
    )


def _check_cut(job: Job, cut: Cut, wood: _Wood) -> Iterator[str]:
    """Check that a cut lies in its piece and removes one kerf, less only where it runs off."""
    is_crosscut = cut.direction is Direction.CROSSCUT
    size = wood.right - wood.left if is_crosscut else wood.high - wood.low
    beyond = size - cut.at - cut.removed
    if cut.at < 0 or cut.removed < 0 or beyond < 0:
        yield f"a cut at {cut.at} that removes {cut.removed} leaves its piece of {size}"
        return
    if (cut.first is None) is not (cut.at == 0):
        yield f"a cut at {cut.at} has {'no' if cut.first is None else 'a'} piece before it"
    if (cut.second is None) is not (beyond == 0):
        yield f"a cut with {beyond} beyond it has {'no' if cut.second is None else 'a'} piece there"
    if cut.first is None and cut.second is None:
        yield "a cut leaves nothing"
    if cut.by is By.YARD and job.yard is None:
        yield "a cut is left to the yard, and there is none"
        return
    kerf = job.yard.kerf if cut.by is By.YARD and job.yard is not None else job.saw.kerf
    runs_off = cut.at == 0 or beyond == 0
    if cut.removed > kerf or (cut.removed != kerf and not runs_off):
        yield f"a cut removes {cut.removed}, and the kerf is {kerf}"
    if cut.removed == 0 and kerf > 0:
        yield "a cut removes nothing"
    if cut.is_trim and not (cut.first is None or isinstance(cut.first, RestLeaf)):
        yield "a trim holds more than waste"


def _check_part(
    part: Part, leaf: PartLeaf, sheet: Sheet, wood: _Wood, usable: _Wood
) -> Iterator[str]:
    """Check one part where it lies."""
    name = f"copy {leaf.copy} of {part.name!r}"
    size = (wood.right - wood.left, wood.high - wood.low)
    wanted = (part.blank_length, part.blank_width)
    if (size[1], size[0]) != wanted if leaf.turned else size != wanted:
        yield f"{name} comes out as {size[0]} x {size[1]}"
    if (part.material, part.thickness) != (sheet.material, sheet.thickness):
        yield f"{name} is cut from {sheet.name!r}, which is not its material and thickness"
    if not _runs_with_grain(part, sheet, turned=leaf.turned):
        yield f"{name} lies against the grain of {sheet.name!r}"
    if (
        wood.left < usable.left
        or wood.low < usable.low
        or wood.right > usable.right
        or wood.high > usable.high
    ):
        yield f"{name} lies in the trim"


def _runs_with_grain(part: Part, sheet: Sheet, *, turned: bool) -> bool:
    """Return whether the side that must run with the grain does."""
    if part.grain is Grain.ANY or sheet.grain is SheetGrain.NONE:
        return True
    side_along_x = Grain.WIDTH if turned else Grain.LENGTH
    side_along_y = Grain.LENGTH if turned else Grain.WIDTH
    return part.grain is (side_along_x if sheet.grain is SheetGrain.LENGTH else side_along_y)


def _check_ground(part: Part, leaf: PartLeaf, sheet: Sheet, wood: _Wood) -> Iterator[str]:
    """Check that a part lies on no defect, or is hidden and lies on one that is for such parts."""
    for defect in sheet.defects:
        if not _is_on(wood, defect):
            continue
        if defect.use is Use.NOTHING:
            yield f"copy {leaf.copy} of {part.name!r} lies on a {defect.what} of {sheet.name!r}"
        elif not part.is_hidden:
            yield (
                f"copy {leaf.copy} of {part.name!r} shows and lies on a {defect.what} of "
                f"{sheet.name!r}, which is for hidden parts"
            )


def _is_on(wood: _Wood, defect: Defect) -> bool:
    """Return whether a piece and a defect have more than an edge in common."""
    along = min(wood.right, defect.x + defect.length) - max(wood.left, defect.x)
    across = min(wood.high, defect.y + defect.width) - max(wood.low, defect.y)
    return along > 0 and across > 0


def _check_rest(
    job: Job, leaf: RestLeaf, sheet: Sheet, wood: _Wood, usable: _Wood
) -> Iterator[str]:
    """Check that a leftover is called an offcut exactly where it is sound and worth keeping."""
    sides = (
        min(wood.right, usable.right) - max(wood.left, usable.left),
        min(wood.high, usable.high) - max(wood.low, usable.low),
    )
    is_worth_keeping = min(sides) >= job.keep.width and max(sides) >= job.keep.length
    is_sound = not any(_is_on(wood, defect) for defect in sheet.defects)
    if leaf.is_offcut is not (is_worth_keeping and is_sound):
        yield f"a leftover of {sides[0]} x {sides[1]} is {'' if leaf.is_offcut else 'not '}kept"
