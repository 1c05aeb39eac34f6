"""Guides set with two blocks: what the printed blocks and marks come to, and whether they fit."""

from collections.abc import Iterator
from functools import partial

from nesting.errors import Fault
from plans.rehearsal.fields import Fields
from plans.rehearsal.printed import Nanometres, PrintedUnit, read_figure
from plans.rehearsal.records import WRITTEN, Blocks, PlanFile
from plans.rehearsal.row_checks import DO_NOT_CUT

NO_BLOCK = "none"
# Which side of the blade is not to be used, by the blocks that are named.
_UNUSABLE = {"A or B": "", "B": "left", "A": "right", "B beyond": "both", NO_BLOCK: "both"}


def read_blocks(fields: Fields, unit: PrintedUnit) -> Blocks | None:
    """Return the blocks of a plan; None where a tape sets its guide."""
    if fields.table.get("blocks") is None:
        return None
    blocks = fields.child("blocks", "blocks")
    size = partial(_read_size, unit=unit)
    return Blocks(before=blocks.printed("A", size, 0), beyond=blocks.printed("B", size, 0))


def read_places(
    line: Fields, blocks: Blocks, unit: PrintedUnit
) -> tuple[tuple[Nanometres, Nanometres] | None, str]:
    """Return where a row's mark and the blocks bring the guide, and which side must not be used."""
    named = line.choice("blocks", tuple(_UNUSABLE))
    unusable = _UNUSABLE.get(named, "")
    if named == NO_BLOCK:
        return None, unusable
    mark = line.printed("mark", partial(read_figure, unit=unit), 0)
    return (mark - blocks.before, mark + blocks.beyond), unusable


def check_blocks(plan: PlanFile) -> Iterator[Fault]:
    """Yield where a block is not as wide as it must be for the saw."""
    if plan.blocks is None:
        return
    saw, unit = plan.saw, plan.unit
    for name, printed, needed in (
        ("A", plan.blocks.before, saw.base_left),
        ("B", plan.blocks.beyond, saw.kerf + saw.base_right),
    ):
        if abs(printed - needed) > unit.half_step + WRITTEN:
            yield Fault(
                where=f"block {name}",
                what=f"it is printed {unit.show(printed)}, this saw needs {unit.show(needed)}",
                remedy=DO_NOT_CUT,
            )
    for sheet in plan.sheets:
        for row in sheet.rows:
            is_thin_trim = row.keep.is_trim and row.keep.size < saw.kerf + unit.half_step
            if row.is_at_home and row.guides is None and not is_thin_trim:
                yield Fault(
                    where=f"sheet {sheet.number}, cut {row.number}",
                    what="no block is named for it",
                    remedy=DO_NOT_CUT,
                )


def _read_size(text: str, unit: PrintedUnit) -> Nanometres:
    """Return what a size with its unit means, such as "132.4 mm"."""
    figure = text.removesuffix(f" {unit.name}")
    if figure == text:
        raise ValueError(f"{text!r} does not name its unit, {unit.name}")
    return read_figure(figure, unit)
