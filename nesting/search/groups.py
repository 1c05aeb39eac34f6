"""The search for one material and thickness, and what is said about it."""

from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from decimal import Decimal

from nesting.job import Job
from nesting.layout import PartLeaf, Rect, SheetLayout, Unplaced, walk
from nesting.lengths import Length
from nesting.search.any_size import search_problem
from nesting.search.bounds import Bound, bound_by_functions
from nesting.search.contest import Found
from nesting.search.deadline import NO_DEADLINE, PASSED, Deadline
from nesting.search.grid import make_problem
from nesting.search.misfits import explain_shortage
from nesting.search.problem import Plan, Problem, count_kinds, measure_plan
from nesting.search.realise import realise
from nesting.search.result import GroupResult, Progress

Report = Callable[[Progress], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """What one group may use of the whole search.

    Attributes:
        steps: Work of each search.
        seed: Random seed.
        deadline: Time of `time.monotonic` at which to stop, None for never.
        is_stopped: True where the user has stopped the search already: pack and go on.
        start: Fraction of the whole search that was done before.
        size: Fraction of the whole search that this is.
        cost: Price of the groups before.
        bound: Bound of the groups before.
    """

    steps: int
    seed: int
    deadline: float | None
    is_stopped: bool
    start: float
    size: float
    cost: Decimal
    bound: Decimal


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupLayout:
    """The layout of one group.

    Attributes:
        sheets: Its sheets.
        unplaced: Copies that would fit a sheet, but there are too few of them.
        result: What is known about it; None where nothing fits any sheet.
        rounds: How many plans or changes of plans were tried.
        is_interrupted: True where the user stopped the search.
    """

    sheets: tuple[SheetLayout, ...]
    unplaced: tuple[Unplaced, ...]
    result: GroupResult | None
    rounds: int
    is_interrupted: bool


def lay_out_group(
    job: Job, material: str, thickness: Length, share: Share, progress: Report | None
) -> GroupLayout:
    """Search for the best layout of one material and thickness."""
    problem = make_problem(job, material, thickness)
    if problem is None:
        return GroupLayout(
            sheets=(), unplaced=(), result=None, rounds=0, is_interrupted=share.is_stopped
        )
    found = _search(problem, share, progress)
    sheets = realise(job, problem, found.plan)
    bound = found.bound
    if measure_plan(problem, found.plan)[0] > 0:
        bound = bound_by_functions(keep_placed(problem, found.plan))
    prices = [problem.sheets[sheet.kind].price for sheet in found.plan]
    result = GroupResult(
        material=material,
        thickness=thickness,
        sheets=len(sheets),
        sheet_bound=min(bound.sheets, len(sheets)),
        cost=sum(prices) * problem.price_step,
        cost_bound=min(bound.price, sum(prices)) * problem.price_step,
        is_proven=sum(prices) <= bound.price,
    )
    return GroupLayout(
        sheets=sheets,
        unplaced=find_unplaced(job, problem, sheets),
        result=result,
        rounds=found.rounds,
        is_interrupted=found.is_interrupted or share.is_stopped,
    )


def _search(problem: Problem, share: Share, progress: Report | None) -> Found:
    """Run the contest for one problem within its share."""

    def report(done: float, plan: Plan, bound: Bound) -> None:
        if progress is not None:
            price = sum(problem.sheets[sheet.kind].price for sheet in plan)
            progress(
                Progress(
                    done=share.start + share.size * done,
                    cost=share.cost + price * problem.price_step,
                    bound=share.bound + bound.price * problem.price_step,
                )
            )

    deadline = NO_DEADLINE if share.deadline is None else Deadline(at=share.deadline)
    return search_problem(
        problem,
        steps=share.steps,
        seed=share.seed,
        report=report,
        deadline=PASSED if share.is_stopped else deadline,
    )


def keep_placed(problem: Problem, plan: Plan) -> Problem:
    """Return the problem of only those copies that a plan places."""
    counts: Counter[int] = Counter()
    for sheet in plan:
        counts.update(count_kinds(sheet.codes))
    kinds = (
        replace(kind, copies=counts[number])
        for number, kind in enumerate(problem.kinds)
        if counts[number]
    )
    return replace(problem, kinds=tuple(kinds))


def find_unplaced(
    job: Job, problem: Problem, sheets: Iterable[SheetLayout]
) -> tuple[Unplaced, ...]:
    """Return the copies that fit a sheet but are on none of them, in the order of the job."""
    anywhere = Rect(x=0, y=0, length=0, width=0)
    placed = Counter(
        place.node.part
        for sheet in sheets
        for place in walk(sheet.root, anywhere)
        if isinstance(place.node, PartLeaf)
    )
    wanted = sorted(member for kind in problem.kinds for member in kind.members)
    return tuple(
        Unplaced(
            part=part,
            count=count - placed[part],
            reason=explain_shortage(job, job.parts[part]),
        )
        for part, count in wanted
        if count > placed[part]
    )
