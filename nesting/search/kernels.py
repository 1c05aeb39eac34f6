"""Ruin and recreate on trees of cuts, as compiled functions on whole-number arrays.

The state of a search is one array, `state[row, column]`. Nodes of the trees, slots for open sheets
and part kinds share the columns: node i below the number of parts is part i, the others are inner
nodes. A node holds the *least* length (x) and width (y) that its parts need, never the room that it
has; what it may use is found on the way down, so slack stays free for whatever comes. A part can
therefore be put beside any node. `put` records what it overwrites, so that a step that is not
accepted costs no more to take back than it cost to make.

The columns of `kinds` are part kinds, those of `sheets` sheet kinds; `ways[sheet, kind]` says how a
kind may lie (1 long side along x, 2 along y, 3 both, 0 not at all). `fail[kind, slot]` holds the
version of the sheet on which that kind had no place; versions come from a clock that is never put
back, so taking steps back leaves these entries true.

The functions live in one module, because the cache of compiled code follows a module's own file
only.

References:
    Schrimpf, Schneider, Stamm-Wilbrandt and Dueck (2000), J. Computational Physics 159, 139-171
    (ruin and recreate); Burke and Bykov (2017), EJOR 258, 70-78 (late acceptance); Gardeyn and
    Wauters (2022), EJOR (goal-driven ruin and recreate for guillotine bins); all from memory.
"""

from typing import NamedTuple, cast

import numpy as np
from numpy.typing import NDArray

from nesting.search.compiled import compiled, inner

Ints = NDArray[np.int64]


def _number(first: int, end: int) -> list[int]:
    """Return whole numbers of numpy's; numba would compile a function anew for each plain one."""
    return cast("list[int]", list(np.arange(first, end, dtype=np.int64)))


# Rows of `state` whose columns are nodes.
LEFT, RIGHT, PARENT, JOIN, LENGTH, WIDTH, SLOT, PLACE = _number(0, 8)
# Rows whose columns are slots of open sheets; PLACE_OPEN is a slot's place in the list OPEN.
ROOT, SHEET, VERSION, FREE, PLACE_OPEN, MIX = _number(8, 14)
# Rows that are lists: unplaced parts, open slots, spare inner nodes, spare slots.
UNPLACED, OPEN, SPARE_NODES, SPARE_SLOTS = _number(14, 18)
# A row whose columns are sheet kinds: how many of each are open; and a row of totals.
USED, TOTAL = _number(18, 20)
ROWS = 20
# Columns of the row of totals.
N_UNPLACED, N_OPEN, N_SPARE_NODES, N_SPARE_SLOTS, MISSING, WEIGHT = _number(0, 6)

# Rows of `kinds` and of `sheets`.
LONG, SHORT, AREA, VALUE, MARK, WORTH = _number(0, 6)
SHEET_LENGTH, SHEET_WIDTH, SHEET_AREA, SHEET_WEIGHT, SHEET_COUNT = _number(0, 5)
# What a sheet may waste, and what its parts must be worth, to be kept for other searches.
SHEET_WASTE, SHEET_WORTH = _number(5, 7)

# Entries of `control`.
RANDOM, LIMIT, TARGET, STEPS, LAST_STEP, ROUND, IDLE, BEST_MISSING = _number(0, 8)
BEST_WEIGHT, CLOCK, BLINK, MEMORY_AT, IDLE_LIMIT, IS_FRESH, N_SEEN = _number(8, 15)
CONTROLS = 15

# Chances: scores in tenths, sheets ruined in tenths, sorting keys in hundredths.
MISFIT, STRIP, SHORTER_REST, LOST, UNEVEN = _number(0, 5)
MODES = np.array([MISFIT] * 4 + [STRIP] * 2 + [SHORTER_REST] * 2 + [LOST, UNEVEN])
RUINED = np.array([2] * 5 + [3] * 3 + [1] * 2)
BY_VALUE, BY_LONG, BY_SHORT = 80, 86, 92  # the rest in random order
CLEARED, CLIMBED = 15, 35  # chances in hundredths
MOST_TAKEN = 12
NOISE = 8192.0  # so that nearly equal sheets take turns at being dropped
EITHER_WAY = 3
PROBES = 8  # places looked at in the table of mixes
SHEET_MARK = 0x2545F4914F6CDD1D  # tells equal mixes on different sheet kinds apart

