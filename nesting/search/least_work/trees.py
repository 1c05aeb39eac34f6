"""Trees of cuts that are changed in place, and taken back where the change is not wanted.

`draw` is here too: it is what every change begins with.
"""

import numpy as np

from nesting.search.compiled import inner
from nesting.search.least_work.arrays import (
    AREA,
    CLOCK,
    FREE,
    HUNDRED,
    JOIN,
    LEAF,
    LEFT,
    LENGTH,
    MANNER,
    MISSING,
    N_SPARE,
    N_UNPLACED,
    NONE,
    NOTHING,
    PARENT,
    PLACE,
    PRICE,
    RANDOM,
    RIGHT,
    ROOM_X,
    ROOM_Y,
    ROOT,
    SIDE,
    SLOT,
    SPARE,
    TOTAL,
    TWO,
    UNPLACED,
    VERSION,
    WIDTH,
    Bench,
    Ints,
)


@inner
def draw(control: Ints, below: int) -> int:
    """Return a random whole number below a limit (xorshift, Marsaglia 2003, on 64 bits)."""
    x = np.uint64(control[RANDOM])
    x ^= x << np.uint64(13)
    x ^= x >> np.uint64(7)
    x ^= x << np.uint64(17)
    control[RANDOM] = np.int64(x)
    return int(np.int64(x >> np.uint64(33)) % below)


@inner
def put(state: Ints, log: Ints, row: int, column: int, value: int) -> None:
    """Write one entry of the state and record what was there. A full log is marked as such."""
    count = log[0, 0] + 1
    if count < log.shape[1]:
        log[0, 0] = count
        log[0, count] = row * state.shape[1] + column
        log[1, count] = state[row, column]
    else:
        log[1, 0] = 1
    state[row, column] = value


