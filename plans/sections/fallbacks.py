"""The fallback map: what each large part can still become if it is spoilt."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from nesting.fallbacks import Blank, Fallback, find_fallbacks
from nesting.layout import PartLeaf
from nesting.lengths import Length, Unit, mm
from nesting.parts import Grain
from plans.sections.numbers import show_size
from plans.sections.worked import Worked, WorkedSheet

LARGE = mm(300) * mm(300)
"""Area from which a spoilt part is worth a thought (judgement)."""
MOST_NAMED = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class FallbackRow:
    """What one kind of part can still become.

    Attributes:
        codes: Codes of its copies that lie alike, in the order of cutting.
        name: Its name; copies may be of several cabinets.
        size: Its blank as it lies, the side along the sheet's length first.
        becomes: "1 × Brace 400 × 80 or 2 × Cleat 200 × 40", the largest first.
    """

    codes: tuple[str, ...]
    name: str
    size: str
    becomes: str


def make_fallback_rows(worked: Worked) -> tuple[FallbackRow, ...]:
    """Return a row for every large part that can still become a smaller one, largest first."""
    rows: dict[tuple[str, str, str], list[str]] = {}
    areas: dict[tuple[str, str, str], int] = {}
    for sheet in worked.sheets:
        for code, key, area in _entries(worked, sheet):
            rows.setdefault(key, []).append(code)
            areas[key] = area
    return tuple(
        FallbackRow(codes=tuple(rows[key]), name=key[0], size=key[1], becomes=key[2])
        for key in sorted(rows, key=lambda key: -areas[key])
    )


def make_blank(name: str, length: Length, width: Length, grain: Grain, unit: Unit) -> Blank:
    """Return a blank that is called by its name and size, as names come again with other sizes."""
    called = f"{name} {show_size(length, width, unit)}"
    return Blank(name=called, length=length, width=width, grain=grain)


def say_fallbacks(fallbacks: Sequence[Fallback]) -> str:
    """Return the fallbacks in words, the first few of them; empty for none."""
    return " or ".join(f"{each.count} × {each.name}" for each in fallbacks[:MOST_NAMED])


def _entries(worked: Worked, sheet: WorkedSheet) -> Iterator[tuple[str, tuple[str, str, str], int]]:
    """Yield code, row and area of the large parts of a sheet that can become something."""
    job = worked.job
    board = (sheet.sheet.material, sheet.sheet.thickness)
    for freed in sheet.freed:
        node, rect = freed.place.node, freed.place.rect
        if not isinstance(node, PartLeaf) or rect.length * rect.width < LARGE:
            continue
        others = (
            make_blank(part.name, part.blank_length, part.blank_width, part.grain, job.unit)
            for index, part in enumerate(job.parts)
            if index != node.part and not part.spare_of and (part.material, part.thickness) == board
        )
        becomes = say_fallbacks(
            find_fallbacks(rect.length, rect.width, sheet.sheet.grain, others, kerf=job.saw.kerf)
        )
        if becomes:
            size = show_size(rect.length, rect.width, job.unit)
            key = (job.parts[node.part].name, size, becomes)
            yield sheet.codes[freed.place.path], key, rect.length * rect.width
