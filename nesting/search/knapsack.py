"""The most valuable way to fill one sheet when there are enough copies of every part: exact.

A piece is worth the best of: one part, two pieces cut from it across its length, two cut from it
across its width. Cuts need only be tried where a row of parts can end, and only in the nearer half.

References:
    Gilmore and Gomory (1966), Operations Research 14, 1045-1074; Herz (1972), IBM J. Research and
    Development 16, 462-469 (where cuts need be tried); Beasley (1985), J. Operational Research
    Society 36, 297-306; Terno, Lindemann and Scheithauer (1987), Zuschnittprobleme und ihre
    praktische Loesung (the reduced set of lengths); all from memory.
"""

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from nesting.search.compiled import compiled
from nesting.search.problem import LONG_ALONG_X, LONG_ALONG_Y, SIDE_BY_SIDE, STACKED, Codes, Problem

Ints = NDArray[np.int64]

MOST_CUTS = 6_000_000_000  # work of the largest table that is computed, cells times cuts
MOST_CELLS = 12_000_000
NEAR_X, NEAR_Y = 2_000_000_001, 2_000_000_002  # choices: a piece one point shorter, narrower
HALF = 0.5
MOST_LENGTH = 1_000_000  # grid steps in which points are listed


def list_points(sizes: Sequence[int], whole: int) -> Ints:
    """Return the lengths of pieces that can matter, increasing, from 0 on.

    Rows of parts have lengths that are sums of sizes. A cut in the nearer half leaves such a sum
    on its near side, and on its far side the largest sum that fits the rest; every further cut
    leaves one of these again.
    """
    sums = _list_sums(sizes, whole)
    far = sums[np.searchsorted(sums, whole - sums, side="right") - 1]
    return np.union1d(sums[2 * sums <= whole], far)


