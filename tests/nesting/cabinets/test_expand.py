import pytest
from hypothesis import given, settings

from nesting.cabinets.design import BoxDesign
from nesting.cabinets.expand import expand
from nesting.lengths import Length, Unit, mm
from tests.nesting.cabinets.designs import BIRCH, THICKNESSES, box_designs, build, design

MEASURED = {BIRCH: mm("17.7")}


def test_every_cabinet_of_a_design_has_its_own_parts() -> None:
    built = expand(
        design(count=2), letters=("C", "D"), measured=MEASURED, step=mm("0.5"), unit=Unit.MM
    )
    assert [(part.cabinet, part.name) for part in built.parts] == [
        (letter, name) for letter in "CD" for name in ("Side", "Top or bottom", "Baffle", "Back")
    ]


def test_a_box_closes_in_three_sums() -> None:
    assert build(design()).sums == (
        "600 = 17.7 + 564.6 + 17.7 (height: bottom, inside, top)",
        "500 = 17.7 + 464.5 + 17.7 + 0.1 (width: left side, top or bottom, right side, rounding)",
        "350 = 17.7 + 314.6 + 17.7 (depth: baffle, inside, back)",
    )


@pytest.mark.property
@settings(max_examples=200, deadline=None)
@given(box_designs(), THICKNESSES)
def test_names_are_unique_in_a_cabinet_and_wood_is_never_more_than_the_box(
    wanted: BoxDesign, thickness: Length
) -> None:
    built = build(wanted, thickness=thickness)
    for lists in (built.parts, built.battens):
        names = [(each.cabinet, each.name) for each in lists]
        assert len(set(names)) == len(names)
    height, width, depth = built.outside
    wood = sum(panel.box.volume for panel in built.panels)
    assert wood < height * width * depth
