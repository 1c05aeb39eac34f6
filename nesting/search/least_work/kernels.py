"""Least work at fixed sheets, as compiled functions on whole-number arrays.

The trees are those of the first search: binary, a node holding the least length (x) and width (y)
that its parts need. Node i below the number of parts is part i, the others are inner nodes. Sheets
are slots that never change; an empty one has no root. `put` records what it overwrites, so that a
step that is not accepted is taken back.

What a tree costs is found by cutting it up: joints of one direction become one row; the pieces of a
row are freed in order, those that need most height first, and before each the rest of the row is
cut down to its height where that is less. `cutter` makes the same cuts in the layout.

Money here is time: thousandths of a minute. Lengths are grid steps, kerf included.

The functions live in one module, and share none with the first search, because the cache of
compiled code follows a module's own file only.

References:
    Kirkpatrick, Gelatt and Vecchi (1983), Science 220, 671-680 (annealing); Schrimpf, Schneider,
    Stamm-Wilbrandt and Dueck (2000), J. Computational Physics 159, 139-171 (ruin and recreate);
    Wong and Liu (1986), Design Automation Conference, 101-107 (moves on slicing trees); all from
    memory.
"""

from typing import NamedTuple, cast

import numpy as np
from numpy.typing import NDArray

from nesting.search.compiled import compiled

Ints = NDArray[np.int64]


def _number(first: int, end: int) -> list[int]:
    """Return whole numbers of numpy's; numba would compile a function anew for each plain one."""
    return cast("list[int]", list(np.arange(first, end, dtype=np.int64)))


# Rows of `state` whose columns are nodes.
LEFT, RIGHT, PARENT, JOIN, LENGTH, WIDTH, SLOT, PLACE, MANNER = _number(0, 9)
# Rows whose columns are slots: root of the tree, minutes of the sheet, version, free area.
ROOT, COST, VERSION, FREE = _number(9, 13)
# Rows that are lists: unplaced parts, spare inner nodes. And a row of totals.
UNPLACED, SPARE, TOTAL = _number(13, 16)
ROWS = 16
# Columns of the row of totals.
N_UNPLACED, N_SPARE, MISSING, WORK = _number(0, 4)

# Rows of `kinds` and of `sheets`.
LONG, SHORT, AREA, PRICE = _number(0, 4)
ROOM_X, ROOM_Y, PIECE_X, PIECE_Y, SHEET_AREA, SHEET_KIND = _number(0, 6)

# Entries of `rates`: what things cost, and the sizes from which they do.
CUT, STEP, SETTING, TURN, LIFT, HEAVY, TOO_LONG, GUIDE, NARROW, HELD, TIDY = _number(0, 11)
RATES = 11
STEP_BITS = 30

# Rows of `cuts`.
CUT_SETTING, CUT_PARENT, CUT_RIP, CUT_TURNS, CUT_FIRST, CUT_SECOND, CUT_PLACE = _number(0, 7)
# Rows of `cuts` whose columns are settings: cuts to make, and when one was last looked at. Lists:
# cuts that can be made, those of one setting.
TO_DO, SEEN, OPEN, WAITING = _number(7, 11)
CUT_ROWS = 11

# Entries of `control`.
RANDOM, HEAT, CLOCK, ROUND, BEST_WORK, BEST_COST, N_CUTS, N_SETTINGS = _number(0, 8)
SUM, REST, STAMP, TREE_MOVES, ORDERED, DEEPEST = _number(8, 14)
CONTROLS = 14

# What the choice of the next setting looks at, as in `nesting.cut_sequence.greedy`: there, and with
# more weight on keeping to one direction.
MOST_OPEN = 6
BLOCKED, OPENED, ELSEWHERE, FINISHED, TURNED = 60, 15, 15, 45, 15
STEADY_OPENED, STEADY_TURNED = 2, 75

LEAF, SIDE, STACK = _number(0, 3)
NEVER = cast("int", np.int64(2**62))
NOTHING = cast("int", np.int64(-1))
NONE, ONE = _number(0, 2)
EITHER_WAY = 3

# Bits of MANNER. The first two count at the topmost joint of a row (the first at parts, too), the
# others at the pieces of a row.
LENGTH_FIRST = 1  # the rest behind a row is cut off first; with a part, its smaller rest
EACH_ITSELF = 2  # pieces come off before the row is cut down to their height
OTHERWISE = 4  # this piece does the opposite of that
AT_END = 8  # this piece comes off last

