"""What a tree costs to cut up.

Joints of one direction become one row. The pieces of a row are freed in order, those that need most
height first, and before each the rest of the row is cut down to its height where that is less.
`MANNER` has single rows and pieces do otherwise. What is listed here is what is cut: the layout is
read from these lists.

The extent of a piece that a cut divides is its reach, the other one the run of the saw.
"""

from nesting.search.compiled import inner
from nesting.search.least_work.arrays import (
    AT_END,
    CUT,
    CUT_FIRST,
    CUT_KEEP,
    CUT_RIP,
    CUT_SECOND,
    CUT_SETTING,
    CUT_STEM,
    CUT_TURNS,
    DEEPEST,
    EACH_ITSELF,
    END,
    GONE,
    GUIDE,
    HEAVY,
    HELD,
    JOIN,
    LEAF,
    LEFT,
    LENGTH,
    LENGTH_FIRST,
    LIFT,
    MANNER,
    N_CUTS,
    N_SETTINGS,
    NARROW,
    NONE,
    NOTHING,
    ONE,
    OTHERWISE,
    PIECE_X,
    PIECE_Y,
    REST,
    RIGHT,
    ROOT,
    SHEET_AREA,
    SIDE,
    SLIVER,
    STAMP,
    STEP,
    STEP_BITS,
    SUM,
    TOO_LONG,
    WIDTH,
    Bench,
    Ints,
)
from nesting.search.least_work.matching import count_up, note_matches


@inner
def add_cut(bench: Bench, stem: int, is_rip: int, keep: int, reach: int, run: int) -> int:
    """Add a cut to the list and what it costs to the sum; return its number.

    Cuts of equal direction and keep size share a setting.

    Args:
        bench: All arrays.
        stem: The piece that is cut, see CUT_STEM; NOTHING for the sheet.
        is_rip: 1 for a rip, 0 for a crosscut.
        keep: How much of the reach comes off as the first piece.
        reach: Extent of the piece across the cut.
        run: Its extent along the cut.
    """
    control, cuts, rates = bench.control, bench.cuts, bench.rates
    number: int = control[N_CUTS]
    control[N_CUTS] = number + ONE
    cost = rates[CUT] + (run * rates[STEP] >> STEP_BITS)
    if reach * run > rates[HEAVY]:
        cost += rates[LIFT]
    if run > rates[GUIDE]:
        cost += rates[TOO_LONG]
    if min(reach, run) < rates[HELD]:
        cost += rates[NARROW]
    control[SUM] += cost
    at = count_up(bench, 2 * keep + is_rip)
    if bench.table[2, at] == 0:
        bench.table[2, at] = control[N_SETTINGS] + ONE
        control[N_SETTINGS] += 1
    turns = NONE
    if stem != NOTHING:
        cuts[CUT_FIRST + (stem & 1), stem >> 1] = number
        turns = cuts[CUT_TURNS, stem >> 1]
        if cuts[CUT_RIP, stem >> 1] != is_rip:
            turns += 1
    cuts[CUT_SETTING, number] = bench.table[2, at] - ONE
    cuts[CUT_STEM, number] = stem
    cuts[CUT_RIP, number] = is_rip
    cuts[CUT_KEEP, number] = keep
    cuts[CUT_TURNS, number] = turns
    cuts[CUT_FIRST, number] = NOTHING
    cuts[CUT_SECOND, number] = NOTHING
    control[DEEPEST] = max(control[DEEPEST], turns)
    return number


@inner
def note_rest(bench: Bench, slot: int, reach: int, run: int) -> None:
    """Count a leftover, by the square of its share of the sheet, and price it if it is a sliver."""
    rates = bench.rates
    if rates[GONE] < min(reach, run) < rates[HELD]:
        bench.control[SUM] += rates[SLIVER]
    share = int(1000.0 * reach * run / bench.sheets[SHEET_AREA, slot])
    bench.control[REST] += share * share


@inner
def cut_down(  # noqa: PLR0917 - plain numbers are what a kernel takes
    bench: Bench, slot: int, stem: int, is_rip: int, keep: int, reach: int, run: int
) -> int:
    """Cut a rest off the high side of a piece; return the stem of what is kept."""
    cut = add_cut(bench, stem, is_rip, keep, reach, run)
    note_rest(bench, slot, reach - keep, run)
    return 2 * cut


