"""Boards: what a panel is cut from, and how thick it really is."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from nesting.lengths import Length
from nesting.sheets import Sheet, mean_reading


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    """A material in one thickness, as it is sold.

    Attributes:
        material: What it is made of.
        thickness: Nominal thickness, the name it is sold under. Positive.
    """

    material: str
    thickness: Length


def measure_boards(sheets: Iterable[Sheet]) -> dict[Board, Length]:
    """Return the measured thickness of every board that has a reading.

    Several kinds of sheet may be the same board (a full sheet and an offcut, say): all their
    readings count alike.
    """
    return {board: mean_reading(found) for board, found in _collect_readings(sheets).items()}


def find_spreads(sheets: Iterable[Sheet]) -> dict[Board, Length]:
    """Return by how much the readings of a board differ, for each board that has a reading."""
    found = _collect_readings(sheets)
    return {board: max(readings) - min(readings) for board, readings in found.items()}


def _collect_readings(sheets: Iterable[Sheet]) -> dict[Board, tuple[Length, ...]]:
    readings: dict[Board, tuple[Length, ...]] = {}
    for sheet in sheets:
        board = Board(material=sheet.material, thickness=sheet.thickness)
        if sheet.measured:
            readings[board] = readings.get(board, ()) + sheet.measured
    return readings


def real_thickness(board: Board, measured: Mapping[Board, Length]) -> Length:
    """Return a board's measured thickness, or the nominal one where it is not measured."""
    return measured.get(board, board.thickness)
