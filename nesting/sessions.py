"""Where the work can be left: stopping points, sessions, and the first whole cabinet.

Half-cut sheets bow, and a tired person makes mistakes. A natural stop is a cut after which all
that lies about is small enough to be put away flat.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from nesting.cut_sequence import Path, Step, is_over_limit, minutes
from nesting.cut_sequence import Sequence as CutSequence
from nesting.job import Job
from nesting.layout import By, Cut, Layout, PartLeaf, Place, Rect, RestLeaf, walk
from nesting.lengths import Length


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Moment:
    """Just after a cut: the sheet's number from 1, and the cut's number on it."""

    sheet: int
    cut: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Session:
    """The cuts from one stop to a later one, on one or more sheets.

    Attributes:
        first: The first cut of the session.
        last: The last one.
        minutes: Estimated minutes at home.
        metres: Metres sawn at home.
        settings: Settings of the guide at home.
        lifts: Cuts at home across a piece that one person should not lift alone.
        is_storable: Whether all that lies about afterwards can be put away; False where the work
            has no natural stop within the time, or at all.
    """

    first: Moment
    last: Moment
    minutes: Decimal
    metres: Decimal
    settings: int
    lifts: int
    is_storable: bool


def find_stops(
    job: Job, layout: Layout, sequences: Sequence[CutSequence], store: tuple[Length, Length]
) -> tuple[Moment, ...]:
    """Return every natural stop, in the order of cutting.

    Sheets that are not begun do not count, nor does waste.

    Args:
        job: The job.
        layout: Its layout.
        sequences: The order of the cuts of every sheet.
        store: Longer and shorter side of what can be put away flat.
    """
    stops = []
    for number, (places, sequence) in enumerate(_sheets(job, layout, sequences), start=1):
        stops += [
            Moment(sheet=number, cut=step.number)
            for step in sequence.steps
            if all(_fits(rect, store) for rect in _lying_about(places, sequence, step.number))
        ]
        finished = _lying_about(places, sequence, len(sequence.steps))
        if not all(_fits(rect, store) for rect in finished):
            break  # what this sheet leaves lies about for good
    return tuple(stops)


def plan_sessions(
    job: Job,
    layout: Layout,
    sequences: Sequence[CutSequence],
    *,
    store: tuple[Length, Length],
    most_minutes: Decimal,
) -> tuple[Session, ...]:
    """Return the work in sessions, each as long as the time allows and ending at a natural stop.

    Where no natural stop lies within the time, the session ends at the next one beyond it.

    Args:
        job: The job.
        layout: Its layout.
        sequences: The order of the cuts of every sheet.
        store: Longer and shorter side of what can be put away flat.
        most_minutes: How long a session should be at most.
    """
    stops = set(find_stops(job, layout, sequences, store))
    cuts = [
        (Moment(sheet=number, cut=step.number), sequence, step)
        for number, sequence in enumerate(sequences, start=1)
        for step in sequence.steps
    ]
    sessions: list[Session] = []
    begin = 0
    while begin < len(cuts):
        end = _end_of_session(job, cuts[begin:], stops, most_minutes) + begin
        sessions.append(_session(job, cuts[begin:end], stops))
        begin = end
    return tuple(sessions)


def find_whole_cabinet(
    job: Job, layout: Layout, sequences: Sequence[CutSequence]
) -> tuple[str, Moment] | None:
    """Return the first cabinet of which all parts are cut, and the cut after which they are.

    None where the job has no cabinet, or none that is wholly placed. Only sheets up to that cut
    are needed for it.
    """
    wanted: dict[str, int] = {}
    for part in job.parts:
        if part.cabinet:
            wanted[part.cabinet] = wanted.get(part.cabinet, 0) + part.count
    for number, (places, sequence) in enumerate(_sheets(job, layout, sequences), start=1):
        for step in sequence.steps:
            for side in (0, 1):
                place = places.get((*step.path, side))
                if place is None or not isinstance(place.node, PartLeaf):
                    continue
                cabinet = job.parts[place.node.part].cabinet
                if not cabinet:
                    continue
                wanted[cabinet] -= 1
                if wanted[cabinet] == 0:
                    return cabinet, Moment(sheet=number, cut=step.number)
    return None


_Cut = tuple[Moment, CutSequence, Step]


def _sheets(
    job: Job, layout: Layout, sequences: Sequence[CutSequence]
) -> Iterator[tuple[dict[Path, Place], CutSequence]]:
    for sheet_layout, sequence in zip(layout.sheets, sequences, strict=True):
        sheet = job.sheets[sheet_layout.sheet]
        whole = Rect(x=0, y=0, length=sheet.length, width=sheet.width)
        yield {place.path: place for place in walk(sheet_layout.root, whole)}, sequence


def _lying_about(places: dict[Path, Place], sequence: CutSequence, cut: int) -> Iterator[Rect]:
    """Yield every piece of a sheet that is there after a cut and is no waste."""
    made = {step.path for step in sequence.steps[:cut]}
    for path, place in places.items():
        is_free = not path or path[:-1] in made
        is_whole = not isinstance(place.node, Cut) or path not in made
        is_waste = isinstance(place.node, RestLeaf) and not place.node.is_offcut
        if is_free and is_whole and not is_waste:
            yield place.rect


def _fits(rect: Rect, store: tuple[Length, Length]) -> bool:
    sides = sorted((rect.length, rect.width))
    return sides[0] <= min(store) and sides[1] <= max(store)


def _end_of_session(
    job: Job, cuts: Sequence[_Cut], stops: set[Moment], most_minutes: Decimal
) -> int:
    """Return how many cuts the session has: up to the last stop in time, else the next one."""
    best = 0
    for count in range(1, len(cuts) + 1):
        if cuts[count - 1][0] not in stops:
            continue
        if best and _minutes(job, cuts[:count]) > most_minutes:
            return best
        best = count
        if _minutes(job, cuts[:count]) > most_minutes:
            return best
    return best or len(cuts)


def _minutes(job: Job, cuts: Sequence[_Cut]) -> Decimal:
    total = Decimal(0)
    for number in sorted({moment.sheet for moment, _, _ in cuts}):
        steps = tuple(step for moment, _, step in cuts if moment.sheet == number)
        sequence = next(sequence for moment, sequence, _ in cuts if moment.sheet == number)
        total += minutes(job, replace(sequence, steps=steps))
    return total


def _session(job: Job, cuts: Sequence[_Cut], stops: set[Moment]) -> Session:
    home = [(moment, sequence, step) for moment, sequence, step in cuts if step.by is By.HOME]
    return Session(
        first=cuts[0][0],
        last=cuts[-1][0],
        minutes=_minutes(job, cuts),
        metres=Decimal(sum(step.cut_length for _, _, step in home)) / 10**9,
        settings=len({(moment.sheet, step.setting) for moment, _, step in home}),
        lifts=sum(
            is_over_limit(job, job.sheets[sequence.sheet], step.piece) for _, sequence, step in home
        ),
        is_storable=cuts[-1][0] in stops,
    )
