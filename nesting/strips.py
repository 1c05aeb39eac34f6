"""Strips: parts that are cut one behind the other from one piece.

A figure that runs on round a carcass, and a groove that is cut across two panels at once, both need
parts side by side with nothing but a kerf between them. To the search such a strip is one part; in
its layout the strip is then cut into its parts, in their order, by ordinary cuts.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from nesting.job import Job
from nesting.layout import Cut, Direction, Layout, Node, PartLeaf, Unplaced, map_leaves
from nesting.lengths import Length
from nesting.parts import Part, Strip
from nesting.saw import Face


@dataclass(frozen=True, slots=True, kw_only=True)
class Bound:
    """A job whose strips are single parts.

    Attributes:
        job: It: first the parts that stand alone, then one for each strip.
        loose: The job that it was made from.
        alone: For each of the first parts its index in the loose job.
        strips: For each strip its parts in order, as copies of the loose job's.
    """

    job: Job
    loose: Job
    alone: tuple[int, ...]
    strips: tuple[tuple[PartLeaf, ...], ...]


def bind_strips(job: Job) -> Bound | None:
    """Return a job with one part for each strip; None where it has no strip.

    Parts that no longer agree in what a strip needs (one of them was measured anew, say) are left
    to lie anywhere.
    """
    groups: dict[tuple[object, ...], list[int]] = {}
    for index, part in enumerate(job.parts):
        if part.strip is not None:
            groups.setdefault(_bond(part), []).append(index)
    strips = tuple(
        members for group in groups.values() if len(members := tuple(_list_copies(job, group))) > 1
    )
    if not strips:
        return None
    bound = {leaf.part for members in strips for leaf in members}
    alone = tuple(index for index in range(len(job.parts)) if index not in bound)
    parts = (*(job.parts[index] for index in alone), *(_join(job, each) for each in strips))
    return Bound(job=replace(job, parts=parts), loose=job, alone=alone, strips=strips)


def loosen(bound: Bound, layout: Layout) -> Layout:
    """Return a layout of a bound job as one of the job that it was made from."""
    return replace(
        layout,
        sheets=tuple(
            replace(sheet, root=map_leaves(sheet.root, lambda leaf: _free(bound, leaf)))
            for sheet in layout.sheets
        ),
        unplaced=tuple(
            sorted(
                (each for gap in layout.unplaced for each in _list_gaps(bound, gap)),
                key=lambda gap: gap.part,
            )
        ),
    )


def _bond(part: Part) -> tuple[object, ...]:
    """Return what the parts of one strip share."""
    strip = strip_of(part)
    common = part.blank_length if strip.is_across else part.blank_width
    return part.cabinet, strip.name, common, part.grain, part.material, part.thickness


def _list_copies(job: Job, group: Sequence[int]) -> Iterator[PartLeaf]:
    for index in sorted(group, key=lambda index: strip_of(job.parts[index]).place):
        for copy in range(job.parts[index].count):
            yield PartLeaf(part=index, copy=copy)


def strip_of(part: Part) -> Strip:
    """Return the strip that a part is known to be cut from."""
    assert part.strip is not None, f"{part.name} is cut from no strip"
    return part.strip


def _join(job: Job, members: Sequence[PartLeaf]) -> Part:
    """Return a strip as one part: as long as its parts and the kerfs between them."""
    parts = [job.parts[leaf.part] for leaf in members]
    first, strip = parts[0], strip_of(parts[0])
    total = sum(_extent(part) for part in parts) + (len(parts) - 1) * job.saw.kerf
    return Part(
        name=f"{strip.name}: {', '.join(dict.fromkeys(part.name for part in parts))}",
        length=first.blank_length if strip.is_across else total,
        width=total if strip.is_across else first.blank_width,
        grain=first.grain,
        material=first.material,
        thickness=first.thickness,
        cabinet=first.cabinet,
    )


def _extent(part: Part) -> Length:
    """Return how much of its strip a part takes."""
    return part.blank_width if strip_of(part).is_across else part.blank_length


def _free(bound: Bound, leaf: PartLeaf) -> Node:
    """Return a part of the loose job, or the cuts that free the parts of a strip from its start."""
    if leaf.part < len(bound.alone):
        return replace(leaf, part=bound.alone[leaf.part])
    job = bound.loose
    members = bound.strips[leaf.part - len(bound.alone)]
    strip = strip_of(job.parts[members[0].part])
    direction = Direction.CROSSCUT if leaf.turned is strip.is_across else Direction.RIP
    node: Node = replace(members[-1], turned=leaf.turned)
    for member in reversed(members[:-1]):
        node = Cut(
            direction=direction,
            at=_extent(job.parts[member.part]),
            removed=job.saw.kerf,
            first=replace(member, turned=leaf.turned),
            second=node,
        )
    assert isinstance(node, Cut), "a strip has two parts at least"
    return replace(node, remark=_say_before(job, strip, direction))


def _say_before(job: Job, strip: Strip, direction: Direction) -> str:
    """Return what is done before a strip is cut apart, and how it lies.

    Its parts begin at the sheet's low edge. Turned by a quarter with the sheet's grain, what was
    the low edge of a strip along the sheet lies at the far one.
    """
    if not strip.low_edge:
        return strip.before
    home = "top" if job.saw.marked_face is Face.BACK else "bottom"
    edge = home if direction is Direction.CROSSCUT else "right"
    return f"{strip.before}; the {strip.low_edge} edge of all is the {edge} edge as drawn"


def _list_gaps(bound: Bound, gap: Unplaced) -> Iterator[Unplaced]:
    """Yield what stays unplaced of the loose job, the first part of a strip with its reason."""
    if gap.part < len(bound.alone):
        yield replace(gap, part=bound.alone[gap.part])
        return
    members = bound.strips[gap.part - len(bound.alone)]
    strip = strip_of(bound.loose.parts[members[0].part])
    counts: dict[int, int] = {}
    for member in members:
        counts[member.part] = counts.get(member.part, 0) + 1
    first = min(counts)
    reason = f"{strip.name}, {len(members)} parts in one strip: {gap.reason}. {strip.otherwise}"
    with_it = f"{strip.name}, in one strip with {bound.loose.parts[first].name}"
    for part, count in counts.items():
        yield Unplaced(part=part, count=count, reason=reason if part == first else with_it)
