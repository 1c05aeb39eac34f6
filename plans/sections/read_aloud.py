"""A plan to be read aloud: one person reads, the other measures and saws.

Figures are read sign by sign, so that fifteen is not heard as fifty, and 6 and 9 are underlined on
the page, so that the sheet may be held either way up.
"""

from dataclasses import dataclass

from plans.sections.codes import WASTE
from plans.sections.cut_table import CutRow
from plans.sections.sheet_view import SheetView


@dataclass(frozen=True, slots=True, kw_only=True)
class SpokenCut:
    """One cut in words, each line read and repeated before the next.

    Attributes:
        number: "cut 1-2".
        hold: "take P-5".
        keep: "keep 4-6-4 point 5, from the left edge", or "trim 1-0, from the top edge".
        guide: "guide left 4-2-6 point 5, or right 5-9-6 point 9", or "block A at the mark 4-6-4
            point 5"; where it stays, that it does; "" where the yard cuts, or the guide fits
            nowhere.
        gives: "gives A-3, and P-9 falls free".
        remark: As in the cut table.
    """

    number: str
    hold: str
    keep: str
    guide: str
    gives: str
    remark: str


def make_spoken(view: SheetView) -> tuple[SpokenCut, ...]:
    """Return the cuts of a sheet in words."""
    return tuple(_spoken(row) for row in view.rows)


def spell(figure: str) -> str:
    """Return a figure as it is read aloud, sign by sign.

    >>> spell("464.5"), spell("14 1/8"), spell("63/64"), spell("12")
    ('4-6-4 point 5', '1-4 and 1 over 8', '6-3 over 6-4', '1-2')
    """
    return " and ".join(_spell_word(word) for word in figure.split(" "))


def spell_code(code: str) -> str:
    """Return a code as it is read aloud.

    >>> spell_code("P16"), spell_code("WASTE")
    ('P-1-6', 'waste')
    """
    return "waste" if code == WASTE else "-".join(code)


def underlined_signs(text: str) -> tuple[int, ...]:
    """Return the places of the signs to underline in a text: every 6 and 9."""
    return tuple(place for place, sign in enumerate(text) if sign in "69")


def _spell_word(word: str) -> str:
    over = [
        " point ".join("-".join(figures) for figures in side.split(".")) for side in word.split("/")
    ]
    return " over ".join(over)


def _spoken(row: CutRow) -> SpokenCut:
    figure = row.keep.removeprefix("trim ")
    verb = "keep" if figure == row.keep else "trim"
    free = f", and {spell_code(row.free_code)} falls free" if row.free_code else ""
    return SpokenCut(
        number=f"cut {spell(row.number)}",
        hold=f"take {spell_code(row.hold)}",
        keep=f"{verb} {spell(figure)}, from the {row.measure_from}",
        guide=_guide(row),
        gives=f"gives {spell_code(row.keep_code)}{free}",
        remark=row.remark,
    )


def _guide(row: CutRow) -> str:
    if row.same_as:
        return f"guide stays as in cut {spell(row.same_as)}"
    if row.mark:
        return f"block {row.blocks} at the mark {spell(row.mark)}"
    figures = [
        f"{side} {spell(figure)}"
        for side, figure in (("left", row.guide_left), ("right", row.guide_right))
        if figure and row.unusable not in (side, "both")
    ]
    return f"guide {', or '.join(figures)}" if figures else ""