@inner
def take_back(state: Ints, log: Ints) -> None:
    """Undo everything recorded."""
    columns = state.shape[1]
    for entry in range(log[0, 0], 0, -1):
        state[log[0, entry] // columns, log[0, entry] % columns] = log[1, entry]
    log[0, 0] = 0


@inner
def mark(bench: Bench, slot: int) -> None:
    """Give a changed sheet a version that it never had before."""
    bench.control[CLOCK] += 1
    put(bench.state, bench.log, VERSION, slot, bench.control[CLOCK])


@inner
def repair(bench: Bench, node: int) -> None:
    """Set the least sizes of a node and of what lies above it, until nothing changes."""
    state, log = bench.state, bench.log
    while node >= 0:
        left, right = state[LEFT, node], state[RIGHT, node]
        if state[JOIN, node] == SIDE:
            length = state[LENGTH, left] + state[LENGTH, right]
            width = max(state[WIDTH, left], state[WIDTH, right])
        else:
            length = max(state[LENGTH, left], state[LENGTH, right])
            width = state[WIDTH, left] + state[WIDTH, right]
        if length == state[LENGTH, node] and width == state[WIDTH, node]:
            return
        put(state, log, LENGTH, node, length)
        put(state, log, WIDTH, node, width)
        node = state[PARENT, node]


@inner
def hang(bench: Bench, node: int, old: int, above: int, slot: int) -> None:
    """Put a node where another one hung: below `above`, or at the root of a slot."""
    state, log = bench.state, bench.log
    put(state, log, PARENT, node, above)
    if above == NOTHING:
        put(state, log, ROOT, slot, node)
    elif state[LEFT, above] == old:
        put(state, log, LEFT, above, node)
    else:
        put(state, log, RIGHT, above, node)


@inner
def join_beside(bench: Bench, node: int, beside: int, join: int, slot: int) -> None:
    """Join a loose node to one that hangs in a tree, or make it the root of an empty slot."""
    state, log = bench.state, bench.log
    if beside == NOTHING:
        put(state, log, PARENT, node, NOTHING)
        put(state, log, ROOT, slot, node)
        return
    spare = state[TOTAL, N_SPARE] - 1
    put(state, log, TOTAL, N_SPARE, spare)
    inner = state[SPARE, spare]
    above = state[PARENT, beside]
    hang(bench, inner, beside, above, slot)
    put(state, log, LEFT, inner, beside)
    put(state, log, RIGHT, inner, node)
    put(state, log, JOIN, inner, join)
    put(state, log, MANNER, inner, state[MANNER, beside] if state[JOIN, beside] == join else NONE)
    put(state, log, LENGTH, inner, NONE)
    put(state, log, WIDTH, inner, NONE)
    put(state, log, PARENT, beside, inner)
    put(state, log, PARENT, node, inner)
    repair(bench, inner)


@inner
def unhang(bench: Bench, node: int, slot: int) -> None:
    """Take a node out of its tree, whole; its sibling takes the parent's place."""
    state, log = bench.state, bench.log
    above = state[PARENT, node]
    if above == NOTHING:
        put(state, log, ROOT, slot, NOTHING)
        return
    sibling = state[RIGHT, above] if state[LEFT, above] == node else state[LEFT, above]
    grand = state[PARENT, above]
    hang(bench, sibling, above, grand, slot)
    put(state, log, SPARE, state[TOTAL, N_SPARE], above)
    put(state, log, TOTAL, N_SPARE, state[TOTAL, N_SPARE] + 1)
    if grand != NOTHING:
        repair(bench, grand)


@inner
def insert(bench: Bench, part: int, slot: int, beside: int, join: int, side: int) -> None:
    """Put an unplaced part beside a node, or on an empty slot where beside is NOTHING."""
    state, log, kinds = bench.state, bench.log, bench.kinds
    kind = bench.kind_of[part]
    put(state, log, LENGTH, part, kinds[side, kind])
    put(state, log, WIDTH, part, kinds[1 - side, kind])
    put(state, log, SLOT, part, slot)
    put(state, log, MANNER, part, NONE)
    join_beside(bench, part, beside, join, slot)
    last_place = state[TOTAL, N_UNPLACED] - 1
    put(state, log, TOTAL, N_UNPLACED, last_place)
    last = state[UNPLACED, last_place]
    place = state[PLACE, part]
    put(state, log, UNPLACED, place, last)
    put(state, log, PLACE, last, place)
    put(state, log, TOTAL, MISSING, state[TOTAL, MISSING] - kinds[PRICE, kind])
    put(state, log, FREE, slot, state[FREE, slot] - kinds[AREA, kind])
    mark(bench, slot)


@inner
def remove(bench: Bench, node: int, slot: int) -> int:
    """Take a node and all below it off its sheet; return how many parts that were."""
    state, log, scratch, kinds = bench.state, bench.log, bench.scratch, bench.kinds
    unhang(bench, node, slot)
    parts = 0
    scratch[0, 0] = node
    waiting = 1
    while waiting > 0:
        waiting -= 1
        node = scratch[0, waiting]
        if state[JOIN, node] == LEAF:
            kind = bench.kind_of[node]
            parts += 1
            place = state[TOTAL, N_UNPLACED]
            put(state, log, SLOT, node, NOTHING)
            put(state, log, PLACE, node, place)
            put(state, log, UNPLACED, place, node)
            put(state, log, TOTAL, N_UNPLACED, place + 1)
            put(state, log, TOTAL, MISSING, state[TOTAL, MISSING] + kinds[PRICE, kind])
            put(state, log, FREE, slot, state[FREE, slot] + kinds[AREA, kind])
        else:
            scratch[0, waiting] = state[LEFT, node]
            scratch[0, waiting + 1] = state[RIGHT, node]
            waiting += 2
            put(state, log, SPARE, state[TOTAL, N_SPARE], node)
            put(state, log, TOTAL, N_SPARE, state[TOTAL, N_SPARE] + 1)
    mark(bench, slot)
    return parts


@inner
def is_above(state: Ints, high: int, low: int) -> bool:
    """Return whether a node is another one or lies above it."""
    while low != NOTHING:
        if low == high:
            return True
        low = state[PARENT, low]
    return False


@inner
def fits(bench: Bench, slot: int) -> bool:
    """Return whether the tree of a slot fits its sheet."""
    state, sheets = bench.state, bench.sheets
    root = state[ROOT, slot]
    if root == NOTHING:
        return True
    return bool(
        state[LENGTH, root] <= sheets[ROOM_X, slot] and state[WIDTH, root] <= sheets[ROOM_Y, slot]
    )


@inner
def pick_node(bench: Bench, part: int, chance: int) -> int:
    """Return a part or, with a chance a level in hundredths, what lies above it."""
    state = bench.state
    node = part
    while state[PARENT, node] != NOTHING and draw(bench.control, HUNDRED) < chance:
        node = state[PARENT, node]
    return node


@inner
def walk_down(bench: Bench, node: int) -> int:
    """Return a part below a node, every turn by chance."""
    state = bench.state
    while state[JOIN, node] != LEAF:
        node = state[LEFT + draw(bench.control, TWO), node]
    return node
