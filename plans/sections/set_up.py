"""Setting up in words: what a person does before the first cut, without a drawing."""

from nesting.lengths import Unit

INTRODUCTION = (
    "This plan says what to cut. It does not teach the use of a saw and promises nothing about "
    "any cut. Where it differs from the one named under a note, or under those that follow it, "
    "that one is right."
)
"""What stands before the cautions."""


def set_up_lines(unit: Unit) -> tuple[str, ...]:
    """Return how the saw is measured and the first edge and corner are made, in order."""
    triangle = "600, 800 and 1000 mm" if unit is Unit.MM else "18, 24 and 30 in"
    return (
        (
            "Test cut: clamp the guide on scrap, draw a line along it, and cut with the base plate "
            "against it. Measure a, from the left edge of the base plate to the slot; k, across "
            "the slot; and b, from the slot to the right edge of the base plate."
        ),
        (
            "Compare a, k, b and the thickness with the numbers to check. Where they differ, put "
            "them into the job file and make the plan again before anything is cut."
        ),
        (
            "L and R are two places for the guide, both from the edge that is measured from. Use "
            "one of them; one that is struck out would lie off the piece."
        ),
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
