"""The job file: everything a person says about a job, in TOML."""

from dataclasses import replace
from functools import partial
from itertools import chain
from pathlib import Path
from typing import Final

from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.closing_design import Covering
from nesting.job import Job
from nesting.lengths import Length, Unit, inch, mm
from nesting.reading.assumptions import (
    assume_grain,
    assume_keep,
    assume_saw,
    assume_sheet,
    assume_step,
    assume_times,
)
from nesting.reading.cabinets import (
    assume_cabinet,
    expand_cabinets,
    expand_design,
    read_cabinets,
    take_from_holes,
)
from nesting.reading.covering_table import assume_covering, read_covering
from nesting.reading.faults import Faults
from nesting.reading.merge_tables import Merged, merge_parts
from nesting.reading.part_lists import read_part_list
from nesting.reading.plain_parts import MOST_COPIES, PART_KEYS, ReadPart, check_together, read_part
from nesting.reading.saw_tables import read_keep, read_saw, read_times
from nesting.reading.sheet_tables import read_sheets
from nesting.reading.stock import Stock
from nesting.reading.tables import Source, Table
from nesting.reading.term_tables import (
    PART_SIZES,
    assume_batch,
    assume_terms,
    read_batch,
    read_delivery,
    read_evening,
    read_free,
)
from nesting.reading.text_files import decode, read_bytes
from nesting.reading.timber_tables import assume_timber, check_sections, read_timber
from nesting.reading.toml_lines import find_lines
from nesting.reading.toml_syntax import parse_toml
from nesting.reading.values import LONGEST_TEXT
from nesting.reading.yard_table import assume_car, assume_yard, read_car, read_yard
from nesting.terms import Free, Terms

COARSEST_STEP: Final = mm(5)


def read_job(path: Path, *, needs_sheets: bool = True) -> Job:
    """Return the job that a job file describes.

    Args:
        path: The job file. Part lists that it names are looked for beside it.
        needs_sheets: False where parts are only to be worked out and no sheet need be there.

    Raises:
        InputError: With every fault of the file and of its part lists, in the order of the file.
    """
    text = decode(read_bytes(path), path.name)
    return read_job_text(text, path, needs_sheets=needs_sheets)


def read_job_text(text: str, path: Path, *, needs_sheets: bool = True) -> Job:
    """Return the job that the text of a job file describes.

    Args:
        text: The whole file.
        path: Where it stands or will stand; not read.
        needs_sheets: As for `read_job`.

    Raises:
        InputError: With every fault of the text and of its part lists.
    """
    root = Table(
        source=Source(name=path.name, lines=tuple(text.split("\n")), spots=find_lines(text)),
        values=parse_toml(text, path.name),
        unit=Unit.MM,
        faults=Faults(),
    )
    job = _read_tables(root, path, needs_sheets=needs_sheets)
    root.faults.raise_any()
    return job


def _read_tables(root: Table, path: Path, *, needs_sheets: bool) -> Job:
    """Return the job; it may hold stand-ins where faults were recorded."""
    heading = root.table("job")
    heading.unit = root.unit = heading.choice("units", Unit, Unit.MM)
    name = heading.text("name", _printable(path.stem))
    step = _read_step(heading)
    heading.finish()
    saw_table, keep_table, time_table = (root.table(key) for key in ("saw", "keep", "time"))
    saw, keep, times = read_saw(saw_table), read_keep(keep_table), read_times(time_table)
    sheet_tables, covering_table = root.tables("sheet"), root.table("covering")
    read, covering = read_sheets(sheet_tables), read_covering(covering_table)
    sheets = tuple(sheet for sheet, _ in read)
    by_table = {table.path: (sheet, table) for sheet, table in reversed(read)}
    stock = Stock(sheets=sheets, is_complete=_has_sheets(root, sheet_tables, needs=needs_sheets))
    work = _read_work(root, stock, covering, path.parent, step=step, kerf=saw.kerf)
    plain, builds = take_from_holes(
        (read.part for read in work.parts), work.builds, work.cabinets, root.unit
    )
    needed = {part.name for part in plain}
    yard_table, car_table = root.table("yard"), root.table("car")
    yard, car = read_yard(yard_table), read_car(car_table)
    timber_tables = root.tables("timber")
    timber = read_timber(timber_tables)
    check_sections(timber_tables, timber, builds)
    buy_table, session_table, batch_table = (root.table(key) for key in ("buy", "session", "batch"))
    batch = read_batch(batch_table, builds)
    terms = Terms(
        delivery=read_delivery(buy_table),
        free=(
            *(free for read in work.parts for free in read.free if free.of in needed),
            *chain.from_iterable(read.free for read in work.cabinets),
        ),
        evening=read_evening(session_table),
        most_open=batch.most_open,
        first_whole=batch.first_whole,
        spare_minutes=batch.spare_minutes,
    )
    _check_whole(root, work.parts, builds)
    return Job(
        name=name,
        unit=root.unit,
        step=step,
        saw=saw,
        times=times,
        keep=keep,
        sheets=sheets,
        parts=(*plain, *chain.from_iterable(build.parts for build in builds)),
        cabinets=builds,
        assumptions=(
            *assume_saw(saw, saw_table),
            assume_step(step, heading),
            *chain.from_iterable(assume_sheet(*by_table[path]) for path in sorted(by_table)),
            *assume_grain(work.parts),
            *assume_covering(covering, covering_table),
            *chain.from_iterable(map(assume_cabinet, work.cabinets)),
            assume_keep(keep, keep_table),
            assume_times(times, time_table),
            *assume_yard(yard, yard_table),
            *assume_car(car, car_table),
            *assume_timber(timber, timber_tables),
            *assume_terms(terms.free, terms.evening, session_table),
            *assume_batch(batch),
            *work.assumptions,
        ),
        yard=yard,
        car=car,
        timber=timber,
        terms=terms,
    )


