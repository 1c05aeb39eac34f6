"""Plans for the tests of the phone page, made by the program itself."""

from dataclasses import replace

from nesting.saw import Face
from plans.plan import Figures, Plan, make_plan
from tests.nesting.hand_made import SAW, two_cabinets
from tests.plans.rehearsal.real_plans import planned

RANDOM = range(12)
"""Seeds of random jobs: both units, both faces, trims thinner than the kerf."""


def two_cabinets_plan(face: Face = Face.BACK, name: str = "Test shelves") -> Plan:
    made, layout = two_cabinets()
    made = replace(made, name=name, saw=replace(SAW, marked_face=face))
    return make_plan(made, Figures(layout=layout))


def random_plan(seed: int) -> Plan:
    _, job, result, _ = planned(seed)
    return make_plan(job, result)
