"""The whole rehearsal of a plan."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.errors import Fault
from plans.rehearsal.defects import check_defects
from plans.rehearsal.document import read_document
from plans.rehearsal.extremes import check_extremes
from plans.rehearsal.gauge_blocks import check_blocks
from plans.rehearsal.hole_parts import check_hole_parts
from plans.rehearsal.leavings import check_leavings, printed_deviation
from plans.rehearsal.printed import Nanometres
from plans.rehearsal.records import PlanFile, Sheet
from plans.rehearsal.sawing import Sawn, saw_sheet
from plans.rehearsal.settings import check_settings
from plans.rehearsal.sums import check_sums
from plans.rehearsal.totals import check_totals
from plans.rehearsal.whole_first import check_whole_first


@dataclass(frozen=True, slots=True, kw_only=True)
class Rehearsal:
    """What a rehearsal found.

    Attributes:
        faults: Everything that is wrong, in the order of the plan; empty where all holds.
        sheets: Sheets sawn.
        cuts: Cuts made.
        parts: Parts that came out.
        worst_deviation: The most by which a side of a sawn part is off its printed size.
        figures: The same as short texts, in the plan's unit.
    """

    faults: tuple[Fault, ...]
    sheets: int = 0
    cuts: int = 0
    parts: int = 0
    worst_deviation: Nanometres = 0
    figures: tuple[str, ...] = ("nothing was sawn",)


def rehearse(document: object) -> Rehearsal:
    """Saw the printed numbers of a plan virtually, and compare what comes out with the plan.

    Args:
        document: The content of a plan file, as JSON reads it. Whatever it is, the faults say
            what is wrong with it.
    """
    plan, faults = read_document(document)
    if plan is None:
        return Rehearsal(faults=faults)
    sawn = [(sheet, saw_sheet(sheet, plan)) for sheet in plan.sheets]
    deviations = list(_deviations(sawn))
    cuts = sum(len(one.cut_up) for _, one in sawn)
    worst = max(deviations, default=0)
    return Rehearsal(
        faults=tuple(_faults(plan, sawn)),
        sheets=len(sawn),
        cuts=cuts,
        parts=len(deviations),
        worst_deviation=worst,
        figures=(
            _count(len(sawn), "sheet"),
            _count(cuts, "cut"),
            _count(len(deviations), "part"),
            f"worst part {plan.unit.show(worst)} off its printed size",
        ),
    )


def _faults(plan: PlanFile, sawn: list[tuple[Sheet, Sawn]]) -> Iterator[Fault]:
    yield from check_totals(plan)
    yield from check_blocks(plan)
    yield from check_hole_parts(plan)
    yield from check_whole_first(plan)
    for sheet, one in sawn:
        yield from one.faults
        yield from check_settings(sheet)
        if len(one.cut_up) == len(sheet.rows):
            yield from check_leavings(sheet, one, plan.unit)
            yield from check_defects(sheet, one, plan.unit)
            yield from check_sums(sheet, one, plan.unit)
            yield from check_extremes(sheet, plan)


def _deviations(sawn: list[tuple[Sheet, Sawn]]) -> Iterator[Nanometres]:
    for sheet, one in sawn:
        pieces = {piece.code: piece for piece in one.pieces}
        for part in sheet.parts:
            if part.code in pieces:
                yield printed_deviation(part, pieces[part.code])


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"
