"""How the signs of the drawings look, for the legend beside their words."""

from dataclasses import replace

from plans.pages.boxes import Box
from plans.pages.lettering import NOTE
from plans.pages.shapes import Hatch, HatchKind, Line, LineKind, Rectangle, Role, Shape, Text
from plans.pages.sheet_marks import bar, grain_arrow

WIDTH = 14.0
OWN_SIGNS = (
    ("number in a line", "the number of that cut."),
    ("arrow, two heads", "the direction of the face grain."),
    ("heavy corner", "the home corner: the sheet lies with this corner as drawn."),
    ("thick rule", "the work can be left here: the end of a session."),
    ("bar before KEEP", "these cuts are made at one setting of the guide."),
    ("on a board", "lay the piece whole on a board that may be sawn into."),
    ("dashed bar", "a batten under the work, in the small drawings at the foot."),
    ("bar under L or R", "guide and clamps overhang there: lay a board as thick beside the piece."),
    ("struck out", "the guide would lie off the piece: use the other figure."),
)
"""Signs that the pages add to those of the plan's legend, with their meanings."""


def draw_sign(word: str) -> tuple[Shape, ...]:
    """Return how a word of the legend looks in the drawings; nothing where it is no sign.

    A plan's legend and this list share their words; one that is not known here has no picture.
    """
    box = Box(1.0, 0.9, WIDTH - 1.0, 5.1)
    middle, centre = (box.top + box.bottom) / 2, (box.left + box.right) / 2
    area = Hatch(x=box.left, y=box.top, width=box.width, height=box.height, kind=HatchKind.PART)
    outline = Rectangle(
        x=box.left, y=box.top, width=box.width, height=box.height, kind=LineKind.CUT
    )
    edge = replace(outline, kind=LineKind.DEFECT_EDGE)
    across = Line(x1=box.left, y1=middle, x2=box.right, y2=middle, kind=LineKind.CUT)
    word_at = Text(x=1.0, y=4.2, words="", height=NOTE, bold=True)
    signs: dict[str, tuple[Shape, ...]] = {
        "plain outline": (area, outline),
        "diagonal hatch": (replace(area, kind=HatchKind.WASTE), outline),
        "dotted outline": (replace(area, kind=HatchKind.OFFCUT), outline),
        "crossed hatch": (replace(area, kind=HatchKind.DEFECT), edge),
        "dashed hatch": (replace(area, kind=HatchKind.STAIN), edge),
        "double line": (
            replace(across, y1=middle + 0.8, y2=middle + 0.8, kind=LineKind.REFERENCE_EDGE),
        ),
        "6 and 9": (replace(word_at, y=3.6, words="A6", role=Role.CODE),),
        "slack, TIGHT": (replace(word_at, x=0.3, words="TIGHT"),),
        "number in a line": (
            replace(across, x2=centre - 2.0),
            replace(word_at, x=centre - 1.3, y=middle + NOTE / 2, words="7"),
            replace(across, x1=centre + 2.0),
        ),
        "arrow, two heads": grain_arrow(Box(box.left, middle - 0.9, box.right, middle + 0.9)),
        "heavy corner": (
            bar(Box(centre - 2.5, box.top, centre + 2.5, box.top + 1.4)),
            bar(Box(centre - 2.5, box.top, centre - 1.1, box.bottom)),
        ),
        "thick rule": (replace(across, kind=LineKind.STOP),),
        "bar before KEEP": (
            Line(x1=centre, y1=0.4, x2=centre, y2=5.2, kind=LineKind.SAME_SETTING),
        ),
        "dashed bar": (replace(across, kind=LineKind.SUPPORT),),
        "bar under L or R": (
            replace(word_at, x=centre - 1.0, y=3.6, words="L", bold=False),
            bar(Box(centre - 1.0, 4.3, centre + 1.0, 5.1)),
        ),
        "struck out": (replace(word_at, x=2.0, words="318", bold=False, is_struck=True),),
    }
    return signs.get(word, ())
