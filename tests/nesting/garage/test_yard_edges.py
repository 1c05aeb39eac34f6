"""After the yard's cuts the plan is made again: its edges are still raw."""

import pytest

from nesting.garage.edges import raw_edges
from nesting.garage.marks import Marks
from nesting.garage.planned import Planned
from nesting.lengths import mm
from nesting.replan import replan
from plans.plan import Figures, make_plan
from plans.plan_file import plan_document
from plans.plan_reading import planned_of
from plans.rehearsal import rehearse
from tests.nesting.garage.plans_read import after_cuts
from tests.plans.yard_plans import document_of, half_sheets


@pytest.fixture
def planned() -> Planned:
    return planned_of(document_of(half_sheets()))


def test_a_piece_from_the_yard_has_raw_edges_of_its_own(planned: Planned) -> None:
    sheet = planned.sheets[0]
    first, second = (piece for piece in sheet.pieces if piece.made_by == 1)
    assert raw_edges(sheet, first.rect).left == mm(10)
    assert raw_edges(sheet, first.rect).right == mm(6)
    assert raw_edges(sheet, second.rect).left == mm(3)
    assert raw_edges(sheet, second.rect).right == mm(10)


@pytest.mark.parametrize("cuts", [0, 1, 2, 3, 5])
def test_going_on_after_some_cuts_is_rehearsed_without_fault(planned: Planned, cuts: int) -> None:
    job = half_sheets()[0]
    marks = after_cuts(planned, cuts) if cuts else Marks()
    again = replan(job, planned, marks, effort=0)
    assert again.layout.unplaced == ()
    assert again.cost == 0
    figures = Figures(layout=again.layout)
    made = make_plan(again.remaining.job, figures)
    assert rehearse(plan_document(again.remaining.job, figures, made)).faults == ()
