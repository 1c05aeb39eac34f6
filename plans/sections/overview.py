"""The first page: what is built, what it rests on, and how good the plan is."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal

from nesting.cut_sequence import MOST_OPEN_PIECES, Miss, minutes, missed_matches
from nesting.densities import find_density
from nesting.job import Job
from nesting.layout import By, PartLeaf, RestLeaf
from nesting.saw import SetWith
from nesting.sheets import Use
from plans.sections.bound import Bound, plan_cost, say_bound
from plans.sections.finished import list_fit_warnings, say_finished
from plans.sections.lots import say_mixed_joints
from plans.sections.numbers import count_of, show, show_money, show_with_unit, to_whole
from plans.sections.part_words import base_status, full_name
from plans.sections.precision import needs_fine_figures
from plans.sections.sessions import say_first_cabinet
from plans.sections.spares import count_spares, say_spares
from plans.sections.worked import Worked


@dataclass(frozen=True, slots=True, kw_only=True)
class AssumedNumber:
    """A number assumed, with room beside it for the reading.

    Attributes:
        name: "kerf".
        value: "2.4 mm".
        origin: "default" or "from the job file".
        check: How to check it.
        readings: How many blanks it needs: one for each kind of sheet in its name, none for what
            is as one wants it.
    """

    name: str
    value: str
    origin: str
    check: str
    readings: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Overview:
    """What the first page says.

    Attributes:
        changes: What changed since the plan that this one goes on from; empty for a new plan.
        what: Lines that say what is built: cabinets with outside sizes, or the number of parts.
        sums: Sums that close each cabinet.
        figures: Lines such as "3 sheets, 25 parts, 48 cuts, 14 settings, about 163 minutes".
        bound_text: How close to cheapest this is proven to be.
        assumed: The numbers assumed.
        questions: What the design leaves open.
        warnings: What to look at before buying.
        unplaced: Parts that do not fit, each with its reason.
        legend: The words and signs used, each explained: setting, keep size, statuses, hatches.
    """

    what: tuple[str, ...]
    sums: tuple[str, ...]
    figures: tuple[str, ...]
    bound_text: str
    assumed: tuple[AssumedNumber, ...]
    questions: tuple[str, ...]
    warnings: tuple[str, ...]
    unplaced: tuple[str, ...]
    legend: tuple[tuple[str, str], ...]
    changes: tuple[str, ...] = ()


LEGEND = (
    (
        "setting",
        "one position of the guide. Cuts between two thin rules share it: do not move the guide.",
    ),
    (
        "keep size",
        "what is left between the fresh edge and the edge measured from. Measure it on the wood.",
    ),
    (
        "trim",
        "takes a raw edge off. The figure is where the fresh edge lies, kerf included.",
    ),
    (
        "rehearsal",
        "before printing, separate code sawed the printed figures on virtual sheets.",
    ),
    ("guide left, right", "where the guide goes on either side of the blade; use one of them."),
    (
        "block A, B",
        "lie between the pencil mark and the guide; where A or B is named, use one of them.",
    ),
    ("final", "cut it to the finished size."),
    ("oversize", "cut the blank larger and bring it to size later."),
    ("measure first", "cut the blank; its finished size comes from the work, not from this list."),
    ("plain outline", "a part."),
    ("diagonal hatch", "waste."),
    ("dotted outline", "an offcut to keep."),
    ("crossed hatch", "a defect, with its distances from the two edges to measure from."),
    ("dashed hatch", "a defect that only hidden parts may lie on, with the same distances."),
    ("double line", "the edge to measure from."),
    ("6 and 9", "are underlined. Figures that read as another code upside-down are left out."),
    ("S, P, L", "whole sheets, pieces on the way, offcuts to keep."),
    ("slack, TIGHT", "how much a row of cuts may grow; where it is TIGHT, check your kerf first."),
)
"""The words and signs of a plan, explained where they first appear."""


def make_overview(worked: Worked, bound: Bound) -> Overview:
    """Return what the first page says."""
    job = worked.job
    return Overview(
        what=tuple(_what(job)),
        sums=tuple(line for build in job.cabinets for line in build.sums),
        figures=tuple(_figures(worked)),
        bound_text=say_bound(worked, bound),
        assumed=_assumed(job),
        questions=tuple(line for build in job.cabinets for line in build.questions),
        warnings=(
            *(line for build in job.cabinets for line in build.warnings),
            *(line for build in job.cabinets for line in list_fit_warnings(build)),
            *worked.layout.notes,
            *say_mixed_joints(job, worked.layout),
            *_warnings(worked),
            *_match_warnings(worked),
        ),
        unplaced=tuple(
            f"{gap.count} × {full_name(job.parts[gap.part])}: {gap.reason}"
            for gap in worked.layout.unplaced
        ),
        legend=tuple(_legend(worked)),
        changes=job.earlier.changes if job.earlier else (),
    )


def total_minutes(worked: Worked) -> int:
    """Return the minutes that all sheets take, rounded once."""
    each = (minutes(worked.job, sheet.sequence) for sheet in worked.sheets)
    return to_whole(sum(each, Decimal(0)))


def _what(job: Job) -> Iterator[str]:
    for build in job.cabinets:
        height, width, depth = (show(side, job.unit) for side in build.outside)
        yield (
            f"{len(build.letters)} × {build.name} ({', '.join(build.letters)}): outside "
            f"{height} high × {width} wide × {depth} deep, {job.unit.value}"
        )
        yield from say_finished(build, job.unit)
    plain = [part for part in job.parts if not part.cabinet and not part.spare_of]
    if plain:
        pieces = sum(part.count for part in plain)
        also = " besides" if job.cabinets else ""
        yield f"{count_of(pieces, 'part')} of {count_of(len(plain), 'kind')}{also}"


def _figures(worked: Worked) -> Iterator[str]:
    leaves = [freed.place.node for sheet in worked.sheets for freed in sheet.freed]
    parts = sum(isinstance(leaf, PartLeaf) for leaf in leaves) - count_spares(worked)
    cuts = sum(len(sheet.sequence.steps) for sheet in worked.sheets)
    settings = sum(sheet.sequence.settings for sheet in worked.sheets)
    yield (
        f"{_count_sheets(worked)}, {count_of(parts, 'part')}, {count_of(cuts, 'cut')}, "
        f"{count_of(settings, 'setting')}, about {count_of(total_minutes(worked), 'minute')} "
        "at the saw"
    )
    bought = sum(not sheet.sheet.owned for sheet in worked.sheets)
    yield f"{count_of(bought, 'sheet')} to buy, {show_money(plan_cost(worked))}"
    if yard_cuts := sum(
        step.by is By.YARD for sheet in worked.sheets for step in sheet.sequence.steps
    ):
        each = worked.job.yard.price_per_cut if worked.job.yard else Decimal(0)
        price = each * yard_cuts
        yield f"{count_of(yard_cuts, 'cut')} at the yard" + (
            f", {show_money(price)} besides" if price else ""
        )
    kept = sum(isinstance(leaf, RestLeaf) and leaf.is_offcut for leaf in leaves)
    yield f"{count_of(kept, 'offcut')} worth keeping"
    yield from say_spares(worked)
    yield from say_first_cabinet(worked)


def _count_sheets(worked: Worked) -> str:
    """Return how many sheets there are; where a plan goes on, most are pieces of sheets by now."""
    number = len(worked.sheets)
    if worked.job.earlier is None:
        return count_of(number, "sheet")
    return f"{number} {'sheet or piece' if number == 1 else 'sheets and pieces'}"


HATCHES = {Use.NOTHING: "crossed hatch", Use.HIDDEN_PARTS: "dashed hatch"}


def _legend(worked: Worked) -> Iterator[tuple[str, str]]:
    statuses = {base_status(part) for part in worked.job.parts}
    leaves = [freed.place.node for sheet in worked.sheets for freed in sheet.freed]
    absent = {"final", "oversize", "measure first"} - statuses
    has_blocks = worked.job.saw.set_with is SetWith.BLOCKS
    absent.add("guide left, right" if has_blocks else "block A, B")
    if not any(isinstance(leaf, RestLeaf) and leaf.is_offcut for leaf in leaves):
        absent.add("dotted outline")
    uses = {defect.use for sheet in worked.sheets for defect in sheet.sheet.defects}
    absent |= {word for use, word in HATCHES.items() if use not in uses}
    yield from (entry for entry in LEGEND if entry[0] not in absent)
    if any(needs_fine_figures(worked.job, sheet) for sheet in worked.sheets):
        yield (
            "more decimals",
            "stand on sheets where rounded figures would add up. Set them as near as you can.",
        )


def _assumed(job: Job) -> tuple[AssumedNumber, ...]:
    """Return the numbers assumed; what is asked of several kinds of sheet stands together."""
    kinds = sorted((f" of {sheet.name}" for sheet in job.sheets), key=len, reverse=True)
    together: dict[tuple[str, str, str], list[AssumedNumber]] = {}
    for number in _each_assumed(job):
        kind = next((kind for kind in kinds if number.name.endswith(kind)), "")
        asked = number.name.removesuffix(kind) if kind else number.name
        together.setdefault((asked, number.origin, number.check), []).append(number)
    return tuple(
        _joined(asked, numbers) if len(numbers) > 1 else numbers[0]
        for (asked, _, _), numbers in together.items()
    )


def _joined(asked: str, numbers: list[AssumedNumber]) -> AssumedNumber:
    """Return numbers that are asked alike as one: kinds and values stand in the same order."""
    kinds: dict[str, list[str]] = {}
    for number in numbers:
        kinds.setdefault(number.value, []).append(number.name.removeprefix(f"{asked} of "))
    return replace(
        numbers[0],
        name=f"{asked} of {' / '.join(map(', '.join, kinds.values()))}",
        value=" / ".join(kinds),
        readings=sum(number.readings for number in numbers),
    )


def _each_assumed(job: Job) -> Iterator[AssumedNumber]:
    for assumption in job.assumptions:
        yield AssumedNumber(
            name=assumption.name,
            value=assumption.value,
            origin="default" if assumption.is_default else "from the job file",
            check=assumption.check,
            readings=0 if assumption.is_choice else 1,
        )
    materials = {
        sheet.material: find_density(sheet.material, sheet.thickness) for sheet in job.sheets
    }
    for material, density in materials.items():
        if density.is_assumed:
            yield AssumedNumber(
                name=f"density of {material}",
                value=f"{density.kg_per_m3} kg/m³",
                origin="default",
                check="Weigh an offcut, or look into the maker's data sheet.",
            )


def _warnings(worked: Worked) -> Iterator[str]:
    job = worked.job
    for sheet in worked.sheets:
        for number in sheet.sequence.too_long:
            step = sheet.sequence.steps[number - 1]
            yield (
                f"Sheet {sheet.number}, cut {number}: it is "
                f"{show_with_unit(step.cut_length, job.unit)} long, and the guide reaches "
                f"{show_with_unit(job.saw.guide_length, job.unit)}. Join a longer guide, or have "
                "this cut made at the yard."
            )
        if sheet.sequence.most_open > MOST_OPEN_PIECES:
            yield (
                f"Sheet {sheet.number}: up to {sheet.sequence.most_open} pieces lie about that "
                "still need cutting. Label them and stack them flat."
            )


def _match_warnings(worked: Worked) -> Iterator[str]:
    """Yield a line for each group of parts that could not all come off one setting."""
    job = worked.job
    sequences = tuple(sheet.sequence for sheet in worked.sheets)
    groups: dict[str, list[Miss]] = {}
    for miss in missed_matches(job, worked.layout, sequences):
        groups.setdefault(miss.match, []).append(miss)
    for misses in groups.values():
        names = ", ".join(f"{miss.count} × {full_name(job.parts[miss.part])}" for miss in misses)
        yield (
            f"These come off another setting than the parts that must match them in "
            f"{show_with_unit(misses[0].size, job.unit)}: {names}. Hold them together and trim "
            "what differs."
        )
