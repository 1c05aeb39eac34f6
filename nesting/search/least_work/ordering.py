"""The order in which the cuts of a sheet are made, and the minutes that depend on it.

The setting that comes next is chosen by a score, as in `nesting.cut_sequence.greedy`: once by what
is weighed there, once with more weight on keeping to one direction.
"""

from nesting.search.compiled import inner
from nesting.search.least_work.arrays import (
    CUT_FIRST,
    CUT_RIP,
    CUT_SECOND,
    CUT_SETTING,
    CUT_STEM,
    N_CUTS,
    N_SETTINGS,
    NEVER,
    NONE,
    NOTHING,
    ONE,
    OPEN,
    SEEN,
    SETTING,
    TO_DO,
    TURN,
    WAITING,
    Bench,
    Ints,
    fix,
)

(MOST_OPEN,) = fix([6])
(PLAINEST,) = fix([6])  # above all values of a cut that may come next
BLOCKED, ELSEWHERE, FINISHED = fix([60, 15, 45])
OPENED, TURNED = fix([15, 15])
STEADY_OPENED, STEADY_TURNED = fix([2, 75])


@inner
def count_children(cuts: Ints, cut: int) -> int:
    """Return how many cuts follow in the two pieces that a cut makes."""
    return int(cuts[CUT_FIRST, cut] >= 0) + int(cuts[CUT_SECOND, cut] >= 0)


@inner
def pick_waiting(cuts: Ints, count: int, most: int, last: int) -> int:
    """Return the place of the next cut among those waiting: of the piece in hand, the plainest.

    The plainest has least to cut after it. NOTHING where each would leave more open pieces
    than `most` allows.
    """
    best, best_value = NOTHING, PLAINEST
    for at in range(count):
        cut = cuts[WAITING, at]
        children = count_children(cuts, cut)
        value = children if cuts[CUT_STEM, cut] >> 1 == last else children + 3
        if children <= most and value < best_value:
            best, best_value = at, value
    return best


@inner
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
    waiting, is_in_hand = NONE, False
    for at in range(count):
        cut = cuts[OPEN, at]
        if cuts[CUT_SETTING, cut] == setting:
            cuts[WAITING, waiting] = cut
            waiting += 1
    made, opened, before = NONE, NONE, last
    while waiting > 0:
        at = pick_waiting(cuts, waiting, MOST_OPEN + 1 - count - opened, before)
        if at == NOTHING:
            break
        cut = cuts[WAITING, at]
        waiting -= 1
        cuts[WAITING, at] = cuts[WAITING, waiting]
        is_in_hand = is_in_hand or cuts[CUT_STEM, cut] >> 1 == last
        made += 1
        opened -= 1
        before = cut
        for row in (CUT_FIRST, CUT_SECOND):
            child = cuts[row, cut]
            if child >= 0:
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


@inner
def make_cuts(bench: Bench, setting: int, made: int, count: int, last: int) -> tuple[int, int]:
    """Make so many cuts of a setting; return how many are open then, and the last one made."""
    cuts = bench.cuts
    for _ in range(made):
        best, best_value = NOTHING, PLAINEST
        for at in range(count):
            cut = cuts[OPEN, at]
            children = count_children(cuts, cut)
            value = children if cuts[CUT_STEM, cut] >> 1 == last else children + 3
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
            if cuts[row, last] >= 0:
                cuts[OPEN, count] = cuts[row, last]
                count += 1
    return count, last


@inner
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
