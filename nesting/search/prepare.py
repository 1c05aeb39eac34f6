"""Loading the compiled kernels, and saying so where they must be compiled first."""

import subprocess
import sys
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from decimal import Decimal
from pathlib import Path

from nesting.search.knapsack import Table
from nesting.search.least_work.prepare import touch
from nesting.search.packers import Packers
from nesting.search.pricing import Pricer
from nesting.search.problem import PartKind, Plan, Problem, SheetKind
from nesting.search.ruin_recreate import RuinRecreate

PATIENCE_S = 0.8  # loading from the cache takes less, compiling takes more
_SECOND_HALF = "from nesting.search.least_work.prepare import touch; touch()"


def prepare(say: Callable[[], None] | None = None) -> None:
    """Load the kernels, compiling them where the cache does not hold them.

    The compiler uses one core. So where it is needed, a second process compiles the kernels of
    the second search meanwhile, and this one finds them in the cache. Should that process fail,
    they are compiled here.

    Args:
        say: Called once, from this thread, where it takes long enough to be worth a word.
    """
    with ThreadPoolExecutor(max_workers=1) as worker:
        loaded = worker.submit(_touch_first_search)
        try:
            loaded.result(timeout=PATIENCE_S)
        except TimeoutError:
            if say is not None:
                say()
            with _compile_second_search() as second:
                loaded.result()
                second.wait()
    touch()


def _compile_second_search() -> subprocess.Popen[bytes]:
    """Start the process, in the folder that holds this very package, so that it loads no other."""
    return subprocess.Popen(  # noqa: S603 - our own interpreter and our own words
        [sys.executable, "-c", _SECOND_HALF],
        cwd=Path(__file__).parents[2],
        stdin=subprocess.DEVNULL,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )


def _touch_first_search() -> None:
    """Call every kernel of the first search once, on two parts of one sheet."""
    kind = PartKind(long=1, short=1, ways=(1,), copies=2, members=())
    sheet = SheetKind(sheet=0, length=2, width=1, price=1, weight=1, count=2, grain=0)
    problem = Problem(grid=1, price_step=Decimal(1), kinds=(kind,), sheets=(sheet,))
    nothing: Plan = ()
    Packers(problem).improve(nothing, 1)
    plan = RuinRecreate(problem, 1).improve(nothing, 10)
    RuinRecreate(problem, 1).improve(plan, 10)
    Pricer(problem, 0).find([1], 0, 1000)
    Table(problem, 0).measure([1])
