"""Boards: what a panel is cut from, and how thick it really is."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from nesting.lengths import FINEST_FRACTION, NM_PER_INCH, Length, Unit, mm, round_to
from nesting.sheets import Sheet


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    """A material in one thickness, as it is sold.

    Attributes:
        material: What it is made of.
        thickness: Nominal thickness, the name it is sold under. Positive.
    """

    material: str
    thickness: Length


def measure_boards(sheets: Iterable[Sheet], unit: Unit) -> dict[Board, Length]:
    """Return the measured thickness of every board that has a reading.

    Several kinds of sheet may be the same board (a full sheet and an offcut, say): all their
    readings count alike. The mean is given to 0.1 mm, or to a fifth of 1/64 in (0.08 mm), so that
    23/32 in stays 23/32 in.

    References:
        EN 324-1:1993: the mean of the readings is given to 0.1 mm.
    """
    readings: dict[Board, list[Length]] = {}
    for sheet in sheets:
        board = Board(material=sheet.material, thickness=sheet.thickness)
        readings.setdefault(board, []).extend(sheet.measured)
    finest = mm("0.1") if unit is Unit.MM else NM_PER_INCH // 5 // FINEST_FRACTION
    return {
        board: round_to(sum(found), len(found) * finest) // len(found)
        for board, found in readings.items()
        if found
    }


def real_thickness(board: Board, measured: Mapping[Board, Length]) -> Length:
    """Return a board's measured thickness, or the nominal one where it is not measured."""
    return measured.get(board, board.thickness)
