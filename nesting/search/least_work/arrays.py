"""The arrays that the compiled second search works on, and the names of their rows.

The trees are those of the first search: binary, a node holding the least length (x) and width (y)
that its parts need. Node i below the number of parts is part i, the others are inner nodes. Sheets
are slots that never change; an empty one has no root. `put` records what it overwrites, so that a
step that is not accepted is taken back.

Money here is time: thousandths of a minute. Lengths are grid steps, kerf included.

Every number that kernels hand to each other is one of numpy's: numba compiles a function anew for
each plain one.
"""

from collections.abc import Iterable
from typing import NamedTuple, cast

import numpy as np
from numpy.typing import NDArray

Ints = NDArray[np.int64]


def fix(numbers: Iterable[int]) -> list[int]:
    """Return whole numbers of numpy's."""
    return cast("list[int]", [np.int64(number) for number in numbers])


# Rows of `state` whose columns are nodes.
LEFT, RIGHT, PARENT, JOIN, LENGTH, WIDTH, SLOT, PLACE, MANNER = fix(range(9))
# Rows whose columns are slots: root of the tree, minutes of the sheet, version, free area.
ROOT, COST, VERSION, FREE = fix(range(9, 13))
# Rows that are lists: unplaced parts, spare inner nodes. And a row of totals.
UNPLACED, SPARE, TOTAL = fix(range(13, 16))
# From here on a row for each dimension that must match, its columns slots: how many parts get it
# off one setting there. The column behind the last slot holds the largest of these.
(MATCHED,) = fix([16])
# Columns of the row of totals.
N_UNPLACED, N_SPARE, MISSING, WORK = fix(range(4))

# Rows of `kinds`: sides, area, price unplaced; which dimension that must match each side is.
LONG, SHORT, AREA, PRICE, MATCH_LONG, MATCH_SHORT = fix(range(6))
# Rows of `sheets`.
ROOM_X, ROOM_Y, PIECE_X, PIECE_Y, SHEET_AREA, SHEET_KIND = fix(range(6))

# Entries of `rates`: what things cost, and the sizes from which they do.
CUT, STEP, SETTING, TURN, LIFT, HEAVY, TOO_LONG, GUIDE = fix(range(8))
NARROW, HELD, SLIVER, GONE, TIDY, MISS = fix(range(8, 14))
RATES = 14
(STEP_BITS,) = fix([30])

# Rows of `cuts` whose columns are cuts. STEM is 2 * parent + side, side 0 being the first piece.
# FIRST and SECOND tell what becomes of the pieces: a cut, NOTHING for a rest, END - part for parts.
CUT_SETTING, CUT_STEM, CUT_RIP, CUT_KEEP, CUT_TURNS, CUT_FIRST, CUT_SECOND = fix(range(7))
# Rows whose columns are settings: cuts to make, and when one was last looked at. Lists: cuts that
# can be made, those of one setting. Rows whose columns are dimensions that must match: how many
# parts get it off one setting, and for which sheet that was counted.
TO_DO, SEEN, OPEN, WAITING, PEAK, PEAK_AT = fix(range(7, 13))
CUT_ROWS = 13
(END,) = fix([-2])

# Entries of `control`.
RANDOM, HEAT, CLOCK, ROUND, BEST_WORK, N_CUTS, N_SETTINGS = fix(range(7))
SUM, REST, STAMP, TREE_MOVES, ORDERED, DEEPEST, CODE, WEIGHED = fix(range(7, 15))
CONTROLS = 15

LEAF, SIDE, STACK = fix(range(3))
NEVER = cast("int", np.int64(2**62))
NOTHING = cast("int", np.int64(-1))
NONE, ONE, TWO = fix(range(3))

# Bits of MANNER. The first two count at the topmost joint of a row (the first at parts, too), the
# others at the pieces of a row.
LENGTH_FIRST = 1  # the rest behind a row is cut off first; with a part, its smaller rest
EACH_ITSELF = 2  # pieces come off before the row is cut down to their height
OTHERWISE = 4  # this piece does the opposite of that
AT_END = 8  # this piece comes off last
(MANNERS,) = fix([4])

(HUNDRED,) = fix([100])
(LUCK,) = fix([4096])


class Bench(NamedTuple):
    """All arrays of a search. Those from `kinds` on never change.

    Attributes:
        state: What is placed where; see the rows above. Shape (MATCHED + matches, columns).
        best: A copy of the state at its best with everything placed. Same shape.
        log: What `put` overwrote: count and entries, old values. Shape (2, size).
        control: Counters and the random state. Shape (CONTROLS,).
        scratch: Stacks and lists of one call. Shape (8, 2 * columns).
        cuts: The cuts of the sheet looked at. Shape (CUT_ROWS, 4 * columns).
        table: What is counted on that sheet: key, stamp, number. Shape (3, a power of two).
        fail: Version of the sheet on which a kind had no place. Shape (kinds, slots).
        kinds: What the part kinds are; see the rows above. Shape (6, kinds).
        kind_of: Kind of every part. Shape (parts,).
        sheets: Usable sizes, real sizes, area and kind of every slot. Shape (6, slots).
        ways: How a part kind may lie on a slot: 1 long side along x, 2 along y, 3 both, 0 not at
            all. Shape (slots, kinds).
        rates: What things cost. Shape (RATES,).
        luck: Quantiles of the exponential distribution, in 1024ths. Shape (LUCK,).
        partners: For every dimension that must match the other one of the same group, or itself;
            one of the two is enough. Shape (matches,).
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
    partners: Ints
