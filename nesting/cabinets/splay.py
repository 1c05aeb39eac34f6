"""Compound mitres: the two angles at the corner of a box whose sides all slope."""

from math import asin, atan, cos, degrees, radians, sin, tan

SQUARE_DEG = 90.0


def find_compound_mitre(splay_deg: float, corner_deg: float = SQUARE_DEG) -> tuple[float, float]:
    """Return the tilt of the blade and the setting of the mitre gauge, in degrees.

    Both for a board that lies flat on the saw; a gauge of 90 is a square cut.

    Args:
        splay_deg: How far every side leans out of upright, from 0 to less than 90.
        corner_deg: The angle between two sides as seen from above: 90 for four of them.

    References:
        The usual formulas, with the slope counted from level: gauge from the edge
        90 - atan(cos(slope) tan(corner / 2)), tilt asin(sin(slope) sin(corner / 2)).
    """
    slope, half = radians(SQUARE_DEG - splay_deg), radians(corner_deg / 2)
    tilt = degrees(asin(sin(slope) * sin(half)))
    return tilt, SQUARE_DEG - degrees(atan(cos(slope) * tan(half)))
