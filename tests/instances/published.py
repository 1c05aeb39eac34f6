"""Published instances as jobs: kerf 0, no trims, a unit of the instance is a millimetre."""

import json
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any

from nesting.job import Job
from nesting.lengths import mm
from nesting.parts import Grain, Part
from nesting.saw import Saw
from nesting.search.grid import make_problem
from nesting.search.problem import Problem
from nesting.sheets import Sheet

HERE = Path(__file__).parent
SHEET_SETS = ("bin_packing", "furniture_a", "hopper_turton_m", "pisinger_sigurd", "ortmann")
MATERIAL = "board"
THICKNESS = mm(18)


@dataclass(frozen=True, slots=True, kw_only=True)
class Knapsack:
    """One sheet to fill with the most value.

    Attributes:
        name: Its published name.
        problem: The part kinds, in the order of the file as `members` says, and the sheet.
        values: What one of each kind of `problem` is worth.
        optimum: The published optimum.
    """

    name: str
    problem: Problem
    values: tuple[int, ...]
    optimum: int


def read_set(name: str) -> list[dict[str, Any]]:
    """Return the instances of a file."""
    instances: list[dict[str, Any]] = json.loads((HERE / f"{name}.json").read_text())["instances"]
    return instances


def make_published_job(instance: dict[str, Any], *, may_turn: bool, kerf: str = "0") -> Job:
    """Return the job of an instance of one of SHEET_SETS; a sheet costs its area."""
    sheets = instance.get("sheets") or [[*instance["sheet"], None, 0]]
    counts: Counter[tuple[int, int]] = Counter()
    for length, width, *count in instance["parts"]:
        counts[length, width] += count[0] if count else 1
    return Job(
        name=instance["id"],
        step=mm(1),
        saw=Saw(kerf=mm(kerf), guide_length=mm(100_000)),
        sheets=tuple(
            _make_sheet(f"sheet {number}", length, width, count)
            for number, (length, width, count, _) in enumerate(sheets)
        ),
        parts=tuple(
            Part(
                name=f"{length} x {width}",
                length=mm(length),
                width=mm(width),
                count=count,
                grain=Grain.ANY if may_turn else Grain.LENGTH,
                material=MATERIAL,
                thickness=THICKNESS,
            )
            for (length, width), count in counts.items()
        ),
    )


def read_knapsacks(*, may_turn: bool) -> list[Knapsack]:
    """Return the knapsacks that have a published optimum with or without turning."""
    found = []
    for instance in read_set("knapsacks"):
        optimum = instance.get("optimum_turned") if may_turn else instance["optimum"]
        if optimum is not None:
            found.append(_make_knapsack(instance, optimum, may_turn=may_turn))
    return found


def _make_knapsack(instance: dict[str, Any], optimum: int, *, may_turn: bool) -> Knapsack:
    length, width = instance["sheet"]
    job = Job(
        name=instance["id"],
        step=mm(1),
        saw=Saw(kerf=0),
        sheets=(_make_sheet("sheet", length, width, 1),),
        parts=tuple(_make_knapsack_parts(instance["parts"], length, width, may_turn=may_turn)),
    )
    problem = make_problem(job, MATERIAL, THICKNESS)
    assert problem is not None, "no part of the instance fits its sheet"
    values = tuple(
        max(instance["parts"][member][3] for member, _ in kind.members) for kind in problem.kinds
    )
    return Knapsack(name=instance["id"], problem=problem, values=values, optimum=optimum)


def _make_knapsack_parts(
    parts: Iterable[Sequence[int]], length: int, width: int, *, may_turn: bool
) -> Iterable[Part]:
    for number, (along_x, along_y, most, _) in enumerate(parts):
        ways = [(along_x, along_y), (along_y, along_x)] if may_turn else [(along_x, along_y)]
        yield Part(
            name=f"part {number}",
            length=mm(along_x),
            width=mm(along_y),
            count=most or max(1, *((length // x) * (width // y) for x, y in ways)),
            grain=Grain.ANY if may_turn else Grain.LENGTH,
            material=MATERIAL,
            thickness=THICKNESS,
        )


def _make_sheet(name: str, length: int, width: int, count: int | None) -> Sheet:
    return Sheet(
        name=name,
        material=MATERIAL,
        thickness=THICKNESS,
        length=mm(length),
        width=mm(width),
        price=Decimal(length * width),
        count=count,
    )
