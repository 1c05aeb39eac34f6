"""Where the work can be left: stopping points and sessions.

Half-cut sheets bow, and a tired person makes mistakes. A natural stop is a cut after which all
that lies about is small enough to be put away flat.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from nesting.cut_sequence import Path, Step, is_over_limit, list_work, minutes
from nesting.cut_sequence import Sequence as CutSequence
from nesting.job import Job
from nesting.layout import By, Cut, Layout, Place, Rect, RestLeaf, SheetLayout, walk, whole_of
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
        sawn: Length of all cuts made at home.
        settings: Settings of the guide at home.
        lifts: Cuts at home across a piece that one person should not lift alone.
        is_storable: Whether all that lies about afterwards can be put away; False where the work
            has no natural stop within the time, or at all.
        is_for_first: Whether only cuts for the cabinet that comes first are made.
    """

    first: Moment
    last: Moment
    minutes: Decimal
    sawn: Length
    settings: int
    lifts: int
    is_storable: bool
    is_for_first: bool = False


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
    places = [_places(job, sheet) for sheet in layout.sheets]
    is_put_away: dict[int, bool] = {}
    stops = []
    for number, step in list_work(sequences):
        lying = _lying_about(places[number - 1], sequences[number - 1], step.number)
        is_put_away[number] = all(_fits(rect, store) for rect in lying)
        if all(is_put_away.values()):
            stops.append(Moment(sheet=number, cut=step.number))
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

    Where no natural stop lies within the time, the session ends at the next one beyond it. Where
    one whole cabinet is made first, a session ends with it.

    Args:
        job: The job.
        layout: Its layout.
        sequences: The order of the cuts of every sheet.
        store: Longer and shorter side of what can be put away flat.
        most_minutes: How long a session should be at most.
    """
    stops = set(find_stops(job, layout, sequences, store))
    cuts = [
        (Moment(sheet=number, cut=step.number), sequences[number - 1], step)
        for number, step in list_work(sequences)
    ]
    first = sum(sequence.pause for sequence in sequences)
    sessions: list[Session] = []
    for part, is_for_first in ((cuts[:first], True), (cuts[first:], False)):
        begin = 0
        while begin < len(part):
            end = _end_of_session(job, part[begin:], stops, most_minutes) + begin
            session = _session(job, part[begin:end], stops)
            sessions.append(replace(session, is_for_first=is_for_first))
            begin = end
    return tuple(sessions)


_Cut = tuple[Moment, CutSequence, Step]


def _places(job: Job, sheet_layout: SheetLayout) -> dict[Path, Place]:
    sheet = job.sheets[sheet_layout.sheet]
    whole = whole_of(sheet)
    return {place.path: place for place in walk(sheet_layout.root, whole)}


def _lying_about(places: Mapping[Path, Place], sequence: CutSequence, cut: int) -> Iterator[Rect]:
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
        sawn=sum(step.cut_length for _, _, step in home),
        settings=len({(moment.sheet, step.setting) for moment, _, step in home}),
        lifts=sum(
            is_over_limit(job, job.sheets[sequence.sheet], step.piece) for _, sequence, step in home
        ),
        is_storable=cuts[-1][0] in stops,
    )
