"""Quality on published instances: `python -m tests.benchmarks SET [options]`.

Searches for the cheapest layout of every instance of a set, checks it, and prints one row a group
with the best known value. Seconds are processor time, so a busy machine does not change them.
Sets: bin_packing, furniture_a, hopper_turton_m, pisinger_sigurd, ortmann, knapsacks.
"""

import argparse
import json
import os
import platform
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from importlib.metadata import version
from typing import Any

from nesting.checks import check_layout
from nesting.job import Job
from nesting.search.fill import fill_sheet, value_of
from nesting.search.grid import make_problem
from nesting.search.prepare import prepare
from nesting.search.problem import measure_plan
from nesting.search.rectpack_packers import pack_with_rectpack
from nesting.solve import solve_cheapest
from tests.instances.published import (
    HERE,
    MATERIAL,
    SHEET_SETS,
    THICKNESS,
    make_published_job,
    read_knapsacks,
    read_set,
)

LIBRARIES = ("highspy", "numba", "numpy", "rectpack")


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """What one instance gave.

    Attributes:
        group: Row of the table it belongs to.
        name: The instance.
        sheets: Sheets used.
        bound: Lower bound on sheets.
        used: Area of the sheets used.
        needed: Area of the parts.
        is_proven: True where no cheaper plan exists.
        rectpack: Sheets of the best rectpack variant, None where not asked for.
        seconds: Processor time taken, which is what one core alone takes.
    """

    group: str
    name: str
    sheets: int
    bound: int
    used: int
    needed: int
    is_proven: bool
    rectpack: int | None
    seconds: float


def main() -> None:
    """Run one set and print its table."""
    options = _read_options()
    prepare()
    _say(f"{platform.machine()}, {os.cpu_count()} cores, Python {platform.python_version()}, ")
    _say(", ".join(f"{name} {version(name)}" for name in LIBRARIES) + "\n")
    turning = "parts may turn" if options.turn else "parts may not turn"
    cap = f", at most {options.seconds} s" if options.seconds else ""
    _say(f"{options.set}, {turning}, effort {options.effort}{cap}, seed {options.seed}\n")
    if options.set == "knapsacks":
        _run_knapsacks(options)
        return
    runs = []
    for run in _run_sheets(options):
        runs.append(run)
        if options.verbose:
            _say(f"  {run}\n")
    known = json.loads((HERE / "best_known.json").read_text())
    _print_table(runs, options, known)


def _read_options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks", description=__doc__)
    parser.add_argument("set", choices=[*SHEET_SETS, "knapsacks"])
    parser.add_argument("--turn", action="store_true", help="parts may turn")
    parser.add_argument("--effort", type=int, default=10)
    parser.add_argument("--seconds", type=float, default=None, help="cap for each instance")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--only", default="", help="instances whose name has this in it")
    parser.add_argument("--every", type=int, default=1, help="every n-th instance only")
    parser.add_argument("--kerf", default="0")
    parser.add_argument("--rectpack", action="store_true", help="run rectpack's variants too")
    parser.add_argument("--verbose", action="store_true")
    return parser.parse_args()


def _run_sheets(options: argparse.Namespace) -> Iterator[Run]:
    """Solve the instances asked for, one after the other."""
    chosen = [item for item in read_set(options.set) if options.only in item["id"]]
    for instance in chosen[:: options.every]:
        job = make_published_job(instance, may_turn=options.turn, kerf=options.kerf)
        start = time.process_time()
        result = solve_cheapest(
            job, effort=options.effort, seed=options.seed, seconds=options.seconds
        )
        seconds = time.process_time() - start
        faults = check_layout(job, result.layout)
        if faults or result.layout.unplaced:
            _say(f"{instance['id']}: {faults} {result.layout.unplaced}\n")
        (group,) = result.groups
        yield Run(
            group=_name_group(options.set, instance["id"]),
            name=instance["id"],
            sheets=group.sheets,
            bound=group.sheet_bound,
            used=int(result.cost),
            needed=sum(part.length * part.width * part.count for part in job.parts) // 10**12,
            is_proven=group.is_proven,
            rectpack=_run_rectpack(job) if options.rectpack else None,
            seconds=seconds,
        )