LEAF, SIDE, STACK = _number(0, 3)
NEVER = cast("int", np.int64(2**62))
NOTHING = cast("int", np.int64(-1))
NONE, ONE = _number(0, 2)


class Desk(NamedTuple):
    """All arrays of a search. Those from `kinds` on never change.

    Attributes:
        state: What is placed where; see the rows above. Shape (ROWS, columns).
        best: A copy of the state at its best. Same shape.
        log: What `put` overwrote: count and entries, old values. Shape (2, size).
        control: Counters, limits and the random state. Shape (CONTROLS,).
        scratch: Stacks and lists of one call. Shape (6, 2 * columns).
        memory: What was unplaced in the last rounds. Shape (length,).
        fail: Version of the sheet on which a kind had no place. Shape (kinds, slots), int32.
        seen: Table of the mixes of parts that were kept. Shape (a power of two,) or (0,) for none.
        kept: How much of the rest is used; then sheet kind, number of codes and codes of each
            sheet kept. Shape (size,).
        kinds: Sides, area, value, mark and worth of the part kinds. Shape (6, kinds).
        kind_of: Kind of every part; parts of a kind are consecutive. Shape (parts,).
        first_of: First part of every kind, and the number of parts. Shape (kinds + 1,).
        sheets: Sizes, area, weight, count and what is worth keeping. Shape (7, sheets).
        ways: How a part kind may lie on a sheet kind. Shape (sheets, kinds).
        stand_in: 1 where the second sheet kind may stand in for the first. Shape (sheets, sheets).
    """

    state: Ints
    best: Ints
    log: Ints
    control: Ints
    scratch: Ints
    memory: Ints
    fail: NDArray[np.int32]
    seen: Ints
    kept: Ints
    kinds: Ints
    kind_of: Ints
    first_of: Ints
    sheets: Ints
    ways: Ints
    stand_in: Ints


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
    old = state[row, column]
    if old == value:
        return
    count = log[0, 0]
    if count + 1 < log.shape[1]:
        log[0, 0] = count + 1
        log[0, count + 1] = row * state.shape[1] + column
        log[1, count + 1] = old
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
def push(state: Ints, log: Ints, row: int, counter: int, value: int) -> None:
    """Append to a list row."""
    count = state[TOTAL, counter]
    put(state, log, row, count, value)
    put(state, log, TOTAL, counter, count + 1)


@inner
def pop(state: Ints, log: Ints, row: int, counter: int) -> int:
    """Take the last entry off a list row."""
    count = state[TOTAL, counter] - 1
    put(state, log, TOTAL, counter, count)
    value: int = state[row, count]
    return value


@inner
def strike(state: Ints, log: Ints, row: int, counter: int, places: int, value: int) -> None:
    """Take a value out of a list row; `places` is the row that knows where it stands."""
    last = pop(state, log, row, counter)
    if last != value:
        place = state[places, value]
        put(state, log, row, place, last)
        put(state, log, places, last, place)


@inner
def tick(desk: Desk, slot: int) -> None:
    """Give a changed sheet a version that it never had before."""
    state, log, control = desk.state, desk.log, desk.control
    control[CLOCK] += 1
    put(state, log, VERSION, slot, control[CLOCK])


@inner
def repair(desk: Desk, node: int) -> None:
    """Set the least sizes of a node and of what lies above it, until nothing changes."""
    state, log = desk.state, desk.log
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
def open_sheet(desk: Desk, sheet: int) -> int:
    """Open an empty sheet and return its slot."""
    state, log, sheets = desk.state, desk.log, desk.sheets
    slot = pop(state, log, SPARE_SLOTS, N_SPARE_SLOTS)
    put(state, log, PLACE_OPEN, slot, state[TOTAL, N_OPEN])
    push(state, log, OPEN, N_OPEN, slot)
    put(state, log, ROOT, slot, NOTHING)
    put(state, log, SHEET, slot, sheet)
    put(state, log, FREE, slot, sheets[SHEET_AREA, sheet])
    put(state, log, MIX, slot, NONE)
    put(state, log, USED, sheet, state[USED, sheet] + 1)
    put(state, log, TOTAL, WEIGHT, state[TOTAL, WEIGHT] + sheets[SHEET_WEIGHT, sheet])
    tick(desk, slot)
    return slot


