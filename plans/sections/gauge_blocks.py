"""Two spacer blocks instead of guide figures.

Block A is as wide as the base plate left of the kerf, block B as the kerf and the base plate
right of it. A pencil mark stands where the near side of the kerf shall lie; laid against it, A
puts the guide on the side of the edge measured from, B on the other. Nothing is added up.
"""

from dataclasses import dataclass

from nesting.cut_sequence import Step
from nesting.job import Job
from nesting.lengths import Length
from nesting.saw import SetWith
from plans.sections.numbers import show_with_unit

LEFT, RIGHT = "A", "B"
NO_BLOCK = "none"
BLOCKS = {
    "": f"{LEFT} or {RIGHT}",
    "left": RIGHT,
    "right": LEFT,
    "both": f"{RIGHT} beyond",
}
"""The blocks that can be used, by the side on which the guide has no room on the piece."""

OFF_THE_PIECE = "the mark would lie off the piece: plane this edge down to the KEEP size"


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


def make_gauge_blocks(job: Job) -> tuple[GaugeBlock, ...]:
    """Return the two blocks that fit a job's saw; none where a tape sets the guide."""
    saw = job.saw
    if saw.set_with is not SetWith.BLOCKS:
        return ()
    return (
        GaugeBlock(
            name=LEFT,
            size=show_with_unit(saw.base_left, job.unit),
            place="from the edge measured from: guide, A, mark",
        ),
        GaugeBlock(
            name=RIGHT,
            size=show_with_unit(saw.kerf + saw.base_right, job.unit),
            place="from the edge measured from: mark, B, guide",
        ),
    )


def find_mark(job: Job, step: Step) -> Length | None:
    """Return where the mark stands, from the edge measured from; None where that is off the piece.

    It is the keep size; for a trim what comes off without the kerf.
    """
    near_side = step.keep - job.saw.kerf if step.is_trim else step.keep
    return near_side if near_side >= 0 else None
