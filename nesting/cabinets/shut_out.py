"""Before you close the box: what can still be reached after each step of assembly."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.cabinets.bench_tasks import AssemblyTask
from nesting.cabinets.construction import Construction
from nesting.cabinets.fittings import AssemblyWishes
from nesting.cabinets.hole_places import PlacedHole
from nesting.cabinets.holes import Fastener
from nesting.cabinets.openings import (
    Opening,
    find_centre,
    find_distance,
    find_openings,
    is_open_to,
    is_put_in_from_inside,
)
from nesting.cabinets.space import Point
from nesting.cabinets.ways_out import fits_flat
from nesting.lengths import Length, Unit, format_length


@dataclass(frozen=True, slots=True, kw_only=True)
class AssemblyStep:
    """One step of assembly.

    Attributes:
        number: From 1.
        what: The step in a sentence.
        closes: The panel that it closes the cabinet with; empty for none.
        impossible: What cannot be done any more after it.
    """

    number: int
    what: str
    closes: str = ""
    impossible: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class InsideLimit:
    """How long something can still be done inside.

    Attributes:
        item: What.
        ways: After each step, the largest opening that it passes; empty where there is none.
        last_step: Number of the last step after which it can still be done; 0 for none.
        text: The result in a sentence.
    """

    item: str
    ways: tuple[str, ...]
    last_step: int
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class _Inside:
    """Something that is done inside.

    Attributes:
        name: What.
        size: What has to pass an opening.
        needs_end: Whether only a whole end of the cabinet will do, as for damping that has to be
            laid and pressed on. Judgement.
        place: Where it is done by hand; None where that is no matter.
        is_hand: Whether it is a hand that passes.
    """

    name: str
    size: tuple[Length, Length]
    needs_end: bool = False
    place: Point | None = None
    is_hand: bool = False


def find_limits(
    construction: Construction,
    holes: tuple[PlacedHole, ...],
    tasks: tuple[AssemblyTask, ...],
    wishes: AssemblyWishes,
    unit: Unit,
) -> tuple[tuple[AssemblyStep, ...], tuple[InsideLimit, ...]]:
    """Return the steps, each with what it shuts out, and how long each thing can be done."""
    ways_in = [
        tuple(_find_ways(construction, holes, tasks[: count + 1])) for count in range(len(tasks))
    ]
    limits = tuple(
        _limit(inside, ways_in, tasks, wishes.reach, unit) for inside in _list_inside(holes, wishes)
    )
    steps = tuple(
        AssemblyStep(
            number=number,
            what=task.what,
            closes=task.closes,
            impossible=tuple(
                limit.item for limit in limits if limit.last_step == number - 1 and number > 1
            ),
        )
        for number, task in enumerate(tasks, start=1)
    )
    return steps, limits


def _find_ways(
    construction: Construction, holes: tuple[PlacedHole, ...], done: tuple[AssemblyTask, ...]
) -> Iterator[Opening]:
    """Yield the openings after some tasks, the whole side while the carcass is not glued."""
    panels = frozenset(name for task in done for name in task.panels)
    if not panels:
        width, depth, height = construction.outside
        sides = sorted((width, depth, height))[1:]
        yield Opening(
            name="open on all sides",
            sides=(sides[0], sides[1]),
            is_end=True,
            low=(0, 0, 0),
            high=construction.outside,
        )
        return
    yield from find_openings(
        construction,
        holes,
        panels=panels,
        frames=frozenset(name for task in done for name in task.frames),
        fitted=frozenset(name for task in done for name in task.fitted),
    )


def _list_inside(holes: tuple[PlacedHole, ...], wishes: AssemblyWishes) -> Iterator[_Inside]:
    hand = (wishes.hand, wishes.hand)
    if wishes.damping:
        yield _Inside(name="damping", size=hand, needs_end=True, is_hand=True)
    if wishes.wiring:
        yield _Inside(name="wiring", size=hand, is_hand=True)
    for item in wishes.items:
        yield _Inside(name=item.name, size=item.size)
    for placed in holes:
        hole = placed.hole
        if hole.fastener is Fastener.T_NUTS:
            yield _Inside(
                name=f"T-nuts of the {hole.name}",
                size=hand,
                place=find_centre(placed),
                is_hand=True,
            )
        if is_put_in_from_inside(placed):
            across, along = hole.outline
            yield _Inside(name=hole.name, size=(across, along))


def _limit(
    inside: _Inside,
    ways_in: list[tuple[Opening, ...]],
    tasks: tuple[AssemblyTask, ...],
    reach: Length,
    unit: Unit,
) -> InsideLimit:
    ways = []
    for openings in ways_in:
        able = [each for each in openings if _passes(inside, each, reach)]
        widest = max(able, key=lambda opening: min(opening.sides), default=None)
        ways.append(_say(widest, unit) if widest else "")
    last = max((number for number, way in enumerate(ways, start=1) if way), default=0)
    if last == len(tasks):
        text = f"{inside.name}: can be done to the end, through {ways[-1]}."
    else:
        after = tasks[last].what
        text = f"{inside.name}: last chance before step {last + 1} ({after})"
    return InsideLimit(item=inside.name, ways=tuple(ways), last_step=last, text=text)


def _passes(inside: _Inside, opening: Opening, reach: Length) -> bool:
    """Return whether a thing passes an opening; a round one is asked by the diagonal.

    A hand passes what is as wide as a hand, and reaches no further than an arm.
    """
    if inside.needs_end and not opening.is_end:
        return False
    if inside.place is not None and (
        find_distance(opening, inside.place) > reach or not is_open_to(opening, inside.place)
    ):
        return False
    if inside.is_hand:
        return min(opening.sides) >= inside.size[0]
    if opening.is_round:
        return inside.size[0] ** 2 + inside.size[1] ** 2 <= opening.sides[0] ** 2
    return fits_flat(inside.size, opening.sides)


def _say(opening: Opening, unit: Unit) -> str:
    shown = " × ".join(
        format_length(side, unit) for side in opening.sides[: 1 if opening.is_round else 2]
    )
    return f"{opening.name} ({shown} {unit.value})"
