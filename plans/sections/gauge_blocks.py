"""Two spacer blocks instead of guide figures.

Block A is as wide as the base plate left of the kerf, block B as the kerf and the base plate
right of it. A pencil mark stands where the near side of the kerf shall lie; laid against it, A
puts the guide on the side of the edge measured from, B on the other. Nothing is added up.
"""

from dataclasses import dataclass

from nesting.job import Job
from nesting.layout import By
from plans.sections.cut_table import CutRow
from plans.sections.numbers import show_with_unit
from plans.sections.precision import needs_fine_figures, show_keep
from plans.sections.worked import WorkedSheet

LEFT, RIGHT = "A", "B"


@dataclass(frozen=True, slots=True, kw_only=True)
class GaugeBlock:
    """A block to cut once, for all plans of this saw.

    Attributes:
        name: "A" or "B".
        size: Its width as text with unit.
        place: Where it lies, in words.
    """

    name: str
    size: str
    place: str


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockRow:
    """One cut set with a block.

    Attributes:
        number: Number of the cut.
        mark: Where the pencil mark stands, from the edge measured from: the keep size, for a trim
            what comes off without the kerf; "" where that is off the piece or the yard cuts.
        blocks: The blocks that can be used: "block A or B", "block A", "block B" or "".
        keep: The keep size of the row, to be measured afterwards.
        same_as: Number of the cut whose setting still stands, "" for a new one.
        remark: What to do where no block helps, else "".
    """

    number: str
    mark: str
    blocks: str
    keep: str
    same_as: str
    remark: str


def make_gauge_blocks(job: Job) -> tuple[GaugeBlock, GaugeBlock]:
    """Return the two blocks that fit a job's saw."""
    saw = job.saw
    return (
        GaugeBlock(
            name=LEFT,
            size=show_with_unit(saw.base_left, job.unit),
            place="between the guide and the mark, the guide nearer to the edge measured from",
        ),
        GaugeBlock(
            name=RIGHT,
            size=show_with_unit(saw.kerf + saw.base_right, job.unit),
            place="between the mark and the guide, the guide farther from the edge measured from",
        ),
    )


def make_block_rows(
    job: Job, worked: WorkedSheet, rows: tuple[CutRow, ...]
) -> tuple[BlockRow, ...]:
    """Return the cut table of a sheet with blocks in place of guide figures.

    Args:
        job: The job.
        worked: The sheet.
        rows: Its cut table, see `cut_table.make_rows`.
    """
    is_fine = needs_fine_figures(job, worked)
    found = []
    for step, row in zip(worked.sequence.steps, rows, strict=True):
        near_side = step.keep - job.saw.kerf if step.is_trim else step.keep
        mark = show_keep(near_side, job.unit, is_fine=is_fine)
        has_mark = step.by is By.HOME and near_side >= 0
        blocks = _usable(row.unusable) if has_mark else ""
        found.append(
            BlockRow(
                number=row.number,
                mark=mark if has_mark else "",
                blocks=blocks,
                keep=row.keep,
                same_as=row.same_as,
                remark="" if blocks or step.by is By.YARD else _remark(is_off=not has_mark),
            )
        )
    return tuple(found)


def _usable(unusable: str) -> str:
    return {
        "": f"block {LEFT} or {RIGHT}",
        "left": f"block {RIGHT}",
        "right": f"block {LEFT}",
        "both": "",
    }[unusable]


def _remark(*, is_off: bool) -> str:
    if is_off:
        return "The mark would lie off the piece: plane this edge down to the keep size."
    return "No room for the guide: lay a board of the same thickness beside the piece, then block B"
