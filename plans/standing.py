"""Where was I? What is cut, how the guide still stands, and what comes next."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from nesting.garage.marks import Marks, is_there
from nesting.garage.planned import Planned
from plans.plan_reading import printed_rows

Json = Mapping[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """Where the work stands.

    Attributes:
        made: How many cuts are marked.
        total: How many the plan has.
        last: Name of the cut marked last, "1.7", "" where none is.
        following: Name of the next cut, "" where none can be made.
        text: The same in one line, with the setting that still stands on the guide.
    """

    made: int
    total: int
    last: str
    following: str
    text: str


def find_standing(document: Json, planned: Planned, marks: Marks) -> Standing:
    """Return where the work stands.

    Args:
        document: The content of the plan file, for what is printed.
        planned: The same, read back.
        marks: What has been marked.
    """
    rows = {(sheet, int(row["number"])): row for sheet, row in printed_rows(document)}
    last = marks.last_cut
    following = _next_cut(planned, marks)
    sentences = [_so_far(marks, planned.cut_count)]
    if _is_cabinet_whole(planned, marks):
        sentences.append(f"Cabinet {planned.first_whole} is cut whole: put it together dry now.")
    before = rows.get(last) if last else None
    after = rows.get(following) if following else None
    if after is not None and following is not None:
        sentences.append(
            f"Next is cut {_name(following)}: take {after['hold']} ({after['hold_size']}), "
            f"{_position(after)}."
        )
    sentences += _say_guide(before, after)
    if after is None:
        sentences.append(
            "Everything is cut."
            if len(marks.cuts) == planned.cut_count
            else "No cut can be made as planned: plan the rest with 'setout resume'."
        )
    return Standing(
        made=len(marks.cuts),
        total=planned.cut_count,
        last=_name(last) if last else "",
        following=_name(following) if following else "",
        text=" ".join(sentences),
    )


def say_going_on(before: Json, planned: Planned, marks: Marks, after: Json) -> str:
    """Return in one line where the old plan was left and what the new one begins with.

    Args:
        before: The content of the old plan file.
        planned: The same, read back.
        marks: What has been marked of it.
        after: The content of the new plan file.
    """
    rows = {(sheet, int(row["number"])): row for sheet, row in printed_rows(before)}
    sentences = [_so_far(marks, planned.cut_count)]
    first = next(iter(printed_rows(after)), None)
    last = rows.get(marks.last_cut) if marks.last_cut else None
    if first is not None:
        number, row = first
        stock = next(sheet["stock"] for sheet in after["sheets"] if sheet["number"] == number)
        sentences.append(
            f"Next is cut {number}.{row['number']} of plan {after['fingerprint']}: take {stock} "
            f"({row['hold_size']}), {_position(row)}."
        )
    sentences += _say_guide(last, first[1] if first else None)
    return " ".join(sentences)


def _say_guide(before: Json | None, after: Json | None) -> Iterator[str]:
    """Yield how the guide stands after one cut, and whether it must be moved for the next."""
    if after is not None and _is_by_yard(after):
        yield "The yard makes this cut."
    elif before is None or not _is_set(before):
        return
    elif after is None or not _is_set(after):
        yield f"The guide still stands for {_position(before)}."
    elif _position(before) == _position(after):
        yield "The guide still stands for it: do not move it."
    else:
        yield f"The guide still stands for {_position(before)}: move it."


def _is_set(row: Json) -> bool:
    """Return whether the guide is set for a cut: not at the yard, nor where an edge is planed."""
    return bool(row.get("guide_left") or row.get("mark"))


def _is_by_yard(row: Json) -> bool:
    return not (row.get("guide_left") or row.get("blocks"))


def _so_far(marks: Marks, total: int) -> str:
    if marks.last_cut is None:
        return f"None of {total} cuts is marked."
    return f"{len(marks.cuts)} of {total} cuts are marked, the last was {_name(marks.last_cut)}."


def _next_cut(planned: Planned, marks: Marks) -> tuple[int, int] | None:
    """Return the first cut not made whose piece is there.

    Those for the first whole cabinet come before others, the sheet in work before others.
    """
    in_work = marks.last_cut[0] if marks.last_cut else 0
    ready = [
        (piece.cut_by > sheet.pause, sheet.number != in_work, sheet.number, piece.cut_by)
        for sheet, piece in planned.pieces()
        if piece.cut_by and is_there(sheet, piece, marks)
    ]
    return min(ready)[2:] if ready else None


def _is_cabinet_whole(planned: Planned, marks: Marks) -> bool:
    """Return whether the cut marked last was the last one for the first whole cabinet."""
    for_it = {(sheet.number, cut) for sheet in planned.sheets for cut in range(1, sheet.pause + 1)}
    return marks.last_cut in for_it and for_it <= set(marks.cuts)


def _position(row: Json) -> str:
    """Return how the guide stands for a cut."""
    keep = row["keep"]
    size = keep if keep.startswith("trim") else f"keep {keep}"
    return f"{row['direction']}, {size} from the {row['measure_from']}"


def _name(cut: tuple[int, int]) -> str:
    return f"{cut[0]}.{cut[1]}"
