"""The cabinets of a job: from the tables [[cabinet]] to what is cut for them."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from nesting.cabinets.boards import find_spreads, measure_boards
from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.closing_design import Covering
from nesting.cabinets.design import BoxDesign
from nesting.cabinets.expand import expand
from nesting.cabinets.families import Design
from nesting.cabinets.from_holes import take_plain
from nesting.cabinets.letters import name_cabinets
from nesting.cabinets.wedge_design import WedgeDesign
from nesting.errors import InputError
from nesting.job import Assumption
from nesting.lengths import Length, Unit
from nesting.parts import Part
from nesting.reading.cabinet_table import read_cabinet, record_at_keys
from nesting.reading.fitting_tables import assume_fittings
from nesting.reading.stock import Stock
from nesting.reading.tables import Table
from nesting.reading.term_tables import CABINET_SIZES, read_free
from nesting.reading.values import with_unit
from nesting.terms import Free


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadCabinet:
    """A design and the table that it was read from.

    Attributes:
        design: The design.
        table: Its table, for faults that show only when the sums are made.
        free: Its sizes that may change a little.
    """

    design: Design
    table: Table
    free: tuple[Free, ...] = ()


def read_cabinets(
    tables: tuple[Table, ...], stock: Stock, covering: Covering | None
) -> list[ReadCabinet]:
    """Return the designs that could be read, after recording the faults of the others.

    Args:
        tables: The tables [[cabinet]].
        stock: The sheets of the job.
        covering: The covering of the job; None for none.
    """
    first: dict[str, Table] = {}
    found = []
    for table in tables:
        sizes = read_free(table, CABINET_SIZES)
        design = read_cabinet(table, stock, covering)
        if design is None:
            continue
        if design.name in first:
            table.fault(
                f"the name {design.name!r} is taken already ({first[design.name].place})",
                "Give every design its own name; more of the same is a higher count.",
                "name",
            )
        first.setdefault(design.name, table)
        free = tuple(
            Free(of=design.name, is_cabinet=True, dimension=size, limit=limit)
            for size, limit in sizes
        )
        found.append(ReadCabinet(design=design, table=table, free=free))
    return found


def expand_cabinets(
    cabinets: list[ReadCabinet],
    stock: Stock,
    *,
    step: Length,
    unit: Unit,
    kerf: Length | None = None,
) -> tuple[CabinetBuild, ...]:
    """Return what is cut for the cabinets; letters run on from design to design.

    Where a cabinet cannot be built as designed, the fault is recorded at its table.
    """
    builds: list[CabinetBuild] = []
    already = 0
    for read in cabinets:
        letters = name_cabinets(read.design.count, already=already)
        already += read.design.count
        try:
            build = expand_design(read.design, letters, stock, step=step, unit=unit, kerf=kerf)
        except InputError as error:
            record_at_keys(error, read.table)
        else:
            builds.append(build)
    return tuple(builds)


def expand_design(
    design: Design,
    letters: tuple[str, ...],
    stock: Stock,
    *,
    step: Length,
    unit: Unit,
    kerf: Length | None,
) -> CabinetBuild:
    """Return what is cut for the cabinets of one design.

    Raises:
        InputError: They cannot be built as designed.
    """
    return expand(
        design,
        letters=letters,
        measured=measure_boards(stock.sheets),
        step=step,
        unit=unit,
        kerf=kerf,
        spreads=find_spreads(stock.sheets),
    )


def take_from_holes(
    parts: Iterable[Part],
    builds: Iterable[CabinetBuild],
    cabinets: Iterable[ReadCabinet],
    unit: Unit,
) -> tuple[tuple[Part, ...], tuple[CabinetBuild, ...]]:
    """Return the plain parts that sheets must still give, and the builds with those from holes.

    Where a part does not come out of its hole, the fault is recorded at the cabinet's table.
    """
    left, after = tuple(parts), []
    tables = {read.design.name: read.table for read in cabinets}
    for build in builds:
        try:
            left, taken = take_plain(left, build, unit)
        except InputError as error:
            record_at_keys(error, tables[build.name])
        else:
            after.append(taken)
    return left, tuple(after)


def assume_cabinet(read: ReadCabinet) -> Iterator[Assumption]:
    """Yield what is taken for granted about the cabinets of one design."""
    design, table = read.design, read.table
    if isinstance(design, BoxDesign):
        yield _assume_through(design, table)
    else:
        yield from _assume_slope(design, table)
    yield Assumption(
        name=f"outside of {design.name}",
        value="bare wood, without covering, feet and handles",
        is_default=False,
        check="Add them to see whether the cabinet goes through the door and into the car.",
        is_choice=True,
    )
    if design.measure_first:
        yield Assumption(
            name=f"what goes into {design.name} is cut larger at first by",
            value=with_unit(design.allowance, table.unit),
            is_default=not table.has("allowance"),
            check="Trim it to what the standing carcass measures.",
            is_choice=True,
        )
    for name, answer in design.answers:
        yield Assumption(
            name=f"{name.replace('_', ' ')} of {design.name}",
            value=answer,
            is_default=False,
            check="Is it on the list of what to buy, or among the parts?",
            is_choice=True,
        )
    yield from assume_fittings(design.name, design.fittings, table)


def _assume_through(design: BoxDesign, table: Table) -> Assumption:
    return Assumption(
        name=f"panels of {design.name} that run through",
        value=design.through.value,
        is_default=not table.has("through"),
        check="Look at the corners of the drawing: which end grain is to be seen?",
        is_choice=True,
    )


def _assume_slope(design: WedgeDesign, table: Table) -> Iterator[Assumption]:
    for key, length, what in (
        ("top", design.top, "depth of the top"),
        ("front", design.front, "height of the front below the baffle"),
    ):
        yield Assumption(
            name=f"{what} of {design.name}",
            value=with_unit(length, table.unit),
            is_default=not table.has(key),
            check="Look at the outline of the sides: it sets the slope of the baffle.",
            is_choice=True,
        )