def _list_sums(sizes: Sequence[int], whole: int) -> Ints:
    """Return the sums of sizes up to a whole, increasing, from 0 on."""
    reached, mask = 1, (1 << (whole + 1)) - 1  # bit s is set where s is such a sum
    for size in sizes:
        step = size
        while step <= whole:
            reached |= (reached << step) & mask
            step *= 2
    text = np.frombuffer(reached.to_bytes(whole // 8 + 1, "little"), dtype=np.uint8)
    return np.nonzero(np.unpackbits(text, bitorder="little"))[0].astype(np.int64)


@compiled
def fill_table(  # noqa: C901, PLR0912 - the innermost loop, in one piece
    xs: Ints, ys: Ints, pieces: Ints, table: Ints, across: Ints, choices: NDArray[np.int32]
) -> None:
    """Compute what every piece is worth, and what to do with it.

    Args:
        xs: Lengths of pieces, increasing, from 0 on. Shape (p,).
        ys: Widths of pieces, likewise. Shape (q,).
        pieces: Length, width and value of the parts as they may lie. Shape (n, 3).
        table: Filled with values. Shape (p, q).
        across: The same turned, so that both are read along rows. Shape (q, p).
        choices: Filled: 0 for nothing, 1 + a row of pieces for a part, -1 - i for a cut at xs[i],
            -1 - p - j for one at ys[j], -NEAR_X or -NEAR_Y for a smaller piece. Shape (p, q), or
            (0, 0) where nobody asks.
    """
    keeps = choices.shape[0] > 0
    richest = 0.0
    for number in range(len(pieces)):
        area = float(pieces[number, 0]) * pieces[number, 1]
        richest = max(richest, pieces[number, 2] / area)
    table[:] = 0
    across[:] = 0
    for number in range(len(pieces)):
        i = np.searchsorted(xs, pieces[number, 0])
        j = np.searchsorted(ys, pieces[number, 1])
        if i < len(xs) and j < len(ys) and pieces[number, 2] > table[i, j]:
            table[i, j] = pieces[number, 2]
            if keeps:
                choices[i, j] = 1 + number
    for i in range(1, len(xs)):
        for j in range(1, len(ys)):
            best = table[i, j]
            choice = 0
            if table[i - 1, j] > best:
                best, choice = table[i - 1, j], -NEAR_X
            if table[i, j - 1] > best:
                best, choice = table[i, j - 1], -NEAR_Y
            most = richest * xs[i] * ys[j] - HALF  # no value above it is possible
            rest = i
            for cut in range(1, i + 1):
                if 2 * xs[cut] > xs[i] or best > most:
                    break
                while xs[rest] > xs[i] - xs[cut]:
                    rest -= 1
                if across[j, cut] + across[j, rest] > best:
                    best, choice = across[j, cut] + across[j, rest], -1 - cut
            rest = j
            for cut in range(1, j + 1):
                if 2 * ys[cut] > ys[j] or best > most:
                    break
                while ys[rest] > ys[j] - ys[cut]:
                    rest -= 1
                if table[i, cut] + table[i, rest] > best:
                    best, choice = table[i, cut] + table[i, rest], -1 - len(xs) - cut
            table[i, j] = best
            across[j, i] = best
            if keeps and choice != 0:
                choices[i, j] = choice


class Table:
    """What every piece of one sheet kind is worth, copies being unlimited."""

    def __init__(self, problem: Problem, sheet: int) -> None:
        """List where cuts need be tried; nothing is computed yet."""
        self._problem = problem
        self._sheet = problem.sheets[sheet]
        self._lying = _list_lying(problem, sheet)
        whole = (self._sheet.length, self._sheet.width)
        self._points: tuple[Ints, Ints] | None = None
        if max(whole) <= MOST_LENGTH and self._lying:
            xs, ys = (
                list_points(sorted({side[axis] for side in self._lying}), whole[axis])
                for axis in (0, 1)
            )
            self._points = xs, ys

    @property
    def work(self) -> int:
        """Cells times cuts, about; above MOST_CUTS where it is too much."""
        if self._points is None:
            return 2 * MOST_CUTS
        xs, ys = self._points
        cells = len(xs) * len(ys)
        if cells > MOST_CELLS:
            return 2 * MOST_CUTS
        cuts = np.searchsorted(xs, xs // 2).mean() + np.searchsorted(ys, ys // 2).mean()
        return int(cells * (cuts + 2))

    def measure(self, values: Sequence[int]) -> int:
        """Return what a whole sheet can be worth; `work` must not be too much."""
        table, _ = self._fill(values, keeps=False)
        return int(table[-1, -1])

    def fill(self, values: Sequence[int]) -> Codes:
        """Return the most valuable tree; `work` must not be too much."""
        _, choices = self._fill(values, keeps=True)
        assert self._points is not None
        xs, ys = self._points
        return _read_piece(xs, ys, choices, self._lying, (len(xs) - 1, len(ys) - 1))

    def _fill(self, values: Sequence[int], *, keeps: bool) -> tuple[Ints, NDArray[np.int32]]:
        assert self._points is not None, "the table is too large"
        xs, ys = self._points
        pieces = np.array([(x, y, values[code // 2]) for x, y, code in self._lying], dtype=np.int64)
        table = np.zeros((len(xs), len(ys)), dtype=np.int64)
        choices = np.zeros(table.shape if keeps else (0, 0), dtype=np.int32)
        fill_table(xs, ys, pieces, table, table.T.copy(), choices)
        return table, choices


def _list_lying(problem: Problem, sheet: int) -> list[tuple[int, int, int]]:
    """Return the parts as they may lie on a sheet: length, width and code."""
    lying = []
    for number, kind in enumerate(problem.kinds):
        if kind.ways[sheet] & LONG_ALONG_X:
            lying.append((kind.long, kind.short, 2 * number))
        if kind.ways[sheet] & LONG_ALONG_Y and kind.long != kind.short:
            lying.append((kind.short, kind.long, 2 * number + 1))
    return lying


def _read_piece(
    xs: Ints,
    ys: Ints,
    choices: NDArray[np.int32],
    lying: list[tuple[int, int, int]],
    piece: tuple[int, int],
) -> Codes:
    """Return the tree of a piece, given by its places in xs and ys, empty for nothing."""
    i, j = piece
    while True:
        choice = int(choices[i, j]) if i and j else 0
        if choice == -NEAR_X:
            i -= 1
        elif choice == -NEAR_Y:
            j -= 1
        else:
            break
    if choice == 0:
        return ()
    if choice > 0:
        return (lying[choice - 1][2],)
    cut = -1 - choice
    if cut < len(xs):
        rest = int(np.searchsorted(xs, xs[i] - xs[cut], side="right")) - 1
        pieces, join = ((cut, j), (rest, j)), SIDE_BY_SIDE
    else:
        cut -= len(xs)
        rest = int(np.searchsorted(ys, ys[j] - ys[cut], side="right")) - 1
        pieces, join = ((i, cut), (i, rest)), STACKED
    first, second = (_read_piece(xs, ys, choices, lying, half) for half in pieces)
    return (*first, *second, join) if first and second else first or second