@inner
def close_sheet(desk: Desk, slot: int) -> None:
    """Close an empty sheet."""
    state, log, sheets = desk.state, desk.log, desk.sheets
    sheet = state[SHEET, slot]
    put(state, log, USED, sheet, state[USED, sheet] - 1)
    put(state, log, TOTAL, WEIGHT, state[TOTAL, WEIGHT] - sheets[SHEET_WEIGHT, sheet])
    put(state, log, ROOT, slot, NOTHING)
    strike(state, log, OPEN, N_OPEN, PLACE_OPEN, slot)
    push(state, log, SPARE_SLOTS, N_SPARE_SLOTS, slot)


@inner
def insert(desk: Desk, part: int, slot: int, beside: int, join: int, side: int) -> None:
    """Put an unplaced part beside a node, or on an empty sheet where beside is NOTHING."""
    state, log, kinds, kind_of = desk.state, desk.log, desk.kinds, desk.kind_of
    kind = kind_of[part]
    put(state, log, LENGTH, part, kinds[side, kind])
    put(state, log, WIDTH, part, kinds[1 - side, kind])
    put(state, log, SLOT, part, slot)
    if beside == NOTHING:
        put(state, log, PARENT, part, NOTHING)
        put(state, log, ROOT, slot, part)
    else:
        node = pop(state, log, SPARE_NODES, N_SPARE_NODES)
        above = state[PARENT, beside]
        put(state, log, LEFT, node, beside)
        put(state, log, RIGHT, node, part)
        put(state, log, JOIN, node, join)
        put(state, log, PARENT, node, above)
        put(state, log, LENGTH, node, NONE)
        put(state, log, PARENT, beside, node)
        put(state, log, PARENT, part, node)
        if above == NOTHING:
            put(state, log, ROOT, slot, node)
        elif state[LEFT, above] == beside:
            put(state, log, LEFT, above, node)
        else:
            put(state, log, RIGHT, above, node)
        repair(desk, node)
    strike(state, log, UNPLACED, N_UNPLACED, PLACE, part)
    put(state, log, TOTAL, MISSING, state[TOTAL, MISSING] - kinds[VALUE, kind])
    put(state, log, FREE, slot, state[FREE, slot] - kinds[AREA, kind])
    put(state, log, MIX, slot, state[MIX, slot] + kinds[MARK, kind])
    tick(desk, slot)


@inner
def remove(desk: Desk, node: int, slot: int) -> int:
    """Take a node and all below it off its sheet; return how many parts that were.

    The sibling takes the parent's place. A sheet left empty is closed.
    """
    state, log, scratch, kinds, kind_of = (
        desk.state,
        desk.log,
        desk.scratch,
        desk.kinds,
        desk.kind_of,
    )
    above = state[PARENT, node]
    if above == NOTHING:
        put(state, log, ROOT, slot, NOTHING)
    else:
        sibling = state[RIGHT, above] if state[LEFT, above] == node else state[LEFT, above]
        grand = state[PARENT, above]
        put(state, log, PARENT, sibling, grand)
        if grand == NOTHING:
            put(state, log, ROOT, slot, sibling)
        else:
            if state[LEFT, grand] == above:
                put(state, log, LEFT, grand, sibling)
            else:
                put(state, log, RIGHT, grand, sibling)
            repair(desk, grand)
        push(state, log, SPARE_NODES, N_SPARE_NODES, above)
    parts, area, value, mix = 0, 0, 0, 0
    scratch[0, 0] = node
    waiting = 1
    while waiting > 0:
        waiting -= 1
        node = scratch[0, waiting]
        if state[JOIN, node] == LEAF:
            kind = kind_of[node]
            parts += 1
            area += kinds[AREA, kind]
            value += kinds[VALUE, kind]
            mix += kinds[MARK, kind]
            put(state, log, SLOT, node, NOTHING)
            put(state, log, PLACE, node, state[TOTAL, N_UNPLACED])
            push(state, log, UNPLACED, N_UNPLACED, node)
        else:
            scratch[0, waiting] = state[LEFT, node]
            scratch[0, waiting + 1] = state[RIGHT, node]
            waiting += 2
            push(state, log, SPARE_NODES, N_SPARE_NODES, node)
    put(state, log, TOTAL, MISSING, state[TOTAL, MISSING] + value)
    put(state, log, FREE, slot, state[FREE, slot] + area)
    put(state, log, MIX, slot, state[MIX, slot] - mix)
    tick(desk, slot)
    if state[ROOT, slot] == NOTHING:
        close_sheet(desk, slot)
    return parts


