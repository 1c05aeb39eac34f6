"""The tables [[timber]]: the lengths that battens are cut from."""

from collections.abc import Iterator
from decimal import Decimal
from typing import Final

from nesting.cabinets.build import CabinetBuild
from nesting.job import Assumption
from nesting.lengths import Length, format_length, mm
from nesting.reading.tables import Table
from nesting.reading.values import with_unit
from nesting.timber import Timber

MOST_STICKS: Final = 20_000
THICKEST_SECTION: Final = mm(200)
MOST_TRIM: Final = mm(200)
_SIDES: Final = 2


def read_timber(tables: tuple[Table, ...]) -> tuple[Timber, ...]:
    """Return the timber that could be read, after recording the faults of the rest."""
    first: dict[str, Table] = {}
    found = []
    for table in tables:
        timber = _read(table)
        if timber is None:
            continue
        if timber.name in first:
            table.fault(
                f"the name {timber.name!r} is taken already ({first[timber.name].place})",
                "Give every kind of timber its own name.",
                "name",
            )
            continue
        first[timber.name] = table
        found.append(timber)
    return tuple(found)


def _read(table: Table) -> Timber | None:
    name, section = table.text("name"), _read_section(table)
    length = table.length("length")
    price = table.number("price", Decimal(0))
    count = table.whole("count", 1, least=1, most=MOST_STICKS) if table.has("count") else None
    trim = table.length("trim", 0, may_be_zero=True, most=MOST_TRIM)
    table.finish()
    if table.is_sound and 2 * trim >= length:
        table.fault(
            f"the trims leave nothing of {with_unit(length, table.unit)}",
            "Give what is cut off each end, a little only.",
            "trim",
        )
    if not table.is_sound:
        return None
    return Timber(name=name, section=section, length=length, price=price, count=count, trim=trim)


def _read_section(table: Table) -> tuple[Length, Length]:
    """Return the section, the smaller side first; a stand-in after recording a fault."""
    sides = sorted(table.lengths("section", most=THICKEST_SECTION))
    if len(sides) == _SIDES:
        return sides[0], sides[1]
    if "section" not in table.values:
        table.fault("'section' is missing", "Add its two sides, such as section = [20, 30].")
    elif table.is_sound:
        table.fault("two sides are needed", "Write section = [20, 30], say.", "section")
    return mm(20), mm(20)


def check_sections(
    tables: tuple[Table, ...], timber: tuple[Timber, ...], builds: tuple[CabinetBuild, ...]
) -> None:
    """Record where no timber has the section of a batten: the list would say nothing of it."""
    known = {each.section for each in timber}
    needed = dict.fromkeys(batten.section for build in builds for batten in build.battens)
    for section in needed:
        if timber and section not in known:
            table = tables[0]
            shown = " × ".join(format_length(side, table.unit) for side in section)
            table.fault(
                f"no timber has the section of the battens, {shown} {table.unit.value}",
                "Add a [[timber]] of that section, or take all of them out.",
            )


def assume_timber(timber: tuple[Timber, ...], tables: tuple[Table, ...]) -> Iterator[Assumption]:
    """Yield what is taken for granted about the timber."""
    for each, table in zip(timber, tables, strict=False):
        unit = table.unit
        section = " × ".join(format_length(side, unit) for side in each.section)
        yield Assumption(
            name=f"section and length of {each.name}",
            value=f"{section} × {with_unit(each.length, unit)}",
            is_default=False,
            check="Measure section and length, and look along it for bends.",
        )
