"""The screens of one sheet, or of several that are cut alike: how it lies, then cut by cut."""

from collections.abc import Iterator

from plans.phone.held import held_pieces
from plans.phone.records import Copy, Cut, Guide, SheetStart, Stop
from plans.sections.codes import WASTE
from plans.sections.cut_table import CutRow
from plans.sections.handed import Handed
from plans.sections.repeats import Repeat, matching_codes
from plans.sections.sessions import SessionRow, say_stop
from plans.sections.sheet_view import SheetView

TWO_PEOPLE = "TWO PEOPLE"


def sheet_screens(
    repeat: Repeat,
    copies: tuple[SheetView, ...],
    handed: Handed,
    sessions: tuple[SessionRow, ...],
    cautions: tuple[str, ...],
) -> Iterator[SheetStart | Cut | Stop]:
    """Yield the screens of a sheet.

    Args:
        repeat: The sheet, and those that are cut like it.
        copies: The latter.
        handed: What depends on the hand that holds the saw.
        sessions: Where the work can be left.
        cautions: What stands on the pages of every sheet.
    """
    view = repeat.view
    key = f"sheet-{view.number}"
    title = _title(repeat)
    yield SheetStart(
        key=key, title=title, repeat=repeat, alike=_say_alike(repeat), cautions=cautions
    )
    names = _names(view)
    stops = {row.last: row for row in sessions[:-1]}  # after the last one there is nothing to stop
    matches = [(other.number, matching_codes(view, other)) for other in copies]
    for held in held_pieces(view):
        row = held.row
        yield Cut(
            key=f"{key}-cut-{row.number}",
            title=title,
            count=f"cut {row.number} of {len(view.rows)}",
            view=view,
            held=held,
            people=TWO_PEOPLE if row.people > 1 else "one person",
            remark=_remark(row),
            kept=(row.keep_code, names.get(row.keep_code, "")),
            freed=(row.free_code, names.get(row.free_code, "")),
            setting=_setting(row),
            guides=tuple(_guides(row, handed)),
            copies=tuple(_copies(row, view.number, matches)),
            cautions=cautions,
        )
        lines = tuple(
            say_stop(stops[name], number, repeat.count)
            for number in repeat.numbers
            if (name := f"{number}.{row.number}") in stops
        )
        if lines:
            yield Stop(key=f"{key}-cut-{row.number}-stop", title="Stop here", lines=lines)


def _title(repeat: Repeat) -> str:
    """Return what a sheet is called, the same as on paper: "Sheet 2", or "Sheet 2 × 3"."""
    return f"Sheet {repeat.view.number}" + (f" × {repeat.count}" if repeat.count > 1 else "")


def _say_alike(repeat: Repeat) -> str:
    if repeat.count == 1:
        return ""
    numbers = ", ".join(map(str, repeat.numbers))
    return (
        f"{repeat.count} SHEETS ARE CUT ALIKE: {numbers}. The codes drawn are those of sheet "
        f"{repeat.view.number}. Each cut has a box for each sheet, with its codes."
    )


def _names(view: SheetView) -> dict[str, str]:
    names = {
        part.code: f"{part.name}, {part.status}" if part.status != "final" else part.name
        for part in view.parts
    }
    return names | {rest.code: "offcut" for rest in view.rests if rest.code != WASTE}


def _remark(row: CutRow) -> str:
    """Return what to look out for: the remark without the people, and what carries the piece."""
    rest = row.remark.removeprefix(TWO_PEOPLE).removeprefix("; ")
    return "; ".join(words for words in (rest, row.support) if words)


def _setting(row: CutRow) -> str:
    if _is_by_yard(row):
        return "The yard makes this cut."
    if row.blocks and not row.mark:
        return "No guide is set for this cut: see above."
    if row.same_as:
        return f"Same setting as cut {row.same_as}: do not move the guide."
    return "New setting. Block at its mark" if row.blocks else "New setting. Guide at"


def _is_by_yard(row: CutRow) -> bool:
    return not (row.guide_left or row.guide_right or row.blocks)


def _guides(row: CutRow, handed: Handed) -> Iterator[Guide]:
    """Yield the places for the guide, or the block and its mark; none for the yard's own saw."""
    if row.mark:
        yield Guide(sign=f"{row.blocks} at", figure=row.mark, is_off=False)
        return
    if row.blocks:
        return
    figures = {"left": row.guide_left, "right": row.guide_right}
    for side in handed.columns if not _is_by_yard(row) else ():
        yield Guide(
            sign=side[0].upper(), figure=figures[side], is_off=row.unusable in (side, "both")
        )


def _copies(row: CutRow, first: int, matches: list[tuple[int, dict[str, str]]]) -> Iterator[Copy]:
    """Yield the sheets to tick at a cut, with their codes; none for a sheet that is alone."""
    made = tuple(code for code in (row.keep_code, row.free_code) if code)
    if matches:
        yield Copy(number=first, hold=row.hold, made=made)
    for number, match in matches:
        yield Copy(
            number=number,
            hold=match[row.hold],
            made=tuple(match.get(code, code) for code in made),
        )