def _read_work(
    root: Table,
    stock: Stock,
    covering: Covering | None,
    folder: Path,
    *,
    step: Length,
    kerf: Length,
) -> Merged:
    """Return what is to be made, plain parts and cabinets, with the merges made."""
    parts = _read_parts(root, stock, kerf, folder)
    cabinets = read_cabinets(root.tables("cabinet"), stock, covering)
    builds = expand_cabinets(cabinets, stock, step=step, unit=root.unit, kerf=kerf)
    work = Merged(parts=parts, cabinets=cabinets, builds=builds)
    merge_tables = root.tables("merge")
    if len(builds) < len(cabinets):  # the faults are recorded; there is nothing whole to merge
        return work
    expand = partial(expand_design, stock=stock, step=step, unit=root.unit, kerf=kerf)
    return merge_parts(merge_tables, work, expand)


def _printable(stem: str) -> str:
    """Return a file's name as a title: a file may be called what no page can show."""
    return "".join(sign if sign.isprintable() else "_" for sign in stem)[:LONGEST_TEXT]


def _read_step(heading: Table) -> Length:
    usual = inch("1/32") if heading.unit is Unit.INCH else mm("0.5")
    return heading.length("step", usual, most=COARSEST_STEP)


def _has_sheets(root: Table, tables: tuple[Table, ...], *, needs: bool) -> bool:
    """Return whether the sheets can be relied on; record a fault where one is needed."""
    if root.values.get("sheet"):
        return bool(tables) and all(table.is_sound for table in tables)
    if needs:
        root.fault(
            "there is no sheet to cut from",
            "Add a [[sheet]] with name, material, thickness, length and width.",
        )
    return not needs


def _read_parts(root: Table, stock: Stock, kerf: Length, folder: Path) -> list[ReadPart]:
    found: list[ReadPart | None] = []
    for table in root.tables("part"):
        for key in PART_KEYS:
            table.has(key)
        sizes = read_free(table, PART_SIZES)
        read = read_part(table, stock, kerf)
        if read is not None:
            free = (
                Free(of=read.part.name, is_cabinet=False, dimension=size, limit=limit)
                for size, limit in sizes
            )
            read = replace(read, free=tuple(free))
        found.append(read)
        table.finish()
    for table in root.tables("part_list"):
        found += [read_part(row, stock, kerf) for row in read_part_list(table, folder)]
    parts = [read for read in found if read is not None]
    check_together(parts)
    return parts


def _check_whole(root: Table, parts: list[ReadPart], builds: tuple[CabinetBuild, ...]) -> None:
    """Record what is wrong with the file as a whole, and tables that cannot be used."""
    if not any(root.values.get(key) for key in ("part", "part_list", "cabinet")):
        root.fault(
            "there is nothing to cut",
            "Add a [[cabinet]] with name, height, width and depth, a [[part]] with name, length "
            "and width, or a [[part_list]] with a file.",
        )
    plain = sum(read.part.count for read in parts)
    copies = plain + sum(part.count for build in builds for part in build.parts)
    if plain <= MOST_COPIES < copies:
        root.fault(
            f"with its cabinets the job comes to {copies} pieces, more than {MOST_COPIES}",
            "Check the counts, or split the job.",
        )
    if root.has("covering") and not root.values.get("cabinet"):
        root.table("covering").fault(
            "there is no [[cabinet]] to cover", "Take this table out, or add a cabinet."
        )
    root.finish()
