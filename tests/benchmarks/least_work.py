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
from collections.abc import Iterator
from dataclasses import dataclass

from nesting.checks import check_layout
from nesting.cut_sequence import minutes, order_cuts
from nesting.job import Job
from nesting.layout import Layout
from nesting.search.least_work import find_less_work
from nesting.search.prepare import prepare
from nesting.solve import DEFAULT_EFFORT, solve_cheapest
from tests.benchmarks.home_jobs import JOBS, make_home_job
from tests.instances.published import make_published_job, read_set

FURNITURE = ("a05", "a07", "a31", "a39", "a41", "a43")
FURNITURE_KERF = "4"


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """What a layout asks for.

    Attributes:
        sheets: Number of sheets.
        minutes: Minutes at the saw.
        settings: Settings of the guide.
        cuts: Number of cuts.
    """

    sheets: int
    minutes: float
    settings: int
    cuts: int


def main() -> None:
    """Print a row a job, and the mean and the median saving."""
    options = _read_options()
    prepare()
    _say(f"effort {options.effort}, seeds 1 to {options.seeds}\n")
    _say(f"{'job':22}{'parts':>6}{'sheets':>7}  {'off':>14}  {'on':>14}{'saved':>16}{'s':>7}\n")
    savings = [
        _run(job, options.effort, seed)
        for job in _list_jobs(options.only)
        for seed in range(1, options.seeds + 1)
    ]
    for name, mean in (("mean", statistics.mean), ("median", statistics.median)):
        columns = [mean(column) for column in zip(*savings, strict=True)]
        _say(f"{name:66}{columns[0]:>6.0%}{columns[1]:>5.0%}{columns[2]:>5.0%}\n")


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


def _run(job: Job, effort: int, seed: int) -> tuple[float, float, float]:
    """Print the row of one job; return the saving in minutes, settings and cuts."""
    cheapest = solve_cheapest(job, seed=seed).layout
    start = time.process_time()
    worked = find_less_work(job, cheapest, effort=effort, seed=seed).layout
    seconds = time.process_time() - start
    assert check_layout(job, worked) == (), "a rule is broken"
    off, on = measure(job, cheapest), measure(job, worked)
    assert on.minutes <= off.minutes, "the second search made it worse"
    assert on.sheets <= off.sheets, "the second search used more sheets"
    saved = (
        1 - on.minutes / off.minutes,
        1 - on.settings / off.settings,
        1 - on.cuts / off.cuts,
    )
    parts = sum(part.count for part in job.parts)
    _say(
        f"{job.name:22}{parts:>6}{on.sheets:>7}  "
        f"{off.minutes:>6.0f}/{off.settings:>3}/{off.cuts:>3}  "
        f"{on.minutes:>6.0f}/{on.settings:>3}/{on.cuts:>3}"
        f"{saved[0]:>6.0%}{saved[1]:>5.0%}{saved[2]:>5.0%}{seconds:>7.1f}\n"
    )
    return saved


def measure(job: Job, layout: Layout) -> Work:
    """Return the work of a layout in its best order."""
    sequences = [order_cuts(job, sheet) for sheet in layout.sheets]
    return Work(
        sheets=len(layout.sheets),
        minutes=float(sum(minutes(job, sequence) for sequence in sequences)),
        settings=sum(sequence.settings for sequence in sequences),
        cuts=sum(len(sequence.steps) for sequence in sequences),
    )


def _say(text: str) -> None:
    sys.stdout.write(text)
    sys.stdout.flush()


if __name__ == "__main__":
    main()
