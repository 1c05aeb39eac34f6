"""Minutes at the saw with and without the second search: `python -m tests.benchmarks.least_work`.

Compares the layouts of the search for the cheapest sheets, in their best order of cuts, with what
the second search makes of them, on ten invented jobs of home size and six published ones of the
furniture industry (see `tests/instances/furniture_a.json`). Seconds are those of all cores
together.
"""

import argparse
import statistics
import sys
import time
from collections.abc import Iterable, Iterator
from dataclasses import astuple, dataclass

from nesting.checks import check_layout
from nesting.cut_sequence import minutes, missed_matches, order_cuts
from nesting.job import Job
from nesting.layout import Layout
from nesting.lengths import NM_PER_MM
from nesting.search.least_work import find_less_work
from nesting.search.least_work.leftovers import count_slivers, rate_leftovers
from nesting.search.prepare import prepare
from nesting.solve import DEFAULT_EFFORT, solve_cheapest
from tests.benchmarks.home_jobs import JOBS, make_home_job
from tests.instances.published import make_published_job, read_set

FURNITURE = ("a05", "a07", "a31", "a39", "a41", "a43")
FURNITURE_KERF = "4"


@dataclass(frozen=True, slots=True)
class Work:
    """What a layout asks for.

    Attributes:
        sheets: Number of sheets.
        minutes: Minutes at the saw.
        settings: Settings of the guide.
        cuts: Number of cuts.
        misses: Parts that come off another setting than those that they must match.
        narrow: Cuts across a piece too narrow to be held.
        slivers: Leftovers too narrow to be held, trims apart.
        insured: Area of the largest part that could be cut again, square metres.
    """

    sheets: int
    minutes: float
    settings: int
    cuts: int
    misses: int
    narrow: int
    slivers: int
    insured: float

    @classmethod
    def add(cls, works: Iterable["Work"]) -> "Work":
        """Return the sums of some."""
        return cls(*map(sum, zip(*(astuple(work) for work in works), strict=True)))


def main() -> None:
    """Print a row a job, sums of what should not be, and the mean and the median saving."""
    options = _read_options()
    prepare()
    _say(f"effort {options.effort}, seeds 1 to {options.seeds}; minutes/settings/cuts\n")
    _say(
        f"{'job':20}{'parts':>6}{'sheets':>7}{'off':>13}{'on':>14}{'saved':>15}"
        f"{'missed':>9}{'narrow':>7}{'slivers':>9}{'insured':>11}{'s':>6}\n"
    )
    rows = [
        _run(job, options.effort, seed)
        for job in _list_jobs(options.only)
        for seed in range(1, options.seeds + 1)
    ]
    for name, mean in (("mean", statistics.mean), ("median", statistics.median)):
        saved = [mean(column) for column in zip(*(_save(*row) for row in rows), strict=True)]
        sums = _list_faults(*(Work.add(works) for works in zip(*rows, strict=True)))
        _say(f"{name:60}{saved[0]:>5.0%}{saved[1]:>5.0%}{saved[2]:>5.0%}{sums}\n")


def _read_options() -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.least_work")
    parser.add_argument("--effort", type=int, default=DEFAULT_EFFORT)
    parser.add_argument("--seeds", type=int, default=1)
    parser.add_argument("--only", default="", help="jobs whose name has this in it")
    return parser.parse_args()


def _list_jobs(only: str) -> Iterator[Job]:
    for name in JOBS:
        if only in name:
            yield make_home_job(name)
    for instance in read_set("furniture_a"):
        if instance["id"] in FURNITURE and only in instance["id"]:
            yield make_published_job(instance, may_turn=True, kerf=FURNITURE_KERF)


def _run(job: Job, effort: int, seed: int) -> tuple[Work, Work]:
    """Print the row of one job; return its work without and with the second search."""
    cheapest = solve_cheapest(job, seed=seed).layout
    start = time.process_time()
    worked = find_less_work(job, cheapest, effort=effort, seed=seed).layout
    seconds = time.process_time() - start
    assert check_layout(job, worked) == (), "a rule is broken"
    off, on = measure(job, cheapest), measure(job, worked)
    assert on.minutes <= off.minutes or on.narrow < off.narrow, "the second search made it worse"
    assert on.sheets <= off.sheets, "the second search used more sheets"
    saved = _save(off, on)
    _say(
        f"{job.name:20}{sum(part.count for part in job.parts):>6}{on.sheets:>7}"
        f"{off.minutes:>6.0f}/{off.settings:>3}/{off.cuts:>3}"
        f"{on.minutes:>6.0f}/{on.settings:>3}/{on.cuts:>3}"
        f"{saved[0]:>5.0%}{saved[1]:>5.0%}{saved[2]:>5.0%}{_list_faults(off, on)}{seconds:>6.1f}\n"
    )
    return off, on


def _save(off: Work, on: Work) -> tuple[float, float, float]:
    """Return the saving in minutes, settings and cuts."""
    return (
        1 - on.minutes / off.minutes,
        1 - on.settings / off.settings,
        1 - on.cuts / off.cuts,
    )


def _list_faults(off: Work, on: Work) -> str:
    return (
        f"{off.misses:>5}/{on.misses:>3}{off.narrow:>4}/{on.narrow:>2}"
        f"{off.slivers:>5}/{on.slivers:>3}{off.insured:>6.2f}/{on.insured:.2f}"
    )


def measure(job: Job, layout: Layout) -> Work:
    """Return the work of a layout in its best order."""
    sequences = [order_cuts(job, sheet) for sheet in layout.sheets]
    steps = [step for sequence in sequences for step in sequence.steps]
    insured, _, _ = rate_leftovers(job, layout)
    return Work(
        sheets=len(layout.sheets),
        minutes=float(sum(minutes(job, sequence) for sequence in sequences)),
        settings=sum(sequence.settings for sequence in sequences),
        cuts=len(steps),
        misses=sum(miss.count for miss in missed_matches(job, layout, sequences)),
        narrow=sum(
            min(step.piece.length, step.piece.width) < job.saw.smallest_held for step in steps
        ),
        slivers=sum(count_slivers(job, sheet) for sheet in layout.sheets),
        insured=insured / (1000 * NM_PER_MM) ** 2,
    )


def _say(text: str) -> None:
    sys.stdout.write(text)
    sys.stdout.flush()


if __name__ == "__main__":
    main()
