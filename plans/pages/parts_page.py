"""The parts list, by cabinet, to hang on the wall: every piece with boxes to tick."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby, zip_longest

from plans.pages.blocks import Block, Section, moved, space
from plans.pages.lettering import NOTE, heading, paragraph
from plans.pages.paper import Paper
from plans.pages.part_lines import kind_rows, part_row, table_head
from plans.pages.rows import blank
from plans.pages.shapes import Anchor, Text
from plans.plan import Plan
from plans.sections.part_list import PartRow
from plans.sections.sessions import KitRow

MEASURE_FIRST = "measure first"
MANY = 3  # copies of a part that are listed two beside each other
PLACE = 52.0  # of a kit's line: room to write where its parts are kept


@dataclass(frozen=True, slots=True, kw_only=True)
class _Alike:
    """Cabinets with the same parts: their letters, and for every kind the copies of all."""

    letters: tuple[str, ...]
    kinds: tuple[tuple[PartRow, ...], ...]


def parts_section(plan: Plan, paper: Paper) -> Section:
    """Return the parts list."""
    width = paper.body_width
    head = table_head(width)
    asked = frozenset(piece.code for waiting in plan.bench.waiting for piece in waiting.pieces)
    return Section(
        title="Parts",
        blocks=(head, *_rows(plan.parts, plan.workshop.kits, width, asked)),
        later_head=(head,),
    )


def _rows(
    parts: Sequence[PartRow], kits: Sequence[KitRow], width: float, asked: frozenset[str]
) -> Iterator[Block]:
    """Yield the rows; those asked for on the page Measure first have no blanks here."""
    kit_of = {kit.cabinet: kit for kit in kits}
    explained: set[PartRow] = set()
    for cabinets in _alike_cabinets(parts):
        letters = [letter for letter in cabinets.letters if letter]
        if letters:
            names = "Cabinet " if len(letters) == 1 else "Cabinets alike: "
            yield space(2.0)
            yield heading(f"{names}{', '.join(letters)}", width)
        yield from (_kit(kit_of[letter], width) for letter in letters if letter in kit_of)
        for rows in cabinets.kinds:
            kind = _kind(rows[0])
            shared = replace(kind, cabinet="")
            is_first = shared not in explained
            explained.add(shared)
            reads = kind.status == MEASURE_FIRST and rows[0].code not in asked
            if not reads and len(rows) >= (MANY if len(letters) <= 1 else 2):
                yield from kind_rows(kind, rows, width, is_first=is_first)
                continue
            for place, row in enumerate(rows):
                yield part_row(row, width, is_first=is_first and not place, reads=reads)


def _alike_cabinets(parts: Sequence[PartRow]) -> list[_Alike]:
    """Return the cabinets, those that follow each other with the same parts together.

    The copies of a kind stand in turn, one of every cabinet, so that those of two cabinets make
    a column each.
    """
    found: list[_Alike] = []
    for letter, members in groupby(parts, key=lambda part: part.cabinet):
        kinds = tuple(tuple(copies) for _, copies in groupby(members, key=_kind))
        before = found[-1] if found else None
        if before is None or not letter or _bare(before.kinds, before.letters) != _bare(kinds):
            found.append(_Alike(letters=(letter,), kinds=kinds))
            continue
        found[-1] = _Alike(
            letters=(*before.letters, letter),
            kinds=tuple(
                _in_turn(mine, its, len(before.letters))
                for mine, its in zip(before.kinds, kinds, strict=True)
            ),
        )
    return found


def _bare(
    kinds: Sequence[Sequence[PartRow]], letters: Sequence[str] = ("",)
) -> list[tuple[PartRow, int]]:
    """Return the kinds of one cabinet without its letter, each with its number of copies."""
    return [(replace(_kind(rows[0]), cabinet=""), len(rows) // len(letters)) for rows in kinds]


def _in_turn(mine: Sequence[PartRow], its: Sequence[PartRow], cabinets: int) -> tuple[PartRow, ...]:
    """Return the copies of some cabinets with those of one more, one of every cabinet in turn."""
    turns = [mine[start : start + cabinets] for start in range(0, len(mine), cabinets)]
    return tuple(row for turn, more in zip_longest(turns, its) for row in (*(turn or ()), more))


def _kit(kit: KitRow, width: float) -> Block:
    """Return when all parts of a cabinet are there, their stack, and room for where it stands."""
    words = (
        f"{kit.cabinet}: {kit.parts} parts off {_sheets(kit.sheets)}, complete after cut "
        f"{kit.closes}. Stack, from the top: {', '.join(kit.stack)}."
    )
    text = paragraph(words, width - PLACE)
    kept = Text(x=width - PLACE + 21.0, y=3.8, words="kept at", height=NOTE, anchor=Anchor.END)
    return Block(
        height=text.height + 1.6,
        shapes=(
            *moved(text.shapes, 0.0, 0.0),
            kept,
            blank(width - PLACE + 23.0, 4.4, PLACE - 23.0),
        ),
        is_glued=True,
    )


def _sheets(numbers: str) -> str:
    return f"sheets {numbers}" if "," in numbers else f"sheet {numbers}"


def _kind(part: PartRow) -> PartRow:
    """Return what the copies of a part have in common."""
    return replace(part, code="", copy="", sheet="", cut="")
