"""What is tried: the shop without one kind of sheet, or with one alone, and who does the sawing."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.buying.sawing import Sawing, list_sawings
from nesting.job import Job
from nesting.lengths import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class Restriction:
    """What the shop, or the garage, is taken not to have.

    Attributes:
        title: What it is called, such as "without birch 18 half".
        sheets: Indices into `Job.sheets` of the kinds that may be used, increasing.
        sawing: Who makes which cuts.
        times: How often every sheet is cut alike; 1 where that is not asked.
    """

    title: str
    sheets: tuple[int, ...]
    sawing: Sawing = Sawing.AS_ASKED
    times: int = 1

    @property
    def is_usual(self) -> bool:
        """Whether it is cut as the job asks, each sheet as is best."""
        return self.sawing is Sawing.AS_ASKED and self.times == 1


def list_restrictions(job: Job) -> tuple[Restriction, ...]:
    """Return what is tried, all the stock first, each choice of sheets once."""
    every = tuple(range(len(job.sheets)))
    choices = [Restriction(title="all kinds", sheets=every)]
    choices += [
        Restriction(title=f"all kinds, {sawing.value}", sheets=every, sawing=sawing)
        for sawing in list_sawings(job)
    ]
    for bought in _groups_of_bought(job):
        choices += [
            Restriction(
                title=f"without {job.sheets[kind].name}",
                sheets=tuple(other for other in every if other != kind),
            )
            for kind in bought
        ]
        choices += [
            Restriction(
                title=f"only {job.sheets[kind].name}",
                sheets=tuple(other for other in every if other == kind or other not in bought),
            )
            for kind in bought
        ]
    choices += _without_own(job, every)
    distinct: dict[tuple[tuple[int, ...], Sawing], Restriction] = {}
    for choice in choices:
        distinct.setdefault((choice.sheets, choice.sawing), choice)
    return tuple(distinct.values())


def _groups_of_bought(job: Job) -> Iterator[tuple[int, ...]]:
    """Yield the kinds that can be bought of every board of which there are several."""
    groups: dict[tuple[str, Length], list[int]] = {}
    for index, sheet in enumerate(job.sheets):
        if not sheet.owned and sheet.count != 0:
            groups.setdefault((sheet.material, sheet.thickness), []).append(index)
    for members in groups.values():
        if len(members) > 1:
            yield tuple(members)


def _without_own(job: Job, every: tuple[int, ...]) -> Iterator[Restriction]:
    """Yield the stock without the pieces in the garage, where it can do without some of them."""
    sold = {(sheet.material, sheet.thickness) for sheet in job.sheets if not sheet.owned}
    kept = tuple(
        index
        for index in every
        if not job.sheets[index].owned
        or (job.sheets[index].material, job.sheets[index].thickness) not in sold
    )
    if len(kept) < len(every):
        yield Restriction(title="without your own pieces", sheets=kept)