@inner
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


@inner
def find_place(  # noqa: C901, PLR0913, PLR0917 - the innermost loop, in one piece
    state: Ints,
    control: Ints,
    scratch: Ints,
    long: int,
    short: int,
    ways: int,
    slot: int,
    room_x: int,
    room_y: int,
    mode: int,
    bar: int,
) -> tuple[int, int, int, int, int]:
    """Return the best place for a part on one sheet that scores below a bar.

    A place is skipped with the chance that control[BLINK] gives in 1024, so that the best is not
    always taken (Christiaens and Vanden Berghe 2020, Transportation Science 54, from memory).

    Returns:
        Score, node, join and side of the place (NOTHING as the node where there is none), and 1
        where the part has a place at all, skipped or not.
    """
    best, best_node, best_join, best_side, has_place = bar, NOTHING, 0, 0, 0
    blink = control[BLINK]
    scratch[0, 0] = state[ROOT, slot]
    scratch[1, 0] = room_x
    scratch[2, 0] = room_y
    waiting = 1
    steps = 0
    while waiting > 0:
        waiting -= 1
        node = scratch[0, waiting]
        allot_x = scratch[1, waiting]
        allot_y = scratch[2, waiting]
        steps += 1
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
                has_place = 1
                value = score(mode, allot_x - length, allot_y, width, length, part_x, part_y)
                if value < best and draw(control, 1024) >= blink:
                    best, best_node, best_join, best_side = value, node, SIDE, side
            if width + part_y <= allot_y:
                has_place = 1
                value = score(mode, allot_y - width, allot_x, length, width, part_y, part_x)
                if value < best and draw(control, 1024) >= blink:
                    best, best_node, best_join, best_side = value, node, STACK, side
        if goes_deeper and state[JOIN, node] != LEAF:
            left, right = state[LEFT, node], state[RIGHT, node]
            scratch[0, waiting] = left
            scratch[0, waiting + 1] = right
            if state[JOIN, node] == SIDE:
                scratch[1, waiting] = allot_x - state[LENGTH, right]
                scratch[1, waiting + 1] = allot_x - state[LENGTH, left]
                scratch[2, waiting] = allot_y
                scratch[2, waiting + 1] = allot_y
            else:
                scratch[1, waiting] = allot_x
                scratch[1, waiting + 1] = allot_x
                scratch[2, waiting] = allot_y - state[WIDTH, right]
                scratch[2, waiting + 1] = allot_y - state[WIDTH, left]
            waiting += 2
    control[STEPS] += steps
    return best, best_node, best_join, best_side, has_place


@inner
def place(desk: Desk, part: int, mode: int) -> bool:
    """Put a part at its best place on the open sheets; return whether there was one."""
    state, control, scratch, fail, kinds, kind_of, sheets, ways = (
        desk.state,
        desk.control,
        desk.scratch,
        desk.fail,
        desk.kinds,
        desk.kind_of,
        desk.sheets,
        desk.ways,
    )
    kind = kind_of[part]
    long, short, area = kinds[LONG, kind], kinds[SHORT, kind], kinds[AREA, kind]
    best, best_slot, best_node, best_join, best_side = NEVER, NOTHING, NOTHING, 0, 0
    for place_open in range(state[TOTAL, N_OPEN]):
        slot = state[OPEN, place_open]
        if state[FREE, slot] < area or fail[kind, slot] == state[VERSION, slot]:
            continue
        sheet = state[SHEET, slot]
        value, node, join, side, has_place = find_place(
            state,
            control,
            scratch,
            long,
            short,
            ways[sheet, kind],
            slot,
            sheets[SHEET_LENGTH, sheet],
            sheets[SHEET_WIDTH, sheet],
            mode,
            best,
        )
        if has_place == 0:
            fail[kind, slot] = state[VERSION, slot]
        if node != NOTHING:
            best, best_slot, best_node, best_join, best_side = value, slot, node, join, side
    control[STEPS] += 1 + state[TOTAL, N_OPEN] // 4
    if best_slot == NOTHING:
        return False
    insert(desk, part, best_slot, best_node, best_join, best_side)
    return True


