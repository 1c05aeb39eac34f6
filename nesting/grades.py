"""Grades: parts that show nowhere, from cheaper stock of the same thickness.

A part of a cabinet is hidden where the calculator finds it covered or inside, a plain one where the
job file says so. All that can be told to come from another board moves together: the carcass, the
braces, the back. Nothing that shows is ever moved.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from itertools import combinations

from nesting.buying import Solve
from nesting.cabinets.boards import Board
from nesting.cabinets.families import Design
from nesting.job import Job
from nesting.rebuilding import rebuild, with_builds
from nesting.search.result import Result

CARCASS = "carcass"
INNER = ("baffle", "back", "braces", "shelves", "dividers")
FEW = 4
"""Up to as many swaps all sets of them are tried; of more each alone, and all together."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Swap:
    """Parts that could come from another material.

    Attributes:
        of: Name of the design or of the plain part.
        what: "carcass", or a table of the design such as "braces"; empty for a plain part.
        parts: Names of the parts.
        material: The other material.
    """

    of: str
    what: str = ""
    parts: tuple[str, ...]
    material: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Cheaper:
    """Swaps that lower the price together.

    Attributes:
        swaps: The swaps.
        cost: Price of the sheets then.
        cost_before: Price of the sheets now.
    """

    swaps: tuple[Swap, ...]
    cost: Decimal
    cost_before: Decimal


def find_cheaper(job: Job, base: Result, *, first_look: Solve, solve: Solve) -> tuple[Cheaper, ...]:
    """Return sets of swaps that lower the price, the smaller ones first, each cheaper than those.

    Args:
        job: The job as it is.
        base: Its plan.
        first_look: Plans a job quickly, for a bound.
        solve: Plans a job like `base` was planned.

    Raises:
        KeyboardInterrupt: The user stopped a search.
    """
    found: list[Cheaper] = []
    missing = _count_missing(base)
    for swaps in _list_sets(tuple(list_swaps(job))):
        least = min((each.cost for each in found), default=base.cost)
        changed = swap_materials(job, swaps)
        if changed is None:
            continue
        result = first_look(changed)
        if result.bound < min(least, result.cost):
            result = min(solve(changed), result, key=lambda each: (_count_missing(each), each.cost))
        if result.interrupted:
            raise KeyboardInterrupt
        if result.cost < least and _count_missing(result) <= missing:
            found.append(Cheaper(swaps=swaps, cost=result.cost, cost_before=base.cost))
    return tuple(found)


def list_swaps(job: Job) -> Iterator[Swap]:
    """Yield what could come from another material of which sheets of its thickness are listed."""
    for part in job.parts:
        if not part.cabinet and part.is_hidden:
            for material in _others(job, Board(material=part.material, thickness=part.thickness)):
                yield Swap(of=part.name, parts=(part.name,), material=material)
    for build in job.cabinets:
        assert build.design is not None, f"{build.name}: its design is not known"
        hidden = {part.name for part in build.parts if part.is_hidden}
        before = {part.name: part.material for part in build.parts}
        for what in (CARCASS, *INNER):
            board = _board_of(build.design, what)
            for material in _others(job, board) if board else ():
                swap = Swap(of=build.name, what=what, parts=(), material=material)
                made = rebuild(job, build, _swap_board(build.design, swap))
                moved = [
                    part.name
                    for part in (made.parts if made else ())
                    if before.get(part.name, part.material) != part.material
                ]
                if moved and hidden.issuperset(moved):
                    yield replace(swap, parts=tuple(dict.fromkeys(moved)))


def swap_materials(job: Job, swaps: Iterable[Swap]) -> Job | None:
    """Return a job with some swaps made; None where a cabinet cannot be built so."""
    listed = list(swaps)
    plain = {swap.of: swap.material for swap in listed if not swap.what}
    builds = []
    for build in job.cabinets:
        design = build.design
        own = [swap for swap in listed if swap.what and swap.of == build.name]
        assert design is not None, f"{build.name}: its design is not known"
        for swap in own:
            design = _swap_board(design, swap)
        builds.append(rebuild(job, build, design) if own else build)
    changed = with_builds(job, builds)
    return changed and replace(
        changed,
        parts=tuple(
            replace(part, material=plain[part.name])
            if not part.cabinet and part.name in plain
            else part
            for part in changed.parts
        ),
    )


def _others(job: Job, board: Board) -> tuple[str, ...]:
    """Return the other materials of which there are sheets of a board's thickness."""
    return tuple(
        dict.fromkeys(
            sheet.material
            for sheet in job.sheets
            if sheet.thickness == board.thickness and sheet.material != board.material
        )
    )


def _board_of(design: Design, what: str) -> Board | None:
    """Return the board of a table of a design, the carcass's where it has none of its own."""
    if what == CARCASS:
        return design.board
    inner = getattr(design, what, None)
    return None if inner is None else inner.board or design.board


def _swap_board(design: Design, swap: Swap) -> Design:
    """Return a design with one board swapped; what shares the carcass's board keeps it."""
    if swap.what != CARCASS:
        board = _board_of(design, swap.what)
        assert board is not None, f"the design has no {swap.what}"
        inner = replace(getattr(design, swap.what), board=replace(board, material=swap.material))
        return replace(design, **{swap.what: inner})
    kept = {
        what: replace(inner, board=inner.board or design.board)
        for what in INNER
        if (inner := getattr(design, what, None)) is not None
    }
    return replace(design, board=replace(design.board, material=swap.material), **kept)


def _list_sets(swaps: Sequence[Swap]) -> Iterator[tuple[Swap, ...]]:
    """Yield the sets of swaps to one material that are tried, the smaller ones first."""
    for material in dict.fromkeys(swap.material for swap in swaps):
        alike = [swap for swap in swaps if swap.material == material]
        sizes = range(1, len(alike) + 1) if len(alike) <= FEW else sorted({1, len(alike)})
        for size in sizes:
            yield from combinations(alike, size)


def _count_missing(result: Result) -> int:
    return sum(gap.count for gap in result.layout.unplaced)
