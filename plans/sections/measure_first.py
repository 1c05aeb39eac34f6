"""The parts whose size comes from the work: what to measure, and what to take off it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.panels import Bar
from nesting.cabinets.space import Axis
from nesting.cabinets.sums import Span, add, list_terms
from nesting.job import Job
from nesting.lengths import Unit
from nesting.parts import Status
from plans.sections.numbers import show
from plans.sections.part_list import PartRow

MOST_ALIKE = 12
"""Codes that a kind must not be taken for; a batch has one for every cabinet."""

PLACES = {
    Axis.WIDTH: "width",
    Axis.DEPTH: "depth",
    Axis.HEIGHT: "height",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One size of a part that waits.

    Attributes:
        what: What is measured, such as "height of its opening"; "" for a size that is fixed.
        change: What is taken off or added to the smallest reading, such as "- 3.6"; "" for none.
        planned: The size that the plan reckons with.
    """

    what: str
    change: str
    planned: str


@dataclass(frozen=True, slots=True, kw_only=True)
class WaitingPiece:
    """One piece: its code or cabinet, and the sheet and cut that its blank comes from."""

    code: str
    origin: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Waiting:
    """A kind of part that waits for readings.

    Attributes:
        name: Its name.
        blank: The blank that is reserved, as text.
        readings: Its sizes, the length first.
        why: What is taken off or added, and why; then what it must not be taken for.
        pieces: Every piece of it.
    """

    name: str
    blank: str
    readings: tuple[Reading, ...]
    why: tuple[str, ...]
    pieces: tuple[WaitingPiece, ...]


def make_waiting(job: Job, rows: Sequence[PartRow]) -> tuple[Waiting, ...]:
    """Return what waits: the parts of every design first, then its battens, then plain parts.

    Args:
        job: The job.
        rows: Its part list.
    """
    waiting = [row for row in rows if row.status == Status.MEASURE_FIRST.value]
    found = []
    for build in job.cabinets:
        found += list(_panels(job, build, waiting))
        found += list(_battens(job, build))
    found += list(_plain([row for row in waiting if not row.cabinet]))
    return tuple(found)


def _panels(job: Job, build: CabinetBuild, rows: list[PartRow]) -> Iterator[Waiting]:
    for kind in dict.fromkeys(panel.kind for panel in build.panels):
        mine = [row for row in rows if row.name == kind and row.cabinet in build.letters]
        if not mine:
            continue
        panel = next(panel for panel in build.panels if panel.kind == kind)
        along, _, across = mine[0].finished.partition(" × ")
        yield Waiting(
            name=kind,
            blank=mine[0].blank,
            readings=(
                _reading(panel.length, along, job.unit),
                _reading(panel.width, across, job.unit),
            ),
            why=(*_explain((panel.length, panel.width), job.unit), *_say_alike(mine)),
            pieces=tuple(WaitingPiece(code=row.code, origin=_origin(row)) for row in mine),
        )


def _battens(job: Job, build: CabinetBuild) -> Iterator[Waiting]:
    """Yield the battens of a design that wait; those of all its cabinets together."""
    kinds: dict[str, Bar] = {}
    for bar in build.bars:
        kinds.setdefault(bar.kind, bar)
    for kind, bar in kinds.items():
        mine = [
            batten
            for batten in build.battens
            if batten.name == kind and batten.status is Status.MEASURE_FIRST
        ]
        if not mine:
            continue
        yield Waiting(
            name=f"{kind} (batten)",
            blank=show(mine[0].length + mine[0].oversize, job.unit),
            readings=(_reading(bar.length, show(mine[0].length, job.unit), job.unit),),
            why=_explain((bar.length,), job.unit),
            pieces=tuple(
                WaitingPiece(code=batten.cabinet, origin=f"{batten.count} pieces")
                for batten in mine
            ),
        )


def _plain(rows: list[PartRow]) -> Iterator[Waiting]:
    for name in dict.fromkeys(row.name for row in rows):
        mine = [row for row in rows if row.name == name]
        along, _, across = mine[0].finished.partition(" × ")
        yield Waiting(
            name=name,
            blank=mine[0].blank,
            readings=(
                Reading(what="length of its place", change="", planned=along),
                Reading(what="width of its place", change="", planned=across),
            ),
            why=tuple(_say_alike(mine)),
            pieces=tuple(WaitingPiece(code=row.code, origin=_origin(row)) for row in mine),
        )


def _say_alike(rows: Sequence[PartRow]) -> Iterator[str]:
    """Yield what the pieces of a kind must not be taken for; nothing where there is no such."""
    others = tuple(dict.fromkeys(other for row in rows for other in row.look_alikes))
    if others:
        more = f" and {len(others) - MOST_ALIKE} more" if len(others) > MOST_ALIKE else ""
        yield f"Looks alike: ≠ {', '.join(others[:MOST_ALIKE])}{more}"


def _origin(row: PartRow) -> str:
    upper, lower = row.origin
    return f"{upper} {lower}" if row.panel else f"{upper}, {lower}"


def _reading(span: Span, planned: str, unit: Unit) -> Reading:
    """Return what is measured for one extent; nothing where no panel stands before its ends."""
    if not (span.low or span.high or span.low_clear or span.high_clear):
        return Reading(what="", change="", planned=planned)
    change = span.low_let_in + span.high_let_in - add(span.low_clear) - add(span.high_clear)
    sign = "+" if change > 0 else "\N{MINUS SIGN}"
    return Reading(
        what=f"{PLACES[span.axis]} of its place",
        change=f"{sign} {show(abs(change), unit)}" if change else "",
        planned=planned,
    )


def _explain(spans: tuple[Span, ...], unit: Unit) -> tuple[str, ...]:
    """Return what each end of a place loses to coverings and clearances, every line once."""
    lines: dict[str, None] = {}
    for span in spans:
        if span.low_clear == span.high_clear and span.low_clear:
            lines[list_terms("each side", span.low_clear, unit)] = None
        elif span.low_clear or span.high_clear:
            for end, terms in zip(span.axis.ends, (span.low_clear, span.high_clear), strict=True):
                lines[list_terms(end, terms, unit)] = None
        for end, let_in in zip(span.axis.ends, (span.low_let_in, span.high_let_in), strict=True):
            if let_in:
                lines[f"let in at the {end} by {show(let_in, unit)}"] = None
    return tuple(lines)
