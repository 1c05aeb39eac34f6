"""Small sheets with defects, whether parts can be cut from them at all, by looking everywhere.

Lengths here are whole steps of 100 mm, the kerf is 0, and nothing is trimmed. Two answers from
outside the search: `can_be_cut` tries every cut of every piece, which is exact, and `has_room` asks
the constraint solver of OR-Tools for a layout without regard to cuts, which is never less.
"""

import random
from dataclasses import dataclass
from functools import cache

from ortools.sat.python import cp_model

from nesting.job import Job
from nesting.lengths import mm
from nesting.parts import Part
from nesting.saw import Saw
from nesting.sheets import Defect, Sheet, SheetGrain

STEP = mm(100)
Box = tuple[int, int, int, int]
"""x, y, length and width."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Small:
    """One sheet with defects and some parts."""

    length: int
    width: int
    defects: tuple[Box, ...]
    parts: tuple[tuple[int, int], ...]


def make_small(seed: int) -> Small:
    """Return a sheet of up to 10 x 6 steps, one or two defects and parts that nearly fill it."""
    chance = random.Random(seed)  # noqa: S311
    length, width = chance.randint(7, 10), chance.randint(4, 6)
    defects = tuple(
        (
            x := chance.randrange(length),
            y := chance.randrange(width),
            min(chance.randint(1, 2), length - x),
            min(chance.randint(1, 2), width - y),
        )
        for _ in range(chance.randint(1, 2))
    )
    room = chance.uniform(0.75, 1.0) * (length * width - sum(box[2] * box[3] for box in defects))
    parts: list[tuple[int, int]] = []
    while len(parts) < 7:
        part = (chance.randint(1, 5), chance.randint(1, 3))
        if sum(a * b for a, b in parts) + part[0] * part[1] > room:
            break
        parts.append(part)
    return Small(length=length, width=width, defects=defects, parts=tuple(sorted(parts)))


def make_job(small: Small) -> Job:
    """Return the job of cutting the parts from the one sheet that there is."""
    sheet = Sheet(
        name="sheet",
        material="board",
        thickness=mm(18),
        length=small.length * STEP,
        width=small.width * STEP,
        grain=SheetGrain.NONE,
        count=1,
        owned=True,
        defects=tuple(
            Defect(x=x * STEP, y=y * STEP, length=length * STEP, width=width * STEP)
            for x, y, length, width in small.defects
        ),
    )
    return Job(
        name="small",
        step=mm(1),
        saw=Saw(kerf=0),
        sheets=(sheet,),
        parts=tuple(
            Part(
                name=f"part {number}",
                length=length * STEP,
                width=width * STEP,
                material="board",
                thickness=mm(18),
            )
            for number, (length, width) in enumerate(small.parts)
        ),
    )


def can_be_cut(small: Small) -> bool:
    """Return whether all parts can be cut, edge to edge, by trying every cut."""

    @cache
    def holds(x: int, y: int, length: int, width: int, parts: tuple[tuple[int, int], ...]) -> bool:
        if not parts:
            return True
        if sum(a * b for a, b in parts) > length * width:
            return False
        is_part = len(parts) == 1 and parts[0] in {(length, width), (width, length)}
        if is_part and not any(_overlap((x, y, length, width), box) for box in small.defects):
            return True
        for some, others in _divide(parts):
            for at in range(1, length):
                if holds(x, y, at, width, some) and holds(x + at, y, length - at, width, others):
                    return True
            for at in range(1, width):
                if holds(x, y, length, at, some) and holds(x, y + at, length, width - at, others):
                    return True
        return False

    return holds(0, 0, small.length, small.width, small.parts)


def has_room(small: Small) -> bool:
    """Return whether the parts and the defects lie side by side in any way, cut or not."""
    model = cp_model.CpModel()
    along, across = [], []
    for x, y, length, width in small.defects:
        along.append(model.new_fixed_size_interval_var(x, length, ""))
        across.append(model.new_fixed_size_interval_var(y, width, ""))
    defects = len(along)
    for a, b in small.parts:
        turned = model.new_bool_var("")
        for sizes, extent, into in (
            ((a, b), small.length, along),
            ((b, a), small.width, across),
        ):
            start = model.new_int_var(0, extent, "")
            size = model.new_int_var(min(sizes), max(sizes), "")
            end = model.new_int_var(0, extent, "")
            model.add(size == sizes[0] + (sizes[1] - sizes[0]) * turned)
            into.append(model.new_interval_var(start, size, end, ""))
    # Defects may lie on each other, so that each is kept apart from the parts alone.
    for number in range(defects):
        model.add_no_overlap_2d(
            [along[number], *along[defects:]], [across[number], *across[defects:]]
        )
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    return bool(solver.solve(model) in {cp_model.OPTIMAL, cp_model.FEASIBLE})


def _overlap(one: Box, other: Box) -> bool:
    return all(
        one[axis] < other[axis] + other[axis + 2] and other[axis] < one[axis] + one[axis + 2]
        for axis in (0, 1)
    )


def _divide(
    parts: tuple[tuple[int, int], ...],
) -> set[tuple[tuple[tuple[int, int], ...], tuple[tuple[int, int], ...]]]:
    """Return every way to share the parts out to two pieces, one of which may stay empty."""
    found = set()
    for chosen in range(1 << len(parts)):
        some = tuple(part for number, part in enumerate(parts) if chosen >> number & 1)
        others = tuple(part for number, part in enumerate(parts) if not chosen >> number & 1)
        found.add((some, others))
    return found
