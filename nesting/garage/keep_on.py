"""Keeping on as planned: the pieces in hand cut up as before, as far as that still holds.

What went wrong then needs room only for the parts that were lost with it: on what the plan leaves
over, and else on new sheets. So going on is never worse than the plan was.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from nesting.garage.hand import InHand
from nesting.garage.planned import Planned
from nesting.garage.remaining import Remaining
from nesting.job import Job
from nesting.layout import (
    Cut,
    Layout,
    Node,
    PartLeaf,
    Place,
    Rect,
    RestLeaf,
    SheetLayout,
    Unplaced,
    list_parts,
    map_leaves,
    replace_leaves,
    walk,
    whole_of,
)
from nesting.parts import Grain, Part
from nesting.saw import Keep
from nesting.sheets import Sheet, SheetGrain, Trim
from nesting.zones import cut_out, is_sound, is_worth_keeping, list_barred, trim_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """The pieces in hand, and sheets bought anew, with what the plan still makes of them.

    Attributes:
        sheets: For every one of them its index into the sheets of the job.
        roots: What is done to it; a leftover where nothing is.
        stock: Index of the first sheet of the job that is no piece in hand.
        lost: The job of the parts that have no place there. Its sheets are the leftovers that a
            part could come from, then the stock.
        rests: For every leftover among those sheets the root that it is part of and the path to it.
        members: For every part of that job the part of the whole one, and its copies there.
    """

    sheets: tuple[int, ...]
    roots: tuple[Node, ...]
    stock: int
    lost: Job
    rests: tuple[tuple[int, tuple[int, ...]], ...]
    members: tuple[tuple[int, tuple[int, ...]], ...]


def keep_on(remaining: Remaining, planned: Planned, anew: Sequence[InHand] = ()) -> Kept:
    """Return what the plan still makes of the pieces in hand.

    Args:
        remaining: What is left of the job.
        planned: The plan that was being cut.
        anew: Sheets that are not there, to be bought again where there are any in stock.
    """
    job = remaining.job
    assert job.earlier is not None
    copies = {
        code: (index, copy)
        for index, codes in enumerate(job.earlier.codes)
        for copy, code in enumerate(codes)
    }
    roots = []
    placed: Counter[tuple[int, int]] = Counter()
    first = len(remaining.in_hand)
    stock, bought = _buy_again(job.sheets[first:], planned, anew)
    pieces = [*enumerate(remaining.in_hand), *((first + index, piece) for index, piece in bought)]
    pieces.sort(key=lambda pair: pair[1].sheet)
    for index, piece in pieces:
        root = _root_of(job, job.sheets[index], piece, planned, copies)
        leaves = list(list_parts(root))
        if not leaves:
            root = make_rest(whole_of(job.sheets[index]), job.sheets[index], job.keep)
        placed.update((leaf.part, leaf.copy) for leaf in leaves)
        roots.append(root)
    sheets = tuple(index for index, _ in pieces)
    members = tuple(
        (index, missing)
        for index, part in enumerate(job.parts)
        if (missing := tuple(c for c in range(part.count) if (index, c) not in placed))
    )
    parts = tuple(replace(job.parts[index], count=len(missing)) for index, missing in members)
    rests = tuple(_rests([job.sheets[index] for index in sheets], roots, parts))
    return Kept(
        sheets=sheets,
        roots=tuple(roots),
        stock=first,
        lost=replace(
            job,
            parts=parts,
            sheets=(*(sheet for _, _, sheet in rests), *stock),
        ),
        rests=tuple((index, path) for index, path, _ in rests),
        members=members,
    )


def _buy_again(
    stock: Sequence[Sheet], planned: Planned, anew: Sequence[InHand]
) -> tuple[tuple[Sheet, ...], list[tuple[int, InHand]]]:
    """Return what is left of the stock, and each sheet bought again with its index there."""
    left = list(stock)
    bought = []
    for piece in anew:
        name = planned.sheets[piece.sheet - 1].stock
        for index, sheet in enumerate(left):
            is_same = (sheet.length, sheet.width) == (piece.length, piece.width)
            if sheet.name == name and is_same and sheet.count != 0:
                if sheet.count is not None:
                    left[index] = replace(sheet, count=sheet.count - 1)
                bought.append((index, piece))
                break
    return tuple(left), bought


def put_in(kept: Kept, found: Layout) -> Layout:
    """Return the whole layout: the kept pieces with the lost parts put into their leftovers.

    Args:
        kept: What the plan still makes of the pieces in hand.
        found: A layout of `kept.lost`.
    """
    roots = list(kept.roots)
    bought = []
    for sheet in found.sheets:
        root = map_leaves(sheet.root, lambda leaf: _rename(leaf, kept.members))
        if sheet.sheet < len(kept.rests):
            index, path = kept.rests[sheet.sheet]
            roots[index] = replace_leaves(roots[index], {path: root})
        else:
            stock = sheet.sheet - len(kept.rests) + kept.stock
            bought.append(SheetLayout(sheet=stock, root=root))
    return Layout(
        sheets=(
            *(
                SheetLayout(sheet=index, root=root)
                for index, root in zip(kept.sheets, roots, strict=True)
                if any(list_parts(root))
            ),
            *bought,
        ),
        unplaced=tuple(
            Unplaced(part=kept.members[gap.part][0], count=gap.count, reason=gap.reason)
            for gap in found.unplaced
        ),
    )


def _rename(leaf: PartLeaf, members: Sequence[tuple[int, tuple[int, ...]]]) -> PartLeaf:
    """Return a part of `Kept.lost` as one of the whole job."""
    part, copies = members[leaf.part]
    return replace(leaf, part=part, copy=copies[leaf.copy])


def make_rest(rect: Rect, sheet: Sheet, keep: Keep) -> RestLeaf:
    """Return a leftover, an offcut where it is sound and what lies inside the trims worth it."""
    return RestLeaf(is_offcut=is_worth_keeping(rect, sheet, keep) and is_sound(rect, sheet.defects))


def _root_of(
    job: Job,
    sheet: Sheet,
    piece: InHand,
    planned: Planned,
    copies: Mapping[str, tuple[int, int]],
) -> Node:
    """Return what the plan does with a piece, built from its leaves up."""
    whole = whole_of(sheet)
    if piece.origin is None or planned.kerf != job.saw.kerf:
        return make_rest(whole, sheet, job.keep)
    source = planned.sheets[piece.sheet - 1]
    base = source.pieces[piece.origin].rect
    nodes: dict[int, Node] = {}
    for index in range(len(source.pieces) - 1, piece.origin - 1, -1):
        found = source.pieces[index]
        if found.cut_by:
            cut = source.cuts[found.cut_by - 1]
            nodes[index] = Cut(
                direction=cut.direction,
                at=cut.at,
                removed=cut.removed,
                first=None if found.low is None else nodes[found.low],
                second=None if found.high is None else nodes[found.high],
                is_trim=cut.is_trim,
                by=cut.by,
                remark=cut.remark,
            )
            continue
        rect = replace(found.rect, x=found.rect.x - base.x, y=found.rect.y - base.y)
        nodes[index] = make_rest(rect, sheet, job.keep)
        if found.part is not None and found.code in copies:
            part, copy = copies[found.code]
            leaf = PartLeaf(part=part, copy=copy, turned=found.part.turned)
            if _is_still_right(job.parts[part], leaf, rect, sheet):
                nodes[index] = leaf
    return nodes[piece.origin]


def _is_still_right(part: Part, leaf: PartLeaf, rect: Rect, sheet: Sheet) -> bool:
    """Return whether a part as the job file has it now still belongs where the plan put it."""
    size = (rect.width, rect.length) if leaf.turned else (rect.length, rect.width)
    return (
        size == (part.blank_length, part.blank_width)
        and (part.material, part.thickness) == (sheet.material, sheet.thickness)
        and trim_of(rect, sheet) == Trim()
        and may_lie(part, sheet, turned=leaf.turned)
        and is_sound(rect, list_barred(part, sheet.defects))
    )


def may_lie(part: Part, sheet: Sheet, *, turned: bool) -> bool:
    """Return whether the grain lets a part lie this way on a sheet."""
    if part.grain is Grain.ANY or sheet.grain is SheetGrain.NONE:
        return True
    is_along_x = (part.grain is Grain.LENGTH) != turned
    return is_along_x == (sheet.grain is SheetGrain.LENGTH)


def _rests(
    sources: Sequence[Sheet], roots: Sequence[Node], parts: tuple[Part, ...]
) -> Iterator[tuple[int, tuple[int, ...], Sheet]]:
    """Yield every leftover of the roots that a part could come from, as a sheet."""
    for index, (source, root) in enumerate(zip(sources, roots, strict=True)):
        for place in walk(root, whole_of(source)):
            if not isinstance(place.node, RestLeaf) or _is_trimmed_off(root, place):
                continue
            rect = place.rect
            sheet = replace(
                source,
                name=f"leftover of {source.name}",
                length=rect.length,
                width=rect.width,
                trim=trim_of(rect, source),
                defects=cut_out(source.defects, rect),
                price=Decimal(0),
                owned=True,
                count=1,
            )
            if any(_could_come_from(part, sheet) for part in parts):
                yield index, place.path, sheet


def _is_trimmed_off(root: Node, place: Place) -> bool:
    """Return whether a leftover is the raw edge that a trim takes off."""
    node = root
    for side in place.path[:-1]:
        assert isinstance(node, Cut)
        following = node.second if side else node.first
        assert following is not None
        node = following
    return isinstance(node, Cut) and node.is_trim and place.path[-1:] == (0,)


def _could_come_from(part: Part, sheet: Sheet) -> bool:
    if (part.material, part.thickness) != (sheet.material, sheet.thickness):
        return False
    sides = (part.blank_length, part.blank_width)
    return any(
        along <= sheet.usable_length
        and across <= sheet.usable_width
        and may_lie(part, sheet, turned=turned)
        for turned, (along, across) in ((False, sides), (True, sides[::-1]))
    )
