"""Packing into free rectangles, as a compiled function: one variant of the guillotine heuristic.

Every sheet begun keeps a list of free rectangles. A part goes into the low corner of the one that
fits it best, what is left of that is split in two by one cut, and free rectangles that share a full
side are joined. Ties go to the free rectangle that has been there longest, upright before turned.

References:
    Jylänki (2010), A thousand ways to pack the bin, section 2.2, from memory.
"""

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from nesting.search.compiled import compiled, inner

Ints = NDArray[np.int64]

# Rules for the free rectangle: least shorter rest, least area left, least longer rest.
SHORT_REST, LEAST_AREA, LONG_REST = 0, 1, 2
# Rules for the cut: by the sides of the free rectangle, of the rests, or by the smaller area.
SHORT_SIDE, LARGE_REST, SHORT_REST_SIDE, LONG_REST_SIDE, SMALL_REST, LONG_SIDE = range(6)
FIRST_FIT, BEST_FIT = 0, 1

# Rows of `free`: corner, sides and the next one of the same sheet.
X, Y, LENGTH, WIDTH, NEXT = range(5)
# Rows of `begun`: sheet kind, first and last free rectangle, free area, and the part kind that has
# had no place since the sheet was last changed.
KIND, FIRST, LAST, ROOM, TOO_FULL_FOR = range(5)
# Rows of `places`: sheet begun (-1 for none), side (0 long side along x), corner.
SHEET, SIDE, AT_X, AT_Y = range(4)
# Entries of `counts`.
N_BEGUN, N_SPARE, LOOKS = range(3)
NEVER = 2**62
NOTHING = -1


class Floor(NamedTuple):
    """The arrays of one packing.

    Attributes:
        free: Free rectangles, see the rows above. Shape (5, 2 * parts + 2).
        spare: Columns of `free` that are not in use. Shape (2 * parts + 2,).
        begun: Sheets begun. Shape (5, parts).
        places: Where each part lies, in the order of packing. Shape (4, parts).
        counts: Sheets begun, spare columns, free rectangles looked at. Shape (3,).
        stock: How many of each sheet kind are left. Shape (sheets,).
        parts: Long side, short side and kind of each part, in the order of packing. Shape
            (3, parts).
        sheets: Length and width of the sheet kinds. Shape (2, sheets).
        ways: How a part kind may lie on a sheet kind: 1, 2 or both. Shape (sheets, kinds).
        order: Sheet kinds in the order in which they are begun. Shape (sheets,).
    """

    free: Ints
    spare: Ints
    begun: Ints
    places: Ints
    counts: Ints
    stock: Ints
    parts: Ints
    sheets: Ints
    ways: Ints
    order: Ints


@inner
def rate(fit: int, length: int, width: int, part_x: int, part_y: int) -> int:
    """Return how badly a part fits a free rectangle."""
    if fit == SHORT_REST:
        return min(length - part_x, width - part_y)
    if fit == LONG_REST:
        return max(length - part_x, width - part_y)
    return length * width - part_x * part_y


@inner
def find_free(floor: Floor, sheet: int, part: int, fit: int, first: int) -> tuple[int, int, int]:
    """Return the best free rectangle of a sheet, the side that the part lies on, and the rating.

    The way `first` is tried on every free rectangle before the other.
    """
    free, begun, counts, parts = floor.free, floor.begun, floor.counts, floor.parts
    best, best_node, best_side = NEVER, NOTHING, 0
    possible = floor.ways[begun[KIND, sheet], parts[2, part]]
    if (
        begun[TOO_FULL_FOR, sheet] == parts[2, part]
        or begun[ROOM, sheet] < parts[0, part] * parts[1, part]
    ):
        return best_node, best_side, best
    for turn in range(2):
        side = first if turn == 0 else 1 - first
        if possible & (side + 1) == 0:
            continue
        part_x, part_y = parts[side, part], parts[1 - side, part]
        node = begun[FIRST, sheet]
        while node != NOTHING:
            counts[LOOKS] += 1
            length, width = free[LENGTH, node], free[WIDTH, node]
            if part_x <= length and part_y <= width:
                rating = rate(fit, length, width, part_x, part_y)
                if rating < best:
                    best, best_node, best_side = rating, node, side
            node = free[NEXT, node]
    if best_node == NOTHING:
        begun[TOO_FULL_FOR, sheet] = parts[2, part]
    return best_node, best_side, best


@inner
def take_out(floor: Floor, sheet: int, before: int, node: int) -> None:
    """Take a free rectangle off a sheet's list, and keep its column for later."""
    free, begun, counts = floor.free, floor.begun, floor.counts
    if before == NOTHING:
        begun[FIRST, sheet] = free[NEXT, node]
    else:
        free[NEXT, before] = free[NEXT, node]
    if begun[LAST, sheet] == node:
        begun[LAST, sheet] = before
    floor.spare[counts[N_SPARE]] = node
    counts[N_SPARE] += 1


