"""Who makes which cuts: all at home, the first ones at the yard, or all of them there.

A yard that cuts everything is paid for every cut, and its edges are rough. So all parts but those
that are cut oversize anyway come out larger by what the saw at home takes off all round.
"""

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from enum import Enum
from fractions import Fraction
from typing import Final

from nesting.cut_sequence import piece_mass_kg
from nesting.job import Job
from nesting.layout import Cut, Layout, Rect, SheetLayout, walk
from nesting.lengths import NM_PER_MM, Length, format_length, mm
from nesting.parts import Part
from nesting.yard import Yard

EXACT_ENOUGH: Final = mm("0.5")
"""A yard that is off by no more cuts as well as a guide at home is set (judgement)."""


class Sawing(Enum):
    """Who makes which cuts; the values are how a way to buy is called."""

    AS_ASKED = "as the job asks"
    DELIVERED = "delivered"
    ALL_AT_HOME = "all cut at home"
    STRIPS_AT_YARD = "strips cut at the yard"
    ALL_AT_YARD = "all cut at the yard"


def list_sawings(job: Job) -> tuple[Sawing, ...]:
    """Return how the sawing of a job could be shared out otherwise than it asks."""
    found = []
    if job.terms.delivery is not None and (job.yard is not None or job.car is not None):
        found.append(Sawing.DELIVERED)
    if job.yard is not None:
        if job.car is None:  # else the car decides what must be cut at the yard
            found += [Sawing.ALL_AT_HOME, Sawing.STRIPS_AT_YARD]
        found.append(Sawing.ALL_AT_YARD)
    return tuple(found)


def change_sawing(job: Job, sawing: Sawing) -> Job:
    """Return a job with its sawing shared out in another way."""
    match sawing:
        case Sawing.AS_ASKED:
            return job
        case Sawing.DELIVERED | Sawing.ALL_AT_HOME:
            return replace(job, yard=None, car=None)
        case Sawing.STRIPS_AT_YARD:
            return replace(job, saw=replace(job.saw, lift_limit_kg=_half_a_sheet_kg(job)))
        case Sawing.ALL_AT_YARD:
            return _all_at_yard(job)


def say_hindrance(job: Job, layout: Layout) -> str:
    """Return why the yard does not make all cuts of a layout, "" where it does or there is none."""
    yard = job.yard
    if yard is None:
        return ""
    narrow = min(job.parts, key=lambda part: min(part.length, part.width))
    side = min(narrow.length, narrow.width)
    if side < yard.min_piece:
        return (
            f"The yard does not cut everything: {narrow.name} is {_show(job, side)} wide, and it "
            f"hands over nothing below {_show(job, yard.min_piece)}."
        )
    most = max(map(count_cuts, layout.sheets), default=0)
    if most > yard.max_cuts:
        return (
            f"The yard does not cut everything: a sheet takes {most} cuts, and it makes "
            f"{yard.max_cuts}."
        )
    return ""


def count_cuts(sheet: SheetLayout) -> int:
    """Return how many cuts a sheet takes."""
    anywhere = Rect(x=0, y=0, length=0, width=0)
    return sum(isinstance(place.node, Cut) for place in walk(sheet.root, anywhere))


def list_recut(job: Job) -> tuple[tuple[Part, int], ...]:
    """Return the parts that are cut to size at home when the yard cuts all, with how many."""
    return tuple((part, part.count) for part in job.parts if _recut_allowance(job, part))


def recut_minutes(job: Job, recut: Sequence[tuple[Part, int]]) -> Decimal:
    """Return the minutes that it takes to cut parts to size on all four edges.

    Each edge is a cut; one setting takes off the rough edges, and every size needs one more.
    """
    times = job.times
    sizes = {side for part, _ in recut for side in (part.length, part.width)}
    edges = sum(4 * count for _, count in recut)
    around = sum(2 * count * (part.length + part.width) for part, count in recut)
    metres = Decimal(around) / NM_PER_MM / 1000
    settings = len(sizes) + 1 if recut else 0
    return times.setting * settings + times.cut * edges + times.metre * metres


def _all_at_yard(job: Job) -> Job:
    assert job.yard is not None, "only a yard cuts at the yard"
    saw = replace(
        job.saw,
        kerf=job.yard.kerf,
        guide_length=max(max(sheet.length, sheet.width) for sheet in job.sheets),
    )
    return replace(
        job, saw=saw, yard=None, car=None, parts=tuple(_grow(job, part) for part in job.parts)
    )


def _grow(job: Job, part: Part) -> Part:
    more = _recut_allowance(job, part)
    return replace(part, extra_length=part.extra_length + more, extra_width=part.extra_width + more)


def _recut_allowance(job: Job, part: Part) -> Length:
    """Return how much larger a blank must come from the yard: a clean-up all round, and its error.

    What is cut oversize anyway needs no more than what is missing of that.
    """
    yard = job.yard
    assert yard is not None, "only a yard is rough"
    if yard.rough <= EXACT_ENOUGH:
        return 0
    return max(0, 2 * _clean_up(yard, job.saw.kerf) + yard.rough - part.oversize)


def _clean_up(yard: Yard, kerf: Length) -> Length:
    return max(yard.rough, kerf)


def _half_a_sheet_kg(job: Job) -> Decimal:
    """Return half the mass of the heaviest sheet that is bought: that one is cut at least once."""
    masses = [
        piece_mass_kg(sheet, Rect(x=0, y=0, length=sheet.length, width=sheet.width))
        for sheet in job.sheets
        if not sheet.owned
    ]
    half = max(masses, default=Fraction(job.saw.lift_limit_kg)) / 2
    return Decimal(half.numerator) / Decimal(half.denominator)


def _show(job: Job, length: Length) -> str:
    return f"{format_length(length, job.unit)} {job.unit.value}"
