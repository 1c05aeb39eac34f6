"""Spares: parts that are easily spoilt, cut once more from what a finished layout throws away.

Nothing of the layout moves and no sheet is added. A spare is cut out of a piece of waste, or of an
offcut where no waste is large enough, by a cut or two of its own, as long as all spares together
take no more than the minutes that the job allows. Parts with holes come first, then parts that
show, the large ones before the small ones.
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Final

from nesting.cut_sequence import Path, minutes, missed_matches, order_cuts
from nesting.cut_sequence import Sequence as CutSequence
from nesting.defects.leftovers import make_leftover
from nesting.job import Job
from nesting.layout import (
    By,
    Cut,
    Direction,
    Layout,
    Node,
    PartLeaf,
    Place,
    Rect,
    RestLeaf,
    SheetLayout,
    replace_leaves,
    walk,
)
from nesting.lengths import Length
from nesting.parts import Part, make_spare
from nesting.search.grid import list_ways
from nesting.sheets import Sheet
from nesting.zones import is_sound, list_barred, usable_of

MOST_PIECES: Final = 4
"""Pieces that one spare is tried in: the smallest waste first, then the smallest offcuts."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class _State:
    """A layout with the spares found so far.

    Attributes:
        job: The job, spares among its parts.
        sheets: The sheets.
        sequences: Their cuts in order.
        spent: Minutes that the spares take.
    """

    job: Job
    sheets: tuple[SheetLayout, ...]
    sequences: tuple[CutSequence, ...]
    spent: Decimal = Decimal(0)

    @property
    def missed(self) -> int:
        """How many parts come off another setting than those that they must match."""
        layout = Layout(sheets=self.sheets)
        return sum(miss.count for miss in missed_matches(self.job, layout, self.sequences))


def add_spares(job: Job, layout: Layout) -> tuple[Job, Layout]:
    """Return a job with its spares as parts, at the end, and the layout with them cut out.

    At most one of each kind of part. Sheets that the yard cuts give none: their edges may be rough.

    Args:
        job: The job; nothing is done without `Job.terms.spare_minutes`.
        layout: Its finished layout; nothing is done where a part has no place.
    """
    limit = job.terms.spare_minutes
    if limit is None or layout.unplaced:
        return job, layout
    sequences = tuple(order_cuts(job, sheet) for sheet in layout.sheets)
    state = _State(job=job, sheets=layout.sheets, sequences=sequences)
    for members in _list_kinds(job):
        within = (each for each in _list_trials(state, members) if each.spent <= limit)
        for trial in sorted(within, key=lambda each: each.spent):
            if trial.missed <= state.missed:
                state = trial
                break
    return state.job, replace(layout, sheets=state.sheets)


def _list_kinds(job: Job) -> list[tuple[int, ...]]:
    """Return the parts of every kind that may have a spare, those most at risk first."""
    kinds: defaultdict[Part, list[int]] = defaultdict(list)
    for index, part in enumerate(job.parts):
        kinds[make_spare(replace(part, cabinet=""), ())].append(index)
    pierced = _find_pierced(job)

    def risk(members: Sequence[int]) -> tuple[bool, bool, int]:
        part = job.parts[members[0]]
        has_holes = any((job.parts[one].cabinet, job.parts[one].name) in pierced for one in members)
        return not has_holes, part.is_hidden, -part.blank_length * part.blank_width

    return sorted(map(tuple, kinds.values()), key=risk)


def _find_pierced(job: Job) -> frozenset[tuple[str, str]]:
    """Return the cabinets and names of the parts that holes are made in."""
    return frozenset(
        (letter, panel.kind)
        for build in job.cabinets
        if build.fit_out is not None
        for hole in build.fit_out.holes
        for panel in build.panels
        if panel.name == hole.panel
        for letter in build.letters
    )


