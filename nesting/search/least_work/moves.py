"""Moves on the trees that leave every part on a sheet.

References:
    Wong and Liu (1986), Design Automation Conference, 101-107 (moves on slicing trees); from
    memory.
"""

from nesting.search.compiled import inner
from nesting.search.least_work.arrays import (
    AREA,
    FREE,
    HUNDRED,
    JOIN,
    LEAF,
    LEFT,
    LENGTH,
    LONG,
    MANNER,
    MANNERS,
    NONE,
    NOTHING,
    ONE,
    PARENT,
    RIGHT,
    SIDE,
    SLOT,
    STACK,
    TWO,
    WIDTH,
    Bench,
    fix,
)
from nesting.search.least_work.trees import (
    draw,
    fits,
    hang,
    is_above,
    join_beside,
    mark,
    pick_node,
    put,
    repair,
    unhang,
)

SWAPPED, REGRAFTED, FLIPPED = 30, 60, 80  # hundredths; the rest are rebuilt
(CLIMBED,) = fix([40])
EITHER_WAY = 3


@inner
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


@inner
def swap(bench: Bench, first: int, second: int) -> bool:
    """Exchange two subtrees; False where that cannot be."""
    state = bench.state
    slot, other = state[SLOT, first], state[SLOT, second]
    first, second = (
        pick_node(bench, first, CLIMBED),
        pick_node(bench, second, CLIMBED),
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


@inner
def regraft(bench: Bench, first: int, second: int) -> bool:
    """Cut a subtree off and join it to another node; False where that cannot be."""
    state = bench.state
    slot, other = state[SLOT, first], state[SLOT, second]
    first, second = (
        pick_node(bench, first, CLIMBED),
        pick_node(bench, second, CLIMBED),
    )
    if is_above(state, first, second) or is_above(state, second, first):
        return False
    if not move_parts(bench, first, slot, other):
        return False
    unhang(bench, first, slot)
    join_beside(bench, first, second, ONE + draw(bench.control, TWO), other)
    mark(bench, slot)
    mark(bench, other)
    return fits(bench, slot) and fits(bench, other)


@inner
def flip(bench: Bench, part: int) -> bool:
    """Turn a joint above a part, its manner, or the part itself; False where that cannot be."""
    state, log = bench.state, bench.log
    slot = state[SLOT, part]
    node = pick_node(bench, part, CLIMBED)
    if draw(bench.control, TWO) == 0:
        put(state, log, MANNER, node, state[MANNER, node] ^ (ONE << draw(bench.control, MANNERS)))
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


@inner
def rebuild(bench: Bench, part: int) -> bool:
    """Rotate d(e(a,b),c) to e(a,d(b,c)), or transpose d(e(a,b),e(c,f)) to e(d(a,c),d(b,f))."""
    state, log, control = bench.state, bench.log, bench.control
    slot = state[SLOT, part]
    inner = state[PARENT, pick_node(bench, part, CLIMBED)]
    if inner == NOTHING or state[PARENT, inner] == NOTHING:
        return False
    node = state[PARENT, inner]
    other = state[RIGHT, node] if state[LEFT, node] == inner else state[LEFT, node]
    outer_join, inner_join = state[JOIN, node], state[JOIN, inner]
    turn = draw(control, TWO)
    a, b = state[LEFT + turn, inner], state[RIGHT - turn, inner]
    if state[JOIN, other] == inner_join and inner_join != outer_join and draw(control, TWO) == 0:
        turn = draw(control, TWO)
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


@inner
def move_tree(bench: Bench) -> bool:
    """Make one move on the trees; False where it cannot be made."""
    state, control = bench.state, bench.control
    parts = bench.kind_of.shape[0]
    first, second = draw(control, parts), draw(control, parts)
    if state[SLOT, first] == NOTHING or state[SLOT, second] == NOTHING:
        return False
    dice = draw(control, HUNDRED)
    if dice < SWAPPED:
        return swap(bench, first, second)
    if dice < REGRAFTED:
        return regraft(bench, first, second)
    if dice < FLIPPED:
        return flip(bench, first)
    return rebuild(bench, first)
