"""Setting up in words: what a person does before the first cut, without a drawing."""

from collections.abc import Sequence

from nesting.lengths import Unit
from plans.sections.gauge_blocks import GaugeBlock

INTRODUCTION = (
    "This plan says what to cut. It does not teach the use of a saw and promises nothing about "
    "any cut. Each note, or the last of several, says whom to ask; where this plan says otherwise, "
    "they are right."
)
"""What stands before the cautions."""

TEST_CUT = (
    "Test cut: clamp the guide on scrap, draw a line along it, and cut with the base plate "
    "against it. Measure a, from the left edge of the base plate to the slot; k, across "
    "the slot; and b, from the slot to the right edge of the base plate."
)
COMPARE = (
    "Compare a, k, b and the thickness with the numbers to check. Where they differ, put "
    "them into the job file and make the plan again before anything is cut."
)
TWO_PLACES = (
    "L and R are two places for the guide, both from the edge that is measured from. Use "
    "one of them; one that is struck out would lie off the piece."
)
USE_BLOCKS = (
    "At each cut measure to the mark from the edge that is named, at both ends. There lay a block "
    "that the cut names against the mark, and the guide against the block; clamp, and take the "
    "block away. The blade runs just beyond the mark. “B beyond”: the guide lies on a board as "
    "thick beside the piece."
)


def set_up_lines(unit: Unit, blocks: Sequence[GaugeBlock] = ()) -> tuple[str, ...]:
    """Return how the saw is measured and the first edge and corner are made, in order."""
    return (*saw_lines(blocks), *edge_lines(unit))


def saw_lines(blocks: Sequence[GaugeBlock] = ()) -> tuple[str, ...]:
    """Return how the saw is measured, and how the guide comes to its place.

    Args:
        blocks: The blocks that set the guide; none where a tape does.
    """
    if not blocks:
        return (TEST_CUT, COMPARE, TWO_PLACES)
    names = " and ".join(f"{block.name}, {block.size} wide" for block in blocks)
    make = (
        f"Cut two blocks from a straight scrap: {names}. The test cut makes the first, between the "
        "guide's line and the slot. Write the letters on."
    )
    return (TEST_CUT, COMPARE, make, USE_BLOCKS)


def edge_lines(unit: Unit) -> tuple[str, ...]:
    """Return how the guide is tried and the first straight edge and square corner are made."""
    triangle = "600, 800 and 1000 mm" if unit is Unit.MM else "18, 24 and 30 in"
    return (
        (
            "Guide: draw a line along it, turn it over end for end to the other side of the line, "
            "and compare. A gap in the middle is twice the bend."
        ),
        "First cut: one straight edge. Measure from no other edge until it is there.",
        (
            f"Second cut: one square corner. A triangle of {triangle} has a square corner between "
            "its shorter sides; or compare the two diagonals."
        ),
        (
            "After each cut measure what you kept. It must be the KEEP size, not nearly: the next "
            "cut starts from it."
        ),
    )