def _run_rectpack(job: Job) -> int:
    problem = make_problem(job, MATERIAL, THICKNESS)
    assert problem is not None, "every published instance fits"
    complete = [
        len(plan) for plan in pack_with_rectpack(problem) if measure_plan(problem, plan)[0] == 0
    ]
    return min(complete)


def _name_group(name: str, instance: str) -> str:
    """Return the row of the table that an instance belongs to."""
    if name == "bin_packing":
        kind, parts, _ = instance.split("-")
        return f"{int(kind[1:])}-{int(parts[1:])}"
    if name == "hopper_turton_m":
        return instance[:2]
    if name == "pisinger_sigurd":
        numerals = ("I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX", "X")
        return numerals[int(instance.split("_")[1][1:]) - 1]
    if name == "ortmann":
        return instance[: instance.index("i", 4) + 1]
    return "A"


def _print_table(runs: list[Run], options: argparse.Namespace, known: dict[str, Any]) -> None:
    """Print sheets or utilisation, group by group, with the best known values."""
    is_priced = options.set in known["utilisation"]
    best = (
        known["utilisation"][options.set]
        if is_priced
        else known["bin_packing"]["turned" if options.turn else "fixed"]["best"]
    )
    _say(f"{'group':10}{'ours':>8}{'known':>8}{'bound':>8}{'rectpack':>9}{'proven':>10}{'s':>8}\n")
    for group in dict.fromkeys(run.group for run in runs):
        _print_row(group, [run for run in runs if run.group == group], best, is_priced=is_priced)
    _print_row("all", runs, best, is_priced=is_priced)


def _print_row(name: str, runs: list[Run], best: dict[str, float], *, is_priced: bool) -> None:
    measure: Callable[[Run], float] = lambda run: 100 * run.needed / run.used  # noqa: E731
    if is_priced:
        ours = f"{sum(map(measure, runs)) / len(runs):.2f}"
    else:
        ours = str(sum(run.sheets for run in runs))
    known = str(best.get(name, best.get("Average", "")))
    if name == "all" and not is_priced:
        known = str(sum(best.get(group, 0) for group in {run.group for run in runs}))
    packed = [run.rectpack for run in runs if run.rectpack is not None]
    _say(
        f"{name:10}{ours:>8}{known:>8}{sum(run.bound for run in runs):>8}"
        f"{sum(packed) if packed else '':>9}"
        f"{sum(run.is_proven for run in runs):>5}/{len(runs):<4}"
        f"{sum(run.seconds for run in runs):>8.1f}\n"
    )


def _run_knapsacks(options: argparse.Namespace) -> None:
    """Fill one sheet for each knapsack and print the values."""
    _say(f"{'name':10}{'ours':>10}{'optimum':>10}{'gap %':>8}{'s':>8}\n")
    for knapsack in read_knapsacks(may_turn=options.turn):
        if options.only not in knapsack.name:
            continue
        start = time.process_time()
        codes = fill_sheet(
            knapsack.problem,
            0,
            [kind.copies for kind in knapsack.problem.kinds],
            steps=options.effort * 6_000_000,
            seed=options.seed,
            values=knapsack.values,
        )
        value = value_of(codes, knapsack.values)
        gap = 100 * (knapsack.optimum - value) / knapsack.optimum
        _say(f"{knapsack.name:10}{value:>10}{knapsack.optimum:>10}{gap:>8.3f}")
        _say(f"{time.process_time() - start:>8.1f}\n")


def _say(text: str) -> None:
    sys.stdout.write(text)
    sys.stdout.flush()


if __name__ == "__main__":
    main()
