"""Sheets that are cut alike: they are printed once, with the codes of all copies.

Sheets are alike where everything on their pages is the same but the codes: the stock, what lies
where, every figure of the cut table. Codes then answer each other place by place.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from plans.sections.codes import WASTE
from plans.sections.sheet_view import PartView, RestView, SheetView

View = TypeVar("View", PartView, RestView)


@dataclass(frozen=True, slots=True, kw_only=True)
class CodePair:
    """The code of a place on the sheet that is drawn, and its codes on the copies, in order."""

    drawn: str
    copies: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Repeat:
    """Sheets that are cut alike.

    Attributes:
        view: The first of them, the one that is drawn.
        numbers: The numbers of all, the first one first.
        places: For every part and offcut of the first its codes on the others.
        pieces: The same for the pieces on the way, in the order in which they come free.
    """

    view: SheetView
    numbers: tuple[int, ...]
    places: tuple[CodePair, ...] = ()
    pieces: tuple[CodePair, ...] = ()

    @property
    def count(self) -> int:
        """How many sheets they are."""
        return len(self.numbers)


def find_repeats(views: Sequence[SheetView]) -> tuple[Repeat, ...]:
    """Return the sheets, those that are cut alike together, in the order of the first of each."""
    alike: dict[SheetView, list[SheetView]] = {}
    for view in views:
        alike.setdefault(_without_codes(view), []).append(view)
    return tuple(_repeat(members) for members in alike.values())


def matching_codes(first: SheetView, other: SheetView) -> dict[str, str]:
    """Return for every code of a sheet the code in the same place of one that is cut alike."""
    return dict(zip(_codes(first), _codes(other), strict=True))


def _repeat(members: Sequence[SheetView]) -> Repeat:
    first = members[0]
    if len(members) == 1:
        return Repeat(view=first, numbers=(first.number,))
    matches = [matching_codes(first, other) for other in members[1:]]
    placed = [
        *(part.code for part in first.parts),
        *(rest.code for rest in first.rests if rest.is_offcut),
    ]
    whole = f"S{first.number}"
    on_the_way = [code for code in _codes(first) if code not in placed and code != whole]
    return Repeat(
        view=first,
        numbers=tuple(view.number for view in members),
        places=tuple(_pairs(dict.fromkeys(placed), matches)),
        pieces=tuple(_pairs(dict.fromkeys(on_the_way), matches)),
    )


def _pairs(codes: Mapping[str, None], matches: Sequence[Mapping[str, str]]) -> Iterator[CodePair]:
    for code in codes:
        yield CodePair(drawn=code, copies=tuple(match[code] for match in matches))


def _codes(view: SheetView) -> tuple[str, ...]:
    """Return every code of a sheet once, in an order that sheets cut alike share."""
    codes = [f"S{view.number}"]
    for row in view.rows:
        codes += [row.hold, row.keep_code, row.free_code]
    codes += [part.code for part in _by_place(view.parts)]
    codes += [rest.code for rest in _by_place(view.rests)]
    return tuple(dict.fromkeys(code for code in codes if code not in ("", WASTE)))


def _without_codes(view: SheetView) -> SheetView:
    """Return a sheet with a number of its own in place of every code, and its parts by place."""
    number_of = {code: str(number) for number, code in enumerate(_codes(view))}
    number_of |= {"": "", WASTE: WASTE}
    return replace(
        view,
        number=0,
        parts=tuple(replace(part, code=number_of[part.code]) for part in _by_place(view.parts)),
        rests=tuple(replace(rest, code=number_of[rest.code]) for rest in _by_place(view.rests)),
        rows=tuple(
            replace(
                row,
                hold=number_of[row.hold],
                keep_code=number_of[row.keep_code],
                free_code=number_of[row.free_code],
            )
            for row in view.rows
        ),
        sums=tuple(replace(line, piece=number_of[line.piece]) for line in view.sums),
    )


def _by_place(views: Sequence[View]) -> list[View]:
    return sorted(views, key=lambda view: (view.rect.x, view.rect.y))
