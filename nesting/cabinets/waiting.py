"""What waits for the standing carcass: it is cut oversize, and measured before its last cut."""

from typing import Final, TypeAlias

from nesting.cabinets.design import BoxDesign
from nesting.cabinets.wedge_design import WedgeDesign
from nesting.lengths import Length
from nesting.parts import Status

Wait: TypeAlias = tuple[Status, Length, tuple[str, ...]]
"""How far a size can be trusted, how much is added to it, and what is to be done."""

NO_WAIT: Final[Wait] = (Status.FINAL, 0, ())


def wait(design: BoxDesign | WedgeDesign, *, has_clearance: bool = False) -> Wait:
    """Return what goes with something that is put into a standing carcass.

    Args:
        design: The cabinet; with `measure_first` off nothing waits.
        has_clearance: Whether covering and clearance come off what is measured.
    """
    if not design.measure_first:
        return NO_WAIT
    clearance = ", take off covering and clearance" if has_clearance else ""
    to_do = f"measure its place in the standing carcass{clearance}, trim to size"
    return Status.MEASURE_FIRST, design.allowance, (to_do,)
