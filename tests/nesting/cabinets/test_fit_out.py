"""The fit-out of whatever can be built."""

import pytest
from hypothesis import given, settings

from nesting.cabinets.design import BoxDesign
from nesting.cabinets.fittings import AssemblyWishes, Fittings, Hardware, LoadsFrom, Roll, Screws
from nesting.lengths import Length, mm
from tests.nesting.cabinets.designs import THICKNESSES, box_designs
from tests.nesting.cabinets.fit_samples import FRAMED, fit

EVERYTHING = Fittings(
    assembly=AssemblyWishes(damping=True, wiring=True, baffle_from=LoadsFrom.REAR),
    roll=Roll(width=mm(1600)),
    cloth=Roll(width=mm(1700)),
    screws=Screws(round_over=mm(10)),
    hardware=Hardware(feet=4, corners=8),
)


@pytest.mark.property
@settings(max_examples=100, deadline=None)
@given(box_designs(), THICKNESSES)
def test_every_box_that_can_be_built_can_be_fitted_out(
    wanted: BoxDesign, thickness: Length
) -> None:
    found = fit(wanted, EVERYTHING, thickness=thickness)
    standing = [step.closes for step in found.steps if step.closes]
    assert len(set(standing)) == len(standing)
    assert 0 < found.room.net <= found.room.gross
    assert found.mass.whole > 0
    assert [step.number for step in found.steps] == list(range(1, len(found.steps) + 1))


def test_without_a_word_about_fittings_there_are_still_volume_mass_steps_and_checks() -> None:
    found = fit(FRAMED)
    assert found.room.net
    assert found.mass.whole
    assert found.steps
    assert found.checks
    for nothing in (found.holes, found.fixings, found.wraps, found.ways, found.hazards):
        assert not nothing
