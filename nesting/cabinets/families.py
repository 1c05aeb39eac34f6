"""Families: every kind of cabinet that the calculator knows, and how each is laid out."""

from collections.abc import Mapping
from typing import TypeAlias

from nesting.cabinets.boards import Board
from nesting.cabinets.box import lay_out_box
from nesting.cabinets.construction import Construction
from nesting.cabinets.design import BoxDesign
from nesting.cabinets.wedge import lay_out_wedge
from nesting.cabinets.wedge_design import WedgeDesign
from nesting.lengths import Length, Unit

Design: TypeAlias = BoxDesign | WedgeDesign


def lay_out(
    design: Design, measured: Mapping[Board, Length], *, step: Length, unit: Unit
) -> Construction:
    """Return a cabinet in space, whatever its family.

    Args:
        design: The design.
        measured: Measured thicknesses; boards that are not in it count with their nominal one.
        step: Sizes are rounded to this. Positive.
        unit: The unit of messages and sums.

    Raises:
        InputError: The cabinet cannot be built as designed.
    """
    if isinstance(design, WedgeDesign):
        return lay_out_wedge(design, measured, step=step, unit=unit)
    return lay_out_box(design, measured, step=step, unit=unit)