@inner
def choose_sheet(desk: Desk, kind: int, taste: int) -> int:
    """Return the sheet kind to open for a part, or NOTHING where none may be opened.

    Taste 0 takes any kind, 1 the least weight for its area, 2 the least weight.
    """
    state, control, sheets, ways = desk.state, desk.control, desk.sheets, desk.ways
    best, best_sheet = NEVER, NOTHING
    if state[TOTAL, N_SPARE_SLOTS] == 0:
        return NOTHING
    for sheet in range(sheets.shape[1]):
        weight = sheets[SHEET_WEIGHT, sheet]
        if (
            ways[sheet, kind] == 0
            or state[USED, sheet] >= sheets[SHEET_COUNT, sheet]
            or state[TOTAL, WEIGHT] + weight > control[LIMIT]
        ):
            continue
        if taste == 0:
            value = draw(control, 1024)
        elif taste == 1:
            value = int(1e9 * weight / (sheets[SHEET_AREA, sheet] + 1.0))
        else:
            value = weight
        if value < best:
            best, best_sheet = value, sheet
    return best_sheet


@inner
def sort_unplaced(desk: Desk) -> int:
    """Write the unplaced parts to scratch row 3, those to be placed first in front."""
    state, control, scratch, kinds, kind_of = (
        desk.state,
        desk.control,
        desk.scratch,
        desk.kinds,
        desk.kind_of,
    )
    count: int = state[TOTAL, N_UNPLACED]
    dice = draw(control, 100)
    noise = 1 + draw(control, 128)
    for place_unplaced in range(count):
        part = state[UNPLACED, place_unplaced]
        kind = kind_of[part]
        if dice < BY_VALUE:
            key = kinds[VALUE, kind]
        elif dice < BY_LONG:
            key = kinds[LONG, kind]
        elif dice < BY_SHORT:
            key = kinds[SHORT, kind]
        else:
            key = 1 << 20
        scratch[3, place_unplaced] = part
        scratch[4, place_unplaced] = key * (256 + draw(control, noise))
    gap = 1
    while 3 * gap + 1 < count:
        gap = 3 * gap + 1
    while gap > 0:
        for at in range(gap, count):
            part, key = scratch[3, at], scratch[4, at]
            to = at
            while to >= gap and scratch[4, to - gap] < key:
                scratch[3, to], scratch[4, to] = scratch[3, to - gap], scratch[4, to - gap]
                to -= gap
            scratch[3, to], scratch[4, to] = part, key
        gap //= 3
    control[STEPS] += count
    return count


@inner
def recreate(desk: Desk) -> None:
    """Place what is unplaced, opening sheets while the limit allows."""
    control, scratch, kind_of, ways = desk.control, desk.scratch, desk.kind_of, desk.ways
    mode = MODES[draw(control, 10)]
    taste = draw(control, 3)
    count = sort_unplaced(desk)
    for number in range(count):
        part = scratch[3, number]
        if place(desk, part, mode):
            continue
        sheet = choose_sheet(desk, kind_of[part], taste)
        if sheet == NOTHING:
            continue
        slot = open_sheet(desk, sheet)
        possible = ways[sheet, kind_of[part]]
        side = possible - ONE if possible < EITHER_WAY else draw(control, 2)
        insert(desk, part, slot, NOTHING, LEAF, side)