@inner
def add_free(floor: Floor, sheet: int, x: int, y: int, length: int, width: int) -> None:
    """Add a free rectangle, joined with those that share a full side with it."""
    free, begun, counts = floor.free, floor.begun, floor.counts
    is_joined = True
    while is_joined:
        is_joined = False
        before, node = NOTHING, begun[FIRST, sheet]
        while node != NOTHING:
            after = free[NEXT, node]
            counts[LOOKS] += 1
            if free[X, node] == x and free[LENGTH, node] == length:
                low = min(y, free[Y, node])
                if (
                    max(y + width, free[Y, node] + free[WIDTH, node]) - low
                    == width + free[WIDTH, node]
                ):
                    y, width, is_joined = low, width + free[WIDTH, node], True
                    take_out(floor, sheet, before, node)
                    node = after
                    continue
            if free[Y, node] == y and free[WIDTH, node] == width:
                low = min(x, free[X, node])
                if (
                    max(x + length, free[X, node] + free[LENGTH, node]) - low
                    == length + free[LENGTH, node]
                ):
                    x, length, is_joined = low, length + free[LENGTH, node], True
                    take_out(floor, sheet, before, node)
                    node = after
                    continue
            before, node = node, after
    counts[N_SPARE] -= 1
    node = floor.spare[counts[N_SPARE]]
    free[X, node], free[Y, node] = x, y
    free[LENGTH, node], free[WIDTH, node], free[NEXT, node] = length, width, NOTHING
    if begun[LAST, sheet] == NOTHING:
        begun[FIRST, sheet] = node
    else:
        free[NEXT, begun[LAST, sheet]] = node
    begun[LAST, sheet] = node


@inner
def is_cut_across(split: int, length: int, width: int, part_x: int, part_y: int) -> bool:
    """Return whether the cut over a part runs along x through the whole free rectangle."""
    over_x, over_y = length - part_x, width - part_y
    if split == SHORT_SIDE:
        return length < width
    if split == LONG_SIDE:
        return length >= width
    if split == SHORT_REST_SIDE:
        return over_x < over_y
    if split == LONG_REST_SIDE:
        return over_x >= over_y
    if split == LARGE_REST:
        return part_x * over_y <= part_y * over_x
    return part_x * over_y >= part_y * over_x


@inner
def lay(floor: Floor, sheet: int, part: int, node: int, side: int, split: int) -> None:
    """Lay a part into a free rectangle and split the rest."""
    free, begun, parts, places = floor.free, floor.begun, floor.parts, floor.places
    x, y, length, width = free[X, node], free[Y, node], free[LENGTH, node], free[WIDTH, node]
    part_x, part_y = parts[side, part], parts[1 - side, part]
    before, other = NOTHING, begun[FIRST, sheet]
    while other != node:
        before, other = other, free[NEXT, other]
    take_out(floor, sheet, before, node)
    begun[ROOM, sheet] -= part_x * part_y
    begun[TOO_FULL_FOR, sheet] = NOTHING
    places[SHEET, part], places[SIDE, part] = sheet, side
    places[AT_X, part], places[AT_Y, part] = x, y
    is_across = is_cut_across(split, length, width, part_x, part_y)
    if part_y < width:
        add_free(floor, sheet, x, y + part_y, length if is_across else part_x, width - part_y)
    if part_x < length:
        add_free(floor, sheet, x + part_x, y, length - part_x, part_y if is_across else width)


@inner
def begin_sheet(floor: Floor, part: int) -> int:
    """Begin the first sheet kind in the order that is left and holds a part; return the sheet."""
    sheets, begun, counts = floor.sheets, floor.begun, floor.counts
    for kind in floor.order:
        if floor.stock[kind] > 0 and floor.ways[kind, floor.parts[2, part]] > 0:
            floor.stock[kind] -= 1
            sheet: int = counts[N_BEGUN]
            counts[N_BEGUN] += 1
            begun[KIND, sheet] = kind
            begun[FIRST, sheet], begun[LAST, sheet] = NOTHING, NOTHING
            begun[TOO_FULL_FOR, sheet] = NOTHING
            begun[ROOM, sheet] = sheets[0, kind] * sheets[1, kind]
            add_free(floor, sheet, 0, 0, sheets[0, kind], sheets[1, kind])
            return sheet
    return NOTHING


@compiled
def pack(floor: Floor, fit: int, split: int, rule: int, first: int) -> None:
    """Lay every part, or say that it has no place.

    Args:
        floor: The arrays; places, counts and what is begun are written anew.
        fit: Rule for the free rectangle.
        split: Rule for the cut.
        rule: FIRST_FIT takes the first sheet begun that holds a part, BEST_FIT the best.
        first: The side that parts lie on where both are as good.
    """
    counts, places, parts = floor.counts, floor.places, floor.parts
    counts[N_BEGUN] = 0
    counts[LOOKS] = 0
    columns = floor.spare.shape[0]
    counts[N_SPARE] = columns
    for column in range(columns):
        floor.spare[column] = column
    for part in range(parts.shape[1]):
        best, best_sheet, best_node, best_side = NEVER, NOTHING, NOTHING, 0
        for sheet in range(counts[N_BEGUN]):
            node, side, rating = find_free(floor, sheet, part, fit, first)
            if rating < best:
                best, best_sheet, best_node, best_side = rating, sheet, node, side
                if rule == FIRST_FIT:
                    break
        counts[LOOKS] += counts[N_BEGUN]
        if best_sheet == NOTHING:
            best_sheet = begin_sheet(floor, part)
            if best_sheet == NOTHING:
                places[SHEET, part] = NOTHING
                continue
            best_node, best_side, _ = find_free(floor, best_sheet, part, fit, first)
        lay(floor, best_sheet, part, best_node, best_side, split)


def make_floor(parts: Ints, sheets: Ints, ways: Ints, order: Ints, stock: Ints) -> Floor:
    """Return the arrays for some parts in the order of packing."""
    count = parts.shape[1]
    return Floor(
        free=np.zeros((5, 2 * count + 2), dtype=np.int64),
        spare=np.zeros(2 * count + 2, dtype=np.int64),
        begun=np.zeros((5, count), dtype=np.int64),
        places=np.zeros((4, count), dtype=np.int64),
        counts=np.zeros(3, dtype=np.int64),
        stock=stock.copy(),
        parts=parts,
        sheets=sheets,
        ways=ways,
        order=order,
    )
