"""Which parts must match in which dimension, for the kernels and for the kinds of a problem."""

from dataclasses import dataclass, replace

from nesting.job import Job
from nesting.lengths import Length
from nesting.search.least_work.arrays import NOTHING
from nesting.search.problem import PartKind, Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Matches:
    """The dimensions that must match, numbered group by group.

    Attributes:
        rows: For every part kind the number that its long and its short side has, NOTHING for
            none: the rows MATCH_LONG and MATCH_SHORT of the kernels.
        partners: For every number the other one of its group, or itself.
        members: How many parts must match others.
    """

    rows: tuple[list[int], list[int]]
    partners: list[int]
    members: int


def split_by_match(job: Job, problem: Problem) -> Problem:
    """Return a problem whose part kinds belong to one group of matching parts each, or to none."""
    kinds: list[PartKind] = []
    for kind in problem.kinds:
        groups: dict[str, list[tuple[int, int]]] = {}
        for part, count in kind.members:
            groups.setdefault(job.parts[part].match, []).append((part, count))
        kinds += [
            replace(kind, copies=sum(count for _, count in members), members=tuple(members))
            for members in groups.values()
        ]
    return replace(problem, kinds=tuple(kinds))


def list_matches(job: Job, problem: Problem) -> Matches:
    """Return what must match among the kinds of a problem that was split by it."""
    groups: dict[str, list[int]] = {}
    for number, kind in enumerate(problem.kinds):
        match = job.parts[kind.members[0][0]].match if kind.members else ""
        if match:
            groups.setdefault(match, []).append(number)
    rows = ([int(NOTHING)] * len(problem.kinds), [int(NOTHING)] * len(problem.kinds))
    partners: list[int] = []
    members = 0
    for numbers in groups.values():
        kinds = [problem.kinds[number] for number in numbers]
        copies = sum(kind.copies for kind in kinds)
        sizes = _common_sizes(kinds)
        if copies == 1 or not sizes:
            continue
        first = len(partners)
        partners += [first + len(sizes) - 1 - place for place in range(len(sizes))]
        members += copies
        for number, kind in zip(numbers, kinds, strict=True):
            for row, size in zip(rows, (kind.long, kind.short), strict=True):
                if size in sizes:
                    row[number] = first + sizes.index(size)
    return Matches(rows=rows, partners=partners, members=members)


def _common_sizes(kinds: list[PartKind]) -> list[Length]:
    """Return the sides that some kinds have in common: none, one or two."""
    return sorted(set.intersection(*({kind.long, kind.short} for kind in kinds)))
