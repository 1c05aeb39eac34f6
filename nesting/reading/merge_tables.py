"""The tables [[merge]]: a part that looks like another one takes its size, where that is free.

Parts that differ by a few millimetres are easily taken for each other. Where the job file calls the
sizes that differ free, one part is made like the other before anything else is worked out.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final

from nesting.cabinets.build import CabinetBuild
from nesting.cabinets.families import Design
from nesting.errors import InputError
from nesting.job import Assumption
from nesting.lengths import Length, format_length
from nesting.parts import Part
from nesting.reading.cabinets import ReadCabinet
from nesting.reading.plain_parts import ReadPart
from nesting.reading.tables import Table
from nesting.reading.values import did_you_mean, with_unit

SIDES: Final = ("length", "width")

Expand = Callable[[Design, tuple[str, ...]], CabinetBuild]
"""Works out the cabinets of a design, given their letters."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Merged:
    """The parts and cabinets of a job with its merges made.

    Attributes:
        parts: The plain parts.
        cabinets: The designs.
        builds: What is cut for them.
        assumptions: What was changed, from what to what.
    """

    parts: list[ReadPart]
    cabinets: list[ReadCabinet]
    builds: tuple[CabinetBuild, ...]
    assumptions: tuple[Assumption, ...] = ()


def merge_parts(tables: Sequence[Table], merged: Merged, expand: Expand) -> Merged:
    """Return parts and cabinets with every merge made, after recording the faults of the others.

    Args:
        tables: The tables [[merge]].
        merged: The parts and cabinets as the file gives them.
        expand: Works out cabinets again whose outside has changed.
    """
    for table in tables:
        name, like = table.text("part"), table.text("like")
        table.finish()
        if table.is_sound:
            merged = _merge(table, name, like, merged, expand)
    return merged


def _merge(table: Table, name: str, like: str, merged: Merged, expand: Expand) -> Merged:
    known = dict(_list_parts(merged))
    for key, wanted in (("part", name), ("like", like)):
        if wanted not in known:
            table.fault(
                f"there is no part {wanted!r}",
                f"{did_you_mean(wanted, list(known))}Write the name of a [[part]], or that of a "
                'cabinet and its part, such as "Cupboard: Shelf".',
                key,
            )
            return merged
    part, other = known[name], known[like]
    if (part.material, part.thickness) != (other.material, other.thickness):
        table.fault(
            f"{name!r} and {like!r} are not of the same board",
            "Only parts of one material and thickness can be made alike.",
        )
        return merged
    for side in SIDES:
        before, after = getattr(part, side), getattr(other, side)
        if before != after:
            changed = (
                _change_cabinet(name, side, after - before, merged, expand)
                if part.cabinet
                else _change_plain(name, side, after - before, merged)
            )
            if changed is None:
                _refuse(table, name, side, after - before, is_cabinet=bool(part.cabinet))
                return merged
            note = _assume(table, name, like, side, (before, after))
            merged = replace(changed, assumptions=(*changed.assumptions, note))
    return merged


def _list_parts(merged: Merged) -> Iterator[tuple[str, Part]]:
    """Yield every part under the name that a merge calls it by: "Shelf", "Cupboard: Shelf"."""
    for build in merged.builds:
        for part in build.parts:
            yield f"{build.name}: {part.name}", part
    for read in merged.parts:
        yield read.part.name, read.part


def _change_plain(name: str, side: str, by: Length, merged: Merged) -> Merged | None:
    """Return the parts with one size of a plain part changed; None where it is not free so far."""
    parts = []
    for read in merged.parts:
        if read.part.name == name:
            limits = [free.limit for free in read.free if free.dimension.value == side]
            if abs(by) > max(limits, default=0):
                return None
            size = getattr(read.part, side) + by
            read = replace(read, part=replace(read.part, **{side: size}))  # noqa: PLW2901
        parts.append(read)
    return replace(merged, parts=parts)


def _change_cabinet(
    name: str, side: str, by: Length, merged: Merged, expand: Expand
) -> Merged | None:
    """Return the cabinets with one free outside size changed so that a part of one comes out right.

    None where no free size of its design does that within its limit.
    """
    design_name = name.partition(": ")[0]
    number = next(n for n, each in enumerate(merged.cabinets) if each.design.name == design_name)
    read = merged.cabinets[number]
    wanted = getattr(dict(_list_parts(merged))[name], side) + by
    for free in read.free:
        key = free.dimension.value
        if abs(by) > free.limit:
            continue
        try:
            design = replace(read.design, **{key: getattr(read.design, key) + by})
            build = expand(design, merged.builds[number].letters)
        except InputError:
            continue
        changed = replace(
            merged,
            cabinets=[*merged.cabinets],
            builds=(*merged.builds[:number], build, *merged.builds[number + 1 :]),
        )
        changed.cabinets[number] = replace(read, design=design)
        after = dict(_list_parts(changed)).get(name)
        if after is not None and getattr(after, side) == wanted:
            return changed
    return None


def _refuse(table: Table, name: str, side: str, by: Length, *, is_cabinet: bool) -> None:
    """Record that a size is not free."""
    unit = table.unit
    remedy = (
        "Name an outside size that moves it under 'free' of its [[cabinet]]"
        if is_cabinet
        else f'Write free = ["{side}"] in its [[part]]'
    )
    table.fault(
        f"the {side} of {name!r} would change by {with_unit(abs(by), unit)}, and it is not free "
        "to do so",
        f"{remedy}, with a free_limit of at least that, or take this table out.",
    )


def _assume(
    table: Table, name: str, like: str, side: str, sizes: tuple[Length, Length]
) -> Assumption:
    before, after = (format_length(size, table.unit) for size in sizes)
    return Assumption(
        name=f"{name} is made like {like}",
        value=f"{side} {before} → {after} {table.unit.value}",
        is_default=False,
        check="The two may now take each other's place.",
    )
