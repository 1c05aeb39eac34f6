"""How the battens are cut from the timber that can be had, stick by stick."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from nesting.job import Job
from nesting.lengths import Length
from nesting.parts import Batten
from nesting.search.battens import BattenCutting, Stick, cut_battens
from nesting.timber import Timber
from plans.sections.numbers import show, show_money, show_size, show_with_unit


@dataclass(frozen=True, slots=True, kw_only=True)
class StickPlan:
    """Sticks that are cut alike.

    Attributes:
        count: How many of them.
        timber: Name of the timber.
        length: Length of a stick.
        trim: What is cut off each end first.
        kerf: What a cut removes.
        pieces: The pieces in the order of cutting.
        texts: The pieces as printed.
        left: What is left over, as printed.
    """

    count: int
    timber: str
    length: Length
    trim: Length
    kerf: Length
    pieces: tuple[Length, ...]
    texts: tuple[str, ...]
    left: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TimberLine:
    """Timber to buy: how many, of what, at what price."""

    count: int
    name: str
    length: str
    price: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BattenSection:
    """The battens of one section.

    Attributes:
        section: Such as "20 × 30 mm".
        pieces: The cut list, a line for each length.
        sticks: How they are cut; empty where the job names no timber.
        buy: What is bought for them; empty likewise.
        verdict: How good the cutting is; "" without timber.
        total: Length of all pieces as text.
    """

    section: str
    pieces: tuple[str, ...]
    sticks: tuple[StickPlan, ...]
    buy: tuple[TimberLine, ...]
    verdict: str
    total: str


def make_batten_sections(job: Job) -> tuple[BattenSection, ...]:
    """Return the battens of a job by their section, the smallest first."""
    sections: dict[tuple[Length, Length], list[Batten]] = {}
    for build in job.cabinets:
        for batten in build.battens:
            sections.setdefault(batten.section, []).append(batten)
    return tuple(_section(job, section, sections[section]) for section in sorted(sections))


def _section(job: Job, section: tuple[Length, Length], members: list[Batten]) -> BattenSection:
    stock = tuple(timber for timber in job.timber if timber.section == section)
    pieces = tuple(_blank(batten) for batten in members for _ in range(batten.count))
    cutting = cut_battens(pieces, stock, job.saw.kerf) if stock else None
    return BattenSection(
        section=f"{show_size(*section, job.unit)} {job.unit.value}",
        pieces=tuple(_list_pieces(job, members)),
        sticks=tuple(_sticks(job, stock, cutting)) if cutting else (),
        buy=tuple(_buy(job, stock, cutting)) if cutting else (),
        verdict=_verdict(job, cutting) if cutting else "",
        total=show_with_unit(sum(pieces), job.unit),
    )


def _blank(batten: Batten) -> Length:
    return batten.length + batten.oversize


def _list_pieces(job: Job, members: list[Batten]) -> Iterator[str]:
    """Yield a line for each length: how often, how long, and what each is for."""
    by_length: dict[Length, list[Batten]] = {}
    for batten in members:
        by_length.setdefault(_blank(batten), []).append(batten)
    for length in sorted(by_length, reverse=True):
        names: dict[str, list[str]] = {}
        for batten in by_length[length]:
            where = f" in {batten.cabinet}" if batten.cabinet else ""
            names.setdefault(batten.name, []).append(f"{batten.count}{where}")
        count = sum(batten.count for batten in by_length[length])
        listed = "; ".join(f"{name} ({', '.join(where)})" for name, where in names.items())
        yield f"{count} × {show(length, job.unit)}: {listed}"


def _sticks(job: Job, stock: tuple[Timber, ...], cutting: BattenCutting) -> Iterator[StickPlan]:
    for stick, count in Counter(cutting.sticks).items():
        yield _stick(job, stock[stick.timber], stick, count)


def _stick(job: Job, timber: Timber, stick: Stick, count: int) -> StickPlan:
    return StickPlan(
        count=count,
        timber=timber.name,
        length=timber.length,
        trim=timber.trim,
        kerf=job.saw.kerf,
        pieces=stick.lengths,
        texts=tuple(show(length, job.unit) for length in stick.lengths),
        left=show(stick.left, job.unit),
    )


def _buy(job: Job, stock: tuple[Timber, ...], cutting: BattenCutting) -> Iterator[TimberLine]:
    counts = Counter(stick.timber for stick in cutting.sticks)
    for index in sorted(counts):
        timber, count = stock[index], counts[index]
        price = (
            f"{show_money(timber.price)} each, {show_money(timber.price * count)} in all"
            if timber.price
            else ""
        )
        yield TimberLine(
            count=count,
            name=timber.name,
            length=show_with_unit(timber.length, job.unit),
            price=price,
        )


def _verdict(job: Job, cutting: BattenCutting) -> str:
    """Return how good the cutting is, and what it leaves out."""
    sticks = f"{len(cutting.sticks)} {'stick' if len(cutting.sticks) == 1 else 'sticks'}"
    cost = f", {show_money(cutting.cost)}" if cutting.cost != Decimal(0) else ""
    proof = (
        "proven: no other way needs less"
        if cutting.is_proven
        else "the best that was found; not proven"
    )
    missing = ""
    if cutting.unplaced:
        listed = ", ".join(show_with_unit(length, job.unit) for length in cutting.unplaced)
        missing = f" NOT CUT, because no timber is long enough or enough of it: {listed}."
    return f"{sticks}{cost}; {proof}.{missing}"
