"""One run of the second search, in slices of a fixed number of rounds."""

from nesting.job import Job
from nesting.search.least_work import arrays
from nesting.search.least_work.bench import make_bench
from nesting.search.least_work.cutter import FIRST_PART, PlannedCut, PlannedSheet
from nesting.search.least_work.rounds import load
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
        self._work = load()
        self._bench = make_bench(job, problem, plan, seed)
        self._plan = plan
        self._rounds = rounds
        self._slice = 0
        self._left = 0
        self._first: tuple[PlannedSheet, ...] | None = None
        self._weigh_anew()

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
        return int(self._bench.control[arrays.ROUND])

    @property
    def work(self) -> int:
        """The least work found, as the search counts it."""
        return int(self._bench.control[arrays.BEST_WORK])

    def advance(self) -> None:
        """Do one slice of the rounds, or a part of a long one, so that a user's stop is heard."""
        if self._left == 0:
            self._begin_slice()
        rounds = min(self._left, MOST_AT_ONCE)
        self._work(self._bench, rounds, arrays.NOTHING)
        self._left -= rounds
        if self._left == 0:
            self._slice += 1

    def _begin_slice(self) -> None:
        control = self._bench.control
        first = round(FIRST_SHARE * SLICES)
        if self._slice < first:
            start, done = HOT, self._slice / first
            control[arrays.TREE_MOVES] = TREE_MOVES
        else:
            start, done = WARM, (self._slice - first) / (SLICES - first)
            control[arrays.TREE_MOVES] = LAST_TREE_MOVES
            if self._slice == first:
                self._first = self._read_best()
                control[arrays.ORDERED] = 1
                self._weigh_anew()
        control[arrays.HEAT] = round(start * (COLD / start) ** done)
        self._left = self._rounds // SLICES + 1

    def _weigh_anew(self) -> None:
        """Find the minutes of all sheets, and call the state the best."""
        state, control = self._bench.state, self._bench.control
        control[arrays.CLOCK] += 1
        state[arrays.VERSION, : len(self._plan)] = control[arrays.CLOCK]
        control[arrays.BEST_WORK] = arrays.NEVER
        self._work(self._bench, arrays.NONE, arrays.NOTHING)

    def read(self) -> list[tuple[PlannedSheet, ...]]:
        """Return the best sheets so far, and those of the first phase where it is over.

        Nothing can be tried after that.
        """
        best = self._read_best()
        return [best] if self._first is None else [best, self._first]

    def _read_best(self) -> tuple[PlannedSheet, ...]:
        """Return to the best state, and return its sheets; those left empty are left out."""
        self._bench.state[:] = self._bench.best
        return tuple(
            self._read_sheet(slot)
            for slot in range(len(self._plan))
            if self._bench.state[arrays.ROOT, slot] != arrays.NOTHING
        )

    def _read_sheet(self, slot: int) -> PlannedSheet:
        bench = self._bench
        self._work(bench, arrays.NONE, slot)
        cuts = bench.cuts[:, : bench.control[arrays.N_CUTS]]
        planned = tuple(
            PlannedCut(
                is_rip=bool(is_rip),
                keep=int(keep),
                first=self._read_end(int(first)),
                second=self._read_end(int(second)),
            )
            for is_rip, keep, first, second in cuts[
                [arrays.CUT_RIP, arrays.CUT_KEEP, arrays.CUT_FIRST, arrays.CUT_SECOND]
            ].T
        )
        whole = 0 if planned else self._read_end(int(arrays.END - bench.state[arrays.ROOT, slot]))
        return self._plan[slot].kind, planned, whole

    def _read_end(self, end: int) -> int:
        """Return what becomes of a piece: a part's number turned into its code."""
        part = int(arrays.END) - end
        if part < 0:
            return end
        kind = int(self._bench.kind_of[part])
        is_long = self._bench.state[arrays.LENGTH, part] == self._bench.kinds[arrays.LONG, kind]
        return FIRST_PART - 2 * kind - (0 if is_long else 1)