# Chances: scores and sheets ruined in tenths, the rest in hundredths or 1024ths.
MISFIT, STRIP, SHORTER_REST, LOST, UNEVEN = _number(0, 5)
MODES = np.array([MISFIT] * 4 + [STRIP] * 2 + [SHORTER_REST] * 2 + [LOST, UNEVEN])
RUINED = np.array([1] * 4 + [2] * 4 + [3] * 2)
MOST_TAKEN = 8
BY_AREA, BY_LONG, BY_SHORT = 70, 80, 90  # the rest in random order
SWAPPED, REGRAFTED, FLIPPED = 30, 60, 80  # the rest are rebuilt
CLIMBED_HIGHER = 40
CLIMBED = 35
BLINK = 61
LUCK = 4096


class Bench(NamedTuple):
    """All arrays of a search. Those from `kinds` on never change.

    Attributes:
        state: What is placed where; see the rows above. Shape (ROWS, columns).
        best: A copy of the state at its best with everything placed. Same shape.
        log: What `put` overwrote: count and entries, old values. Shape (2, size).
        control: Counters and the random state. Shape (CONTROLS,).
        scratch: Stacks and lists of one call. Shape (8, 2 * columns).
        cuts: The cuts of the sheet looked at. Shape (CUT_ROWS, 4 * columns).
        table: Settings of that sheet: key, stamp, number. Shape (3, a power of two).
        fail: Version of the sheet on which a kind had no place. Shape (kinds, slots).
        kinds: Sides, area and price unplaced of the part kinds. Shape (4, kinds).
        kind_of: Kind of every part. Shape (parts,).
        sheets: Usable sizes, real sizes, area and kind of every slot. Shape (6, slots).
        ways: How a part kind may lie on a slot: 1 long side along x, 2 along y, 3 both, 0 not at
            all. Shape (slots, kinds).
        rates: What things cost. Shape (RATES,).
        luck: Quantiles of the exponential distribution, in 1024ths. Shape (LUCK,).
    """

    state: Ints
    best: Ints
    log: Ints
    control: Ints
    scratch: Ints
    cuts: Ints
    table: Ints
    fail: Ints
    kinds: Ints
    kind_of: Ints
    sheets: Ints
    ways: Ints
    rates: Ints
    luck: Ints


@compiled
def draw(control: Ints, below: int) -> int:
    """Return a random whole number below a limit (xorshift, Marsaglia 2003, on 64 bits)."""
    x = np.uint64(control[RANDOM])
    x ^= x << np.uint64(13)
    x ^= x >> np.uint64(7)
    x ^= x << np.uint64(17)
    control[RANDOM] = np.int64(x)
    return int(np.int64(x >> np.uint64(33)) % below)


@compiled
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


