"""How heavy sheet material is, for deciding when two people lift.

The figures are averages from makers' data; a sheet out of a damp stack weighs more. None of them
is a load rating.
"""

from dataclasses import dataclass
from fractions import Fraction

from nesting.lengths import Length, mm

NM_PER_METRE = 1_000_000_000

BIRCH_BY_THICKNESS: dict[Length, int] = {
    mm("6.5"): 670,
    mm(9): 710,
    mm(12): 695,
    mm(15): 690,
    mm(18): 685,
    mm(21): 680,
    mm(24): 680,
    mm(30): 672,
}
"""Birch plywood, kg/m3 by nominal thickness, from a maker's datasheet.

The same sheet gives the mass of whole sheets (36.7 kg for 18 mm, 1220 x 2440), which is nominal
thickness times area times density.
"""

BY_WORD: tuple[tuple[str, int], ...] = (
    ("birch", 700),  # makers' sheets: 700 +- 50
    ("poplar", 500),  # makers' sheets: 450 to 550
    ("spruce", 460),  # makers' sheets: 460 +- 50
    ("mdf", 750),  # 700 to 800 is typical (table in IS 14587)
)
"""Density in kg/m3 by a word in the material's name, the first that occurs."""

ASSUMED = 700
"""kg/m3 where the material is not known. An assumption, on the heavy side for plywood."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Density:
    """How heavy a material is.

    Attributes:
        kg_per_m3: Kilograms in a cubic metre.
        is_assumed: True where nothing is known about the material.
    """

    kg_per_m3: int
    is_assumed: bool


def find_density(material: str, thickness: Length) -> Density:
    """Return the density of a material by the words of its name.

    Args:
        material: Such as "birch plywood".
        thickness: Nominal thickness; birch is listed by thickness.

    >>> find_density("birch plywood", mm(18)).kg_per_m3, find_density("oak board", mm(18))
    (685, Density(kg_per_m3=700, is_assumed=True))
    """
    name = material.lower()
    if "birch" in name and thickness in BIRCH_BY_THICKNESS:
        return Density(kg_per_m3=BIRCH_BY_THICKNESS[thickness], is_assumed=False)
    for word, kg_per_m3 in BY_WORD:
        if word in name:
            return Density(kg_per_m3=kg_per_m3, is_assumed=False)
    return Density(kg_per_m3=ASSUMED, is_assumed=True)


def find_mass_kg(density: Density, *, length: Length, width: Length, thickness: Length) -> Fraction:
    """Return the exact mass in kilograms of a piece of this size and nominal thickness.

    Nominal thickness on purpose: makers' tables of sheet masses use it, and it errs on the heavy
    side for plywood.

    >>> birch = find_density("birch plywood", mm(18))
    >>> round(float(find_mass_kg(birch, length=mm(2440), width=mm(1220), thickness=mm(18))), 1)
    36.7
    """
    return Fraction(length * width * thickness * density.kg_per_m3, NM_PER_METRE**3)
