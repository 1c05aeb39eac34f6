"""One order of cuts, setting by setting.

Repeatedly choose a setting of the guide and make every cut of it that can be made now, the piece
in hand first. The setting with the lowest score is chosen; what the score looks at is weighed by
`Weights`, so that a search can look for better orders by changing them.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from nesting.cut_sequence.sequence import MOST_OPEN_PIECES
from nesting.cut_sequence.tasks import Tasks


@dataclass(frozen=True, slots=True, kw_only=True)
class Weights:
    """What the choice of the next setting looks at. The score is a sum; the lowest wins.

    Only the ratios matter.

    Attributes:
        blocked: For each cut of the setting whose piece does not exist yet: the setting would
            have to come back.
        stuck: For each cut that would leave too many pieces lying about.
        opened: For each piece more that lies about afterwards.
        current: Where the piece in hand is not among those cut.
        finished: Taken off where no cut of the setting is left afterwards.
        turned: Where the guide must be turned between rip and crosscut.
        offsets: Added for single settings.
    """

    blocked: int = 60
    stuck: int = 60
    opened: int = 15
    current: int = 15
    finished: int = 45
    turned: int = 15
    offsets: Mapping[int, int] | None = None


@dataclass(slots=True, kw_only=True)
class _Floor:
    """Where the work stands: the pieces that can be cut, and what is still to do.

    Attributes:
        order: Cuts made.
        open: Cuts whose piece exists and waits.
        left: For every setting the number of cuts not yet made.
        in_hand: Cuts of the two pieces that the last cut made.
        setting: The setting that stands, None before the first cut.
    """

    order: list[int]
    open: list[int]
    left: list[int]
    in_hand: tuple[int, ...]
    setting: int | None


def order_by_setting(tasks: Tasks, weights: Weights) -> list[int]:
    """Return every task, each after its parent. There must be one.

    Never leaves more than `MOST_OPEN_PIECES` pieces that still need cutting, unless every cut
    that can be made would; then the one that adds least is made.
    """
    floor = _Floor(
        order=[],
        open=[0],
        left=[tasks.settings.count(setting) for setting in range(len(tasks.is_rip))],
        in_hand=(0,),
        setting=None,
    )
    for task in range(tasks.forced):
        _make(tasks, floor, [task])
    while floor.open:
        runs = [
            (_score(tasks, floor, setting, run, weights), setting, run)
            for setting in sorted({tasks.settings[task] for task in floor.open})
            if (run := _run(tasks, floor, setting))
        ]
        if runs:
            _, _, run = min(runs)
        else:
            run = [min(floor.open, key=lambda task: (len(tasks.children[task]), task))]
        _make(tasks, floor, run)
    return floor.order


def _run(tasks: Tasks, floor: _Floor, setting: int) -> list[int]:
    """Return the cuts of one setting that can be made now, one after the other."""
    waiting = [task for task in floor.open if tasks.settings[task] == setting]
    open_count = len(floor.open)
    in_hand = floor.in_hand
    run: list[int] = []
    while waiting:
        waiting.sort(key=lambda task: (task not in in_hand, len(tasks.children[task]), task))
        task = next(
            (
                task
                for task in waiting
                if open_count + len(tasks.children[task]) - 1 <= MOST_OPEN_PIECES
            ),
            None,
        )
        if task is None:
            break
        run.append(task)
        waiting.remove(task)
        in_hand = tasks.children[task]
        open_count += len(in_hand) - 1
        waiting.extend(child for child in in_hand if tasks.settings[child] == setting)
    return run


def _score(tasks: Tasks, floor: _Floor, setting: int, run: list[int], weights: Weights) -> int:
    children = [child for task in run for child in tasks.children[task]]
    available = sum(tasks.settings[task] == setting for task in floor.open)
    freed = sum(tasks.settings[child] == setting for child in children)
    stuck = available + freed - len(run)
    left = floor.left[setting] - len(run)
    score = weights.blocked * (left - stuck) + weights.stuck * stuck
    score += weights.opened * (len(children) - len(run))
    if not any(task in floor.in_hand for task in run):
        score += weights.current
    if not left:
        score -= weights.finished
    if floor.setting is not None and tasks.is_rip[floor.setting] != tasks.is_rip[setting]:
        score += weights.turned
    return score + (weights.offsets or {}).get(setting, 0)


def _make(tasks: Tasks, floor: _Floor, run: list[int]) -> None:
    for task in run:
        floor.open.remove(task)
        floor.open.extend(tasks.children[task])
        floor.left[tasks.settings[task]] -= 1
        floor.in_hand = tasks.children[task]
        floor.order.append(task)
    floor.setting = tasks.settings[run[-1]]
