"""Ruin and recreate: parts are taken off, and put back where a score likes them best.

The score and the order of the parts change from round to round.

References:
    Schrimpf, Schneider, Stamm-Wilbrandt and Dueck (2000), J. Computational Physics 159, 139-171;
    from memory.
"""

import numpy as np

from nesting.search.compiled import inner
from nesting.search.kernels import MODES, score
from nesting.search.least_work.arrays import (
    AREA,
    FREE,
    HUNDRED,
    JOIN,
    LEAF,
    LEFT,
    LENGTH,
    LONG,
    N_UNPLACED,
    NEVER,
    NONE,
    NOTHING,
    ONE,
    RIGHT,
    ROOM_X,
    ROOM_Y,
    ROOT,
    SHORT,
    SIDE,
    SLOT,
    STACK,
    TOTAL,
    TWO,
    UNPLACED,
    VERSION,
    WIDTH,
    Bench,
    fix,
)
from nesting.search.least_work.trees import draw, insert, pick_node, remove, walk_down

RUINED = np.array([1] * 4 + [2] * 4 + [3] * 2)  # sheets
(TENTHS,) = fix([10])
MOST_TAKEN, CLIMBED = fix([8, 35])
BY_AREA, BY_LONG, BY_SHORT = 70, 80, 90  # hundredths; the rest in random order
NOISE, ALIKE = fix([128, 1 << 20])
FINE, BLINK = fix([1024, 61])
EITHER_WAY = 3


@inner
def find_place(  # noqa: C901 - the innermost loop, in one piece
    bench: Bench, kind: int, slot: int, mode: int, bar: int
) -> tuple[int, int, int, int, int]:
    """Return the best place for a part kind on one sheet that scores below a bar.

    A place is skipped with the chance BLINK in 1024, so that the best is not always taken.

    Returns:
        Score, node, join and side of the place (NOTHING as the node where there is none), and 1
        where the part has a place at all, skipped or not.
    """
    state, control, scratch = bench.state, bench.control, bench.scratch
    long, short = bench.kinds[LONG, kind], bench.kinds[SHORT, kind]
    ways = bench.ways[slot, kind]
    best, best_node, best_join, best_side, has_place = bar, NOTHING, NONE, NONE, NONE
    scratch[0, 0] = state[ROOT, slot]
    scratch[1, 0] = bench.sheets[ROOM_X, slot]
    scratch[2, 0] = bench.sheets[ROOM_Y, slot]
    waiting = 1
    while waiting > 0:
        waiting -= 1
        node = scratch[0, waiting]
        allot_x = scratch[1, waiting]
        allot_y = scratch[2, waiting]
        length, width = state[LENGTH, node], state[WIDTH, node]
        goes_deeper = False
        for side in range(2):
            if ways & (side + 1) == 0:
                continue
            part_x, part_y = (long, short) if side == 0 else (short, long)
            if part_x > allot_x or part_y > allot_y:
                continue
            goes_deeper = True
            if length + part_x <= allot_x:
                has_place = ONE
                value = score(mode, allot_x - length, allot_y, width, length, part_x, part_y)
                if value < best and draw(control, FINE) >= BLINK:
                    best, best_node, best_join, best_side = value, node, SIDE, side
            if width + part_y <= allot_y:
                has_place = ONE
                value = score(mode, allot_y - width, allot_x, length, width, part_y, part_x)
                if value < best and draw(control, FINE) >= BLINK:
                    best, best_node, best_join, best_side = value, node, STACK, side
        if goes_deeper and state[JOIN, node] != LEAF:
            left, right = state[LEFT, node], state[RIGHT, node]
            scratch[0, waiting] = left
            scratch[0, waiting + 1] = right
            scratch[1, waiting] = allot_x
            scratch[1, waiting + 1] = allot_x
            scratch[2, waiting] = allot_y
            scratch[2, waiting + 1] = allot_y
            if state[JOIN, node] == SIDE:
                scratch[1, waiting] -= state[LENGTH, right]
                scratch[1, waiting + 1] -= state[LENGTH, left]
            else:
                scratch[2, waiting] -= state[WIDTH, right]
                scratch[2, waiting + 1] -= state[WIDTH, left]
            waiting += 2
    return best, best_node, best_join, best_side, has_place


@inner
def place(bench: Bench, part: int, mode: int) -> None:
    """Put a part at its best place, on an empty sheet where it has none, if there is one."""
    state, fail = bench.state, bench.fail
    kind = bench.kind_of[part]
    area = bench.kinds[AREA, kind]
    best, best_slot, best_node, best_join, best_side = NEVER, NOTHING, NOTHING, NONE, NONE
    empty = NOTHING
    for slot in range(bench.sheets.shape[1]):
        if bench.ways[slot, kind] == 0:
            continue
        if state[ROOT, slot] == NOTHING:
            empty = slot
            continue
        if state[FREE, slot] < area or fail[kind, slot] == state[VERSION, slot]:
            continue
        value, node, join, side, has_place = find_place(bench, kind, slot, mode, best)
        if has_place == 0:
            fail[kind, slot] = state[VERSION, slot]
        if node != NOTHING:
            best, best_slot, best_node, best_join, best_side = value, slot, node, join, side
    if best_slot == NOTHING:
        if empty == NOTHING:
            return
        best_slot = empty
        possible = bench.ways[empty, kind]
        best_side = possible - 1 if possible < EITHER_WAY else draw(bench.control, TWO)
    insert(bench, part, best_slot, best_node, best_join, best_side)


@inner
def recreate(bench: Bench) -> None:
    """Place what is unplaced: the largest first most often, else in another order."""
    state, control, scratch, kinds = bench.state, bench.control, bench.scratch, bench.kinds
    mode = MODES[draw(control, TENTHS)]
    count = state[TOTAL, N_UNPLACED]
    dice = draw(control, HUNDRED)
    noise = 1 + draw(control, NOISE)
    for at in range(count):
        part = state[UNPLACED, at]
        kind = bench.kind_of[part]
        if dice < BY_AREA:
            key = kinds[AREA, kind]
        elif dice < BY_LONG:
            key = kinds[LONG, kind]
        elif dice < BY_SHORT:
            key = kinds[SHORT, kind]
        else:
            key = ALIKE
        key *= 256 + draw(control, noise)
        to = at
        while to > 0 and scratch[4, to - 1] < key:
            scratch[3, to], scratch[4, to] = scratch[3, to - 1], scratch[4, to - 1]
            to -= 1
        scratch[3, to], scratch[4, to] = part, key
    for at in range(count):
        place(bench, scratch[3, at], mode)


@inner
def ruin(bench: Bench) -> None:
    """Take up to MOST_TAKEN parts off one to three sheets, with what they were cut with."""
    state, control = bench.state, bench.control
    parts = bench.kind_of.shape[0]
    sheets = RUINED[draw(control, TENTHS)]
    for _ in range(sheets):
        seed = draw(control, parts)
        slot = state[SLOT, seed]
        if slot == NOTHING:
            continue
        wanted = 1 + draw(control, MOST_TAKEN) // sheets
        wanted -= remove(bench, pick_node(bench, seed, CLIMBED), slot)
        tries = 4 * wanted
        while wanted > 0 and tries > 0 and state[ROOT, slot] != NOTHING:
            tries -= 1
            part = walk_down(bench, state[ROOT, slot])
            wanted -= remove(bench, pick_node(bench, part, CLIMBED), slot)
