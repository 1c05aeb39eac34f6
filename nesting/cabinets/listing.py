"""From solids to lists: the parts and battens of one cabinet."""

from collections.abc import Iterable
from dataclasses import replace
from itertools import groupby
from typing import TypeVar

from nesting.cabinets.panels import Bar, Panel
from nesting.cabinets.sums import round_size, write_sum
from nesting.lengths import Length, Unit, format_length
from nesting.parts import Batten, Part, Status

Solid = TypeVar("Solid", Panel, Bar)


def list_parts(
    panels: Iterable[Panel],
    letter: str,
    *,
    step: Length,
    unit: Unit,
    hidden: frozenset[str] = frozenset(),
) -> tuple[Part, ...]:
    """Return the parts of one cabinet, rounded to the step.

    Panels of one kind become one part with a count: either may take the other's place.

    Args:
        panels: The panels of the cabinet.
        letter: Its letter.
        step: Sizes are rounded to this.
        unit: The unit of the sums.
        hidden: The kinds that show nowhere when the work is done.
    """
    return tuple(
        replace(_as_part(group, letter, step, unit), is_hidden=group[0].kind in hidden)
        for group in _by_kind(panels)
    )


def list_battens(
    bars: Iterable[Bar], letter: str, *, step: Length, unit: Unit
) -> tuple[Batten, ...]:
    """Return the battens of one cabinet, rounded to the step."""
    return tuple(
        Batten(
            name=group[0].kind,
            length=round_size(group[0].length, step),
            section=group[0].section,
            count=len(group),
            cabinet=letter,
            status=group[0].status,
            oversize=group[0].oversize,
            sums=(write_sum(group[0].length, step, unit), group[0].set_back),
        )
        for group in _by_kind(bars)
    )


def _by_kind(solids: Iterable[Solid]) -> list[list[Solid]]:
    return [list(group) for _, group in groupby(solids, key=lambda solid: solid.kind)]


def _as_part(group: list[Panel], letter: str, step: Length, unit: Unit) -> Part:
    panel = group[0]
    length, width = (round_size(span, step) for span in (panel.length, panel.width))
    assert all(
        (round_size(other.length, step), round_size(other.width, step)) == (length, width)
        for other in group
    ), f"panels of the kind {panel.kind} differ"
    extra = {
        axis: sum(each.amount for each in panel.allowances if each.along is axis)
        for axis in (panel.length.axis, panel.width.axis)
    }
    is_larger = panel.status is Status.FINAL and any(extra.values())
    return Part(
        name=panel.kind,
        length=length,
        width=width,
        count=len(group),
        grain=panel.grain,
        material=panel.board.material,
        thickness=panel.board.thickness,
        oversize=panel.oversize,
        extra_length=extra[panel.length.axis],
        extra_width=extra[panel.width.axis],
        allowances=tuple(
            f"{each.edge} + {format_length(each.amount, unit)}, {each.why}"
            for each in panel.allowances
        ),
        status=Status.OVERSIZE if is_larger else panel.status,
        cabinet=letter,
        sums=(write_sum(panel.length, step, unit), write_sum(panel.width, step, unit)),
        match=panel.match,
        to_do=panel.to_do,
        note=panel.note or ("interchangeable" if len(group) > 1 else ""),
    )
