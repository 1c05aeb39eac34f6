"""The tables [buy], [session] and [batch], and the keys for sizes that may change a little."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import Final

from nesting.cabinets.build import CabinetBuild
from nesting.errors import InputError
from nesting.job import Assumption
from nesting.lengths import Length, Unit, inch, mm
from nesting.reading.tables import Table
from nesting.reading.values import as_choice, listed, with_unit
from nesting.terms import Dimension, Evening, Free

CABINET_SIZES: Final = (Dimension.HEIGHT, Dimension.WIDTH, Dimension.DEPTH)
PART_SIZES: Final = (Dimension.LENGTH, Dimension.WIDTH)
MOST_FREE: Final = mm(200)
LONGEST_SESSION: Final = Decimal(24 * 60)
MOST_OPEN: Final = 20_000
_INCH_STORE: Final = (inch(49), inch(25))
_SIDES: Final = 2


def read_delivery(table: Table) -> Decimal | None:
    """Return what bringing everything costs, from the [buy] table; None where nothing is said."""
    delivery = table.number("delivery", Decimal(0)) if table.has("delivery") else None
    table.finish()
    return delivery


def read_evening(table: Table) -> Evening | None:
    """Return how the work is divided, from the [session] table; None where the file has none."""
    if table.is_absent:
        return None
    usual = Evening(store=_INCH_STORE) if table.unit is Unit.INCH else Evening()
    minutes = table.number("minutes", usual.minutes, least=Decimal(10), most=LONGEST_SESSION)
    sides = table.lengths("store")
    if table.has("store") and len(sides) != _SIDES and table.is_sound:
        table.fault(
            "two lengths are needed",
            "Write the sides of the largest piece that you can put away flat, such as "
            f"store = {'[49, 25]' if table.unit is Unit.INCH else '[1250, 650]'}.",
            "store",
        )
    table.finish()
    if len(sides) != _SIDES:
        return Evening(minutes=minutes, store=usual.store)
    return Evening(minutes=minutes, store=(max(sides), min(sides)))


@dataclass(frozen=True, slots=True, kw_only=True)
class Batch:
    """What the [batch] table says.

    Attributes:
        most_open: The limit of work in progress, None where there is none.
        first_whole: Letter of the cabinet that is cut whole before all others, "" for none.
        spare_minutes: Minutes that spares may take, None for no spares.
    """

    most_open: int | None = None
    first_whole: str = ""
    spare_minutes: Decimal | None = None


def read_batch(table: Table, builds: Iterable[CabinetBuild]) -> Batch:
    """Return what the [batch] table says.

    Args:
        table: The table.
        builds: The cabinets of the job.
    """
    if table.is_absent:
        return Batch()
    letters = {build.name: build.letters[0] for build in reversed(tuple(builds)) if build.letters}
    name = table.text("first_whole", "")
    has_spares = table.has("spare_minutes")
    is_limited = table.has("limit") or not (table.has("first_whole") or has_spares)
    limit = table.whole("limit", least=1, most=MOST_OPEN) if is_limited else None
    if table.has("first_whole") and name not in letters and table.is_sound:
        known = listed(list(reversed(letters)), "or") if letters else ""
        table.fault(
            "no cabinet has this name",
            f"Write {known}." if known else "Take the key out: the job has no cabinet.",
            "first_whole",
        )
    spare_minutes = (
        table.number("spare_minutes", Decimal(0), most=LONGEST_SESSION) if has_spares else None
    )
    table.finish()
    return Batch(
        most_open=limit,
        first_whole=letters.get(name, ""),
        spare_minutes=spare_minutes,
    )


def read_free(table: Table, sizes: tuple[Dimension, ...]) -> tuple[tuple[Dimension, Length], ...]:
    """Return the sizes of a table that may change, each with the limit.

    Args:
        table: A table [[cabinet]] or [[part]].
        sizes: The sizes that it has.
    """
    usual = inch("3/4") if table.unit is Unit.INCH else mm(20)
    if not table.has("free"):
        if table.has("free_limit"):
            table.fault(
                "it limits a size that is free, and none is",
                f'Name the size too, such as free = ["{sizes[-1].value}"], or take the limit out.',
                "free_limit",
            )
        return ()
    limit = table.length("free_limit", usual, most=MOST_FREE)
    value = table.values["free"]
    found = []
    for each in value if isinstance(value, list) else [value]:
        try:
            size = as_choice(each, Dimension)
        except InputError:
            size = None
        if size not in sizes:
            known = [known.value for known in sizes]
            table.fault(
                "it does not name a size of this",
                f'Write one or more of {listed(known, "and")}, such as free = ["{known[-1]}"].',
                "free",
            )
            return ()
        found.append(size)
    return tuple((size, limit) for size in dict.fromkeys(found))


def assume_batch(batch: Batch) -> Iterator[Assumption]:
    """Yield what the plan takes for granted about spares, where they are asked."""
    if batch.spare_minutes is not None:
        yield Assumption(
            name="minutes for spares",
            value=f"{batch.spare_minutes:f} minutes",
            is_default=False,
            check="They come out of waste; leave them on the sheet where none is wanted.",
            is_choice=True,
        )


def assume_terms(
    free: tuple[Free, ...], evening: Evening | None, session_table: Table
) -> Iterator[Assumption]:
    """Yield what the plan takes for granted about free sizes and sessions, where they are asked."""
    unit = session_table.unit
    for each in free:
        yield Assumption(
            name=f"{each.dimension.value} of {each.of} may change by",
            value=with_unit(each.limit, unit),
            is_default=False,
            check="'setout buy' says where that saves money; nothing is changed unasked.",
        )
    if evening is None:
        return
    store = " × ".join(with_unit(side, unit) for side in evening.store)
    yield Assumption(
        name="longest session",
        value=f"{evening.minutes:f} minutes",
        is_default=not session_table.has("minutes"),
        check="Stop sooner when you are tired.",
    )
    yield Assumption(
        name="largest piece that can be put away flat",
        value=store,
        is_default=not session_table.has("store"),
        check="Measure the place where pieces wait.",
    )