@inner
def list_parts(desk: Desk, slot: int) -> int:
    """Write the parts of a sheet to scratch row 3 and return how many there are."""
    state, scratch = desk.state, desk.scratch
    count = 0
    scratch[0, 0] = state[ROOT, slot]
    waiting = 1
    while waiting > 0:
        waiting -= 1
        node = scratch[0, waiting]
        if state[JOIN, node] == LEAF:
            scratch[3, count] = node
            count += 1
        else:
            scratch[0, waiting] = state[LEFT, node]
            scratch[0, waiting + 1] = state[RIGHT, node]
            waiting += 2
    return count


@inner
def ruin_sheet(desk: Desk, slot: int) -> None:
    """Clear a sheet, or take a few parts off it together with what they were cut with."""
    state, control, scratch = desk.state, desk.control, desk.scratch
    if draw(control, 100) < CLEARED:
        remove(desk, state[ROOT, slot], slot)
        return
    count = list_parts(desk, slot)
    control[STEPS] += count
    wanted = 1 + draw(control, MOST_TAKEN)
    for _ in range(wanted):
        if wanted <= 0:
            return
        node = scratch[3, draw(control, count)]
        if state[SLOT, node] != slot:
            continue
        while state[PARENT, node] != NOTHING and draw(control, 100) < CLIMBED:
            node = state[PARENT, node]
        wanted -= remove(desk, node, slot)
        if state[ROOT, slot] == NOTHING:
            return


@inner
def ruin(desk: Desk) -> None:
    """Ruin two sheets most often, else three or one, chosen evenly or by a part of theirs."""
    state, control, kind_of = desk.state, desk.control, desk.kind_of
    for _ in range(RUINED[draw(control, 10)]):
        if state[TOTAL, N_OPEN] == 0:
            return
        slot = state[OPEN, draw(control, state[TOTAL, N_OPEN])]
        if draw(control, 2) == 0:
            part = draw(control, kind_of.shape[0])
            if state[SLOT, part] != NOTHING:
                slot = state[SLOT, part]
        ruin_sheet(desk, slot)


@inner
def shrink(desk: Desk) -> None:
    """Move the tree of every sheet changed since the last step to the lightest kind that holds it.

    `stand_in[a, b]` is 1 where sheet b may take the place of sheet a as far as grain goes.
    """
    state, log, control, sheets, stand_in = (
        desk.state,
        desk.log,
        desk.control,
        desk.sheets,
        desk.stand_in,
    )
    for place_open in range(state[TOTAL, N_OPEN]):
        slot = state[OPEN, place_open]
        old, root = state[SHEET, slot], state[ROOT, slot]
        best = old
        for sheet in range(sheets.shape[1]):
            if (
                sheets[SHEET_WEIGHT, sheet] < sheets[SHEET_WEIGHT, best]
                and stand_in[old, sheet] == 1
                and state[USED, sheet] < sheets[SHEET_COUNT, sheet]
                and state[LENGTH, root] <= sheets[SHEET_LENGTH, sheet]
                and state[WIDTH, root] <= sheets[SHEET_WIDTH, sheet]
            ):
                best = sheet
        if best != old:
            put(state, log, SHEET, slot, best)
            put(state, log, USED, old, state[USED, old] - 1)
            put(state, log, USED, best, state[USED, best] + 1)
            change = sheets[SHEET_WEIGHT, best] - sheets[SHEET_WEIGHT, old]
            put(state, log, TOTAL, WEIGHT, state[TOTAL, WEIGHT] + change)
            change = sheets[SHEET_AREA, best] - sheets[SHEET_AREA, old]
            put(state, log, FREE, slot, state[FREE, slot] + change)
            tick(desk, slot)
    control[STEPS] += state[TOTAL, N_OPEN]


@inner
def drop_sheets(desk: Desk) -> None:
    """Empty the sheets with the most free area until the limit is kept."""
    state, log, control, sheets = desk.state, desk.log, desk.control, desk.sheets
    while state[TOTAL, WEIGHT] > control[LIMIT]:
        worst, worst_slot = -1.0, NOTHING
        for place_open in range(state[TOTAL, N_OPEN]):
            slot = state[OPEN, place_open]
            free = state[FREE, slot] / (sheets[SHEET_AREA, state[SHEET, slot]] + 1.0)
            free += draw(control, 1024) / NOISE
            if free > worst:
                worst, worst_slot = free, slot
        remove(desk, state[ROOT, worst_slot], worst_slot)
    log[0, 0] = 0
    log[1, 0] = 0


