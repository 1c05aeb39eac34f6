"""The tables [[sheet.defect]]: places of real sheets that are not sound."""

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import Enum
from typing import Final

from nesting.lengths import Length
from nesting.reading.tables import Table
from nesting.reading.values import LARGEST, with_unit
from nesting.sheets import Defect, Sheet, Use

MOST_DEFECTS: Final = 20
TAPE_KEYS: Final = ("along", "across")


class Corner(Enum):
    """A corner of a sheet, as seen from the good face with its length from left to right."""

    BOTTOM_LEFT = "bottom left"
    BOTTOM_RIGHT = "bottom right"
    TOP_LEFT = "top left"
    TOP_RIGHT = "top right"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadDefect:
    """A defect, and which sheet of its kind has it.

    Attributes:
        on: Number of the sheet among those of its kind, from 1.
        defect: The defect.
    """

    on: int
    defect: Defect


def read_defects(
    table: Table, size: tuple[Length, Length], count: int | None
) -> tuple[ReadDefect, ...]:
    """Return the defects of one kind of sheet, after recording what is wrong with them.

    Args:
        table: The table of the sheet.
        size: Its length and width.
        count: How many of it there are, None where that is open.
    """
    tables = table.tables("defect")
    if tables and count is None:
        table.fault(
            "a defect lies on a sheet in hand, but not how many of these there are",
            "Add a line such as count = 1; sheets still to be bought are a [[sheet]] of their own.",
        )
    if len(tables) > MOST_DEFECTS:
        table.fault(
            f"it has {len(tables)} defects, more than {MOST_DEFECTS}",
            "Take the sheet back, or join defects that lie close together.",
        )
    return tuple(_read_defect(each, size, count or 1) for each in tables)


def tell_apart(sheet: Sheet, defects: Sequence[ReadDefect]) -> Iterator[Sheet]:
    """Yield the sheets of one kind: the sound ones together, each of the others by itself.

    Args:
        sheet: All of them, without their defects.
        defects: Which of them have which defects.
    """
    by_sheet: defaultdict[int, list[Defect]] = defaultdict(list)
    for read in defects:
        by_sheet[read.on].append(read.defect)
    if not by_sheet or sheet.count is None:
        yield sheet
        return
    if sheet.count > len(by_sheet):
        yield replace(sheet, count=sheet.count - len(by_sheet))
    for number, found in sorted(by_sheet.items()):
        name = sheet.name if sheet.count == 1 else name_one(sheet.name, number)
        told_from = "" if name == sheet.name else sheet.name
        yield replace(sheet, name=name, count=1, defects=tuple(found), told_from=told_from)


def name_one(name: str, number: int) -> str:
    """Return what one real sheet of a kind is called.

    >>> name_one("birch 18", 2)
    'birch 18, no. 2'
    """
    return f"{name}, no. {number}"


def _read_defect(table: Table, size: tuple[Length, Length], count: int) -> ReadDefect:
    what = table.text("what", "defect")
    on = table.whole("on", 1, least=1, most=LARGEST)
    extent = table.length("length"), table.length("width")
    use = table.choice("use", Use, Use.NOTHING)
    corner = table.choice("corner", Corner) if table.has("corner") else None
    along, across = (_read_tape(table, key, corner) for key in TAPE_KEYS)
    table.finish()
    if corner in {Corner.BOTTOM_RIGHT, Corner.TOP_RIGHT}:
        along = size[0] - extent[0]
    if corner in {Corner.TOP_LEFT, Corner.TOP_RIGHT}:
        across = size[1] - extent[1]
    if on > count:
        table.fault(
            f"it is on sheet {on}, and there {'is' if count == 1 else 'are'} {count}",
            "Number the sheets of this kind from 1, with chalk too, and give that number.",
            "on",
        )
    for key, reach, side, name in (
        ("along", max(along, 0) + extent[0], size[0], "length"),
        ("across", max(across, 0) + extent[1], size[1], "width"),
    ):
        if table.is_sound and reach > side:
            table.fault(
                f"it reaches to {with_unit(reach, table.unit)}, beyond the {name} of "
                f"{with_unit(side, table.unit)}",
                "Measure from the home corner to the near side of the defect, and the defect "
                "itself.",
                key if table.has(key) else name,
            )
    return ReadDefect(
        on=on,
        defect=Defect(what=what, x=along, y=across, length=extent[0], width=extent[1], use=use),
    )


def _read_tape(table: Table, key: str, corner: Corner | None) -> Length:
    """Return a tape reading; a defect at a corner has none."""
    if corner is None:
        return table.length(key, may_be_zero=True)
    if table.has(key):
        table.fault(
            f"{key!r} is given for a defect at a corner",
            "Take it out: the corner says where the defect is. Or take 'corner' out.",
            key,
            names_key=False,
        )
    return 0
