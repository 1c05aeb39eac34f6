"""The least cost of whole sheets whose rooms together hold what is wanted.

An integer knapsack cover of a few sheet kinds, by branching on how many of each kind are used, the
best value first, and the relaxation of the rest as the bound. Whole numbers throughout.
"""

from collections.abc import Sequence
from fractions import Fraction

OUT_OF_REACH = 2**200
MOST_NODES = 4000  # beyond this the relaxation of the whole is the answer


def cover_cheaply(
    wanted: int, rooms: Sequence[int], costs: Sequence[int], counts: Sequence[int]
) -> int:
    """Return the least sum of costs, or a lower bound on it where the branching grows too large.

    Where even all sheets hold too little, the answer is the cost of all of them.

    Args:
        wanted: What must be held.
        rooms: What a sheet of each kind holds, 0 or more.
        costs: What one of each kind costs, 0 or more.
        counts: How many of each kind there are.
    """
    kinds = [number for number, room in enumerate(rooms) if room > 0 and counts[number] > 0]
    kinds.sort(key=lambda number: (Fraction(costs[number], rooms[number]), -rooms[number]))
    sizes = [(rooms[number], costs[number], counts[number]) for number in kinds]
    if sum(room * count for room, _, count in sizes) < wanted:
        return sum(cost * count for _, cost, count in sizes)
    best = sum(cost * count for _, cost, count in sizes)
    waiting = [(0, wanted, 0)]
    for _ in range(MOST_NODES):
        if not waiting:
            return best
        at, left, cost = waiting.pop()
        if left <= 0:
            best = min(best, cost)
        elif cost + _relax(sizes, at, left) < best:
            room, price, count = sizes[at]
            most = min(count, -(-left // room))
            waiting += [
                (at + 1, left - used * room, cost + used * price) for used in range(most + 1)
            ]
    return _relax(sizes, 0, wanted)


def _relax(sizes: list[tuple[int, int, int]], at: int, left: int) -> int:
    """Return what covering the rest costs at least; more than anything where it cannot be done."""
    cost = 0
    for room, price, count in sizes[at:]:
        if left <= room * count:
            return cost - (-left * price // room)
        cost += price * count
        left -= room * count
    return OUT_OF_REACH
