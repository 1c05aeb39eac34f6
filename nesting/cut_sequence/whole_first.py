"""One whole cabinet first: the cuts that it needs before all others of a sheet.

A mistake in the design then shows on one cabinet, put together dry, and not on all of them.
"""

from collections.abc import Sequence

from nesting.cut_sequence.sequence import Sequence as CutSequence
from nesting.cut_sequence.sequence import Step
from nesting.cut_sequence.tasks import Tasks
from nesting.job import Job
from nesting.layout import PartLeaf, Rect, SheetLayout, walk


def list_first(job: Job, sheet_layout: SheetLayout, tasks: Tasks) -> frozenset[int]:
    """Return the cuts of a sheet that the parts of the first cabinet need.

    Where there are any, what is done first in any case is among them: the yard's cuts and the
    trims of the whole sheet. With every cut all cuts before it are among them.

    Args:
        job: The job; `Job.terms.first_whole` is the cabinet.
        sheet_layout: The sheet.
        tasks: Its cuts.
    """
    letter = job.terms.first_whole
    if not letter:
        return frozenset()
    numbers = {place.path: number for number, place in enumerate(tasks.places)}
    found: set[int] = set()
    for place in walk(sheet_layout.root, Rect(x=0, y=0, length=0, width=0)):
        node = place.node
        if isinstance(node, PartLeaf) and job.parts[node.part].cabinet == letter:
            found.update(numbers[place.path[:depth]] for depth in range(len(place.path)))
    return frozenset(found | set(range(tasks.forced))) if found else frozenset()


def put_first(order: Sequence[int], first: frozenset[int]) -> list[int]:
    """Return an order with some cuts before the others, each of both in the order they had."""
    return [task for task in order if task in first] + [task for task in order if task not in first]


def list_work(sequences: Sequence[CutSequence]) -> tuple[tuple[int, Step], ...]:
    """Return the number of the sheet and the step of every cut, in the order of doing.

    Sheet by sheet; where one whole cabinet comes first, what it needs of every sheet before that.
    """
    work = [
        (number, step)
        for number, sequence in enumerate(sequences, start=1)
        for step in sequence.steps
    ]
    return tuple(sorted(work, key=lambda cut: cut[1].number > sequences[cut[0] - 1].pause))
