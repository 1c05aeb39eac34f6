"""Ruin and recreate: one search with its own seed, in slices of a fixed amount of work."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from nesting.search import kernels
from nesting.search.problem import Plan, Problem, SheetPlan, count_kinds

BLINK = 61  # chance in 1024 that a place is passed over
MEMORIES = (200, 50, 100, 25)  # rounds after which a worse state is forgotten, for each search
SHORT_MEMORIES = (5, 20, 2, 10)  # the same with several sheet kinds, where goals follow closely
IDLE_LIMIT = 60_000
LOG_SIZE = 1 << 18
AREA_BITS = 50  # areas are halved until their sum is below this power of two
MANY_PARTS = 2000
SPARE_SHEETS = 200
TABLE_SIZE = 1 << 16
KEPT_SIZE = 1 << 18
_SPLIT = 0x9E3779B97F4A7C15
_MASK = 2**64 - 1


def mix_seed(seed: int, number: int) -> int:
    """Return the first random state of the search with a number, never 0.

    References:
        Steele, Lea and Flood (2014), OOPSLA (splitmix64), from memory.
    """
    value = (seed * _SPLIT + (number + 1) * _SPLIT * _SPLIT) & _MASK
    value = ((value ^ value >> 30) * 0xBF58476D1CE4E5B9) & _MASK
    value = ((value ^ value >> 27) * 0x94D049BB133111EB) & _MASK
    value ^= value >> 31
    return (value or _SPLIT) - 2**63


@dataclass(frozen=True, slots=True, kw_only=True)
class Watched:
    """Which sheets are worth keeping.

    Attributes:
        waste: For every sheet kind, the free area that a sheet may have.
        worths: What a part of each kind is worth, in any unit.
        least: For every sheet kind, what its parts must be worth together.
    """

    waste: tuple[int, ...]
    worths: tuple[int, ...]
    least: tuple[int, ...]


class RuinRecreate:
    """A search that keeps its state between slices.

    Attributes:
        problem: What is searched.
        best: Area left unplaced (or its value) and weight of the best plan so far.
    """

    def __init__(
        self,
        problem: Problem,
        seed: int,
        *,
        target: int = 0,
        values: Sequence[int] | None = None,
        sheet_limit: int | None = None,
        is_keeping: bool = False,
        number: int = 0,
    ) -> None:
        """Prepare the arrays.

        Args:
            problem: The parts and sheets.
            seed: The random state to start from; see `mix_seed`.
            target: Weight at which the search may stop, everything being placed.
            values: What each part kind is worth; its area where left out.
            sheet_limit: Most sheets that will ever be open at once.
            is_keeping: Whether good sheets are kept for `hand_over`; see `watch`.
            number: Which of several searches this is; each remembers for another time.
        """
        self.problem = problem
        kinds, copies = problem.kinds, problem.copies
        self._is_stopped = False
        self._shift = shift = max(0, problem.area.bit_length() - AREA_BITS)
        self._slots = min(copies, sheet_limit or copies)
        columns = max(2 * copies, self._slots, len(problem.sheets), 8) + 2
        state = np.zeros((kernels.ROWS, columns), dtype=np.int64)
        counts = np.array([kind.copies for kind in kinds], dtype=np.int64)
        self._desk = kernels.Desk(
            state=state,
            best=np.zeros_like(state),
            log=np.zeros((2, LOG_SIZE), dtype=np.int64),
            control=np.zeros(kernels.CONTROLS, dtype=np.int64),
            scratch=np.zeros((6, 2 * columns), dtype=np.int64),
            memory=np.zeros(_choose_memory(problem, number), dtype=np.int64),
            fail=np.full((len(kinds), self._slots), -1, dtype=np.int32),
            seen=np.zeros(TABLE_SIZE if is_keeping else 0, dtype=np.int64),
            kept=np.zeros(KEPT_SIZE if is_keeping else 1, dtype=np.int64),
            kinds=_list_kinds(problem, shift, values),
            kind_of=np.repeat(np.arange(len(kinds), dtype=np.int64), counts),
            first_of=np.concatenate([[0], np.cumsum(counts)], dtype=np.int64),
            sheets=_list_sheets(problem, shift),
            ways=np.array([kind.ways for kind in kinds], dtype=np.int64).T.copy(),
            stand_in=_list_stand_ins(problem),
        )
        control = self._desk.control
        control[kernels.RANDOM] = seed
        control[kernels.BLINK] = BLINK
        control[kernels.IDLE_LIMIT] = IDLE_LIMIT
        control[kernels.TARGET] = target
        control[kernels.BEST_MISSING] = kernels.NEVER
        control[kernels.BEST_WEIGHT] = kernels.NEVER
        control[kernels.LIMIT] = kernels.NEVER
        self._clear()
        self._desk.memory[:] = state[kernels.TOTAL, kernels.MISSING]

    def _clear(self) -> None:
        """Take everything off, all parts unplaced."""
        state, copies, slots = self._desk.state, self.problem.copies, self._slots
        state[:] = 0
        state[kernels.SLOT, :copies] = kernels.NOTHING
        state[kernels.UNPLACED, :copies] = np.arange(copies)
        state[kernels.PLACE, :copies] = np.arange(copies)
        state[kernels.SPARE_NODES, :copies] = np.arange(copies, 2 * copies)[::-1]
        state[kernels.SPARE_SLOTS, :slots] = np.arange(slots)[::-1]
        state[kernels.TOTAL, kernels.N_UNPLACED] = copies
        state[kernels.TOTAL, kernels.N_SPARE_NODES] = copies
        state[kernels.TOTAL, kernels.N_SPARE_SLOTS] = slots
        state[kernels.TOTAL, kernels.MISSING] = self._total_value

    @property
    def _total_value(self) -> int:
        return int(self._desk.kinds[kernels.VALUE, self._desk.kind_of].sum())

    @property
    def best(self) -> tuple[int, int]:
        """What the best plan so far leaves unplaced, and its weight."""
        return (
            int(self._desk.control[kernels.BEST_MISSING]),
            int(self._desk.control[kernels.BEST_WEIGHT]),
        )

    @property
    def rounds(self) -> int:
        """How many times something was ruined and recreated."""
        return int(self._desk.control[kernels.ROUND])

    @property
    def work(self) -> int:
        """Steps of the last slice."""
        return int(self._desk.control[kernels.STEPS])

    def improve(self, best: Plan, steps: int) -> Plan:
        """Go on from the own state, or from a plan that is better than everything found here."""
        missing, weight = self._measure(best)
        if (missing, weight) < self.best:
            self.load(best)
        self.advance(steps)
        return self.read_best() if self.best < (missing, weight) else best

    def _measure(self, plan: Plan) -> tuple[int, int]:
        """Return what a plan leaves unplaced, in the units of the search, and its weight."""
        missing = self._total_value
        for sheet in plan:
            for kind, count in count_kinds(sheet.codes).items():
                missing -= int(self._desk.kinds[kernels.VALUE, kind]) * count
        return missing, sum(self.problem.sheets[sheet.kind].weight for sheet in plan)

    def advance(self, steps: int) -> None:
        """Search for a fixed amount of work, less where the target is reached or after `stop`."""
        self._desk.control[kernels.STEPS] = 0
        self._desk.control[kernels.LAST_STEP] = steps
        if self._is_stopped:  # looked at after the limit is set, as `stop` does it before
            return
        kernels.search(self._desk)

    def stop(self) -> None:
        """End the slice under way, and every later one, from another thread."""
        self._is_stopped = True
        self._desk.control[kernels.LAST_STEP] = 0

    def watch(self, watched: Watched) -> None:
        """Say which sheets to keep from now on."""
        self._desk.sheets[kernels.SHEET_WASTE] = [area >> self._shift for area in watched.waste]
        self._desk.sheets[kernels.SHEET_WORTH] = watched.least
        self._desk.kinds[kernels.WORTH] = watched.worths

    def hand_over(self) -> list[SheetPlan]:
        """Return the sheets kept since the last time, no mix of parts twice, and forget them."""
        kept, control = self._desk.kept, self._desk.control
        end = 1 + int(kept[0])
        numbers = kept[:end].tolist()
        sheets, at = [], 1
        while at < end:
            codes = tuple(numbers[at + 2 : at + 2 + numbers[at + 1]])
            sheets.append(SheetPlan(kind=numbers[at], codes=codes))
            at += 2 + len(codes)
        kept[0] = 0
        if 2 * control[kernels.N_SEEN] > len(self._desk.seen):
            self._desk.seen[:] = 0
            control[kernels.N_SEEN] = 0
        return sheets

    def load(self, plan: Plan) -> None:
        """Go on from a plan, with a lighter one as the goal."""
        self._clear()
        for sheet in plan:
            self._desk.log[0, 0] = 0
            kernels.read_codes(self._desk, sheet.kind, np.array(sheet.codes, dtype=np.int64))
        self._desk.control[kernels.IS_FRESH] = 1
        self._desk.control[kernels.IDLE] = 0

    def read_best(self) -> Plan:
        """Return the best plan so far."""
        desk, best = self._desk, self._desk.best
        codes = np.zeros(2 * self.problem.copies + 2, dtype=np.int64)
        plan = []
        for place in range(int(best[kernels.TOTAL, kernels.N_OPEN])):
            slot = int(best[kernels.OPEN, place])
            count = kernels.write_codes(best, desk.kinds, desk.kind_of, slot, desk.scratch, codes)
            plan.append(
                SheetPlan(
                    kind=int(best[kernels.SHEET, slot]),
                    codes=tuple(int(code) for code in codes[:count]),
                )
            )
        return tuple(plan)


def _list_kinds(problem: Problem, shift: int, values: Sequence[int] | None) -> kernels.Ints:
    """Return the rows of `Desk.kinds`."""
    kinds = problem.kinds
    areas = [kind.area >> shift for kind in kinds]
    marks = np.random.default_rng(1).integers(-(2**62), 2**62, len(kinds))
    rows = [
        [kind.long for kind in kinds],
        [kind.short for kind in kinds],
        areas,
        areas if values is None else list(values),
        marks.tolist(),
        [0 for _ in kinds],
    ]
    return np.array(rows, dtype=np.int64)


def _list_sheets(problem: Problem, shift: int) -> kernels.Ints:
    """Return the rows of `Desk.sheets`."""
    rows = [
        [sheet.length for sheet in problem.sheets],
        [sheet.width for sheet in problem.sheets],
        [sheet.area >> shift for sheet in problem.sheets],
        [sheet.weight for sheet in problem.sheets],
        [sheet.count for sheet in problem.sheets],
        [0 for _ in problem.sheets],
        [0 for _ in problem.sheets],
    ]
    return np.array(rows, dtype=np.int64)


def _choose_memory(problem: Problem, number: int) -> int:
    """Return for how many rounds a search remembers."""
    memories = MEMORIES if len(problem.sheets) == 1 else SHORT_MEMORIES
    return memories[number % len(memories)]


def _list_stand_ins(problem: Problem) -> kernels.Ints:
    """Return where one sheet kind may take the place of another as far as grain goes."""
    rows = [[int(new.grain in {0, old.grain}) for new in problem.sheets] for old in problem.sheets]
    return np.array(rows, dtype=np.int64)