def _list_trials(state: _State, members: tuple[int, ...]) -> Iterator[_State]:
    """Yield the layout with a spare of one kind, for each way to cut it out that is tried."""
    spare = make_spare(state.job.parts[members[0]], members)
    leaf = PartLeaf(part=len(state.job.parts), copy=0)
    job = replace(state.job, parts=(*state.job.parts, spare))
    rests = (
        (number, place)
        for number, tree in enumerate(state.sheets)
        for place in _list_rests(job.sheets[tree.sheet], tree, spare)
    )
    tried = 0
    for number, place in sorted(rests, key=lambda rest: _smallness(*rest)):
        kind = job.sheets[state.sheets[number].sheet]
        ways = list(_cut_out(job, kind, place.rect, leaf))
        for node in ways:
            yield _with_spare(state, job, number, place.path, node)
        tried += bool(ways)
        if tried == MOST_PIECES:
            return


def _smallness(number: int, place: Place) -> tuple[bool, int, int, Path]:
    is_offcut = isinstance(place.node, RestLeaf) and place.node.is_offcut
    return is_offcut, place.rect.length * place.rect.width, number, place.path


def _with_spare(state: _State, job: Job, number: int, path: Path, node: Node) -> _State:
    sheets, sequences = list(state.sheets), list(state.sequences)
    root = replace_leaves(sheets[number].root, {path: node})
    sheets[number] = replace(sheets[number], root=root)
    sequences[number] = order_cuts(job, sheets[number])
    more = minutes(job, sequences[number]) - minutes(job, state.sequences[number])
    return _State(
        job=job,
        sheets=tuple(sheets),
        sequences=tuple(sequences),
        spent=state.spent + more,
    )


def _list_rests(sheet: Sheet, tree: SheetLayout, spare: Part) -> Iterator[Place]:
    """Yield the leftovers of a sheet that a spare could come from by its material."""
    if (sheet.material, sheet.thickness) != (spare.material, spare.thickness):
        return
    places = list(walk(tree.root, Rect(x=0, y=0, length=sheet.length, width=sheet.width)))
    if any(isinstance(place.node, Cut) and place.node.by is By.YARD for place in places):
        return
    for place in places:
        usable = usable_of(place.rect, sheet)
        is_fresh = (usable.x, usable.y) == (place.rect.x, place.rect.y)
        if isinstance(place.node, RestLeaf) and is_fresh:
            yield place


def _cut_out(job: Job, sheet: Sheet, rect: Rect, leaf: PartLeaf) -> Iterator[Node]:
    """Yield the ways to cut a part out of the low corner of a leftover."""
    part, usable = job.parts[leaf.part], usable_of(rect, sheet)
    for is_turned in list_ways(part, sheet):
        length, width = part.blank_length, part.blank_width
        if is_turned:
            length, width = width, length
        place = Rect(x=rect.x, y=rect.y, length=length, width=width)
        if (
            length <= usable.length
            and width <= usable.width
            and is_sound(place, list_barred(part, sheet.defects))
        ):
            node = replace(leaf, turned=is_turned)
            rip, crosscut = (Direction.RIP, width), (Direction.CROSSCUT, length)
            for order in ((rip, crosscut), (crosscut, rip)):
                root = _cut_in_order(node, rect, order, job.saw.kerf)
                rests = {
                    place.path: make_leftover(place.rect, sheet, job.keep, job.saw.kerf)
                    for place in walk(root, rect)
                    if isinstance(place.node, RestLeaf)
                }
                yield replace_leaves(root, rests)


def _cut_in_order(
    node: Node, rect: Rect, order: Sequence[tuple[Direction, Length]], kerf: Length
) -> Node:
    """Return the cuts that free a part from a piece, the first of an order first."""
    for direction, at in reversed(order):
        over = (rect.width if direction is Direction.RIP else rect.length) - at
        if over:
            beyond = RestLeaf() if over > kerf else None
            removed = min(kerf, over)
            node = Cut(direction=direction, at=at, removed=removed, first=node, second=beyond)
    return node
