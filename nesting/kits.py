"""Kits: the parts of one cabinet, and the order of sheets in which they are complete soonest.

Where several cabinets are alike, their parts can stand in for each other. So the sheets are put in
an order, and the parts are handed out, so that the first whole cabinet comes early and few parts
lie about whose cabinet is not complete. No cut changes, so that it costs no setting.
"""

from collections import Counter, defaultdict, deque
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeAlias

from nesting.cut_sequence import Sequence as CutSequence
from nesting.cut_sequence import order_cuts
from nesting.job import Job
from nesting.layout import Layout, Node, PartLeaf, Rect, SheetLayout, map_leaves, walk
from nesting.parts import Part

Alike: TypeAlias = Part
"""A part without its cabinet and number: parts for which it is the same are interchangeable."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Kit:
    """The parts of one cabinet, as they come off the saw.

    Attributes:
        cabinet: Its letter.
        parts: How many parts it has.
        sheets: Numbers of the sheets that they come from, increasing.
        closes: Sheet and cut after which all are there; None where some have no place.
        stack: Index into `Job.parts` and copy of each, in the order of cutting.
    """

    cabinet: str
    parts: int
    sheets: tuple[int, ...]
    closes: tuple[int, int] | None
    stack: tuple[tuple[int, int], ...]


def order_for_kits(job: Job, layout: Layout) -> Layout:
    """Return the same sheets in an order in which cabinets are complete soon.

    Greedy: after `Job.terms.first_whole`, if any, next comes the cabinet that takes the fewest
    further sheets, then the one that leaves the fewest parts without their cabinet. A job without
    cabinets stays as it is.
    """
    if not any(part.cabinet for part in job.parts):
        return layout
    plain = without_first_whole(job)
    sequences = {index: order_cuts(plain, sheet) for index, sheet in enumerate(layout.sheets)}
    leaves = [list(_leaves(sheet, sequences[index])) for index, sheet in enumerate(layout.sheets)]
    alike = [_alike(part) for part in job.parts]
    supply = [Counter(alike[leaf.part] for leaf in each) for each in leaves]
    cabinets, order = _choose(_demand(job, alike), supply, job.terms.first_whole)
    places = {letter: number for number, letter in enumerate(cabinets)}
    waiting: defaultdict[Alike, list[tuple[int, int]]] = defaultdict(list)
    for each in leaves:
        for leaf in each:
            waiting[alike[leaf.part]].append((leaf.part, leaf.copy))
    last = len(places)
    handed = {
        kind: deque(
            sorted(members, key=lambda one: (places.get(job.parts[one[0]].cabinet, last), *one))
        )
        for kind, members in waiting.items()
    }
    new = {
        (leaf.part, leaf.copy): handed[alike[leaf.part]].popleft()
        for index in order
        for leaf in leaves[index]
    }
    sheets = [layout.sheets[index] for index in order]
    return replace(
        layout,
        sheets=tuple(replace(sheet, root=_relabel(sheet.root, new)) for sheet in sheets),
    )


def without_first_whole(job: Job) -> Job:
    """Return the job without the wish that one whole cabinet comes first."""
    return replace(job, terms=replace(job.terms, first_whole=""))


def find_kits(job: Job, layout: Layout, sequences: Sequence[CutSequence]) -> tuple[Kit, ...]:
    """Return the kit of every cabinet, in the order in which they are complete.

    Args:
        job: The job.
        layout: Its layout.
        sequences: The order of the cuts of every sheet.
    """
    wanted: Counter[str] = Counter()
    for part in job.parts:
        wanted[part.cabinet] += part.count
    stacks: defaultdict[str, list[tuple[int, int]]] = defaultdict(list)
    sheets: defaultdict[str, list[int]] = defaultdict(list)
    closes: dict[str, tuple[int, int]] = {}
    for number, cut, leaf in _events(layout, sequences):
        letter = job.parts[leaf.part].cabinet
        stacks[letter].append((leaf.part, leaf.copy))
        if number not in sheets[letter]:
            sheets[letter].append(number)
        if len(stacks[letter]) == wanted[letter]:
            closes[letter] = (number, cut)
    kits = [
        Kit(
            cabinet=letter,
            parts=wanted[letter],
            sheets=tuple(sheets[letter]),
            closes=closes.get(letter),
            stack=tuple(stacks[letter]),
        )
        for letter in wanted
        if letter
    ]
    order = {letter: number for number, letter in enumerate(closes)}
    return tuple(sorted(kits, key=lambda kit: (order.get(kit.cabinet, len(order)), kit.cabinet)))


def find_most_open(job: Job, layout: Layout, sequences: Sequence[CutSequence]) -> int:
    """Return how many parts lie about at most whose cabinet is not complete.

    The last part of a cabinet counts with the others until it is put to them. Parts that belong
    to no cabinet do not count.
    """
    kits = {kit.cabinet: kit.parts for kit in find_kits(job, layout, sequences)}
    there: Counter[str] = Counter()
    count = most = 0
    for _, _, leaf in _events(layout, sequences):
        letter = job.parts[leaf.part].cabinet
        if not letter:
            continue
        there[letter] += 1
        count += 1
        most = max(most, count)
        if there[letter] == kits[letter]:
            count -= kits[letter]
    return most


def _alike(part: Part) -> Alike:
    """Return what interchangeable parts share; those of a strip are bound to their cabinet."""
    return replace(part, cabinet="" if part.strip is None else part.cabinet, count=1)


def _demand(job: Job, alike: Sequence[Alike]) -> dict[str, Counter[Alike]]:
    demand: defaultdict[str, Counter[Alike]] = defaultdict(Counter)
    for part, kind in zip(job.parts, alike, strict=True):
        if part.cabinet:
            demand[part.cabinet][kind] += part.count
    return dict(demand)


def _choose(
    demand: Mapping[str, Counter[Alike]], supply: Sequence[Counter[Alike]], first: str
) -> tuple[list[str], list[int]]:
    """Return the cabinets and the sheets, each in the order of making; one may have to be first."""
    cabinets: list[str] = []
    sheets: list[int] = []
    pool: Counter[Alike] = Counter()
    waiting = dict(demand)
    while waiting:
        distinct = {
            frozenset(wanted.items()): letter for letter, wanted in reversed(waiting.items())
        }
        chosen: tuple[tuple[int, int, int], str, list[int]] | None = None
        letters = [first] if first in waiting else distinct.values()
        for letter in sorted(letters, key=list(waiting).index):
            more = _cover(waiting[letter] - pool, supply, set(sheets))
            if more is None:
                continue
            left = sum(pool.values()) + sum(sum(supply[index].values()) for index in more)
            worth = (len(more), left - sum(waiting[letter].values()), len(cabinets))
            if chosen is None or worth < chosen[0]:
                chosen = (worth, letter, more)
        if chosen is None:
            break
        _, letter, more = chosen
        for index in more:
            pool += supply[index]
        sheets += more
        pool -= waiting.pop(letter)
        cabinets.append(letter)
    sheets += [index for index in range(len(supply)) if index not in sheets]
    return [*cabinets, *waiting], sheets


def _cover(
    missing: Counter[Alike], supply: Sequence[Counter[Alike]], taken: set[int]
) -> list[int] | None:
    """Return sheets that hold what is missing, the most useful first; None where none do."""
    chosen: list[int] = []
    while missing:
        best = max(
            (index for index in range(len(supply)) if index not in taken and index not in chosen),
            key=lambda index: (sum((missing & supply[index]).values()), -index),
            default=None,
        )
        if best is None or not missing & supply[best]:
            return None
        chosen.append(best)
        missing = missing - supply[best]
    return chosen


def _leaves(sheet: SheetLayout, sequence: CutSequence) -> Iterator[PartLeaf]:
    """Yield the parts of a sheet in the order in which they come free."""
    for _, leaf in _freed(sheet, sequence):
        yield leaf


def _events(
    layout: Layout, sequences: Sequence[CutSequence]
) -> Iterator[tuple[int, int, PartLeaf]]:
    """Yield the number of the sheet, that of the cut and the part that it frees."""
    pairs = list(zip(layout.sheets, sequences, strict=True))
    for is_first in (True, False):
        for number, (sheet, sequence) in enumerate(pairs, start=1):
            for cut, leaf in _freed(sheet, sequence):
                if (0 < cut <= sequence.pause) is is_first:
                    yield number, cut, leaf


def _freed(sheet: SheetLayout, sequence: CutSequence) -> Iterator[tuple[int, PartLeaf]]:
    anywhere = Rect(x=0, y=0, length=0, width=0)
    nodes = {place.path: place.node for place in walk(sheet.root, anywhere)}
    if isinstance(sheet.root, PartLeaf):
        yield 0, sheet.root
    for step in sequence.steps:
        for side in (0, 1):
            node = nodes.get((*step.path, side))
            if isinstance(node, PartLeaf):
                yield step.number, node


def _relabel(root: Node, new: Mapping[tuple[int, int], tuple[int, int]]) -> Node:
    """Return a tree with other copies in the places of its parts."""

    def named(leaf: PartLeaf) -> PartLeaf:
        part, copy = new[leaf.part, leaf.copy]
        return replace(leaf, part=part, copy=copy)

    return map_leaves(root, named)
