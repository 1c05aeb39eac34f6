"""The same sheets over and over: a part of the batch is planned, and its sheets cut several times.

Fewer different layouts mean fewer first parts to measure and fewer pages, and may take more sheets.
Finding the best compromise is a known problem of cutting stock ("pattern reduction", from memory);
this is its simplest form, and never costs more than so many small jobs.
"""

from collections import defaultdict, deque
from collections.abc import Callable
from dataclasses import replace
from math import gcd

from nesting.job import Job
from nesting.layout import Layout, PartLeaf, map_leaves
from nesting.parts import Part
from nesting.search.result import Result


def count_repeats(job: Job, sheets: int) -> int:
    """Return into how many equal batches the parts of a job can be divided; 1 for not at all.

    Args:
        job: The job.
        sheets: How many sheets it takes; no batch should take less than one.
    """
    return list_repeats(job, sheets)[-1]


def list_repeats(job: Job, sheets: int) -> tuple[int, ...]:
    """Return the numbers of equal batches that the parts of a job can be divided into, 1 first.

    Args:
        job: The job.
        sheets: As for `count_repeats`.
    """
    kinds = _kinds(job)
    whole = gcd(*map(len, kinds.values())) if kinds else 1
    return tuple(times for times in range(1, max(1, sheets) + 1) if whole % times == 0)


def solve_repeated(job: Job, times: int, solve: Callable[[Job], Result]) -> Result | None:
    """Return a plan whose sheets are those of an equal part of the job, each cut several times.

    Args:
        job: The job.
        times: How often; a divisor of `count_repeats`.
        solve: How a job is planned.

    Returns:
        None where a part has no place.
    """
    kinds = _kinds(job)
    few = replace(
        job,
        parts=tuple(replace(kind, count=len(copies) // times) for kind, copies in kinds.items()),
        cabinets=(),
        sheets=tuple(
            sheet if sheet.count is None else replace(sheet, count=sheet.count // times)
            for sheet in job.sheets
        ),
    )
    result = solve(few)
    if result.layout.unplaced:
        return None
    waiting = [deque(copies) for copies in kinds.values()]

    def named(leaf: PartLeaf) -> PartLeaf:
        part, copy = waiting[leaf.part].popleft()
        return replace(leaf, part=part, copy=copy)

    sheets = tuple(
        replace(sheet, root=map_leaves(sheet.root, named))
        for sheet in result.layout.sheets
        for _ in range(times)
    )
    return replace(
        result,
        layout=Layout(sheets=sheets, notes=result.layout.notes),
        cost=result.cost * times,
        groups=(),
    )


def _kinds(job: Job) -> dict[Part, list[tuple[int, int]]]:
    """Return the copies of parts that can stand in for each other, whatever cabinet they are of."""
    kinds: defaultdict[Part, list[tuple[int, int]]] = defaultdict(list)
    for index, part in enumerate(job.parts):
        is_bound = part.strip is not None  # to what it is cut from one strip with
        kind = replace(part, cabinet=part.cabinet if is_bound else "", count=1)
        kinds[kind] += [(index, copy) for copy in range(part.count)]
    return dict(kinds)
