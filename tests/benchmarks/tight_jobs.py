"""Random tight jobs with a known plan: `python -m tests.benchmarks.tight_jobs [options]`.

Parameters of the density search are tried on these, so that they are not fitted to published
instances. Every job is made by cutting sheets into parts, edge to edge, and making parts smaller,
one step at a time, until a stated share is waste; so the sheets it was made from are enough. One
search works on each job, and the table says how many jobs it got onto the known sheets.
"""

import argparse
import random
import sys
import time
from collections import Counter
from dataclasses import dataclass
from decimal import Decimal

from nesting.search.prepare import prepare
from nesting.search.problem import (
    LONG_ALONG_X,
    LONG_ALONG_Y,
    PartKind,
    Plan,
    Problem,
    SheetKind,
    measure_plan,
)
from nesting.search.ruin_recreate import RuinRecreate, mix_seed

Size = tuple[int, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class Family:
    """Jobs made alike.

    Attributes:
        sheets: Sizes of the sheets that a job is made from, in steps.
        parts: How many parts, about.
        waste: Share of the area that no part has.
        may_turn: Whether parts may be turned.
    """

    sheets: tuple[Size, ...]
    parts: int
    waste: float
    may_turn: bool


SQUARE = (100, 100)
FAMILIES = {
    "one sheet, 40 parts": Family(sheets=(SQUARE,), parts=40, waste=0.03, may_turn=False),
    "two, 60 parts": Family(sheets=(SQUARE,) * 2, parts=60, waste=0.025, may_turn=False),
    "two, 60 turned": Family(sheets=(SQUARE,) * 2, parts=60, waste=0.015, may_turn=True),
    "eight, 60 parts": Family(sheets=(SQUARE,) * 8, parts=60, waste=0.03, may_turn=False),
    "eight, 60 turned": Family(sheets=(SQUARE,) * 8, parts=60, waste=0.02, may_turn=True),
    "five of three sizes": Family(
        sheets=((120, 60), (120, 60), (60, 60), (60, 60), (90, 40)),
        parts=60,
        waste=0.05,
        may_turn=True,
    ),
}
LEAST_SIDE = 5
STEPS_PER_EFFORT = 6_000_000


def make_tight_problem(family: Family, number: int) -> Problem:
    """Return the job of a family with a number."""
    dice = random.Random(number)  # noqa: S311 - a measurement, not a lock
    total = sum(length * width for length, width in family.sheets)
    parts = [
        part
        for length, width in family.sheets
        for part in _cut_up(dice, (length, width), family.parts * length * width // total)
    ]
    while sum(x * y for x, y in parts) > total * (1 - family.waste):
        at = dice.randrange(len(parts))
        x, y = parts[at]
        parts[at] = (
            (max(LEAST_SIDE, x - 1), y) if dice.random() < 0.5 else (x, max(LEAST_SIDE, y - 1))
        )
    sizes = sorted(set(family.sheets), reverse=True)
    copies = Counter((max(part), min(part)) if family.may_turn else part for part in parts)
    kinds = [
        PartKind(
            long=max(size),
            short=min(size),
            ways=tuple(_list_ways(size, sheet, may_turn=family.may_turn) for sheet in sizes),
            copies=count,
            members=((number, count),),
        )
        for number, (size, count) in enumerate(copies.items())
    ]
    sheets = [
        SheetKind(
            sheet=number,
            length=length,
            width=width,
            price=length * width,
            weight=length * width,
            count=len(parts),
            grain=0,
        )
        for number, (length, width) in enumerate(sizes)
    ]
    kinds.sort(key=lambda kind: (-kind.area, -kind.long, kind.ways))
    return Problem(grid=1, price_step=Decimal(1), kinds=tuple(kinds), sheets=tuple(sheets))


def _cut_up(dice: random.Random, sheet: Size, count: int) -> list[Size]:
    """Return the pieces of a sheet, cut again and again, the large ones sooner."""
    pieces = [sheet]
    while len(pieces) < count and max(max(piece) for piece in pieces) >= 2 * LEAST_SIDE:
        pieces.sort(key=lambda piece: -piece[0] * piece[1])
        x, y = pieces.pop(int(dice.random() ** 2 * len(pieces)))
        is_across_x = dice.random() < x / (x + y)
        side = x if is_across_x else y
        if side < 2 * LEAST_SIDE:
            pieces.append((x, y))
            continue
        at = dice.randint(LEAST_SIDE, side - LEAST_SIDE)
        pieces += [(at, y), (x - at, y)] if is_across_x else [(x, at), (x, y - at)]
    return pieces


def _list_ways(part: Size, sheet: Size, *, may_turn: bool) -> int:
    """Return the ways in which a part may lie on a sheet."""
    long, short = max(part), min(part)
    allowed = LONG_ALONG_X if part[0] >= part[1] else LONG_ALONG_Y
    if may_turn and long != short:
        allowed = LONG_ALONG_X | LONG_ALONG_Y
    ways = 0
    if allowed & LONG_ALONG_X and long <= sheet[0] and short <= sheet[1]:
        ways |= LONG_ALONG_X
    if allowed & LONG_ALONG_Y and short <= sheet[0] and long <= sheet[1]:
        ways |= LONG_ALONG_Y
    return ways


def main() -> None:
    """Run every family and print the table."""
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.tight_jobs")
    parser.add_argument("--effort", type=int, default=2)
    parser.add_argument("--jobs", type=int, default=20)
    options = parser.parse_args()
    prepare()
    sys.stdout.write(f"one search, effort {options.effort}\n")
    sys.stdout.write(f"{'family':22}{'at the known sheets':>20}{'s':>8}\n")
    for name, family in FAMILIES.items():
        start, reached = time.process_time(), 0
        known = sum(length * width for length, width in family.sheets)
        for number in range(options.jobs):
            problem = make_tight_problem(family, number)
            search = RuinRecreate(problem, mix_seed(1, number), target=known)
            nothing: Plan = ()
            plan = search.improve(nothing, options.effort * STEPS_PER_EFFORT)
            reached += measure_plan(problem, plan) <= (0, known)
        seconds = time.process_time() - start
        sys.stdout.write(f"{name:22}{reached:>12} of {options.jobs:<5}{seconds:>8.1f}\n")
        sys.stdout.flush()


if __name__ == "__main__":
    main()
