"""Shelves, dividers and grilles: what the builder says about them."""

from collections.abc import Iterator
from dataclasses import dataclass

from nesting.cabinets.boards import Board
from nesting.errors import Fault, InputError
from nesting.lengths import Length


@dataclass(frozen=True, slots=True, kw_only=True)
class Shelves:
    """Boards that lie between the sides, or between sides and dividers, as deep as the inside.

    Attributes:
        count: How many there are one above the other, at least 1.
        clear: Clear heights below each shelf, from the bottom up; empty to spread them evenly.
        board: What they are cut from; None for the carcass's board.
        set_back: How far their front edge stands behind the front of the inside.
        groove: How deep they are let into grooves at either end; 0 for none.
    """

    count: int = 1
    clear: tuple[Length, ...] = ()
    board: Board | None = None
    set_back: Length = 0
    groove: Length = 0

    def __post_init__(self) -> None:
        """Refuse what no shelves can be."""
        _refuse("shelves", self.count, self.set_back, self.groove)
        if self.clear and (len(self.clear) != self.count or min(self.clear) <= 0):
            raise InputError(
                [
                    Fault(
                        where="shelves",
                        what=f"{len(self.clear)} clear heights do not place {self.count} of them",
                        remedy="Give the clear height below each shelf, from the bottom up, or "
                        "leave the heights out to spread the shelves evenly.",
                    )
                ]
            )


@dataclass(frozen=True, slots=True, kw_only=True)
class Dividers:
    """Boards that stand between bottom and top, spread evenly over the inside width.

    Attributes:
        count: How many, at least 1.
        board: What they are cut from; None for the carcass's board.
        set_back: How far their front edge stands behind the front of the inside.
        groove: How deep they are let into grooves at either end; 0 for none.
    """

    count: int = 1
    board: Board | None = None
    set_back: Length = 0
    groove: Length = 0

    def __post_init__(self) -> None:
        """Refuse what no dividers can be."""
        _refuse("dividers", self.count, self.set_back, self.groove)


@dataclass(frozen=True, slots=True, kw_only=True)
class Grille:
    """A frame of battens, covered with cloth, that stands in the recess before the baffle.

    Attributes:
        section: Thickness and width of a batten; the wider side lies parallel to the baffle.
        cloth: Thickness of the cloth round the edge of the frame.
        piping: Thickness of the piping between the frame and the covered opening; 0 for none.
    """

    section: tuple[Length, Length]
    cloth: Length
    piping: Length = 0

    def __post_init__(self) -> None:
        """Refuse what no grille can be."""
        thin, wide = self.section
        if not 0 < thin <= wide or min(self.cloth, self.piping) < 0:
            raise InputError(
                [
                    Fault(
                        where="grille",
                        what="its section is not two sizes, the smaller first, or cloth or piping "
                        "is negative",
                        remedy="Give a section such as 12 and 20, and the thickness of the cloth.",
                    )
                ]
            )


def _refuse(where: str, count: int, set_back: Length, groove: Length) -> None:
    faults = tuple(_find_faults(where, count, set_back, groove))
    if faults:
        raise InputError(faults)


def _find_faults(where: str, count: int, set_back: Length, groove: Length) -> Iterator[Fault]:
    if count < 1:
        yield Fault(
            where=where,
            what=f"their count is {count}",
            remedy="Give 1 or more, or leave them out.",
        )
    if min(set_back, groove) < 0:
        yield Fault(
            where=where, what="their set-back or groove is negative", remedy="Give 0 or more."
        )
