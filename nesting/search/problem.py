"""What the search works on: rectangles and sheets on a whole-number grid, nothing else.

Every length here is in grid steps and already lengthened by one kerf, parts and sheets alike, so
cutting needs no kerf. The long and the short side of a part kind are told apart from the side that
the user calls its length: only `realise` needs that again.

A sheet's tree is written in postfix, so that it is hashable and easily passed on: a part is
`2 * kind + side` (side 0: its long side along x, side 1: along y), and SIDE_BY_SIDE or STACKED
joins the two pieces before it.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from typing import TypeAlias

Codes: TypeAlias = tuple[int, ...]

SIDE_BY_SIDE = -1
STACKED = -2

LONG_ALONG_X = 1
LONG_ALONG_Y = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class PartKind:
    """Parts that the search need not tell apart: equal sides, equal ways to lie on every sheet.

    Attributes:
        long: Longer side, grid steps.
        short: Shorter side, grid steps.
        ways: For every sheet kind the ways it may lie there: LONG_ALONG_X, LONG_ALONG_Y, their
            sum, or 0 where it does not fit.
        copies: How many are needed.
        members: The parts of the job it stands for: index into `Job.parts` and count.
    """

    long: int
    short: int
    ways: tuple[int, ...]
    copies: int
    members: tuple[tuple[int, int], ...]

    @property
    def area(self) -> int:
        """Area in square grid steps."""
        return self.long * self.short


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetKind:
    """A kind of sheet that at least one part fits.

    Attributes:
        sheet: Index into `Job.sheets`.
        length: Usable extent along x, grid steps.
        width: Usable extent along y, grid steps.
        price: What one costs, in steps of `Problem.price_step`.
        weight: What one counts in the search: the price first, then bought area, then all area.
        count: How many there are at most; never more than there are parts.
        grain: 0 none, 1 along x, 2 along y.
    """

    sheet: int
    length: int
    width: int
    price: int
    weight: int
    count: int
    grain: int

    @property
    def area(self) -> int:
        """Usable area in square grid steps."""
        return self.length * self.width


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """The parts and sheets of one material and thickness.

    Attributes:
        grid: Nanometres in a grid step.
        price_step: The money that all prices are whole multiples of.
        kinds: Part kinds, at least one.
        sheets: Sheet kinds, at least one.
    """

    grid: int
    price_step: Decimal
    kinds: tuple[PartKind, ...]
    sheets: tuple[SheetKind, ...]

    @property
    def copies(self) -> int:
        """How many parts there are."""
        return sum(kind.copies for kind in self.kinds)

    @property
    def area(self) -> int:
        """Area of all parts."""
        return sum(kind.area * kind.copies for kind in self.kinds)


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPlan:
    """One sheet, cut up.

    Attributes:
        kind: Index into `Problem.sheets`.
        codes: Its tree in postfix.
    """

    kind: int
    codes: Codes


Plan: TypeAlias = tuple[SheetPlan, ...]


def count_kinds(codes: Iterable[int]) -> dict[int, int]:
    """Return how many copies of each part kind a tree holds."""
    counts: dict[int, int] = {}
    for code in codes:
        if code >= 0:
            counts[code // 2] = counts.get(code // 2, 0) + 1
    return counts


def measure_plan(problem: Problem, plan: Plan) -> tuple[int, int]:
    """Return the area that a plan leaves unplaced and its weight; the smaller pair is better."""
    placed = sum(
        problem.kinds[kind].area * count
        for sheet in plan
        for kind, count in count_kinds(sheet.codes).items()
    )
    return problem.area - placed, sum(problem.sheets[sheet.kind].weight for sheet in plan)
