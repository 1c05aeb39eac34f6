"""The best order of few cuts, by a dynamic program over what has been cut."""

from collections.abc import Iterator
from decimal import Decimal
from typing import TypeAlias

from nesting.cut_sequence.sequence import MOST_OPEN_PIECES
from nesting.cut_sequence.tasks import Tasks
from nesting.saw import Times

MOST_STATES = 10_000
"""Beyond this the cuts are not few: the program would take longer than a moment."""

# A state is the set of cuts made, as bits, and the last of them. Its value is the minutes so far,
# the times that another piece was taken in hand, and the state before.
State: TypeAlias = tuple[int, int]
Value: TypeAlias = tuple[Decimal, int, State | None]


def order_few(tasks: Tasks, times: Times) -> list[int] | None:
    """Return the order with the fewest minutes for settings and turns, None where it is not found.

    Of those with equal minutes it is one that takes another piece in hand least often. Leaves at
    most `MOST_OPEN_PIECES` pieces that still need cutting; None where no order does, or where
    there are more than `MOST_STATES` states.
    """
    parents = _parents(tasks)
    layers: list[dict[State, Value]] = [{(1, 0): (Decimal(0), 0, None)}]
    states = 1
    for made in range(1, len(tasks.places)):
        layer: dict[State, Value] = {}
        for state, (minutes, changes, _) in layers[-1].items():
            for task in _available(tasks, parents, state, made):
                following = (state[0] | 1 << task, task)
                value = (
                    minutes + _minutes_between(tasks, times, state[1], task),
                    changes + (parents[task] != state[1]),
                    state,
                )
                if following not in layer or value[:2] < layer[following][:2]:
                    layer[following] = value
        states += len(layer)
        if not layer or states > MOST_STATES:
            return None
        layers.append(layer)
    return _trace(layers)


def _parents(tasks: Tasks) -> list[int | None]:
    parents: list[int | None] = [None] * len(tasks.places)
    for task, children in enumerate(tasks.children):
        for child in children:
            parents[child] = task
    return parents


def _available(tasks: Tasks, parents: list[int | None], state: State, made: int) -> Iterator[int]:
    """Yield the cuts that can be made next, by number."""
    done, _ = state
    if made < tasks.forced:
        yield made
        return
    waiting = [
        task
        for task, parent in enumerate(parents)
        if parent is not None and not done >> task & 1 and done >> parent & 1
    ]
    for task in waiting:
        if len(waiting) - 1 + len(tasks.children[task]) <= MOST_OPEN_PIECES:
            yield task


def _minutes_between(tasks: Tasks, times: Times, before: int, after: int) -> Decimal:
    old, new = tasks.settings[before], tasks.settings[after]
    if old == new:
        return Decimal(0)
    return times.setting + (times.turn if tasks.is_rip[old] != tasks.is_rip[new] else 0)


def _trace(layers: list[dict[State, Value]]) -> list[int]:
    """Return the cuts of the best state of the last layer, first cut first."""
    last = layers[-1]
    state: State | None = min(last, key=lambda state: (last[state][:2], state))
    order: list[int] = []
    for layer in reversed(layers):
        assert state is not None
        order.append(state[1])
        state = layer[state][2]
    return order[::-1]