@inner
def cut_leaf(bench: Bench, slot: int, node: int, piece_x: int, piece_y: int, stem: int) -> None:
    """Add the cuts that free a part from a piece, most often the one with the larger rest first."""
    state, guide = bench.state, bench.rates[GUIDE]
    length, width = state[LENGTH, node], state[WIDTH, node]
    is_rip = int((piece_x - length) * piece_y < (piece_y - width) * piece_x)
    if state[MANNER, node] & LENGTH_FIRST:
        is_rip = ONE - is_rip
    if piece_y <= guide < piece_x and piece_x > length:
        is_rip = NONE
    for _ in range(2):
        if is_rip == 0 and piece_x > length:
            stem = cut_down(bench, slot, stem, NONE, length, piece_x, piece_y)
            piece_x = length
        elif is_rip == 1 and piece_y > width:
            stem = cut_down(bench, slot, stem, ONE, width, piece_y, piece_x)
            piece_y = width
        is_rip = ONE - is_rip
    if stem != NOTHING:
        bench.cuts[CUT_FIRST + (stem & 1), stem >> 1] = END - node
    note_matches(bench, node, stem)


@inner
def rank(state: Ints, row: int, piece: int) -> int:
    """Return 0 for pieces that come off first, by themselves, 1 for others, 2 or 3 at the end."""
    by_itself = (state[MANNER, row] & EACH_ITSELF != 0) != (state[MANNER, piece] & OTHERWISE != 0)
    last = 2 if state[MANNER, piece] & AT_END else 0
    return last if by_itself else last + 1


@inner
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


@inner
def cut_row(bench: Bench, slot: int, node: int, waiting: int) -> int:
    """Add the cuts that free the pieces of a row, and write these pieces to the stack.

    Args:
        bench: All arrays. Scratch rows 0 to 3 are the stack: node, extents of its piece, stem.
        slot: The sheet.
        node: The topmost joint of the row.
        waiting: Size of the stack, on top of which the row's own piece was.

    Returns:
        Size of the stack now.
    """
    state, scratch, guide = bench.state, bench.scratch, bench.rates[GUIDE]
    is_rip = state[JOIN, node] - SIDE  # of the cuts between the pieces
    own_row = LENGTH + is_rip
    own, other = 1 + is_rip, 2 - is_rip
    along, across, stem = scratch[own, waiting], scratch[other, waiting], scratch[3, waiting]
    total = state[own_row, node]
    if state[MANNER, node] & LENGTH_FIRST and along > total:
        stem = cut_down(bench, slot, stem, is_rip, total, along, across)
        along = total
    for number in range(list_row(bench, node)):
        piece, high = scratch[5, number], scratch[7, number]
        is_whole = rank(state, node, piece) & 1 == 0
        if across > high and not (is_whole or across <= guide < along):
            stem = cut_down(bench, slot, stem, ONE - is_rip, high, across, along)
            across = high
        keep = state[own_row, piece]
        scratch[0, waiting] = piece
        scratch[own, waiting] = keep
        scratch[other, waiting] = across
        scratch[3, waiting] = stem
        if along > keep:
            cut = add_cut(bench, stem, is_rip, keep, along, across)
            scratch[3, waiting], stem = 2 * cut, 2 * cut + 1
        along -= keep
        waiting += 1
    if along > 0:
        note_rest(bench, slot, along, across)
    return waiting


@inner
def list_cuts(bench: Bench, slot: int) -> None:
    """Write the cuts of a sheet to `cuts`, their number and cost to `control`."""
    control, scratch = bench.control, bench.scratch
    control[N_CUTS] = 0
    control[N_SETTINGS] = 0
    control[SUM] = 0
    control[REST] = 0
    control[DEEPEST] = 0
    control[STAMP] += 1
    scratch[0, 0] = bench.state[ROOT, slot]
    scratch[1, 0] = bench.sheets[PIECE_X, slot]
    scratch[2, 0] = bench.sheets[PIECE_Y, slot]
    scratch[3, 0] = NOTHING
    waiting = ONE
    while waiting > 0:
        waiting -= 1
        node = scratch[0, waiting]
        if bench.state[JOIN, node] == LEAF:
            length, width, stem = scratch[1, waiting], scratch[2, waiting], scratch[3, waiting]
            cut_leaf(bench, slot, node, length, width, stem)
        else:
            waiting = cut_row(bench, slot, node, waiting)