@inner
def note_best(desk: Desk) -> bool:
    """Keep the state where it is the best so far; return whether it was.

    A state with everything placed sets the next goal: everything placed for less.
    """
    state, control, best = desk.state, desk.control, desk.best
    missing, weight = state[TOTAL, MISSING], state[TOTAL, WEIGHT]
    if missing > control[BEST_MISSING] or (
        missing == control[BEST_MISSING] and weight >= control[BEST_WEIGHT]
    ):
        return False
    for row in range(best.shape[0]):
        for column in range(best.shape[1]):
            best[row, column] = state[row, column]
    control[BEST_MISSING] = missing
    control[BEST_WEIGHT] = weight
    if missing == 0 and weight > control[TARGET]:
        control[LIMIT] = weight - 1
        drop_sheets(desk)
    return True


@inner
def remember(desk: Desk, times: int) -> None:
    """Fill the memory with a multiple of what is unplaced now."""
    for at in range(desk.memory.shape[0]):
        desk.memory[at] = times * desk.state[TOTAL, MISSING]


@compiled
def is_new(desk: Desk, mix: int) -> bool:
    """Return whether a mix of parts was never kept, and note it. A full table knows no new ones."""
    seen, control = desk.seen, desk.control
    last = seen.shape[0] - 1
    for probe in range(PROBES):
        at = (mix + probe) & last
        if seen[at] == mix:
            return False
        if seen[at] == 0:
            seen[at] = mix
            control[N_SEEN] += 1
            return True
    return False


@compiled
def keep_sheets(desk: Desk, since: int) -> None:
    """Keep every sheet changed since a moment that wastes little and holds a new mix."""
    state, control, scratch, kinds, kind_of, sheets, kept = (
        desk.state,
        desk.control,
        desk.scratch,
        desk.kinds,
        desk.kind_of,
        desk.sheets,
        desk.kept,
    )
    for place_open in range(state[TOTAL, N_OPEN]):
        slot = state[OPEN, place_open]
        sheet = state[SHEET, slot]
        if state[VERSION, slot] <= since or state[FREE, slot] > sheets[SHEET_WASTE, sheet]:
            continue
        count = list_parts(desk, slot)
        control[STEPS] += count
        worth = 0
        for number in range(count):
            worth += kinds[WORTH, kind_of[scratch[3, number]]]
        room = kept.shape[0] - 1 - kept[0]
        if worth < sheets[SHEET_WORTH, sheet] or room < 2 * count + 2:
            continue
        if is_new(desk, state[MIX, slot] + sheet * SHEET_MARK):
            at = 1 + kept[0]
            codes = kept[at + 2 :]
            kept[at] = sheet
            kept[at + 1] = write_codes(state, kinds, kind_of, slot, scratch, codes)
            kept[0] += 2 + kept[at + 1]


@compiled
def search(desk: Desk) -> None:
    """Ruin and recreate until the steps are used up or the target is reached.

    A worse state is accepted where it is no worse than the one so many rounds ago (late
    acceptance). After many rounds without a gain the memory is raised, which lets the search out.
    """
    state, log, control, memory, sheets = (
        desk.state,
        desk.log,
        desk.control,
        desk.memory,
        desk.sheets,
    )
    if control[IS_FRESH] == 1:  # a plan has been loaded
        note_best(desk)
        remember(desk, ONE)
        control[IS_FRESH] = 0
    while control[STEPS] < control[LAST_STEP]:
        if control[BEST_MISSING] == 0 and control[BEST_WEIGHT] <= control[TARGET]:
            return
        control[ROUND] += 1
        control[STEPS] += 10
        before, clock = state[TOTAL, MISSING], control[CLOCK]
        log[0, 0] = 0
        log[1, 0] = 0
        ruin(desk)
        recreate(desk)
        if sheets.shape[1] > 1:
            shrink(desk)
        if desk.seen.shape[0] > 0:
            keep_sheets(desk, clock)
        if note_best(desk):
            control[IDLE] = 0
            if control[BEST_MISSING] == 0:
                remember(desk, ONE)
                continue
        after = state[TOTAL, MISSING]
        at = control[MEMORY_AT]
        control[MEMORY_AT] = (at + 1) % memory.shape[0]
        control[IDLE] += 1
        if after > before and after > memory[at] and log[1, 0] == 0:
            take_back(state, log)
        memory[at] = state[TOTAL, MISSING]
        if control[IDLE] > control[IDLE_LIMIT]:
            control[IDLE] = 0
            remember(desk, ONE + ONE)


