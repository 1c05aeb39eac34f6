"""The cut table of one sheet: one row a cut, every figure as it is printed.

The figures are texts on purpose: they are rounded to the printed step here, once, and the page,
the plan file and the rehearsal all use these very texts.
"""

from dataclasses import dataclass

from nesting.layout import Direction


@dataclass(frozen=True, slots=True, kw_only=True)
class CutRow:
    """One cut as the person at the saw reads it.

    Attributes:
        number: Number of the cut on its sheet, from 1, in the order of doing.
        hold: Code of the piece in hand: "S2" for whole sheet 2, "P5" for a piece cut before.
        hold_size: Its size as it is drawn, across the drawing first: "2440 × 1220".
        hold_mass: Its mass in kilograms, "36.7".
        people: 1, or 2 where the piece is over the lift limit.
        direction: Rip or crosscut.
        measure_from: Name of the edge as drawn: "left edge", "top edge" or "bottom edge".
        keep: Distance from that edge to the fresh edge, "356"; for a trim cut "trim 10": what
            comes off, fresh edge at 10 from the raw edge.
        keep_code: Code of the piece between the edge and the blade: a part, a piece, an offcut, or
            "WASTE"; for a trim cut the code of what is left after the raw edge is off.
        guide_left: Where the guide goes on the near side, from the same edge.
        guide_right: Where the guide goes on the far side, from the same edge.
        unusable: "left", "right", "both" or "": the figure that is struck out, because the guide
            would lie off the piece.
        free_code: What falls free: a part, a piece, an offcut, or "WASTE".
        setting: Number of the setting on its sheet, from 1; rows that share it are consecutive.
        same_as: Number of the cut whose setting still stands, "" for a new one.
        remark: A short line, such as "clamp or cut by hand: 45 wide".
    """

    number: str
    hold: str
    hold_size: str
    hold_mass: str
    people: int
    direction: Direction
    measure_from: str
    keep: str
    keep_code: str
    guide_left: str
    guide_right: str
    unusable: str
    free_code: str
    setting: int
    same_as: str
    remark: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StripSum:
    """What a piece that is cut into a row of pieces adds up to.

    Attributes:
        piece: Code of the piece.
        text: "2430 = 562 + 2.4 + 562 + 2.4 + 1301.2 left".
        slack: What is left at the end, as text.
        is_tight: True where the slack is less than 1 mm a cut and 2 mm.
    """

    piece: str
    text: str
    slack: str
    is_tight: bool