@compiled
def take_back(state: Ints, log: Ints) -> None:
    """Undo everything recorded."""
    columns = state.shape[1]
    for entry in range(log[0, 0], 0, -1):
        state[log[0, entry] // columns, log[0, entry] % columns] = log[1, entry]
    log[0, 0] = 0


@compiled
def mark(bench: Bench, slot: int) -> None:
    """Give a changed sheet a version that it never had before."""
    bench.control[CLOCK] += 1
    put(bench.state, bench.log, VERSION, slot, bench.control[CLOCK])


@compiled
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


@compiled
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


@compiled
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


@compiled
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


@compiled
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


@compiled
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


@compiled
def score(  # noqa: PLR0917 - plain numbers are what a kernel takes
    mode: int,
    room: int,
    room_across: int,
    own_across: int,
    own_along: int,
    part_along: int,
    part_across: int,
) -> int:
    """Return how badly a part fits beside a node, the least being best.

    Along is the direction in which they lie one after the other. `room` is what is left of the
    node's allotment along it before the part is there, `room_across` its allotment across.
    """
    left = room - part_along
    uneven = abs(part_across - own_across)
    if mode == MISFIT:  # the smallest of three misfits
        return min(uneven, left, room_across - max(part_across, own_across))
    if mode == STRIP:  # area of the strip that the part would start
        return room * room_across
    if mode == SHORTER_REST:  # the shorter leftover side
        return min(left, room_across - part_across)
    if mode == LOST:  # area lost beside the smaller of the two
        return uneven * (part_along if part_across < own_across else own_along)
    return uneven


@compiled
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
                if value < best and draw(control, 1024) >= BLINK:
                    best, best_node, best_join, best_side = value, node, SIDE, side
            if width + part_y <= allot_y:
                has_place = ONE
                value = score(mode, allot_y - width, allot_x, length, width, part_y, part_x)
                if value < best and draw(control, 1024) >= BLINK:
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


@compiled
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
        best_side = possible - 1 if possible < EITHER_WAY else draw(bench.control, 2)
    insert(bench, part, best_slot, best_node, best_join, best_side)


@compiled
def recreate(bench: Bench) -> None:
    """Place what is unplaced: the largest first most often, else in another order."""
    state, control, scratch, kinds = bench.state, bench.control, bench.scratch, bench.kinds
    mode = MODES[draw(control, 10)]
    count = state[TOTAL, N_UNPLACED]
    dice = draw(control, 100)
    noise = 1 + draw(control, 128)
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
            key = np.int64(1 << 20)
        key *= 256 + draw(control, noise)
        to = at
        while to > 0 and scratch[4, to - 1] < key:
            scratch[3, to], scratch[4, to] = scratch[3, to - 1], scratch[4, to - 1]
            to -= 1
        scratch[3, to], scratch[4, to] = part, key
    for at in range(count):
        place(bench, scratch[3, at], mode)


@compiled
def pick_node(bench: Bench, part: int, chance: int) -> int:
    """Return a part or, with a chance a level in hundredths, what lies above it."""
    state = bench.state
    node = part
    while state[PARENT, node] != NOTHING and draw(bench.control, 100) < chance:
        node = state[PARENT, node]
    return node


@compiled
def ruin(bench: Bench) -> None:
    """Take up to MOST_TAKEN parts off one to three sheets, with what they were cut with."""
    state, control = bench.state, bench.control
    parts = bench.kind_of.shape[0]
    sheets = RUINED[draw(control, 10)]
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


@compiled
def walk_down(bench: Bench, node: int) -> int:
    """Return a part below a node, every turn by chance."""
    state = bench.state
    while state[JOIN, node] != LEAF:
        node = state[LEFT + draw(bench.control, 2), node]
    return node


@compiled
def fits(bench: Bench, slot: int) -> bool:
    """Return whether the tree of a slot fits its sheet."""
    state, sheets = bench.state, bench.sheets
    root = state[ROOT, slot]
    if root == NOTHING:
        return True
    return bool(
        state[LENGTH, root] <= sheets[ROOM_X, slot] and state[WIDTH, root] <= sheets[ROOM_Y, slot]
    )


@compiled
def is_above(state: Ints, high: int, low: int) -> bool:
    """Return whether a node is another one or lies above it."""
    while low != NOTHING:
        if low == high:
            return True
        low = state[PARENT, low]
    return False


@compiled
def move_parts(bench: Bench, node: int, old: int, new: int) -> bool:
    """Note that all below a node lies on another slot now; False where a part must not lie so."""
    state, log, scratch, kinds = bench.state, bench.log, bench.scratch, bench.kinds
    if old == new:
        return True
    scratch[0, 0] = node
    waiting = 1
    while waiting > 0:
        waiting -= 1
        node = scratch[0, waiting]
        if state[JOIN, node] == LEAF:
            kind = bench.kind_of[node]
            way = 1 if state[LENGTH, node] == kinds[LONG, kind] else 2
            if bench.ways[new, kind] & way == 0:
                return False
            put(state, log, SLOT, node, new)
            put(state, log, FREE, old, state[FREE, old] + kinds[AREA, kind])
            put(state, log, FREE, new, state[FREE, new] - kinds[AREA, kind])
        else:
            scratch[0, waiting] = state[LEFT, node]
            scratch[0, waiting + 1] = state[RIGHT, node]
            waiting += 2
    return True


@compiled
def swap(bench: Bench, first: int, second: int) -> bool:
    """Exchange two subtrees; False where that cannot be."""
    state = bench.state
    slot, other = state[SLOT, first], state[SLOT, second]
    first, second = (
        pick_node(bench, first, CLIMBED_HIGHER),
        pick_node(bench, second, CLIMBED_HIGHER),
    )
    if is_above(state, first, second) or is_above(state, second, first):
        return False
    above, other_above = state[PARENT, first], state[PARENT, second]
    if above == other_above:
        return False
    if not (move_parts(bench, first, slot, other) and move_parts(bench, second, other, slot)):
        return False
    hang(bench, second, first, above, slot)
    hang(bench, first, second, other_above, other)
    repair(bench, above)
    repair(bench, other_above)
    mark(bench, slot)
    mark(bench, other)
    return fits(bench, slot) and fits(bench, other)


@compiled
def regraft(bench: Bench, first: int, second: int) -> bool:
    """Cut a subtree off and join it to another node; False where that cannot be."""
    state = bench.state
    slot, other = state[SLOT, first], state[SLOT, second]
    first, second = (
        pick_node(bench, first, CLIMBED_HIGHER),
        pick_node(bench, second, CLIMBED_HIGHER),
    )
    if is_above(state, first, second) or is_above(state, second, first):
        return False
    if not move_parts(bench, first, slot, other):
        return False
    unhang(bench, first, slot)
    join_beside(bench, first, second, ONE + draw(bench.control, 2), other)
    mark(bench, slot)
    mark(bench, other)
    return fits(bench, slot) and fits(bench, other)


@compiled
def flip(bench: Bench, part: int) -> bool:
    """Turn a joint above a part, its manner, or the part itself; False where that cannot be."""
    state, log = bench.state, bench.log
    slot = state[SLOT, part]
    node = pick_node(bench, part, CLIMBED_HIGHER)
    if draw(bench.control, 2) == 0:
        put(state, log, MANNER, node, state[MANNER, node] ^ (ONE << draw(bench.control, 4)))
    elif state[JOIN, node] == LEAF:
        if bench.ways[slot, bench.kind_of[node]] != EITHER_WAY:
            return False
        length, width = state[LENGTH, node], state[WIDTH, node]
        put(state, log, LENGTH, node, width)
        put(state, log, WIDTH, node, length)
        repair(bench, state[PARENT, node])
    else:
        put(state, log, JOIN, node, SIDE + STACK - state[JOIN, node])
        repair(bench, node)
    mark(bench, slot)
    return fits(bench, slot)


@compiled
def rebuild(bench: Bench, part: int) -> bool:
    """Rotate d(e(a,b),c) to e(a,d(b,c)), or transpose d(e(a,b),e(c,f)) to e(d(a,c),d(b,f))."""
    state, log, control = bench.state, bench.log, bench.control
    slot = state[SLOT, part]
    inner = state[PARENT, pick_node(bench, part, CLIMBED_HIGHER)]
    if inner == NOTHING or state[PARENT, inner] == NOTHING:
        return False
    node = state[PARENT, inner]
    other = state[RIGHT, node] if state[LEFT, node] == inner else state[LEFT, node]
    outer_join, inner_join = state[JOIN, node], state[JOIN, inner]
    turn = draw(control, 2)
    a, b = state[LEFT + turn, inner], state[RIGHT - turn, inner]
    if state[JOIN, other] == inner_join and inner_join != outer_join and draw(control, 2) == 0:
        turn = draw(control, 2)
        c, f = state[LEFT + turn, other], state[RIGHT - turn, other]
        put(state, log, LEFT, inner, a)
        put(state, log, RIGHT, inner, c)
        put(state, log, LEFT, other, b)
        put(state, log, RIGHT, other, f)
        put(state, log, PARENT, c, inner)
        put(state, log, PARENT, b, other)
        put(state, log, JOIN, inner, outer_join)
        put(state, log, JOIN, other, outer_join)
        put(state, log, JOIN, node, inner_join)
        repair(bench, other)
    else:
        put(state, log, LEFT, node, a)
        put(state, log, RIGHT, node, inner)
        put(state, log, PARENT, a, node)
        put(state, log, LEFT, inner, b)
        put(state, log, RIGHT, inner, other)
        put(state, log, PARENT, other, inner)
        put(state, log, JOIN, inner, outer_join)
        put(state, log, JOIN, node, inner_join)
    put(state, log, LENGTH, inner, NONE)
    repair(bench, inner)
    put(state, log, LENGTH, node, NONE)
    repair(bench, node)
    mark(bench, slot)
    return fits(bench, slot)


@compiled
def move_tree(bench: Bench) -> bool:
    """Make one move on the trees; False where it cannot be made."""
    state, control = bench.state, bench.control
    parts = bench.kind_of.shape[0]
    first, second = draw(control, parts), draw(control, parts)
    if state[SLOT, first] == NOTHING or state[SLOT, second] == NOTHING:
        return False
    dice = draw(control, 100)
    if dice < SWAPPED:
        return swap(bench, first, second)
    if dice < REGRAFTED:
        return regraft(bench, first, second)
    if dice < FLIPPED:
        return flip(bench, first)
    return rebuild(bench, first)


@compiled
def add_cut(bench: Bench, parent: int, is_rip: int, keep: int, piece_x: int, piece_y: int) -> int:
    """Add a cut to the list and what it costs to the sum; return its number.

    Cuts of equal direction and keep size share a setting.
    """
    control, cuts, table, rates = bench.control, bench.cuts, bench.table, bench.rates
    number: int = control[N_CUTS]
    control[N_CUTS] = number + ONE
    run = piece_x if is_rip == 1 else piece_y
    cost = rates[CUT] + (run * rates[STEP] >> STEP_BITS)
    if piece_x * piece_y > rates[HEAVY]:
        cost += rates[LIFT]
    if run > rates[GUIDE]:
        cost += rates[TOO_LONG]
    if min(piece_x, piece_y) < rates[HELD]:
        cost += rates[NARROW]
    control[SUM] += cost
    key = 2 * keep + is_rip
    size = table.shape[1]
    at = (key * 0x9E3779B1 >> 7) & (size - 1)
    while table[1, at] == control[STAMP] and table[0, at] != key:
        at = (at + 1) & (size - 1)
    if table[1, at] != control[STAMP]:
        table[0, at] = key
        table[1, at] = control[STAMP]
        table[2, at] = control[N_SETTINGS]
        control[N_SETTINGS] += 1
    cuts[CUT_SETTING, number] = table[2, at]
    cuts[CUT_PARENT, number] = parent
    cuts[CUT_RIP, number] = is_rip
    cuts[CUT_FIRST, number] = NOTHING
    cuts[CUT_SECOND, number] = NOTHING
    turns = NONE
    if parent != NOTHING:
        cuts[CUT_FIRST if cuts[CUT_FIRST, parent] == NOTHING else CUT_SECOND, parent] = number
        turns = cuts[CUT_TURNS, parent]
        if cuts[CUT_RIP, parent] != is_rip:
            turns += 1
    cuts[CUT_TURNS, number] = turns
    control[DEEPEST] = max(control[DEEPEST], turns)
    return number


@compiled
def note_rest(bench: Bench, slot: int, length: int, width: int) -> None:
    """Count a leftover, by the square of its share of the sheet."""
    share = int(1000.0 * length * width / bench.sheets[SHEET_AREA, slot])
    bench.control[REST] += share * share


@compiled
def cut_leaf(bench: Bench, slot: int, node: int, piece_x: int, piece_y: int, parent: int) -> None:
    """Add the cuts that free a part from a piece, most often the one with the larger rest first."""
    state, guide = bench.state, bench.rates[GUIDE]
    length, width = state[LENGTH, node], state[WIDTH, node]
    over_x, over_y = piece_x - length, piece_y - width
    is_crosscut = over_x * piece_y >= over_y * piece_x
    if state[MANNER, node] & LENGTH_FIRST:
        is_crosscut = not is_crosscut
    if piece_y <= guide < piece_x and over_x > 0:
        is_crosscut = True
    for step in range(2):
        if is_crosscut == (step == 0):
            if over_x > 0:
                parent = add_cut(bench, parent, NONE, length, piece_x, piece_y)
                note_rest(bench, slot, over_x, piece_y)
                piece_x = length
        elif over_y > 0:
            parent = add_cut(bench, parent, ONE, width, piece_x, piece_y)
            note_rest(bench, slot, piece_x, over_y)
            piece_y = width


@compiled
def rank(state: Ints, row: int, piece: int) -> int:
    """Return 0 for pieces that come off first, by themselves, 1 for others, 2 or 3 at the end."""
    by_itself = (state[MANNER, row] & EACH_ITSELF != 0) != (state[MANNER, piece] & OTHERWISE != 0)
    last = 2 if state[MANNER, piece] & AT_END else 0
    return last if by_itself else last + 1


@compiled
def list_row(bench: Bench, node: int) -> int:
    """Write the pieces of a row to scratch row 5 in the order of cutting; return how many.

    Those that come off by themselves are first, then the highest, then the longest; height is the
    extent across the row. Row 7 gets the greatest height from each piece on.
    """
    state, scratch = bench.state, bench.scratch
    top, join = node, state[JOIN, node]
    across, along = (WIDTH, LENGTH) if join == SIDE else (LENGTH, WIDTH)
    count = 0
    scratch[6, 0] = node
    waiting = 1
    while waiting > 0:
        waiting -= 1
        node = scratch[6, waiting]
        if state[JOIN, node] == join:
            scratch[6, waiting] = state[LEFT, node]
            scratch[6, waiting + 1] = state[RIGHT, node]
            waiting += 2
            continue
        own_rank, height, run = rank(state, top, node), state[across, node], state[along, node]
        to = count
        while to > 0:
            before = scratch[5, to - 1]
            order = scratch[7, to - 1] - own_rank
            if order == 0:
                order = height - state[across, before]
            if order == 0:
                order = run - state[along, before]
            if order <= 0:
                break
            scratch[5, to], scratch[7, to] = before, scratch[7, to - 1]
            to -= 1
        scratch[5, to], scratch[7, to] = node, own_rank
        count += 1
    high = NONE
    for at in range(count - 1, -1, -1):
        high = max(high, state[across, scratch[5, at]])
        scratch[7, at] = high
    return count


@compiled
def list_cuts(bench: Bench, slot: int) -> None:  # noqa: C901, PLR0912, PLR0915 - both directions
    """Write the cuts of a sheet to `cuts`, their number and cost to `control`."""
    state, control, scratch, rates = bench.state, bench.control, bench.scratch, bench.rates
    control[N_CUTS] = 0
    control[N_SETTINGS] = 0
    control[SUM] = 0
    control[REST] = 0
    control[DEEPEST] = 0
    control[STAMP] += 1
    scratch[0, 0] = state[ROOT, slot]
    scratch[1, 0] = bench.sheets[PIECE_X, slot]
    scratch[2, 0] = bench.sheets[PIECE_Y, slot]
    scratch[3, 0] = NOTHING
    waiting = 1
    while waiting > 0:
        waiting -= 1
        node = scratch[0, waiting]
        piece_x, piece_y = scratch[1, waiting], scratch[2, waiting]
        parent = scratch[3, waiting]
        join = state[JOIN, node]
        if join == LEAF:
            cut_leaf(bench, slot, node, piece_x, piece_y, parent)
            continue
        count = list_row(bench, node)
        manner = state[MANNER, node]
        total_x, total_y = state[LENGTH, node], state[WIDTH, node]
        if manner & LENGTH_FIRST:
            if join == SIDE and piece_x > total_x:
                parent = add_cut(bench, parent, NONE, total_x, piece_x, piece_y)
                note_rest(bench, slot, piece_x - total_x, piece_y)
                piece_x = total_x
            elif join == STACK and piece_y > total_y:
                parent = add_cut(bench, parent, ONE, total_y, piece_x, piece_y)
                note_rest(bench, slot, piece_x, piece_y - total_y)
                piece_y = total_y
        for number in range(count):
            child = scratch[5, number]
            is_whole = rank(state, node, child) & 1 == 0
            high = scratch[7, number]
            if join == SIDE:
                if piece_y > high and not (is_whole or piece_y <= rates[GUIDE] < piece_x):
                    parent = add_cut(bench, parent, ONE, high, piece_x, piece_y)
                    note_rest(bench, slot, piece_x, piece_y - high)
                    piece_y = high
                keep = state[LENGTH, child]
                over = piece_x - keep
                child_x, child_y = keep, piece_y
            else:
                if piece_x > high and not (is_whole or piece_x <= rates[GUIDE] < piece_y):
                    parent = add_cut(bench, parent, NONE, high, piece_x, piece_y)
                    note_rest(bench, slot, piece_x - high, piece_y)
                    piece_x = high
                keep = state[WIDTH, child]
                over = piece_y - keep
                child_x, child_y = piece_x, keep
            if over > 0:
                parent = add_cut(bench, parent, join - SIDE, keep, piece_x, piece_y)
                if join == SIDE:
                    piece_x = over
                else:
                    piece_y = over
                if number == count - 1:
                    note_rest(bench, slot, piece_x, piece_y)
            scratch[0, waiting] = child
            scratch[1, waiting] = child_x
            scratch[2, waiting] = child_y
            scratch[3, waiting] = parent
            waiting += 1


@compiled
def count_children(cuts: Ints, cut: int) -> int:
    """Return how many cuts follow in the two pieces that a cut makes."""
    if cuts[CUT_FIRST, cut] == NOTHING:
        return 0
    return 1 if cuts[CUT_SECOND, cut] == NOTHING else 2


@compiled
def pick_waiting(cuts: Ints, count: int, most: int, last: int) -> int:
    """Return the place of the next cut among those waiting: of the piece in hand, the plainest.

    The plainest has least to cut after it. NOTHING where each would leave more open pieces
    than `most` allows.
    """
    best, best_value = NOTHING, 6
    for at in range(count):
        cut = cuts[WAITING, at]
        children = count_children(cuts, cut)
        value = children if cuts[CUT_PARENT, cut] == last else children + 3
        if children <= most and value < best_value:
            best, best_value = at, value
    return best


@compiled
def try_setting(bench: Bench, setting: int, count: int, last: int, weight: int) -> tuple[int, int]:
    """Return the score of making all cuts of a setting that can be made, and how many that is.

    Args:
        bench: All arrays.
        setting: The setting.
        count: How many cuts are open.
        last: The last cut made.
        weight: What a piece more that lies about adds to the score.
    """
    cuts = bench.cuts
    waiting, is_in_hand = 0, False
    for at in range(count):
        cut = cuts[OPEN, at]
        if cuts[CUT_SETTING, cut] == setting:
            cuts[WAITING, waiting] = cut
            waiting += 1
    made, opened, before = 0, 0, last
    while waiting > 0:
        at = pick_waiting(cuts, waiting, MOST_OPEN + 1 - count - opened, before)
        if at == NOTHING:
            break
        cut = cuts[WAITING, at]
        waiting -= 1
        cuts[WAITING, at] = cuts[WAITING, waiting]
        is_in_hand = is_in_hand or cuts[CUT_PARENT, cut] == last
        made += 1
        opened -= 1
        before = cut
        for row in (CUT_FIRST, CUT_SECOND):
            child = cuts[row, cut]
            if child != NOTHING:
                opened += 1
                if cuts[CUT_SETTING, child] == setting:
                    cuts[WAITING, waiting] = child
                    waiting += 1
    left = cuts[TO_DO, setting] - made
    score = BLOCKED * left + weight * opened
    if not is_in_hand:
        score += ELSEWHERE
    if left == 0:
        score -= FINISHED
    return score, made


@compiled
def make_cuts(bench: Bench, setting: int, made: int, count: int, last: int) -> tuple[int, int]:
    """Make so many cuts of a setting; return how many are open then, and the last one made."""
    cuts = bench.cuts
    for _ in range(made):
        best, best_value = NOTHING, 6
        for at in range(count):
            cut = cuts[OPEN, at]
            children = count_children(cuts, cut)
            value = children if cuts[CUT_PARENT, cut] == last else children + 3
            if (
                cuts[CUT_SETTING, cut] == setting
                and count + children - 1 <= MOST_OPEN
                and value < best_value
            ):
                best, best_value = at, value
        if best == NOTHING:
            best = NONE
            while cuts[CUT_SETTING, cuts[OPEN, best]] != setting:
                best += 1
        last = cuts[OPEN, best]
        count -= 1
        cuts[OPEN, best] = cuts[OPEN, count]
        cuts[TO_DO, setting] -= 1
        for row in (CUT_FIRST, CUT_SECOND):
            if cuts[row, last] != NOTHING:
                cuts[OPEN, count] = cuts[row, last]
                count += 1
    return count, last


@compiled
def weigh_order(bench: Bench, opened: int, turned: int) -> int:  # noqa: C901 - one loop
    """Return the minutes for settings and turns of one good order of the cuts in `cuts`.

    Args:
        bench: All arrays.
        opened: What a piece more that lies about adds to the score of a setting.
        turned: What turning the guide adds.
    """
    control, cuts, rates = bench.control, bench.cuts, bench.rates
    for setting in range(control[N_SETTINGS]):
        cuts[TO_DO, setting] = 0
        cuts[SEEN, setting] = NOTHING
    for cut in range(control[N_CUTS]):
        cuts[TO_DO, cuts[CUT_SETTING, cut]] += 1
    if control[N_CUTS] == 0:
        return 0
    cuts[OPEN, 0] = 0
    count, last, stands, cost, step = ONE, NOTHING, NOTHING, NONE, NONE
    while count > 0:
        best_score, best_made, best_setting = NEVER, ONE, cuts[CUT_SETTING, cuts[OPEN, 0]]
        for at in range(count):
            cut = cuts[OPEN, at]
            setting = cuts[CUT_SETTING, cut]
            if cuts[SEEN, setting] == step:
                continue
            cuts[SEEN, setting] = step
            score, made = try_setting(bench, setting, count, last, opened)
            if last != NOTHING and cuts[CUT_RIP, last] != cuts[CUT_RIP, cut]:
                score += turned
            if made > 0 and score < best_score:
                best_score, best_made, best_setting = score, made, setting
        step += 1
        before = last
        count, last = make_cuts(bench, best_setting, best_made, count, last)
        if best_setting != stands:
            cost += rates[SETTING]
        if before != NOTHING and cuts[CUT_RIP, before] != cuts[CUT_RIP, last]:
            cost += rates[TURN]
        stands = best_setting
    return int(cost)


@compiled
def weigh(bench: Bench, slot: int) -> int:
    """Return the minutes of one sheet, in thousandths, less a little for large leftovers."""
    control, rates = bench.control, bench.rates
    if bench.state[ROOT, slot] == NOTHING:
        return int(-rates[TIDY])
    list_cuts(bench, slot)
    cost = control[SUM]
    if control[ORDERED] == 1:
        plain = weigh_order(bench, OPENED, TURNED)
        cost += min(plain, weigh_order(bench, STEADY_OPENED, STEADY_TURNED))
    else:
        cost += rates[SETTING] * control[N_SETTINGS] + rates[TURN] * control[DEEPEST]
    return int(cost - control[REST] * rates[TIDY] // 1000000)


@compiled
def weigh_changed(bench: Bench, before: int) -> None:
    """Find the minutes of the sheets changed since a time of the clock."""
    state, log = bench.state, bench.log
    for slot in range(bench.sheets.shape[1]):
        if state[VERSION, slot] > before:
            cost = weigh(bench, slot)
            put(state, log, TOTAL, WORK, state[TOTAL, WORK] + cost - state[COST, slot])
            put(state, log, COST, slot, cost)


@compiled
def keep_best(bench: Bench) -> None:
    """Copy the state where everything is placed with less work than ever before."""
    state, control, best = bench.state, bench.control, bench.best
    if state[TOTAL, N_UNPLACED] > 0 or state[TOTAL, WORK] >= control[BEST_WORK]:
        return
    control[BEST_WORK] = state[TOTAL, WORK]
    for row in range(best.shape[0]):
        for column in range(best.shape[1]):
            best[row, column] = state[row, column]


@compiled
def anneal(bench: Bench, rounds: int) -> None:
    """Make so many changes, and keep those that the heat allows."""
    state, log, control = bench.state, bench.log, bench.control
    for _ in range(rounds):
        control[ROUND] += 1
        log[0, 0] = 0
        log[1, 0] = 0
        clock = control[CLOCK]
        before = state[TOTAL, WORK] + state[TOTAL, MISSING]
        if draw(control, 100) < control[TREE_MOVES]:
            if not move_tree(bench):
                take_back(state, log)
                continue
            if state[TOTAL, N_UNPLACED] > 0:
                recreate(bench)
        else:
            ruin(bench)
            recreate(bench)
        weigh_changed(bench, clock)
        after = state[TOTAL, WORK] + state[TOTAL, MISSING]
        threshold = control[HEAT] * bench.luck[draw(control, LUCK)] >> 10
        if after - before > threshold and log[1, 0] == 0:
            take_back(state, log)
        else:
            keep_best(bench)


@compiled
def weigh_anew(bench: Bench) -> None:
    """Find the minutes of all sheets, and call the state the best."""
    control = bench.control
    bench.log[0, 0] = 0
    for slot in range(bench.sheets.shape[1]):
        mark(bench, slot)
    weigh_changed(bench, NOTHING)
    bench.log[0, 0] = 0
    control[BEST_WORK] = NEVER
    keep_best(bench)


@compiled
def build(bench: Bench, slot: int, codes: Ints, parts: Ints) -> None:
    """Build on an empty slot the tree that postfix codes describe, with these parts for leaves."""
    state, log, scratch, kinds = bench.state, bench.log, bench.scratch, bench.kinds
    top = 0
    used = 0
    for code in codes:
        log[0, 0] = 0
        if code >= 0:
            part = parts[used]
            used += 1
            kind = bench.kind_of[part]
            state[LENGTH, part] = kinds[code % 2, kind]
            state[WIDTH, part] = kinds[1 - code % 2, kind]
            state[PARENT, part] = NOTHING
            state[SLOT, part] = slot
            state[FREE, slot] -= kinds[AREA, kind]
            scratch[5, top] = part
            top += 1
            continue
        top -= 1
        spare = state[TOTAL, N_SPARE] - 1
        state[TOTAL, N_SPARE] = spare
        node = state[SPARE, spare]
        state[LEFT, node], state[RIGHT, node] = scratch[5, top - 1], scratch[5, top]
        state[JOIN, node] = -code
        state[PARENT, node] = NOTHING
        state[PARENT, state[LEFT, node]] = node
        state[PARENT, state[RIGHT, node]] = node
        state[LENGTH, node] = NONE
        state[WIDTH, node] = NONE
        repair(bench, node)
        scratch[5, top - 1] = node
    state[ROOT, slot] = scratch[5, 0]
    log[0, 0] = 0
    mark(bench, slot)
    weigh_changed(bench, bench.control[CLOCK] - 1)
    log[0, 0] = 0