@compiled
def write_codes(
    state: Ints, kinds: Ints, kind_of: Ints, slot: int, scratch: Ints, codes: Ints
) -> int:
    """Write the tree of a sheet in postfix and return how many codes it has."""
    count = 0
    scratch[0, 0] = state[ROOT, slot]
    scratch[1, 0] = 0
    waiting = 1
    while waiting > 0:
        waiting -= 1
        node = scratch[0, waiting]
        if state[JOIN, node] == LEAF:
            kind = kind_of[node]
            is_long_along_x = state[LENGTH, node] == kinds[LONG, kind]
            codes[count] = 2 * kind + (0 if is_long_along_x else 1)
            count += 1
        elif scratch[1, waiting] == 1:
            codes[count] = -state[JOIN, node]
            count += 1
        else:
            scratch[1, waiting] = 1
            scratch[0, waiting + 1] = state[RIGHT, node]
            scratch[1, waiting + 1] = 0
            scratch[0, waiting + 2] = state[LEFT, node]
            scratch[1, waiting + 2] = 0
            waiting += 3
    return count


@compiled
def read_codes(desk: Desk, sheet: int, codes: Ints) -> None:
    """Open a sheet and build on it the tree that some postfix codes describe.

    `first_of[kind]` is the first part of a kind; parts of a kind are consecutive. Codes for parts
    that are all placed already are left out.
    """
    state, log, scratch, kinds, first_of = (
        desk.state,
        desk.log,
        desk.scratch,
        desk.kinds,
        desk.first_of,
    )
    slot = open_sheet(desk, sheet)
    top = 0
    for code in codes:
        if code >= 0:
            kind = code // 2
            part = first_of[kind]
            while part < first_of[kind + 1] and state[SLOT, part] != NOTHING:
                part += 1
            if part == first_of[kind + 1]:
                scratch[5, top] = NOTHING
                top += 1
                continue
            put(state, log, LENGTH, part, kinds[code % 2, kind])
            put(state, log, WIDTH, part, kinds[1 - code % 2, kind])
            put(state, log, SLOT, part, slot)
            strike(state, log, UNPLACED, N_UNPLACED, PLACE, part)
            put(state, log, TOTAL, MISSING, state[TOTAL, MISSING] - kinds[VALUE, kind])
            put(state, log, FREE, slot, state[FREE, slot] - kinds[AREA, kind])
            put(state, log, MIX, slot, state[MIX, slot] + kinds[MARK, kind])
            scratch[5, top] = part
            top += 1
        else:
            left, right = scratch[5, top - 2], scratch[5, top - 1]
            top -= 1
            if min(left, right) == NOTHING:
                scratch[5, top - 1] = max(left, right)
                continue
            node = pop(state, log, SPARE_NODES, N_SPARE_NODES)
            put(state, log, LEFT, node, left)
            put(state, log, RIGHT, node, right)
            put(state, log, JOIN, node, -code)
            put(state, log, PARENT, left, node)
            put(state, log, PARENT, right, node)
            put(state, log, PARENT, node, NOTHING)
            put(state, log, LENGTH, node, NONE)
            put(state, log, WIDTH, node, NONE)
            repair(desk, node)
            scratch[5, top - 1] = node
    root = scratch[5, 0]
    if root == NOTHING:
        close_sheet(desk, slot)
        return
    put(state, log, PARENT, root, NOTHING)
    put(state, log, ROOT, slot, root)
    tick(desk, slot)
