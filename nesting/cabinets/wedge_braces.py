"""Braces of a wedge, and whether battens and braces find room in it."""

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations

from nesting.cabinets.boards import Board
from nesting.cabinets.design import Braces
from nesting.cabinets.panels import Bar, Panel
from nesting.cabinets.profiles import Profile, do_overlap, find_run, profile_of
from nesting.cabinets.space import Axis, Interval
from nesting.cabinets.sums import Rounding, Span
from nesting.cabinets.waiting import wait
from nesting.cabinets.wedge_measures import Wedge
from nesting.errors import Fault
from nesting.lengths import Length, format_length


def build_braces(wedge: Wedge, board: Board, real: Length) -> tuple[Panel, ...]:
    """Return the braces: flat between the sides, spread evenly over the inside height.

    Each stands midway between what leans and what stands behind it at its own height.
    """
    braces = wedge.design.braces
    if braces is None:
        return ()
    status, oversize, to_do = wait(wedge.design)
    return tuple(
        Panel(
            name=f"brace {number}",
            kind="Brace",
            board=board,
            normal=Axis.HEIGHT,
            through=(start, start + real),
            length=replace(wedge.across, rounding=Rounding.DOWN),
            width=Span(
                axis=Axis.DEPTH,
                whole=braces.depth,
                named="as designed",
                offset=(sum(_find_room(wedge, (start, start + real))) - braces.depth) // 2,
            ),
            status=status,
            oversize=oversize,
            to_do=to_do,
        )
        for number, start in enumerate(_find_heights(wedge, braces, real), start=1)
    )


def _find_heights(wedge: Wedge, braces: Braces, real: Length) -> list[Length]:
    up = [corner[1] for corner in wedge.inside]
    gap = (max(up) - min(up) - braces.count * real) // (braces.count + 1)
    return [min(up) + gap + number * (gap + real) for number in range(braces.count)]


def _find_room(wedge: Wedge, layer: Interval) -> Interval:
    """Return where the inside begins and ends along the depth, all through a level layer."""
    inside = Profile(axis=Axis.WIDTH, corners=wedge.inside)
    runs = [find_run(inside, height) for height in layer]
    return (max(low for low, _ in runs), min(high for _, high in runs))


def find_filling_faults(
    wedge: Wedge, bars: tuple[Bar, ...], braces: tuple[Panel, ...]
) -> Iterator[Fault]:
    """Yield why battens or braces find no room in a wedge."""
    where, unit = f"cabinet {wedge.design.name!r}", wedge.unit
    for brace in braces:
        low, high = _find_room(wedge, brace.through)
        if brace.width.size > high - low or brace.through[0] <= min(y for _, y in wedge.inside):
            whole = max(high - low, 0) // wedge.step * wedge.step
            room = f"{format_length(whole, unit)} {unit.value}"
            yield Fault(
                where=f"{where}, braces",
                what=f"at the height of {brace.name} there are only {room} of depth",
                remedy="Make the braces less deep, or take fewer.",
            )
    yield from _find_meetings(where, bars, braces)


def _find_meetings(where: str, bars: tuple[Bar, ...], braces: tuple[Panel, ...]) -> Iterator[Fault]:
    """Yield the first two battens of different frames, or batten and brace, that would meet."""
    things: list[tuple[str, Bar | Panel]] = [(bar.name.split(",")[0], bar) for bar in bars]
    things += [(brace.name, brace) for brace in braces]
    for (group, first), (other_group, second) in combinations(things, 2):
        outline, other = (
            each.profile or profile_of(each.box, Axis.WIDTH) for each in (first, second)
        )
        are_apart = first.box.overlap(second.box) is None or not do_overlap(outline, other)
        if group != other_group and not are_apart:
            yield Fault(
                where=f"{where}, battens",
                what=f"the {first.name} and the {second.name} would meet",
                remedy="Take thinner battens, leave one frame out, or make the braces less deep.",
            )
            return
