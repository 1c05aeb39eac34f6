"""The order of cuts of one sheet: as few settings and turns as can be found."""

import random
from dataclasses import dataclass, fields, replace
from decimal import Decimal
from itertools import pairwise

from nesting.cut_sequence.exact import order_few
from nesting.cut_sequence.greedy import Weights, order_by_setting
from nesting.cut_sequence.sequence import MOST_OPEN_PIECES, Sequence, Step
from nesting.cut_sequence.tasks import Tasks, keep_size, list_tasks
from nesting.cut_sequence.whole_first import list_first, put_first
from nesting.job import Job
from nesting.layout import By, Cut, SheetLayout, band
from nesting.saw import Times

MOST_TRIES = 600
WORK = 250_000
"""Tries times cuts times settings of one sheet: some tenths of a second on a slow machine."""


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class _Worth:
    """How good an order is; the least is the best.

    Attributes:
        crowding: Pieces lying about beyond the limit.
        minutes: For settings and turns, all that depends on the order.
        changes: How often another piece is taken in hand.
    """

    crowding: int
    minutes: Decimal
    changes: int


def order_cuts(job: Job, sheet_layout: SheetLayout) -> Sequence:
    """Return the cuts of one sheet in the order of doing.

    Trims of the whole sheet come first. Then cuts of equal direction and keep size share a
    setting where they can, at most `MOST_OPEN_PIECES` pieces that still need cutting lie about,
    and the direction changes seldom. The tree is not changed: every cut crosses one whole piece
    that exists at that moment. With `Job.terms.first_whole` the cuts that this cabinet needs come
    before all others of the sheet. The same layout gives the same order.
    """
    tasks = list_tasks(job.sheets[sheet_layout.sheet], sheet_layout)
    first = list_first(job, sheet_layout, tasks)
    order = _search(tasks, first, job.times)
    return replace(_describe(job, sheet_layout.sheet, tasks, order), pause=len(first))


def _search(tasks: Tasks, first: frozenset[int], times: Times) -> list[int]:
    """Return the best order of few cuts, else the best found by changing the greedy's weights."""
    if not tasks.places:
        return []
    is_free = len(first) in (0, len(tasks.places))
    if is_free and (exact := order_few(tasks, times)):
        return exact
    weights = Weights()
    best = put_first(order_by_setting(tasks, weights), first)
    worth = _judge(tasks, best, times)
    least = _least_minutes(tasks, times)
    tries = min(MOST_TRIES, WORK // (1 + len(tasks.places) * len(tasks.is_rip)))
    chance = random.Random(0)  # noqa: S311 - repeatable on purpose
    for _ in range(tries):
        if worth.minutes <= least and not worth.crowding:
            break
        changed = _change(weights, len(tasks.is_rip), chance)
        order = put_first(order_by_setting(tasks, changed), first)
        judged = _judge(tasks, order, times)
        if judged <= worth:
            weights, worth, best = changed, judged, order
    return best


def _change(weights: Weights, settings: int, chance: random.Random) -> Weights:
    """Return other weights: one of them scaled, or one setting brought forward or put off."""
    names = [field.name for field in fields(Weights) if field.name != "offsets"]
    step = chance.randint(-90, 90)
    if chance.randrange(3):
        offsets = dict(weights.offsets or {})
        setting = chance.randrange(settings)
        offsets[setting] = offsets.get(setting, 0) + step
        return replace(weights, offsets=offsets)
    name = chance.choice(names)
    return replace(weights, **{name: getattr(weights, name) + step // 3})


def _judge(tasks: Tasks, order: list[int], times: Times) -> _Worth:
    settings = [tasks.settings[task] for task in order]
    pairs = list(pairwise(settings))
    changes = sum(after not in tasks.children[before] for before, after in pairwise(order))
    return _Worth(
        crowding=max(0, _most_open(tasks, order) - MOST_OPEN_PIECES),
        minutes=times.setting * sum(before != after for before, after in pairs)
        + times.turn * sum(tasks.is_rip[before] != tasks.is_rip[after] for before, after in pairs),
        changes=changes,
    )


def _least_minutes(tasks: Tasks, times: Times) -> Decimal:
    """Return what no order can beat: every setting once, and one turn where there are both."""
    turns = len(set(tasks.is_rip)) - 1
    return times.setting * (len(tasks.is_rip) - 1) + times.turn * turns


def _most_open(tasks: Tasks, order: list[int]) -> int:
    most = open_count = min(1, len(order))
    for task in order:
        open_count += len(tasks.children[task]) - 1
        most = max(most, open_count)
    return most


def _describe(job: Job, sheet: int, tasks: Tasks, order: list[int]) -> Sequence:
    steps: list[Step] = []
    setting = turns = 0
    for number, task in enumerate(order, start=1):
        place = tasks.places[task]
        cut = place.node
        assert isinstance(cut, Cut)
        if not steps or tasks.settings[task] != tasks.settings[order[number - 2]]:
            setting += 1
        if steps and steps[-1].direction is not cut.direction:
            turns += 1
        steps.append(
            Step(
                number=number,
                path=place.path,
                setting=setting,
                direction=cut.direction,
                is_trim=cut.is_trim,
                by=cut.by,
                keep=keep_size(cut),
                piece=place.rect,
                band=band(cut, place.rect),
            )
        )
    return Sequence(
        sheet=sheet,
        steps=tuple(steps),
        settings=setting,
        turns=turns,
        most_open=_most_open(tasks, order),
        too_long=tuple(
            step.number
            for step in steps
            if step.by is By.HOME and step.cut_length > job.saw.guide_length
        ),
    )
