"""Dual feasible functions, tabulated for the sizes that occur.

Such a function keeps feasibility: sizes that together are no more than C are together no more than
f(C) afterwards, for every C up to the whole size that it was made for. All but the last of these
are superadditive and never decrease, and that gives the property.

References:
    Fekete and Schepers (2001), Math. Programming 91, 11-31 (the first two families); Carlier,
    Clautiaux and Moukrim (2007), Computers & Operations Research 34, 2223-2250 (the third); from
    memory. The tests check the property for all sums of small sizes.
"""

import numpy as np
from numpy.typing import NDArray

Ints = NDArray[np.int64]

MOST = 60  # functions of one family; more are thinned out evenly
MOST_PARTS = 60  # the second family's parameter


def tabulate(sizes: Ints, counts: Ints, whole: int, *, is_only_whole: bool) -> Ints:
    """Return the values of many functions, each once.

    Args:
        sizes: Sizes to tabulate, none above the whole. Shape (n,), int64, grid steps.
        counts: How many parts may lie with each size along this side. Shape (n,), int64.
        whole: The size that the functions are made for, at most 2**31 grid steps.
        is_only_whole: True where every sheet has this size; then functions join that hold for
            this size only.

    Returns:
        Shape (functions, n + 1), int64; the last column is the value of the whole.
    """
    all_sizes = np.append(sizes, whole)
    thresholds = _thin(_list_thresholds(sizes, whole))
    rows = [all_sizes]
    rows += [_cut_off(all_sizes, whole, threshold) for threshold in thresholds]
    rows += [_count_parts(all_sizes, whole, parts) for parts in range(1, MOST_PARTS + 1)]
    rows += [_count_steps(all_sizes, whole, threshold) for threshold in thresholds]
    if is_only_whole:
        parts = np.sort(np.repeat(sizes, np.minimum(counts, whole // sizes + 1)))
        rows += [_count_small(parts, all_sizes, whole, threshold) for threshold in thresholds]
    return np.unique([row // np.gcd.reduce(row) for row in rows if row[-1] > 0], axis=0)


def _list_thresholds(sizes: Ints, whole: int) -> Ints:
    """Return the thresholds at which a function of the sizes can change."""
    around = np.concatenate([sizes, whole - sizes, sizes + 1, whole - sizes + 1, [whole // 2]])
    return np.unique(around[(around >= 1) & (around <= whole // 2)])


def _thin(values: Ints) -> Ints:
    if len(values) <= MOST:
        return values
    return values[np.linspace(0, len(values) - 1, MOST).astype(np.int64)]


def _cut_off(sizes: Ints, whole: int, threshold: int) -> Ints:
    """Small sizes count nothing, sizes that leave room for small ones only count all."""
    return np.where(sizes > whole - threshold, whole, np.where(sizes < threshold, 0, sizes))


def _count_parts(sizes: Ints, whole: int, parts: int) -> Ints:
    """Count in whole parts + 1-ths of the whole; exact multiples keep their size."""
    scaled = (parts + 1) * sizes
    return np.where(scaled % whole == 0, sizes * parts, scaled // whole * whole)


def _count_steps(sizes: Ints, whole: int, threshold: int) -> Ints:
    """Count how often a threshold goes into a size, large sizes by what they leave."""
    most = whole // threshold
    return np.where(
        2 * sizes > whole,
        2 * (most - (whole - sizes) // threshold),
        np.where(2 * sizes == whole, most, 2 * (sizes // threshold)),
    )


def _count_small(parts: Ints, sizes: Ints, whole: int, threshold: int) -> Ints:
    """Count the parts between a threshold and half; a larger size by how many it shuts out.

    Not superadditive: it holds for the whole only, and for no more than these parts.
    """
    small = parts[(parts >= threshold) & (2 * parts <= whole)]
    sums = np.cumsum(small)
    most = int(np.searchsorted(sums, whole, side="right"))
    shut_out = most - np.searchsorted(sums, whole - sizes, side="right")
    values = np.where(2 * sizes > whole, shut_out, np.where(sizes >= threshold, 1, 0))
    values[-1] = most
    return values
