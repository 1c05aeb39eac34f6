"""Sessions and kits: where the work can be left, and when each cabinet is complete."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from nesting.cut_sequence import Sequence as CutSequence
from nesting.job import Job
from nesting.kits import find_kits, find_most_open
from nesting.lengths import format_run
from nesting.sessions import Moment, Session, plan_sessions
from plans.sections.numbers import to_whole
from plans.sections.whole_first import find_whole_first, say_whole_first
from plans.sections.worked import Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionRow:
    """The work from one stopping point to the next.

    Attributes:
        number: From 1.
        first: Its first cut, "1.1".
        last: The cut after which one can stop, "2.4".
        minutes: Estimated minutes.
        sawn: How much is sawn, such as "15.8 m".
        settings: Settings of the guide.
        lifts: Cuts across a piece that one person should not lift alone.
        text: What lies about afterwards, in a sentence.
    """

    number: str
    first: str
    last: str
    minutes: str
    sawn: str
    settings: str
    lifts: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class KitRow:
    """The parts of one cabinet.

    Attributes:
        cabinet: Its letter.
        parts: How many.
        sheets: Numbers of the sheets that they come from.
        closes: The cut after which all are there, "3.12"; "never" where some have no place.
        stack: Their codes from the top of the stack to its bottom: the last one cut lies on top.
    """

    cabinet: str
    parts: str
    sheets: str
    closes: str
    stack: tuple[str, ...]


SMALL = "All that lies about can be put away flat."
LARGE = "There is no natural stop before this: large pieces lie about. Lay them flat, supported."
LONG = "There is no natural stop within it: large pieces lie about."
LAST = "Then all cuts are made."


def make_session_rows(worked: Worked) -> tuple[SessionRow, ...]:
    """Return the sessions, none where the job does not ask for them."""
    evening = worked.job.terms.evening
    if evening is None:
        return ()
    sessions = plan_sessions(
        worked.job,
        worked.layout,
        _sequences(worked),
        store=evening.store,
        most_minutes=evening.minutes,
    )
    return tuple(
        SessionRow(
            number=str(number),
            first=_name(session.first),
            last=_name(session.last),
            minutes=str(to_whole(session.minutes)),
            sawn=format_run(session.sawn, worked.job.unit),
            settings=str(session.settings),
            lifts=str(session.lifts),
            text=_say_session(
                session, worked.job, is_last=number == len(sessions), most=evening.minutes
            ),
        )
        for number, session in enumerate(sessions, start=1)
    )


def _say_session(session: Session, job: Job, *, is_last: bool, most: Decimal) -> str:
    """Return what a session is for, and what lies about after it."""
    letter = job.terms.first_whole
    only = f"Only the cuts for cabinet {letter}. " if session.is_for_first else ""
    if is_last:
        long = f"{LONG} " if session.minutes > most else ""
        return f"{only}{long}{LAST}"
    return only + (SMALL if session.is_storable else LARGE)


def say_stop(row: SessionRow, sheet: int, count: int) -> str:
    """Return what is said where a session ends.

    Args:
        row: The session.
        sheet: Number of the sheet that its last cut is on.
        count: How many sheets are cut alike there, so that the sheet must be named.
    """
    where = f" with this cut of sheet {sheet}" if count > 1 else ""
    return f"Session {row.number} is over{where}. {row.text} Tired? Stop for today."


def say_session(row: SessionRow) -> str:
    """Return a session as one line."""
    return (
        f"Session {row.number}: cuts {row.first} to {row.last}, about {row.minutes} minutes, "
        f"{row.sawn}, {_count(row.settings, 'setting')}, {_count(row.lifts, 'heavy lift')}. "
        f"{row.text}"
    )


def _count(number: str, what: str) -> str:
    return f"{number} {what}" if number == "1" else f"{number} {what}s"


def make_kit_rows(worked: Worked) -> tuple[KitRow, ...]:
    """Return the kits in the order in which they are complete; none for fewer than two cabinets."""
    kits = find_kits(worked.job, worked.layout, _sequences(worked))
    if len(kits) < 2:  # noqa: PLR2004 - one cabinet is the whole job
        return ()
    return tuple(
        KitRow(
            cabinet=kit.cabinet,
            parts=str(kit.parts),
            sheets=", ".join(map(str, kit.sheets)),
            closes=f"{kit.closes[0]}.{kit.closes[1]}" if kit.closes else "never",
            stack=tuple(reversed(_codes(worked, kit.cabinet))),
        )
        for kit in kits
    )


def say_first_cabinet(worked: Worked) -> tuple[str, ...]:
    """Return when the first of several cabinets is whole and how many parts wait at most."""
    sequences = _sequences(worked)
    kits = find_kits(worked.job, worked.layout, sequences)
    if len(kits) < 2 or kits[0].closes is None:  # noqa: PLR2004 - one cabinet is the whole job
        return ()
    sheet, cut = kits[0].closes
    most = find_most_open(worked.job, worked.layout, sequences)
    first = find_whole_first(worked)
    return (
        say_whole_first(first)
        if first is not None
        else f"The first whole cabinet is {kits[0].cabinet}, after cut {sheet}.{cut}: put it "
        "together dry there",
        f"At most {most} parts lie about whose cabinet is not complete",
    )


def _sequences(worked: Worked) -> Sequence[CutSequence]:
    return [sheet.sequence for sheet in worked.sheets]


def _codes(worked: Worked, cabinet: str) -> tuple[str, ...]:
    """Return the codes of the parts of a cabinet in the order of cutting."""
    parts = worked.job.parts
    mine = {
        code
        for part, codes in zip(parts, worked.part_codes, strict=True)
        if part.cabinet == cabinet
        for code in codes
    }
    return tuple(
        code
        for sheet in worked.sheets
        for freed in sheet.freed
        if (code := sheet.codes[freed.place.path]) in mine
    )


def _name(moment: Moment) -> str:
    return f"{moment.sheet}.{moment.cut}"
