"""One run of the second search, in slices of a fixed number of rounds."""

from nesting.job import Job
from nesting.search.least_work import kernels
from nesting.search.least_work.bench import Sheets, make_bench, read_sheets
from nesting.search.problem import Plan, Problem

SLICES = 100
MOST_AT_ONCE = 10_000  # rounds; a fraction of a second
HOT, COLD = 3000, 100
"""Heat at the beginning and at the end of the first phase, thousandths of a minute."""
WARM = 600
FIRST_SHARE = 0.8
TREE_MOVES, LAST_TREE_MOVES = 30, 60
"""Moves on the trees in a hundred rounds, in the first and in the last phase."""


class Annealing:
    """A search that begins hot, cools down, and then works on the best that it found."""

    def __init__(self, job: Job, problem: Problem, plan: Plan, *, rounds: int, seed: int) -> None:
        """Prepare the arrays.

        Args:
            job: The job, for its saw and its times.
            problem: The parts.
            plan: Where they are; every part is placed.
            rounds: How many changes to try.
            seed: The random state to start from, not 0.
        """
        self._bench = make_bench(job, problem, plan, seed)
        self._plan = plan
        self._rounds = rounds
        self._slice = 0
        self._left = 0
        self._first: Sheets | None = None

    @property
    def is_done(self) -> bool:
        """Whether all rounds are used up."""
        return self._slice >= SLICES

    @property
    def done(self) -> float:
        """Fraction of the rounds used up."""
        return self._slice / SLICES

    @property
    def rounds(self) -> int:
        """How many changes were tried."""
        return int(self._bench.control[kernels.ROUND])

    @property
    def work(self) -> int:
        """The least work found, as the search counts it."""
        return int(self._bench.control[kernels.BEST_WORK])

    def advance(self) -> None:
        """Do one slice of the rounds, or a part of a long one, so that a user's stop is heard."""
        if self._left == 0:
            self._begin_slice()
        rounds = min(self._left, MOST_AT_ONCE)
        kernels.anneal(self._bench, rounds)
        self._left -= rounds
        if self._left == 0:
            self._slice += 1

    def _begin_slice(self) -> None:
        control = self._bench.control
        first = round(FIRST_SHARE * SLICES)
        if self._slice < first:
            start, done = HOT, self._slice / first
            control[kernels.TREE_MOVES] = TREE_MOVES
        else:
            start, done = WARM, (self._slice - first) / (SLICES - first)
            control[kernels.TREE_MOVES] = LAST_TREE_MOVES
            if self._slice == first:
                self._first = self._read_best()
                control[kernels.ORDERED] = 1
                self._bench.state[:] = self._bench.best
                kernels.weigh_anew(self._bench)
        control[kernels.HEAT] = round(start * (COLD / start) ** done)
        self._left = self._rounds // SLICES + 1

    def read(self) -> list[Sheets]:
        """Return the best sheets so far, and those of the first phase where it is over."""
        best = self._read_best()
        return [best] if self._first is None else [best, self._first]

    def _read_best(self) -> Sheets:
        return read_sheets(self._bench, self._plan)
