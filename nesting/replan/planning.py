"""Planning again from the garage as it is.

The pieces in hand are sheets that cost nothing. Several ways are compared: keeping on as planned
and putting what was lost into the leftovers; the same with what else stands in the garage; laying
all that is left afresh on both; buying; and buying again what is missing. The one that places most,
then costs least, then changes least is taken. What is bought gets its first cuts at the yard, as in
any plan.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from nesting.checks import check_layout
from nesting.defects import keep_what_is_sound
from nesting.errors import LayoutError
from nesting.first_cuts import solve_with_yard
from nesting.garage.hand import InHand, list_missing
from nesting.garage.keep_on import Kept, keep_on, put_in
from nesting.garage.marks import Marks
from nesting.garage.planned import Planned
from nesting.garage.remaining import Remaining, find_remaining
from nesting.job import Job
from nesting.kits import order_for_kits
from nesting.layout import Layout
from nesting.replan.guide import put_standing_first
from nesting.replan.needs import Need, find_needs
from nesting.search.effort import Effort, begin
from nesting.search.result import GroupResult, Progress
from nesting.solve import DEFAULT_EFFORT, measure_gaps


@dataclass(frozen=True, slots=True, kw_only=True)
class Replanned:
    """A plan for what is left, and what it takes.

    Attributes:
        remaining: What is left of the job, with its sheets and pieces.
        layout: The layout of `remaining.job`.
        cost: Price of the sheets to buy.
        bound: What any plan for it costs at least.
        groups: What is known of each material, empty where nothing has to be known.
        needs: What is missing where something must be bought; empty where nothing is.
        keeps_on: True where the pieces are cut up as they were planned.
        interrupted: True where the user stopped the search.
    """

    remaining: Remaining
    layout: Layout
    cost: Decimal
    bound: Decimal
    groups: tuple[GroupResult, ...]
    needs: tuple[Need, ...]
    keeps_on: bool
    interrupted: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class _Search:
    """How hard to search, one effort being shared out among the searches, and who is told."""

    how: Effort
    progress: Callable[[Progress], None] | None

    def find(self, job: Job, *, share: int) -> "_Found":
        """Search with the effort divided by a share."""
        if not job.parts:
            return _Found(layout=Layout(sheets=(), unplaced=()), job=job)
        result = solve_with_yard(
            job,
            effort=self.how.effort // share,
            seed=self.how.seed,
            seconds=self.how.left_s(),
            progress=self.progress,
        )
        return _Found(
            layout=result.layout,
            job=job,
            bound=result.bound,
            groups=result.groups,
            interrupted=result.interrupted,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    """A layout of a job and how good it is."""

    layout: Layout
    job: Job
    bound: Decimal = Decimal(0)
    groups: tuple[GroupResult, ...] = ()
    interrupted: bool = False
    keeps_on: bool = False

    @property
    def missing(self) -> int:
        """Area of the parts that are not placed."""
        return measure_gaps(self.job, self.layout.unplaced)

    @property
    def cost(self) -> Decimal:
        """Price of the sheets."""
        return sum((self.job.sheets[sheet.sheet].price for sheet in self.layout.sheets), Decimal(0))

    @property
    def bought(self) -> int:
        """How many sheets have to be bought."""
        return sum(not self.job.sheets[sheet.sheet].owned for sheet in self.layout.sheets)

    @property
    def worth(self) -> tuple[int, Decimal, int]:
        """What is compared, the least being the best."""
        return self.missing, self.cost, self.bought


def replan(
    job: Job,
    planned: Planned,
    marks: Marks,
    *,
    effort: int = DEFAULT_EFFORT,
    seed: int = 1,
    seconds: float | None = None,
    progress: Callable[[Progress], None] | None = None,
) -> Replanned:
    """Return a plan for what is left of a job.

    Args:
        job: The job as the job file tells it now.
        planned: The plan that was being cut.
        marks: What has been marked of it.
        effort: As for `nesting.solve.solve`; all searches together take at most one and a half.
        seed: As there.
        seconds: Cap on the time of all searches together; None for none.
        progress: Told how far each search is.

    Raises:
        LayoutError: The layout breaks a rule: a bug of ours.
    """
    search = _Search(how=begin(effort, seed, seconds), progress=progress)
    remaining = find_remaining(job, planned, marks)
    own, chosen = _choose(remaining, planned, list_missing(planned, marks), search)
    layout = _in_order(remaining, chosen, planned, marks)
    faults = check_layout(remaining.job, layout)
    if faults:
        raise LayoutError(
            "The plan for what is left breaks a rule and was not written. This is a fault of "
            "setout; please report it with the job file.\n" + "\n".join(faults)
        )
    return Replanned(
        remaining=remaining,
        layout=layout,
        cost=chosen.cost,
        bound=min(chosen.bound, chosen.cost),
        groups=chosen.groups,
        needs=find_needs(remaining.job, own.layout) if own.missing else (),
        keeps_on=chosen.keeps_on,
        interrupted=chosen.interrupted,
    )


def _choose(
    remaining: Remaining, planned: Planned, missing: Sequence[InHand], search: _Search
) -> tuple[_Found, _Found]:
    """Return the best layout on what is in hand, and the best one with buying allowed."""
    job = remaining.job

    def fill(kept: Kept, lost: Job) -> _Found:
        found = search.find(lost, share=4)
        return _Found(
            layout=replace(
                keep_what_is_sound(job, put_in(kept, found.layout)), notes=found.layout.notes
            ),
            job=job,
            interrupted=found.interrupted,
            keeps_on=True,
        )

    kept = keep_on(remaining, planned)
    rests = len(kept.rests)
    own = fill(kept, _only(kept.lost, lambda index: index < rests))
    if own.missing and any(sheet.owned for sheet in kept.lost.sheets[rests:]):
        own = min(own, fill(kept, _without_buying(kept.lost)), key=lambda found: found.worth)
    if own.missing:
        afresh = search.find(_without_buying(job), share=2)
        own = min(own, replace(afresh, job=job), key=lambda found: found.worth)
    if not own.missing:
        return own, own
    ways = [fill(kept, kept.lost)]
    if missing:
        again = keep_on(remaining, planned, missing)
        ways.append(fill(again, again.lost))
    afresh = search.find(job, share=2)
    best = min(*ways, afresh, key=lambda found: found.worth)
    return own, replace(best, bound=afresh.bound, groups=afresh.groups)


def _in_order(remaining: Remaining, chosen: _Found, planned: Planned, marks: Marks) -> Layout:
    """Return the layout with its sheets in the order in which they are cut."""
    layout = chosen.layout
    if not chosen.keeps_on:
        layout = order_for_kits(remaining.job, layout)
    return put_standing_first(remaining, layout, planned, marks)


def _only(job: Job, may_be_used: Callable[[int], bool]) -> Job:
    """Return the job with some sheets out of reach; indices stay as they are."""
    return replace(
        job,
        sheets=tuple(
            sheet if may_be_used(index) else replace(sheet, count=0, owned=True, price=Decimal(0))
            for index, sheet in enumerate(job.sheets)
        ),
    )


def _without_buying(job: Job) -> Job:
    """Return the job with every sheet that is not owned out of reach."""
    return _only(job, lambda index: job.sheets[index].owned)
