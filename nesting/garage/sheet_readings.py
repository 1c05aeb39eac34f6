"""Readings of a whole sheet: whether they can be true."""

from typing import Final, TypeAlias

from nesting.garage.planned import PlannedSheet
from nesting.garage.refusal import refuse
from nesting.lengths import Length
from nesting.sheets import Defect

Size: TypeAlias = tuple[Length, Length]

FARTHEST_SIZE: Final = 2
"""Per cent off the planned size: a slip of the pen beyond, or another sheet."""
FARTHEST_THICKNESS: Final = 15
"""Per cent off the nominal thickness, as for the readings of a job file."""


def check_sheet_reading(
    sheet: PlannedSheet,
    *,
    size: Size | None,
    diagonals: Size | None,
    thickness: tuple[Length, ...],
    defects: tuple[Defect, ...],
) -> None:
    """Refuse readings that cannot be of the sheet that the plan has.

    Args:
        sheet: The sheet.
        size: Its length and width as read, or None.
        diagonals: Both diagonals, or None.
        thickness: Readings of the thickness.
        defects: Places that are not sound.

    Raises:
        InputError: A reading is too far off to be one of this sheet.
    """
    where = f"sheet {sheet.number}"
    length, width = size or (sheet.length, sheet.width)
    for defect in defects:
        if defect.x + defect.length > length or defect.y + defect.width > width:
            raise refuse(
                where,
                "a defect reaches beyond its edge",
                "Measure from the home corner to the near side of the defect: along the sheet's "
                "length first, then along its width.",
            )
    for side, planned_side in ((length, sheet.length), (width, sheet.width)):
        if abs(side - planned_side) * 100 > FARTHEST_SIZE * planned_side:
            raise refuse(
                where,
                f"a side is more than {FARTHEST_SIZE} % off the planned one",
                "Measure again; the first figure is the first one of the size on its page. "
                "If it is another sheet, mark this one as missing.",
            )
    for diagonal in diagonals or ():
        square = length * length + width * width
        # A right-angled sheet of this size has diagonals of square; 2 % is far beyond skew.
        if abs(diagonal * diagonal - square) * 100 > 2 * FARTHEST_SIZE * square:
            raise refuse(
                where,
                "a diagonal does not belong to a sheet of this size",
                "Measure from corner to corner again.",
            )
    for reading in thickness:
        if abs(reading - sheet.thickness) * 100 > FARTHEST_THICKNESS * sheet.thickness:
            raise refuse(
                where,
                f"a reading is more than {FARTHEST_THICKNESS} % off the nominal thickness",
                "Measure again.",
            )
