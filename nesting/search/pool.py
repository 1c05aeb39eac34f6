"""A pool of sheets seen: different mixes of parts, each with a tree that holds it."""

from collections.abc import Iterable

import numpy as np
from numpy.typing import NDArray

from nesting.search.problem import Problem, SheetPlan

Ints = NDArray[np.int64]
Floats = NDArray[np.float64]

MOST_SHEETS = 60_000  # a pool above this is cut down to half, the least useful sheets first
FIRST_ROWS = 1024


class Pool:
    """Sheets, no two of which hold the same parts on the same kind of sheet.

    The order of the sheets is the order in which they came; nothing else decides it.
    """

    def __init__(self, problem: Problem) -> None:
        """Begin with an empty pool."""
        self._problem = problem
        self._sheets: list[SheetPlan] = []
        self._numbers: dict[tuple[int, ...], int] = {}
        self._counts = np.zeros((FIRST_ROWS, len(problem.kinds)), dtype=np.float32)

    def __len__(self) -> int:
        """Return how many sheets there are."""
        return len(self._sheets)

    def __getitem__(self, number: int) -> SheetPlan:
        """Return the sheet with a number."""
        return self._sheets[number]

    @property
    def counts(self) -> NDArray[np.float32]:
        """How many parts of each kind every sheet holds. Shape (sheets, kinds)."""
        return self._counts[: len(self._sheets)]

    def list_sheet_kinds(self) -> Ints:
        """Return the sheet kind of every sheet. Shape (sheets,)."""
        return np.array([sheet.kind for sheet in self._sheets], dtype=np.int64)

    def add(self, sheets: Iterable[SheetPlan]) -> list[int]:
        """Add sheets; return the number of each in the pool, whether it was new or not."""
        return [self._add(sheet) for sheet in sheets]

    def _add(self, sheet: SheetPlan) -> int:
        mix = sorted([code >> 1 for code in sheet.codes if code >= 0])
        number = self._numbers.setdefault((sheet.kind, *mix), len(self._sheets))
        if number == len(self._sheets):
            if number == len(self._counts):
                self._counts = np.concatenate([self._counts, np.zeros_like(self._counts)])
            self._counts[number] = np.bincount(mix, minlength=self._counts.shape[1])
            self._sheets.append(sheet)
        return number

    def compact(self, burdens: Floats, kept: Iterable[int]) -> dict[int, int]:
        """Cut a pool that is too large down to half; return the new numbers of those that stay.

        Args:
            burdens: The larger, the sooner a sheet goes. Shape (sheets,).
            kept: Numbers of sheets that stay in any case.
        """
        if len(self) <= MOST_SHEETS:
            return {number: number for number in range(len(self))}
        order = np.argsort(burdens, kind="stable")[: MOST_SHEETS // 2]
        staying = sorted({*order.tolist(), *kept})
        sheets, self._sheets = self._sheets, []
        self._numbers.clear()
        self.add([sheets[number] for number in staying])
        return {old: new for new, old in enumerate(staying)}
