"""The cheapest way found to take the unsound sheets of one material apart."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import TypeAlias

from nesting.defects.matching import lay_clear, take_together
from nesting.defects.pieces import Choice, make_piece_job, put_together
from nesting.defects.ways_round import WayRound, leave_whole, list_ways_round
from nesting.job import Job
from nesting.layout import Cut, Rect, SheetLayout, list_parts, walk
from nesting.search.effort import Effort
from nesting.sheets import Sheet, Use
from nesting.solve import solve

Aim: TypeAlias = tuple[int, Decimal]

MOST_LOOKS = 60
MOST_WORK = 40_000
"""Looks times parts times unsound sheets: where these are many, each look takes longer."""
FIRST_LOOKS = 3
"""None of the sheets, all of them whole, all taken apart: what is looked at however late it is."""
POLISHED = 3
"""How many of the best ways are searched with a share of the effort; looks take none."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Pieced:
    """What comes of one way to take the sheets apart.

    Attributes:
        sheets: The sheets, cut up.
        missing: Area of the parts that found no place.
        cost: Price of the sheets.
        iterations: As for a search.
        is_interrupted: True where the user stopped the search.
    """

    sheets: tuple[SheetLayout, ...]
    missing: int
    cost: Decimal
    iterations: int
    is_interrupted: bool

    @property
    def worth(self) -> tuple[int, Decimal, int, int]:
        """What is compared, the least being the best: at last the number of cuts."""
        anywhere = Rect(x=0, y=0, length=0, width=0)
        cuts = sum(
            isinstance(place.node, Cut)
            for sheet in self.sheets
            for place in walk(sheet.root, anywhere)
        )
        return self.missing, self.cost, len(self.sheets), cuts


class _Looks:
    """Looks at ways to take the sheets apart, one after the other, and remembers them."""

    def __init__(self, job: Job, unsound: Sequence[int], aim: Aim, effort: Effort) -> None:
        self.ways = [_list_ways(job, job.sheets[kind]) for kind in unsound]
        self.tried: dict[tuple[int, ...], Pieced] = {}
        self._job = job
        self._unsound = unsound
        self._aim = aim
        self._effort = effort
        each = sum(part.count for part in job.parts) * len(unsound)
        self._most = min(MOST_LOOKS, max(POLISHED, MOST_WORK // each))

    @property
    def is_done(self) -> bool:
        """Whether nothing can be better, or enough was looked at."""
        best = min(((each.missing, each.cost) for each in self.tried.values()), default=None)
        return (
            (best is not None and best <= self._aim)
            or len(self.tried) >= self._most
            or (len(self.tried) >= FIRST_LOOKS and self._effort.left_s() == 0)
            or any(each.is_interrupted for each in self.tried.values())
        )

    @property
    def ranked(self) -> list[tuple[int, ...]]:
        """The ways looked at, the best first."""
        return sorted(self.tried, key=lambda names: (self.tried[names].worth, names))

    def look(self, names: tuple[int, ...]) -> None:
        """Look at one way: the number of the way of each sheet."""
        if names not in self.tried and not self.is_done:
            self.tried[names] = self.search(names, share=0)

    def search(self, names: tuple[int, ...], *, share: int) -> Pieced:
        """Return what comes of a way, with the effort divided by a share, 0 for none."""
        choice: Choice = {
            kind: ways[name]
            for kind, ways, name in zip(self._unsound, self.ways, names, strict=True)
        }
        asked = make_piece_job(self._job, choice)
        found = solve(
            take_together(asked.job),
            effort=max(1, self._effort.effort // share) if share else 0,
            seed=self._effort.seed,
            seconds=self._effort.left_s(),
        )
        laid = lay_clear(asked.job, found.layout)
        sheets = put_together(self._job, asked, choice, laid.sheets)
        return Pieced(
            sheets=sheets,
            missing=measure_missing(self._job, sheets),
            cost=sum((self._job.sheets[sheet.sheet].price for sheet in sheets), Decimal(0)),
            iterations=found.iterations,
            is_interrupted=found.interrupted,
        )


def find_on_pieces(job: Job, unsound: Sequence[int], aim: Aim, effort: Effort) -> Pieced:
    """Return the best that was found by taking unsound sheets apart, or leaving them.

    Every way is looked at quickly: none of the sheets, all of them whole, all of them taken apart
    in their first way, their second and so on; then each sheet by itself in every way, the others
    as in the best so far. The best few are then searched with a share of the effort each.

    Args:
        job: The parts of one material and thickness, and all sheets.
        unsound: The sheets of that material that have defects.
        aim: Area missing and price of the layout for sound sheets: nothing is better.
        effort: How hard to search.
    """
    looks = _Looks(job, unsound, aim, effort)
    for number in range(max(map(len, looks.ways))):
        looks.look(tuple(min(number, len(ways) - 1) for ways in looks.ways))
    for place, ways in enumerate(looks.ways):
        best = looks.ranked[0]
        for number in range(len(ways)):
            looks.look((*best[:place], number, *best[place + 1 :]))
    found = [looks.tried[looks.ranked[0]]]
    if effort.effort and effort.left_s() != 0 and not found[0].is_interrupted:
        found += [looks.search(names, share=POLISHED) for names in looks.ranked[:POLISHED]]
    best_found = min(found, key=lambda each: each.worth)
    rounds = sum(each.iterations for each in (*looks.tried.values(), *found[1:]))
    return replace(
        best_found,
        iterations=rounds,
        is_interrupted=any(each.is_interrupted for each in found),
    )


def measure_missing(job: Job, sheets: Iterable[SheetLayout]) -> int:
    """Return the area of the blanks that are on none of some sheets."""
    areas = [part.blank_length * part.blank_width for part in job.parts]
    wanted = sum(area * part.count for area, part in zip(areas, job.parts, strict=True))
    return wanted - sum(areas[leaf.part] for sheet in sheets for leaf in list_parts(sheet.root))


def _list_ways(job: Job, sheet: Sheet) -> list[WayRound | None]:
    """Return what can be done with an unsound sheet: leave it, use it whole, take it apart."""
    kerf = job.saw.kerf
    ways: list[WayRound | None] = [None, leave_whole(sheet)]
    ways += list_ways_round(sheet, sheet.defects, kerf)
    worst = [defect for defect in sheet.defects if defect.use is Use.NOTHING]
    if worst and len(worst) < len(sheet.defects) and any(part.is_hidden for part in job.parts):
        ways += list_ways_round(sheet, worst, kerf)
    return ways
