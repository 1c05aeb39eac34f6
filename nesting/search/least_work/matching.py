"""Parts that must match: how many of them get a dimension off one setting.

A group of parts has one dimension in common, or two where its parts are equal; then one of the two
is enough. The guide is set anew on every sheet, so that of a group on several sheets the most on
one of them count.
"""

from nesting.search.compiled import inner
from nesting.search.least_work.arrays import (
    CUT_RIP,
    CUT_SETTING,
    CUT_STEM,
    LENGTH,
    LONG,
    MATCH_LONG,
    MATCH_SHORT,
    MATCHED,
    MISS,
    NONE,
    NOTHING,
    ONE,
    PEAK,
    PEAK_AT,
    ROOT,
    STAMP,
    TOTAL,
    WORK,
    Bench,
    Ints,
    fix,
)
from nesting.search.least_work.trees import put

(DIRECTIONS,) = fix([2])
(FIRST_MATCH,) = fix([-1])  # keys below 0 count matches, those from 0 on settings
(SETTINGS,) = fix([1 << 32])


@inner
def count_up(bench: Bench, key: int) -> int:
    """Return where a key's number of this sheet stands in the table, 0 where it is new."""
    table, stamp = bench.table, bench.control[STAMP]
    last = table.shape[1] - 1
    at = (key * 0x9E3779B1 >> 7) & last
    while table[1, at] == stamp and table[0, at] != key:
        at = (at + 1) & last
    if table[1, at] != stamp:
        table[0, at] = key
        table[1, at] = stamp
        table[2, at] = 0
    return int(at)


@inner
def find_setting(cuts: Ints, stem: int, is_rip: int) -> int:
    """Return the setting of the last cut across a direction, NOTHING where it left a rest."""
    while stem != NOTHING:
        if cuts[CUT_RIP, stem >> 1] == is_rip:
            return int(cuts[CUT_SETTING, stem >> 1]) if stem & 1 == 0 else NOTHING
        stem = cuts[CUT_STEM, stem >> 1]
    return NOTHING


@inner
def note_matches(bench: Bench, part: int, stem: int) -> None:
    """Count what a part gets off the settings of its sheet, where it must match others."""
    kinds, cuts = bench.kinds, bench.cuts
    kind = bench.kind_of[part]
    if kinds[MATCH_LONG, kind] == NOTHING and kinds[MATCH_SHORT, kind] == NOTHING:
        return
    for is_rip in range(DIRECTIONS):
        is_long = bench.state[LENGTH + is_rip, part] == kinds[LONG, kind]
        match = kinds[MATCH_LONG if is_long else MATCH_SHORT, kind]
        if match == NOTHING:
            continue
        setting = find_setting(cuts, stem, is_rip)
        if setting == NOTHING:
            continue
        at = count_up(bench, FIRST_MATCH - match * SETTINGS - setting)
        bench.table[2, at] += ONE
        if cuts[PEAK_AT, match] != bench.control[STAMP]:
            cuts[PEAK_AT, match] = bench.control[STAMP]
            cuts[PEAK, match] = 0
        cuts[PEAK, match] = max(cuts[PEAK, match], bench.table[2, at])


@inner
def weigh_matches(bench: Bench, slot: int) -> None:
    """Take the matches of the sheet whose cuts were listed last into account."""
    state, log, cuts = bench.state, bench.log, bench.cuts
    slots = bench.sheets.shape[1]
    for match in range(bench.partners.shape[0]):
        row = MATCHED + match
        value = NONE
        if state[ROOT, slot] != NOTHING and cuts[PEAK_AT, match] == bench.control[STAMP]:
            value = cuts[PEAK, match]
        if value == state[row, slot]:
            continue
        put(state, log, row, slot, value)
        most = NONE
        for other in range(slots):
            most = max(most, state[row, other])
        before = state[row, slots]
        if most == before:
            continue
        put(state, log, row, slots, most)
        least = NONE
        if bench.partners[match] != match:
            least = state[MATCHED + bench.partners[match], slots]
        gain = max(most, least) - max(before, least)
        put(state, log, TOTAL, WORK, state[TOTAL, WORK] - gain * bench.rates[MISS])
