"""Masses against a maker's datasheet."""

import pytest

from nesting.densities import find_density, find_mass_kg
from nesting.lengths import mm

# Birch plywood, a maker's datasheet: nominal thickness in mm, kg of a sheet of 1220 x 2440 and of
# 3050 x 1525. R: masses are nominal thickness times area times density, to 0.1 kg.
DATASHEET = [
    ("6.5", 13.0, 20.3),
    ("9", 19.0, 29.7),
    ("12", 24.8, 38.8),
    ("15", 30.8, 48.1),
    ("18", 36.7, 57.3),
    ("21", 42.5, 66.4),
    ("24", 48.6, 75.9),
    ("30", 60.0, 93.8),
]


@pytest.mark.parametrize(("thickness", "small", "large"), DATASHEET)
def test_birch_sheets_weigh_what_the_datasheet_says(
    thickness: str, small: float, large: float
) -> None:
    birch = find_density("Birch plywood", mm(thickness))
    for length, width, mass in ((2440, 1220, small), (3050, 1525, large)):
        found = find_mass_kg(birch, length=mm(length), width=mm(width), thickness=mm(thickness))
        assert float(found) == pytest.approx(mass, abs=0.1)
    assert not birch.is_assumed


def test_other_materials_lie_in_the_ranges_that_makers_give() -> None:
    # 18 mm, 1220 x 2440: spruce 460 kg/m3 gives 24.6 kg, poplar 450 to 550 gives 24.1 to 29.5 kg.
    def mass(material: str) -> float:
        found = find_density(material, mm(18))
        return float(find_mass_kg(found, length=mm(2440), width=mm(1220), thickness=mm(18)))

    assert mass("spruce plywood") == pytest.approx(24.6, abs=0.1)
    assert 24.1 <= mass("poplar plywood") <= 29.5
    # 700 kg/m3, the least of one maker's MDF, gives 37.5 kg; 700 to 800 is typical.
    assert 37.5 - 0.1 <= mass("MDF") <= 42.9


def test_an_unknown_material_is_an_assumption() -> None:
    found = find_density("oak board", mm(18))
    assert (found.kg_per_m3, found.is_assumed) == (700, True)
