"""Checks that the builder makes on the parts: diagonals, and stacks that need no tape."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations, permutations, product
from math import isqrt

from nesting.cabinets.construction import Construction
from nesting.cabinets.panels import Panel
from nesting.cabinets.space import Axis
from nesting.cabinets.sums import round_size
from nesting.lengths import Length, Unit, format_length, mm, round_to

TOLERANCE = mm(1)
"""How far a reading may be off. Judgement: makers accept 0.8 to 1.6 mm on about 1.1 m."""
EXACT = mm("0.05")
STACKED = 3
CORNERS = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckLine:
    """One check.

    Attributes:
        name: What is checked.
        wanted: The lengths that are read, such as two diagonals; empty for a check by feel.
        tolerance: How far a reading may be off.
        text: The check in a sentence.
    """

    name: str
    wanted: tuple[Length, ...] = ()
    tolerance: Length = 0
    text: str


def passes(line: CheckLine, readings: tuple[Length, ...]) -> bool:
    """Return whether readings agree with what is wanted, and with each other as well as that."""
    off = [reading - wanted for reading, wanted in zip(readings, line.wanted, strict=True)]
    return max(off) - min(off) <= line.tolerance and max(map(abs, off)) <= line.tolerance


def find_diagonal(length: Length, width: Length) -> Length:
    """Return the diagonal of a rectangle, to the nearest nanometre."""
    square = 4 * (length * length + width * width)
    return (isqrt(square) + 1) // 2


def check_diagonals(construction: Construction, step: Length, unit: Unit) -> Iterator[CheckLine]:
    """Yield the diagonals of every kind of panel as cut, then those of the carcass."""
    seen = set()
    for panel in construction.panels:
        if panel.kind in seen:
            continue
        seen.add(panel.kind)
        if _has_odd_corners(panel):
            yield from _check_corners(panel, unit)
            continue
        yield _diagonal_line(panel.kind, _panel_diagonals(panel, step), unit)
    if construction.outline is None:
        for (name, first), (other, second) in (
            (("height", Axis.HEIGHT), ("width", Axis.WIDTH)),
            (("height", Axis.HEIGHT), ("depth", Axis.DEPTH)),
        ):
            outside = find_diagonal(construction.whole(first), construction.whole(second))
            yield _diagonal_line(f"Outside, {name} by {other}", (outside, outside), unit)


def _has_odd_corners(panel: Panel) -> bool:
    profile = panel.profile
    return profile is not None and profile.axis is panel.normal and len(profile.corners) != CORNERS


def _check_corners(panel: Panel, unit: Unit) -> Iterator[CheckLine]:
    """Yield the distances between corners of a panel with more or fewer than four."""
    assert panel.profile is not None
    corners = panel.profile.corners
    first, second = (axis.ends[0] for axis in panel.profile.plane)
    for (start, a), (end, b) in combinations(enumerate(corners), 2):
        if end - start in (1, len(corners) - 1):
            continue
        distance = find_diagonal(b[0] - a[0], b[1] - a[1])
        shown = [format_length(round_to(value, unit.nanometres // 10), unit) for value in (*a, *b)]
        length = format_length(round_to(distance, unit.nanometres // 10), unit)
        yield CheckLine(
            name=f"{panel.kind}: corner to corner",
            wanted=(distance,),
            tolerance=TOLERANCE,
            text=f"{panel.kind}: from the corner {shown[0]} from the {first} and {shown[1]} from "
            f"the {second} to the one at {shown[2]} and {shown[3]}: {length} {unit.value}.",
        )


def _panel_diagonals(panel: Panel, step: Length) -> tuple[Length, Length]:
    """Return both diagonals of a panel, which differ where it has a slanting edge."""
    profile = panel.profile
    if profile is not None and profile.axis is panel.normal and len(profile.corners) == CORNERS:
        a, b, c, d = profile.corners
        return (
            find_diagonal(c[0] - a[0], c[1] - a[1]),
            find_diagonal(d[0] - b[0], d[1] - b[1]),
        )
    both = find_diagonal(round_size(panel.length, step), round_size(panel.width, step))
    return both, both


def _diagonal_line(name: str, diagonals: tuple[Length, Length], unit: Unit) -> CheckLine:
    shown = [format_length(round_to(each, unit.nanometres // 10), unit) for each in diagonals]
    both = f"both {shown[0]}" if shown[0] == shown[1] else f"{shown[0]} and {shown[1]}"
    return CheckLine(
        name=f"{name}: diagonals",
        wanted=diagonals,
        tolerance=TOLERANCE,
        text=f"{name}: diagonals {both} {unit.value}, within {format_length(TOLERANCE, unit)}.",
    )


def check_stacks(construction: Construction, step: Length, unit: Unit) -> Iterator[CheckLine]:
    """Yield checks by feel for each group of panels that match, and stacks of equal height."""
    groups: dict[str, list[Panel]] = {}
    for panel in construction.panels:
        if panel.match:
            groups.setdefault(panel.match, []).append(panel)
    for match, panels in groups.items():
        shared = _find_shared(panels, step)
        if shared:
            names = ", ".join(panel.name for panel in panels)
            yield CheckLine(
                name=match,
                text=f"{names}: stand them back to back on the edges that are "
                f"{format_length(shared, unit)} {unit.value} apart. No step is to be felt.",
            )
    yield from _find_stacks(construction, step, unit)


def _find_shared(panels: list[Panel], step: Length) -> Length:
    """Return the size that all panels of a group have, 0 where there is none."""
    sizes = [{round_size(each.length, step), round_size(each.width, step)} for each in panels]
    common = set.intersection(*sizes)
    return max(common) if common else 0


def _find_stacks(construction: Construction, step: Length, unit: Unit) -> Iterator[CheckLine]:
    """Yield where one panel on edge and two others lying flat are as high as another on edge.

    Those that lie flat are the ones between which the panel stands in the cabinet.
    """
    kinds = {panel.kind: panel for panel in construction.panels if panel.profile is None}
    for tall, low, flat in permutations(kinds.values(), STACKED):
        lying = 2 * (flat.through[1] - flat.through[0])
        for side, other in product((tall.length, tall.width), (low.length, low.width)):
            high = round_size(side, step)
            rest = high - round_size(other, step) - lying
            if side.axis is other.axis is flat.normal and abs(rest) <= EXACT:
                yield CheckLine(
                    name=f"{tall.kind} against {low.kind}",
                    text=f"{low.kind} on its edge, with two of the kind {flat.kind} lying on it, "
                    f"is as high as {tall.kind} on its edge: {format_length(high, unit)} "
                    f"{unit.value}. No step is to be felt.",
                )
